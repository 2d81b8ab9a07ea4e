#include "record/channel_fields.h"
#include "record/measurement_tables.h"
#include "words/caution_words.h"

#include <cmath>

namespace fogline {

using enum Presence;
using enum NumberRange;

namespace {

/// The code that reports publish. Of a caution that only an older or newer program knows it came
/// with the sentence.
std::string published_code(const Caution& caution) {
  const bool only_told = caution.fact.kind == CautionKind::told && !caution.fact.names.empty();
  return only_told ? caution.fact.names.front() : std::string(caution_code(caution.fact.kind));
}

}  // namespace

template <>
const Fields<Quantity>& fields_of() {
  static const Fields<Quantity> fields{
      field("value", &Quantity::value, required),
      field("u95", &Quantity::u95, required, not_negative),
      field("u95_common", &Quantity::u95_common, left_out, not_negative),
      field("lower95", &Quantity::lower95, left_out),
      field("upper95", &Quantity::upper95, left_out),
      field("at_least", &Quantity::at_least, left_out),
  };
  return fields;
}

template <>
const Fields<BoxPx>& fields_of() {
  static const Fields<BoxPx> fields{
      field("x", &BoxPx::x, required),
      field("y", &BoxPx::y, required),
      field("width", &BoxPx::width, required, not_negative),
      field("height", &BoxPx::height, required, not_negative),
  };
  return fields;
}

template <>
const Fields<PointMm>& fields_of() {
  static const Fields<PointMm> fields{
      field("along_mm", &PointMm::along_mm),
      field("across_mm", &PointMm::across_mm),
  };
  return fields;
}

bool can_be_told(const BaseFog& base_fog) {
  return can_be_told(base_fog.visual);
}

template <>
const Fields<BaseFog>& fields_of() {
  static const Fields<BaseFog> fields{
      field("visual", &BaseFog::visual, required),
      {"red",
       [](BaseFog& base_fog, FieldWalker& walker) { walk_colours(walker, base_fog.channels); }},
      field("source", &BaseFog::source),
      field("area_mm2", &BaseFog::area_mm2, left_out),
  };
  return fields;
}

template <>
const Fields<Caution>& fields_of() {
  static const Fields<Caution> fields{
      repeat<Caution>("code", [](const Caution& caution) { return published_code(caution); }),
      field("severity", &Caution::severity, required),
      repeat<Caution>("message", [](const Caution& caution) { return caution_sentence(caution); }),
      field("fact", &Caution::fact),
      field("behind", &Caution::why, left_out),
  };
  return fields;
}

}  // namespace fogline
