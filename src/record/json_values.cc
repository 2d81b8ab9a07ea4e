#include "record/json_values.h"

#include "words/schema_words.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <nlohmann/json.hpp>

namespace fogline {
namespace {

double rounded(double value, double steps) {
  return std::round(value * steps) / steps;
}

bool is_finite(const Quantity& quantity) {
  return std::isfinite(quantity.value) && std::isfinite(quantity.u95);
}

void put_if_finite(Json& object, const char* name, const std::optional<double>& value) {
  if (value && std::isfinite(*value)) {
    object[name] = json_from_density(*value);
  }
}

}  // namespace

Json json_from_density(double density) {
  if (!std::isfinite(density)) {
    return nullptr;
  }
  const double value = rounded(density, 1e4);
  return value == 0.0 ? 0.0 : value;  // never "-0.0"
}

Json json_from_probability(double probability) {
  return std::isfinite(probability) ? rounded(std::clamp(probability, 0.0, 1.0), 1e4) : 0.0;
}

Json json_from_place(double value) {
  return std::isfinite(value) ? rounded(value, 100.0) : 0.0;
}

Json json_from_box(const BoxPx& box) {
  return {{"x", json_from_place(box.x)},
          {"y", json_from_place(box.y)},
          {"width", json_from_place(box.width)},
          {"height", json_from_place(box.height)}};
}

Json json_from_quantity(const std::optional<Quantity>& quantity) {
  if (!quantity || !is_finite(*quantity)) {
    return nullptr;
  }
  Json object{{"value", json_from_density(quantity->value)},
              {"u95", json_from_density(quantity->u95)}};
  put_if_finite(object, "u95_common", quantity->u95_common);
  put_if_finite(object, "lower95", quantity->lower95);
  put_if_finite(object, "upper95", quantity->upper95);
  if (quantity->at_least) {
    object["at_least"] = true;
  }
  return object;
}

Json json_from_quantity(const Known<Quantity>& quantity) {
  return json_from_quantity(quantity.optional());
}

Json json_from_quantity(const Quantity& quantity) {
  return json_from_quantity(std::optional(quantity));
}

Json json_from_known(const Known<double>& number) {
  return number ? json_from_density(*number) : Json(nullptr);
}

Json json_from_base_fog(const Known<BaseFog>& base_fog) {
  if (!base_fog || !is_finite(base_fog->visual)) {
    return nullptr;
  }
  Json object{{"visual", json_from_quantity(base_fog->visual)}};
  if (base_fog->channels) {
    constexpr std::array<const char*, most_channels> names{"red", "green", "blue"};
    for (std::size_t c = 0; c < names.size(); ++c) {
      if (is_finite((*base_fog->channels)[c])) {
        object[names[c]] = json_from_quantity((*base_fog->channels)[c]);
      }
    }
  }
  object["source"] = schema_word(base_fog->source);
  if (base_fog->area_mm2 && std::isfinite(*base_fog->area_mm2)) {
    object["area_mm2"] = json_from_place(*base_fog->area_mm2);
  }
  return object;
}

void put_flat(Json& object, const std::string& name, const Known<Quantity>& quantity) {
  if (!quantity || !is_finite(*quantity)) {
    object[name] = nullptr;
    return;
  }
  object[name] = json_from_density(quantity->value);
  object[name + "_u95"] = json_from_density(quantity->u95);
  if (quantity->at_least) {
    object[name + "_at_least"] = true;
  }
}

template <typename Kind>
Json json_from_fact(const Fact<Kind>& fact) {
  const FactRow<Kind>& row = fact_row(fact.kind);
  Json object{{"code", row.code}};
  const auto named = static_cast<std::size_t>(
      std::find(row.numbers.begin(), row.numbers.end(), std::string_view()) - row.numbers.begin());
  for (std::size_t i = 0; i < std::min(named, fact.numbers.size()); ++i) {
    object["numbers"][std::string(row.numbers[i])] = json_from_density(fact.numbers[i]);
  }
  if (named == 1 && fact.numbers.size() > 1) {
    object["numbers"][std::string(row.numbers[0])] = fact.numbers;
  }
  for (std::size_t i = 0; i < fact.names.size(); ++i) {
    object["names"][std::string(row.names.at(i))] = fact.names[i];
  }
  return object;
}

template Json json_from_fact(const Fact<Unknown>& fact);
template Json json_from_fact(const Fact<CautionKind>& fact);

void put_reasons(Json& object, const std::map<std::string, std::string>& known) {
  Json reasons = Json::object();
  for (const auto& [field, sentence] : known) {
    if (!sentence.empty()) {
      reasons[field] = sentence;
    }
  }
  for (const auto& [field, value] : object.items()) {
    if (value.is_null() && !reasons.contains(field)) {
      reasons[field] = unknown_sentence(fact_of(Unknown::scan_silent));
    }
  }
  if (!reasons.empty()) {
    object["reasons"] = std::move(reasons);
  }
}

void put_reasons(Json& object, const Whys& whys,
                 std::map<std::string, std::string> said_otherwise) {
  Json facts = Json::object();
  for (const auto& [field, why] : whys) {
    said_otherwise.emplace(field, unknown_sentence(why));
    facts[field] = json_from_fact(why);
  }
  put_reasons(object, said_otherwise);
  if (!facts.empty()) {
    object["why"] = std::move(facts);
  }
}

}  // namespace fogline
