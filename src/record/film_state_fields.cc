#include "record/measurement_tables.h"

namespace fogline {

using enum Presence;
using enum NumberRange;

namespace {

/// A tint that isn't known is the word `unknown`, and `reasons` says why.
constexpr std::string_view unknown_tint = "unknown";

void walk_tint_kind(Tint& tint, FieldWalker& walker) {
  std::vector<std::string_view> words{unknown_tint};
  for (const auto& row : schema_words<TintKind>().rows) {
    words.push_back(row.word);
  }
  walker.enter("kind", required, true);
  std::size_t place = tint.kind ? static_cast<std::size_t>(*tint.kind) + 1 : 0;
  if (!walker.word(place, words)) {
    place = 0;
  }
  walker.leave();
  if (place > 0) {
    tint.kind = static_cast<TintKind>(place - 1);
  } else {
    tint.kind = tint.kind.why();
    walk_reason(walker, "kind", tint.kind);
  }
}

}  // namespace

template <>
const Fields<TintComponent>& fields_of() {
  static const Fields<TintComponent> fields{
      field("kind", &TintComponent::kind, required),
      field("density", &TintComponent::density, null),
      field("confidence", &TintComponent::confidence, required, probability),
  };
  return fields;
}

template <>
const Fields<Tint>& fields_of() {
  static const Fields<Tint> fields{
      {"kind", walk_tint_kind},
      field("density", &Tint::density),
      field("confidence", &Tint::confidence, required, probability),
      field("components", &Tint::components),
      field("detection_limit", &Tint::detection_limit, null, not_negative),
      field("may_be_stock", &Tint::may_be_stock),
  };
  return fields;
}

template <>
const Fields<Mark>& fields_of() {
  static const Fields<Mark> fields{
      field("strip", &Mark::strip),
      field("kind", &Mark::kind, required),
      field("box_px", &Mark::box_px, required),
      field("middle", &Mark::middle),
      field("size_mm", &Mark::size_mm, kept, not_negative),
      field("contrast_density", &Mark::contrast_density),
      field("area_mm2", &Mark::area_mm2),
      field("confidence", &Mark::confidence, required, probability),
  };
  return fields;
}

}  // namespace fogline
