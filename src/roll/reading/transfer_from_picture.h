#pragma once

#include "film/film_knowledge.h"

#include <fogline/film/film_format.h>

#include <optional>
#include <vector>

namespace fogline {

/// What of a scan tells whether its codes are light or a display curve of it, all read as if codes
/// were light.
struct CodeEvidence {
  FilmFormat format = FilmFormat::unknown;
  /// Code of clear film over code of bare light, absent where bare light isn't in sight.
  std::optional<double> clear_over_bare;
  /// Code of an opaque surround over code of bare light, or of clear film where that isn't in
  /// sight.
  std::optional<double> opaque_over_light;
  /// Code of the edge print over code of clear film.
  std::optional<double> print_over_clear;
  /// Code of the fogged leader over code of clear film.
  std::optional<double> leader_over_clear;
  /// Per frame: code of the 98th percentile of density over code of clear film.
  std::vector<double> dense_over_clear;
};

/// Which reading fits film as it is made and developed.
enum class CodeReading { light, display_curve, cannot_tell };

/// Compares how well both readings fit what is known of film: base plus fog of 135 film 0.27
/// (standard deviation 0.07; clear polyester 0.10), of 120 and sheet film 0.12; net highlights of a
/// roll 1.05 with a spread of a third (faults of light and development included), edge print 1.1,
/// fogged leaders 2.3, and stray light of 0.2 to 3 % on opaque areas (all common practice, no
/// source). Linear and display-encoded codes differ by a factor of about 2.2 in density, so one
/// of the readings is usually absurd; where neither is, the answer is "cannot tell".
CodeReading reading_of_codes(const CodeEvidence& evidence, const FilmKnowledge& films);

}  // namespace fogline
