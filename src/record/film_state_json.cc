#include "record/film_state_json.h"

#include "words/schema_words.h"

#include <nlohmann/json.hpp>

namespace fogline {
namespace {

Json json_from_component(const TintComponent& component) {
  Json object{{"kind", schema_word(component.kind)},
              {"density", json_from_quantity(component.density)},
              {"confidence", json_from_probability(component.confidence)}};
  put_reasons(object, Whys{});
  return object;
}

Json json_from_mark(const Mark& mark) {
  Json object{{"strip", mark.strip},
              {"kind", schema_word(mark.kind)},
              {"box_px", json_from_box(mark.box_px)},
              {"size_mm", json_from_place(mark.size_mm)},
              {"contrast_density", json_from_known(mark.contrast_density)},
              {"area_mm2", json_from_known(mark.area_mm2)},
              {"confidence", json_from_probability(mark.confidence)}};
  Whys whys;
  note_why(whys, "contrast_density", mark.contrast_density);
  note_why(whys, "area_mm2", mark.area_mm2);
  put_reasons(object, whys);
  return object;
}

}  // namespace

Json json_from_tint(const Tint& tint) {
  Json object{{"kind", tint.kind ? schema_word(*tint.kind) : std::string_view("unknown")},
              {"density", json_from_quantity(tint.density)},
              {"confidence", json_from_probability(tint.confidence)},
              {"components", Json::array()}};
  for (const TintComponent& component : tint.components) {
    object["components"].push_back(json_from_component(component));
  }
  object["detection_limit"] = json_from_known(tint.detection_limit);
  object["may_be_stock"] = tint.may_be_stock;
  Whys whys;
  note_why(whys, "kind", tint.kind);
  note_why(whys, "density", tint.density);
  note_why(whys, "detection_limit", tint.detection_limit);
  put_reasons(object, whys);
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
