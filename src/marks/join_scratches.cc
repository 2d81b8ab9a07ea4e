// From pieces seen in tiles to scratches, and how surely each is one and no line of the picture.

#include "marks/find_scratches.h"
#include "marks/find_spots.h"
#include "marks/neighbourhood.h"
#include "marks/weigh_sign.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Pieces with such a gap between them, and so far apart across, are one scratch: it fades where
/// there is no silver to scrape, and drifts.
constexpr double most_gap_mm = 6.0;
constexpr double most_step_mm = 0.08;
/// Film on either side of a frame's border by which a line is seen to cross it.
constexpr double crossing_mm = 1.0;
/// Along the film's cut edges, whose place is known to some tenths, anything looks like a line.
constexpr double edge_mm = 1.0;
/// A line that ends so near a frame's border belongs to the picture.
constexpr double at_border_mm = 0.7;

bool goes_on(const MarkCandidate& a, const MarkCandidate& b) {
  const double gap = std::max(a.extent.along_begin_mm, b.extent.along_begin_mm) -
                     std::min(a.extent.along_end_mm, b.extent.along_end_mm);
  const double apart = std::max(a.extent.across_begin_mm, b.extent.across_begin_mm) -
                       std::min(a.extent.across_end_mm, b.extent.across_end_mm);
  return gap < most_gap_mm && apart < most_step_mm && a.contrast_density * b.contrast_density > 0.0;
}

MarkCandidate joined(const MarkCandidate& a, const MarkCandidate& b) {
  MarkCandidate sum = a;
  const double share = a.size_mm / (a.size_mm + b.size_mm);
  sum.extent = {std::min(a.extent.along_begin_mm, b.extent.along_begin_mm),
                std::max(a.extent.along_end_mm, b.extent.along_end_mm),
                std::min(a.extent.across_begin_mm, b.extent.across_begin_mm),
                std::max(a.extent.across_end_mm, b.extent.across_end_mm)};
  sum.contrast_density = share * a.contrast_density + (1.0 - share) * b.contrast_density;
  sum.width_mm = share * a.width_mm + (1.0 - share) * b.width_mm;
  sum.size_mm = sum.extent.along_end_mm - sum.extent.along_begin_mm;
  sum.log_odds = share * a.log_odds + (1.0 - share) * b.log_odds;
  return sum;
}

double overlap_share(const MarkCandidate& a, const MarkCandidate& b) {
  const double both = std::min(a.extent.along_end_mm, b.extent.along_end_mm) -
                      std::max(a.extent.along_begin_mm, b.extent.along_begin_mm);
  return both / std::min(a.size_mm, b.size_mm);
}

/// Other lines beside this one over the same stretch: walls, stairs and shutters come so.
int lines_beside(const MarkCandidate& mark, const std::vector<MarkCandidate>& all) {
  constexpr double beside_mm = 5.0;
  constexpr double alike = 0.5;
  return static_cast<int>(std::count_if(all.begin(), all.end(), [&](const MarkCandidate& other) {
    const double apart = std::abs(other.middle.across_mm - mark.middle.across_mm);
    return apart > most_step_mm && apart < beside_mm && overlap_share(mark, other) > alike &&
           std::abs(other.contrast_density) > alike * std::abs(mark.contrast_density);
  }));
}

/// For and against by the frames: a scratch runs on over a border, a horizon ends at it.
double odds_by_frames(const MarkCandidate& mark, const FilmStrip& film,
                      const ScratchKnowledge& knowledge) {
  double odds = in_picture(film, mark.middle) ? knowledge.inside_weight : 0.0;
  for (const FilmFrame& frame : film.frames) {
    if (mark.middle.across_mm < frame.across_begin_mm ||
        mark.middle.across_mm > frame.across_end_mm) {
      continue;
    }
    for (const double border : {frame.along_begin_mm, frame.along_end_mm}) {
      const double before = border - mark.extent.along_begin_mm;
      const double behind = mark.extent.along_end_mm - border;
      odds += std::min(before, behind) > crossing_mm ? knowledge.crossing_weight : 0.0;
      odds += std::min(std::abs(before), std::abs(behind)) < at_border_mm
                  ? knowledge.at_border_weight
                  : 0.0;
    }
  }
  return odds;
}

}  // namespace

std::vector<MarkCandidate> join_scratches(std::vector<MarkCandidate> pieces, const FilmStrip& film,
                                          double pixels_per_mm, const ScratchKnowledge& knowledge) {
  for (bool changed = true; changed;) {
    changed = false;
    for (std::size_t i = 0; i < pieces.size() && !changed; ++i) {
      for (std::size_t j = i + 1; j < pieces.size() && !changed; ++j) {
        if (goes_on(pieces[i], pieces[j])) {
          pieces[i] = joined(pieces[i], pieces[j]);
          pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(j));
          changed = true;
        }
      }
    }
  }
  for (MarkCandidate& mark : pieces) {
    mark.middle = {0.5 * (mark.extent.along_begin_mm + mark.extent.along_end_mm),
                   0.5 * (mark.extent.across_begin_mm + mark.extent.across_end_mm)};
    mark.area_mm2 = mark.size_mm * mark.width_mm;
  }
  const double least_mm =
      pixels_per_mm >= fine_pixels_per_mm ? knowledge.least_mm : knowledge.least_coarse_mm;
  std::vector<MarkCandidate> scratches;
  for (const MarkCandidate& piece : pieces) {
    const bool at_edge = piece.middle.across_mm < film.across_begin_mm + edge_mm ||
                         piece.middle.across_mm > film.across_end_mm - edge_mm;
    if (piece.size_mm >= least_mm && piece.width_mm <= knowledge.most_width_mm && !at_edge) {
      scratches.push_back(piece);
      scratches.back().log_odds +=
          log_weighed(knowledge.length_mm, piece.size_mm) + odds_by_frames(piece, film, knowledge) +
          knowledge.beside_weight * std::min(lines_beside(piece, pieces), 4);
    }
  }
  return scratches;
}

}  // namespace fogline
