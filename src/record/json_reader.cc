#include "record/json_reader.h"

#include <algorithm>
#include <cstdint>
#include <limits>

#include <nlohmann/json.hpp>

namespace fogline {

bool JsonReader::enter(std::string_view name, Presence presence, bool) {
  const auto found = here().find(name);
  if (found == here().end() || found->is_null()) {
    if (presence == Presence::required) {
      places_.push_back({nullptr, std::string(name), 0});
      refuse();
    }
    return false;
  }
  places_.push_back({&*found, std::string(name), 0});
  return true;
}

std::size_t JsonReader::begin_list(std::size_t) {
  if (!here().is_array()) {
    refuse();
  }
  return here().size();
}

void JsonReader::begin_fixed_list(std::size_t size) {
  if (begin_list(size) != size) {
    refuse();
  }
}

void JsonReader::enter_item(std::size_t index) {
  places_.push_back({&here()[index], {}, index});
}

void JsonReader::begin_object() {
  if (!here().is_object()) {
    refuse();
  }
}

void JsonReader::number(double& value, NumberRange range) {
  if (!here().is_number()) {
    refuse();
  }
  value = here().get<double>();
  const bool too_small = range != NumberRange::any && value < 0.0;
  if (too_small || (range == NumberRange::probability && value > 1.0)) {
    refuse();
  }
}

void JsonReader::whole(int& value) {
  // Unsigned beyond the signed range would wrap in a conversion.
  // An unsigned number is compared as one: as a signed one the greatest would be below zero.
  const auto most = static_cast<std::uint64_t>(std::numeric_limits<int>::max());
  if (!here().is_number_integer() ||
      (here().is_number_unsigned() ? here().get<std::uint64_t>() > most
                                   : here() < std::numeric_limits<int>::min())) {
    refuse();
  }
  value = here().get<int>();
}

void JsonReader::truth(bool& value) {
  if (!here().is_boolean()) {
    refuse();
  }
  value = here().get<bool>();
}

void JsonReader::text(std::string& value) {
  if (!here().is_string()) {
    refuse();
  }
  value = here().get<std::string>();
}

bool JsonReader::word(std::size_t& place, std::span<const std::string_view> words) {
  if (!here().is_string()) {
    refuse();
  }
  const auto found = std::find(words.begin(), words.end(), here().get_ref<const std::string&>());
  if (found == words.end()) {
    return false;
  }
  place = static_cast<std::size_t>(found - words.begin());
  return true;
}

std::string JsonReader::sentence_beside() const {
  const auto found = here().find("sentence");
  return found != here().end() && found->is_string() ? found->get<std::string>() : std::string();
}

void JsonReader::refuse() const {
  std::string path;
  for (const Place& place : places_) {
    if (place.name.empty()) {
      path += &place == &places_.front() ? "" : "[" + std::to_string(place.index) + "]";
    } else {
      path += (path.empty() ? "" : ".") + place.name;
    }
  }
  throw UnfitField(path);
}

}  // namespace fogline
