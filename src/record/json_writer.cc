#include "record/json_writer.h"

#include <algorithm>
#include <cmath>

#include <nlohmann/json.hpp>

namespace fogline {

bool JsonWriter::enter(std::string_view name, Presence presence, bool there) {
  if (!there && presence == Presence::left_out) {
    return false;
  }
  Json& field = (*places_.back())[std::string(name)];
  if (there) {
    places_.push_back(&field);
  }
  return there;
}

std::size_t JsonWriter::begin_list(std::size_t size) {
  *places_.back() = Json::array();
  return size;
}

void JsonWriter::enter_item(std::size_t /*index*/) {
  Json& list = *places_.back();
  list.push_back(nullptr);
  places_.push_back(&list.back());
}

void JsonWriter::begin_object() {
  *places_.back() = Json::object();
}

void JsonWriter::number(double& value, NumberRange range) {
  double written = std::isfinite(value) ? value : 0.0;
  if (range != NumberRange::any) {
    written = std::max(written, 0.0);
  }
  if (range == NumberRange::probability) {
    written = std::min(written, 1.0);
  }
  *places_.back() = written == 0.0 ? 0.0 : written;  // never "-0.0"
}

void JsonWriter::whole(int& value) {
  *places_.back() = value;
}

void JsonWriter::truth(bool& value) {
  *places_.back() = value;
}

void JsonWriter::text(std::string& value) {
  *places_.back() = value;
}

bool JsonWriter::word(std::size_t& place, std::span<const std::string_view> words) {
  *places_.back() = words[place];
  return true;
}

}  // namespace fogline
