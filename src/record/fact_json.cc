#include "record/fact_json.h"

#include <cmath>

#include <nlohmann/json.hpp>

namespace fogline {

Json json_from_fact(const FactParts& fact) {
  Json object{{"code", fact.code}};
  for (const auto& [name, number] : fact.numbers) {
    if (std::isfinite(number)) {
      object["numbers"][std::string(name)] = json_from_density(number);
    }
  }
  for (const auto& [name, text] : fact.names) {
    object["names"][std::string(name)] = text;
  }
  return object;
}

Json json_from_facts(const std::vector<FactParts>& facts) {
  Json array = Json::array();
  for (const FactParts& fact : facts) {
    array.push_back(json_from_fact(fact));
  }
  return array;
}

}  // namespace fogline
