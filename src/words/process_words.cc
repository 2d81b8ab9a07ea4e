#include "words/schema_words.h"

namespace fogline {

// Words of colour, marks, baths and the roll card. As in schema_words.cc no switch has a default: a
// kind added without its word is a compiler warning.

std::string_view schema_word(TintKind kind) {
  switch (kind) {
    case TintKind::none:
      return "none";
    case TintKind::dye_left:
      return "dye-left";
    case TintKind::sensitising_dye:
      return "sensitising-dye";
    case TintKind::antihalation_dye:
      return "antihalation-dye";
    case TintKind::fixer_haze:
      return "fixer-haze";
    case TintKind::yellow_stain:
      return "yellow-stain";
    case TintKind::image_stain:
      break;
  }
  return "image-stain";
}

std::string_view schema_word(MarkKind kind) {
  switch (kind) {
    case MarkKind::drying_mark:
      return "drying-mark";
    case MarkKind::air_bell:
      return "air-bell";
    case MarkKind::dust:
      return "dust";
    case MarkKind::fibre:
      return "fibre";
    case MarkKind::scratch:
      return "scratch";
    case MarkKind::surge:
      return "surge";
    case MarkKind::light_leak:
      return "light-leak";
    case MarkKind::contact_mark:
      return "contact-mark";
    case MarkKind::pinhole:
      return "pinhole";
    case MarkKind::kink_mark:
      return "kink-mark";
    case MarkKind::static_mark:
      return "static-mark";
    case MarkKind::bromide_drag:
      return "bromide-drag";
    case MarkKind::low_level:
      return "low-level";
    case MarkKind::fingerprint:
      return "fingerprint";
    case MarkKind::interference_rings:
      return "interference-rings";
    case MarkKind::unknown:
      break;
  }
  return "unknown";
}

std::string_view schema_word(BathChange change) {
  switch (change) {
    case BathChange::keep:
      return "keep";
    case BathChange::longer:
      return "longer";
    case BathChange::shorter:
      return "shorter";
    case BathChange::renew:
      return "renew";
    case BathChange::unknown:
      break;
  }
  return "unknown";
}

std::string_view schema_word(FilmType type) {
  switch (type) {
    case FilmType::cubic:
      return "cubic";
    case FilmType::tabular:
      return "tabular";
    case FilmType::chromogenic:
      break;
  }
  return "chromogenic";
}

std::string_view schema_word(PrintWith use) {
  switch (use) {
    case PrintWith::diffusion:
      return "diffusion";
    case PrintWith::condenser:
      return "condenser";
    case PrintWith::scan:
      break;
  }
  return "scan";
}

std::string_view schema_word(FixKind kind) {
  switch (kind) {
    case FixKind::rapid:
      return "rapid";
    case FixKind::plain:
      return "plain";
    case FixKind::hardening:
      break;
  }
  return "hardening";
}

std::string_view schema_word(TargetKind kind) {
  return kind == TargetKind::bracket ? "bracket" : "exposed-wedge";
}

}  // namespace fogline
