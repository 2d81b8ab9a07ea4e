#include "base/member_names.h"
#include "words/schema_words.h"

#include <array>

namespace fogline {

// Words of colour, marks, baths and the roll card.

template <>
SchemaWords<TintKind> schema_words() {
  static constexpr std::array<SchemaWord<TintKind>, 7> rows{{
      {TintKind::none, "none"},
      {TintKind::dye_left, "dye-left"},
      {TintKind::sensitising_dye, "sensitising-dye"},
      {TintKind::antihalation_dye, "antihalation-dye"},
      {TintKind::fixer_haze, "fixer-haze"},
      {TintKind::yellow_stain, "yellow-stain"},
      {TintKind::image_stain, "image-stain"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, TintKind::none};
}

template <>
SchemaWords<MarkKind> schema_words() {
  static constexpr std::array<SchemaWord<MarkKind>, 16> rows{{
      {MarkKind::drying_mark, "drying-mark"},
      {MarkKind::air_bell, "air-bell"},
      {MarkKind::dust, "dust"},
      {MarkKind::fibre, "fibre"},
      {MarkKind::scratch, "scratch"},
      {MarkKind::surge, "surge"},
      {MarkKind::light_leak, "light-leak"},
      {MarkKind::contact_mark, "contact-mark"},
      {MarkKind::pinhole, "pinhole"},
      {MarkKind::kink_mark, "kink-mark"},
      {MarkKind::static_mark, "static-mark"},
      {MarkKind::bromide_drag, "bromide-drag"},
      {MarkKind::low_level, "low-level"},
      {MarkKind::fingerprint, "fingerprint"},
      {MarkKind::interference_rings, "interference-rings"},
      {MarkKind::unknown, "unknown"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, MarkKind::unknown};
}

template <>
SchemaWords<DevelopmentKind> schema_words() {
  static constexpr std::array<SchemaWord<DevelopmentKind>, 3> rows{{
      {DevelopmentKind::normal, "normal"},
      {DevelopmentKind::expanded, "expanded"},
      {DevelopmentKind::contracted, "contracted"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, DevelopmentKind::normal};
}

template <>
SchemaWords<BathChange> schema_words() {
  static constexpr std::array<SchemaWord<BathChange>, 5> rows{{
      {BathChange::keep, "keep"},
      {BathChange::longer, "longer"},
      {BathChange::shorter, "shorter"},
      {BathChange::renew, "renew"},
      {BathChange::unknown, "unknown"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, BathChange::unknown};
}

template <>
SchemaWords<FilmType> schema_words() {
  static constexpr std::array<SchemaWord<FilmType>, 3> rows{{
      {FilmType::cubic, "cubic"},
      {FilmType::tabular, "tabular"},
      {FilmType::chromogenic, "chromogenic"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, FilmType::cubic};
}

template <>
SchemaWords<PrintWith> schema_words() {
  static constexpr std::array<SchemaWord<PrintWith>, 3> rows{{
      {PrintWith::diffusion, "diffusion"},
      {PrintWith::condenser, "condenser"},
      {PrintWith::scan, "scan"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, PrintWith::diffusion};
}

template <>
SchemaWords<FixKind> schema_words() {
  static constexpr std::array<SchemaWord<FixKind>, 3> rows{{
      {FixKind::rapid, "rapid"},
      {FixKind::plain, "plain"},
      {FixKind::hardening, "hardening"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, FixKind::plain};
}

template <>
SchemaWords<TargetKind> schema_words() {
  static constexpr std::array<SchemaWord<TargetKind>, 2> rows{{
      {TargetKind::bracket, "bracket"},
      {TargetKind::exposed_wedge, "exposed-wedge"},
  }};
  static_assert(in_order_and_complete(rows));
  return {rows, TargetKind::bracket};
}

}  // namespace fogline
