// Marks are looked for at two finenesses: small ones tile by tile as finely as the scan is known,
// so that memory stays small; large ones (drying rings, large bells) on the strip at a few pixels a
// millimetre.

#include "marks/find_marks.h"

#include "marks/find_rings.h"
#include "marks/find_scratches.h"
#include "marks/find_spots.h"
#include "marks/find_threads.h"
#include "marks/ring_tile.h"
#include "marks/side_by_side.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace fogline {

namespace {

/// Finer tells no more of marks that matter.
constexpr double finest_pixels_per_mm = 48.0;
/// Pixels of a tile: its planes then take about 30 MB in colour.
constexpr double tile_pixels = 1'000'000.0;
/// Tiles overlap by so much: air bells and most threads lie whole in one of them.
constexpr double overlap_mm = 4.0;
constexpr double least_tile_mm = 12.0;
/// Below this chance of being there and of its kind a mark isn't told.
constexpr double least_confidence = 0.5;
/// No score is worth more than this.
constexpr double most_confidence = 0.95;

/// Pixels a millimetre that small marks are looked for at.
double search_fineness(const FilmStrip& film, const ScanGrid& grid) {
  // A hair above the grid's own fineness, so that straightening reads one sample a pixel.
  constexpr double hair = 1.001;
  return std::min(finest_pixels_per_mm, film.map.pixels_per_mm() / grid.reduction * hair);
}

std::vector<FilmExtent> tiles_of(const FilmStrip& film, double pixels_per_mm) {
  const double across = film.across_end_mm - film.across_begin_mm;
  const double length =
      std::max(least_tile_mm, tile_pixels / (pixels_per_mm * pixels_per_mm) / across);
  std::vector<FilmExtent> tiles;
  for (double begin = film.along_begin_mm; begin < film.along_end_mm;
       begin += length - overlap_mm) {
    const double end = std::min(begin + length, film.along_end_mm);
    tiles.push_back({begin, end, film.across_begin_mm, film.across_end_mm});
    if (end >= film.along_end_mm) {
      break;
    }
  }
  return tiles;
}

/// What one tile shows.
struct TileMarks {
  std::vector<MarkCandidate> whole;
  /// Scratches run on into the next tile.
  std::vector<MarkCandidate> scratch_pieces;
};

TileMarks marks_in_tile(const MarkTile& tile, const FilmStrip& film,
                        const MarkKnowledge& knowledge) {
  TileMarks marks;
  marks.whole = find_spots(tile, film, knowledge);
  if (tile.pixels_per_mm >= fine_pixels_per_mm) {
    const std::vector<MarkCandidate> threads = find_threads(tile, film, knowledge.fibre);
    marks.whole.insert(marks.whole.end(), threads.begin(), threads.end());
  }
  marks.scratch_pieces = scratch_pieces(tile, knowledge.scratch);
  return marks;
}

/// Two findings of one thing: their boxes overlap, and they are of a kind or of a size. A grain of
/// dust inside a ring is another thing.
bool same_thing(const MarkCandidate& a, const MarkCandidate& b) {
  constexpr double alike = 3.0;
  const bool of_a_size = a.area_mm2 < alike * b.area_mm2 && b.area_mm2 < alike * a.area_mm2;
  return (a.kind == b.kind || of_a_size) &&
         std::min(a.extent.along_end_mm, b.extent.along_end_mm) >
             std::max(a.extent.along_begin_mm, b.extent.along_begin_mm) &&
         std::min(a.extent.across_end_mm, b.extent.across_end_mm) >
             std::max(a.extent.across_begin_mm, b.extent.across_begin_mm);
}

/// Marks seen in two overlapping tiles once, the surer one.
void keep_surest(std::vector<MarkCandidate>& marks) {
  std::sort(marks.begin(), marks.end(),
            [](const MarkCandidate& a, const MarkCandidate& b) { return a.log_odds > b.log_odds; });
  std::vector<MarkCandidate> kept;
  for (const MarkCandidate& mark : marks) {
    const bool doubled = std::any_of(kept.begin(), kept.end(), [&](const MarkCandidate& other) {
      return same_thing(mark, other);
    });
    if (!doubled) {
      kept.push_back(mark);
    }
  }
  marks = std::move(kept);
}

std::optional<WhyUnknown> limits_of(double pixels_per_mm) {
  if (pixels_per_mm >= fine_pixels_per_mm) {
    return std::nullopt;
  }
  return fact_of(Unknown::marks_too_coarse, {pixels_per_mm});
}

BoxPx box_in_scan(const FilmExtent& extent, const FilmMap& map) {
  double left = INFINITY;
  double top = INFINITY;
  double right = -std::numeric_limits<double>::infinity();
  double bottom = -std::numeric_limits<double>::infinity();
  for (const double along : {extent.along_begin_mm, extent.along_end_mm}) {
    for (const double across : {extent.across_begin_mm, extent.across_end_mm}) {
      const PointPx at = map.scan_from_film({along, across});
      left = std::min(left, at.x);
      right = std::max(right, at.x);
      top = std::min(top, at.y);
      bottom = std::max(bottom, at.y);
    }
  }
  return {left, top, right - left, bottom - top};
}

ScoreWorth worth_of(MarkKind kind, const MarkKnowledge& knowledge) {
  switch (kind) {
    case MarkKind::fibre:
      return knowledge.fibre.worth;
    case MarkKind::scratch:
      return knowledge.scratch.worth;
    case MarkKind::dust:
      return knowledge.dust.worth;
    case MarkKind::air_bell:
      return knowledge.bell.worth;
    case MarkKind::pinhole:
      return knowledge.pinhole.worth;
    case MarkKind::drying_mark:
      // The rings' score is log odds already.
      return {0.0, 1.0};
    case MarkKind::surge:
    case MarkKind::light_leak:
    case MarkKind::contact_mark:
    case MarkKind::kink_mark:
    case MarkKind::static_mark:
    case MarkKind::bromide_drag:
    case MarkKind::low_level:
    case MarkKind::fingerprint:
    case MarkKind::interference_rings:
    case MarkKind::unknown:
      break;
  }
  throw std::logic_error("no search finds marks of this kind");
}

double confidence_of(const MarkCandidate& mark, const MarkKnowledge& knowledge) {
  const ScoreWorth score = worth_of(mark.kind, knowledge);
  const double log_odds = score.worth * (mark.log_odds - score.even);
  return std::min(most_confidence, 1.0 / (1.0 + std::exp(-log_odds)));
}

Mark mark_of(const MarkCandidate& candidate, int strip_number, const FilmMap& map,
             const MarkKnowledge& knowledge) {
  Mark mark;
  mark.kind = candidate.kind;
  mark.strip = strip_number;
  mark.box_px = box_in_scan(candidate.extent, map);
  mark.middle = candidate.middle;
  mark.size_mm = candidate.size_mm;
  mark.contrast_density = candidate.contrast_density;
  mark.area_mm2 = candidate.area_mm2;
  mark.confidence = confidence_of(candidate, knowledge);
  return mark;
}

/// Everything that looks like a mark at all, each thing once.
std::vector<MarkCandidate> mark_candidates(const FilmStrip& film, const MarkContext& context) {
  const double fineness = search_fineness(film, context.grid);
  const std::vector<FilmExtent> extents = tiles_of(film, fineness);
  std::vector<TileMarks> tiles(extents.size());
  std::vector<MarkCandidate> rings;
  run_side_by_side(extents.size() + 1, [&](std::size_t i) {
    if (i < extents.size()) {
      tiles[i] = marks_in_tile(mark_tile(film, context, extents[i], fineness, true), film,
                               context.knowledge);
    } else {
      rings = find_rings(ring_tile(film, context), context.knowledge.ring);
    }
  });
  std::vector<MarkCandidate> candidates = std::move(rings);
  std::vector<MarkCandidate> pieces;
  for (const TileMarks& tile : tiles) {
    candidates.insert(candidates.end(), tile.whole.begin(), tile.whole.end());
    pieces.insert(pieces.end(), tile.scratch_pieces.begin(), tile.scratch_pieces.end());
  }
  const std::vector<MarkCandidate> scratches =
      join_scratches(std::move(pieces), film, fineness, context.knowledge.scratch);
  candidates.insert(candidates.end(), scratches.begin(), scratches.end());
  keep_surest(candidates);
  return candidates;
}

}  // namespace

MarkTile ring_tile(const FilmStrip& film, const MarkContext& context) {
  const FilmExtent whole{film.along_begin_mm, film.along_end_mm, film.across_begin_mm,
                         film.across_end_mm};
  return mark_tile(film, context, whole,
                   std::min(ring_pixels_per_mm, search_fineness(film, context.grid)), false);
}

MarkSearch find_marks(const FilmStrip& film, int strip_number, const MarkContext& context) {
  MarkSearch search;
  search.limits = limits_of(search_fineness(film, context.grid));
  for (const MarkCandidate& candidate : mark_candidates(film, context)) {
    if (confidence_of(candidate, context.knowledge) >= least_confidence) {
      search.marks.push_back(mark_of(candidate, strip_number, film.map, context.knowledge));
    }
  }
  return search;
}

}  // namespace fogline
