#include "words/outline_words.h"

namespace fogline {

std::string_view outline_words(OutlineKind kind) {
  switch (kind) {
    case OutlineKind::strip:
      return "edge of the film";
    case OutlineKind::perforation:
      return "perforation";
    case OutlineKind::frame:
      return "frame, numbered; dashed where cut or placed by its neighbours";
    case OutlineKind::tone_area:
      return "where tone was read";
    case OutlineKind::clear_film:
      return "clear film: base plus fog";
    case OutlineKind::light_path:
      return "bare light: density zero";
    case OutlineKind::edge_print:
      return "edge print";
    case OutlineKind::leader:
      return "fogged leader";
    case OutlineKind::opaque:
      return "opaque, for stray light";
    case OutlineKind::exposed_step:
      break;
  }
  return "known exposure, read for the curve";
}

}  // namespace fogline
