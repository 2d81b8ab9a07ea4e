#include "record/film_state_json.h"

#include "words/schema_words.h"

#include <nlohmann/json.hpp>

namespace fogline {
namespace {

Json json_from_component(const TintComponent& component) {
  Json object{{"kind", schema_word(component.kind)},
              {"density", json_from_quantity(component.density)},
              {"confidence", json_from_probability(component.confidence)}};
  put_reasons(object, {});
  return object;
}

Json json_from_mark(const Mark& mark) {
  Json object{{"strip", mark.strip},
              {"kind", schema_word(mark.kind)},
              {"box_px", json_from_box(mark.box_px)},
              {"size_mm", json_from_place(mark.size_mm)},
              {"contrast_density",
               mark.contrast_density ? json_from_density(*mark.contrast_density) : Json(nullptr)},
              {"area_mm2", mark.area_mm2 ? json_from_density(*mark.area_mm2) : Json(nullptr)},
              {"confidence", json_from_probability(mark.confidence)}};
  put_reasons(object, {{"contrast_density", "Its surround isn't even enough to tell."},
                       {"area_mm2", "It has no edge by which its area could be told."}});
  return object;
}

}  // namespace

Json json_from_tint(const Tint& tint) {
  Json object{{"kind", schema_word(tint.kind)},
              {"density", json_from_quantity(tint.density)},
              {"confidence", json_from_probability(tint.confidence)},
              {"components", Json::array()}};
  for (const TintComponent& component : tint.components) {
    object["components"].push_back(json_from_component(component));
  }
  object["detection_limit"] =
      tint.detection_limit ? json_from_density(*tint.detection_limit) : Json(nullptr);
  object["may_be_stock"] = tint.may_be_stock;
  const bool clean = tint.kind == TintKind::none;
  std::map<std::string, std::string> reasons{
      {"density", clean ? "No tint above the detection limit was found." : tint.reason},
      {"detection_limit", tint.reason}};
  if (tint.kind == TintKind::unknown) {
    reasons["kind"] = tint.reason;
  }
  for (auto reason = reasons.begin(); reason != reasons.end();) {
    const bool needed = reason->first == "kind" || object[reason->first].is_null();
    reason = needed ? std::next(reason) : reasons.erase(reason);
  }
  put_reasons(object, reasons);
  return object;
}

Json json_from_marks(const std::vector<Mark>& marks) {
  Json array = Json::array();
  for (const Mark& mark : marks) {
    array.push_back(json_from_mark(mark));
  }
  return array;
}

}  // namespace fogline
