#include "roll/target/scan_target.h"

#include "numerics/robust.h"
#include "roll/reading/place_on_scan.h"
#include "roll/reading/scan_doubt.h"
#include "roll/target/printed_wedge.h"
#include "sensitometry/read_exposed_area.h"

#include <fogline/base/refusal.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>

namespace fogline {

namespace {

/// Lamp and lens bulge between the rows alike all along the film: that shifts base plus fog against
/// the steps. Between one place along the film and the next a part is left (common practice, no
/// source).
constexpr double bulge_part = 0.7;
constexpr double along_part = 0.3;
constexpr double least_own = 0.002;

/// Standard uncertainties that all rolls of the scanner share, source by source.
std::map<DoubtSource, double> common_standards(const DoubtSources& doubt, double density,
                                               double net) {
  std::map<DoubtSource, double> standards;
  for (const BudgetLine& line : budget_of_density(doubt, density, net)) {
    if (line.common) {
      standards[line.source] = line.standard_density;
    }
  }
  return standards;
}

NetDoubts net_doubts_of(const DoubtSources& doubt, double base) {
  NetDoubts net;
  net.base = base;
  net.base_doubt = std::hypot(doubt.noise_density, bulge_part * doubt.evenness_density);
  net.own = std::max(least_own, along_part * doubt.evenness_density);
  net.limit = density_limit(doubt) - base;
  // Silver and what isn't silver are misread apart: of silver nothing cancels against base.
  DoubtSources of_silver = doubt;
  of_silver.base_share_95 = of_silver.dense_base_share_95 = 0.0;
  DoubtSources of_base = doubt;
  of_base.angle_share_95 = 0.0;
  constexpr double stride = 0.1;
  const double reach = density_reach(doubt);
  CommonDoubt silver;
  std::map<DoubtSource, CommonDoubt> common;
  std::map<DoubtSource, double> at_base = common_standards(of_base, base, 0.0);
  for (double density = 0.0; base + density < reach + stride; density += stride) {
    for (auto& [source, standard] : common_standards(of_base, base + density, density)) {
      // What base plus fog is misread by as well cancels.
      common[source].net_density.push_back(density);
      common[source].doubt.push_back(std::max(0.0, standard - at_base[source]));
    }
    silver.net_density.push_back(density);
    silver.doubt.push_back(
        common_standards(of_silver, base + density, density)[DoubtSource::angle]);
  }
  for (auto& [source, one] : common) {
    net.common.push_back(std::move(one));
  }
  // Nothing is told of film whose base lies beyond the scan's reach.
  if (!silver.net_density.empty()) {
    net.common.push_back(std::move(silver));
  }
  return net;
}

ExposedReading reading_of(const ExposedArea& area, const FilmStrip& film, int strip,
                          const DoubtSources& doubt, double base) {
  ExposedReading reading;
  reading.area = area;
  reading.strip = strip;
  const double reach = density_reach(doubt);
  const double told = std::min(area.density, reach);
  reading.density = quantity_of_density(doubt, told, told - base);
  reading.density.u95 = std::hypot(reading.density.u95, coverage_factor_95 * area.doubt);
  reading.density.at_least = area.density > reach;
  reading.corners_px = corners_of(area.place, film.map);
  reading.box_px = box_around(reading.corners_px);
  return reading;
}

FilmExtent extent_of(const BoxPx& box, const FilmMap& map) {
  const PointMm a = map.film_from_scan({box.x, box.y});
  const PointMm b = map.film_from_scan({box.x + box.width, box.y + box.height});
  return {std::min(a.along_mm, b.along_mm), std::max(a.along_mm, b.along_mm),
          std::min(a.across_mm, b.across_mm), std::max(a.across_mm, b.across_mm)};
}

ExposedReading marked_area(const ScanInfo& info, const FilmLayout& layout,
                           const std::vector<StripReading>& readings, const MarkedArea& marked) {
  for (std::size_t s = 0; s < readings.size(); ++s) {
    const StripReading& reading = readings[s];
    const FilmStrip& film = layout.strips[s];
    const FilmExtent extent = extent_of(marked.box_px, film.map);
    const bool inside =
        extent.along_begin_mm > film.along_begin_mm && extent.along_end_mm < film.along_end_mm &&
        extent.across_begin_mm > film.across_begin_mm && extent.across_end_mm < film.across_end_mm;
    if (!inside || !reading.clear) {
      continue;
    }
    if (const auto area = read_exposed_area(reading.density, extent)) {
      return reading_of(*area, film, static_cast<int>(s) + 1, doubt_of(info, reading),
                        reading.clear->visual);
    }
  }
  throw FileError(info.file, Refusal::area_off_film, {marked.stops});
}

/// Film one and more pitches beyond the strip's end frames: where the least exposed frames of a
/// bracket lie unseen.
StripExposures unseen_frames(const StripReading& reading, const FilmStrip& film, int strip,
                             const DoubtSources& doubt) {
  StripExposures unseen;
  if (film.frames.empty()) {
    return unseen;
  }
  constexpr double usual_gap_mm = 2.0;
  std::vector<double> pitches;
  for (std::size_t i = 1; i < film.frames.size(); ++i) {
    pitches.push_back(film.frames[i].along_begin_mm - film.frames[i - 1].along_begin_mm);
  }
  const FilmFrame& first = film.frames.front();
  const double pitch =
      pitches.empty() ? first.along_end_mm - first.along_begin_mm + usual_gap_mm : median(pitches);
  const auto beyond = [&](const FilmFrame& end, double step) {
    std::vector<ExposedReading> places;
    FilmExtent place = middle_of_frame(end);
    for (;;) {
      place.along_begin_mm += step;
      place.along_end_mm += step;
      const bool on_film =
          place.along_begin_mm > film.along_begin_mm && place.along_end_mm < film.along_end_mm;
      const auto area = on_film ? read_exposed_area(reading.density, place) : std::nullopt;
      if (!area) {
        return places;
      }
      places.push_back(reading_of(*area, film, strip, doubt, reading.clear->visual));
    }
  };
  unseen.before_frames = beyond(first, -pitch);
  unseen.after_frames = beyond(film.frames.back(), pitch);
  return unseen;
}

/// The frames' middles as even areas.
std::vector<std::optional<ExposedReading>> even_frames(const StripReading& reading,
                                                       const FilmStrip& film, int strip,
                                                       const DoubtSources& doubt) {
  std::vector<std::optional<ExposedReading>> frames;
  for (const FilmFrame& frame : film.frames) {
    const auto area = read_exposed_area(reading.density, middle_of_frame(frame));
    frames.push_back(
        area ? std::optional(reading_of(*area, film, strip, doubt, reading.clear->visual))
             : std::nullopt);
  }
  return frames;
}

std::vector<ExposedReading> wedge_readings(const PrintedWedge& wedge, const StripReading& reading,
                                           const FilmStrip& film, int strip,
                                           const DoubtSources& doubt) {
  std::vector<ExposedReading> steps;
  for (const PrintedStep& step : wedge.steps) {
    steps.push_back(reading_of(step.area, film, strip, doubt, reading.clear->visual));
    steps.back().target_index = step.reference_index;
  }
  return steps;
}

}  // namespace

ScanExposures read_exposures(const ScanInfo& info, const FilmLayout& layout,
                             const std::vector<StripReading>& readings,
                             const ExposureTarget& target) {
  ScanExposures exposures;
  exposures.strips.resize(readings.size());
  for (std::size_t s = 0; s < readings.size(); ++s) {
    const StripReading& reading = readings[s];
    const FilmStrip& film = layout.strips[s];
    if (!reading.clear) {
      exposures.frames.resize(exposures.frames.size() + film.frames.size());
      continue;
    }
    const int strip = static_cast<int>(s) + 1;
    const DoubtSources doubt = doubt_of(info, reading);
    if (target.bracket) {
      exposures.strips[s] = unseen_frames(reading, film, strip, doubt);
    }
    exposures.strips[s].net_doubts = net_doubts_of(doubt, reading.clear->visual);
    const auto frames = even_frames(reading, film, strip, doubt);
    exposures.frames.insert(exposures.frames.end(), frames.begin(), frames.end());
    if (target.wedge && (!exposures.wedge || exposures.wedge->empty())) {
      const auto wedge = find_printed_wedge(reading, film, target.wedge->reference);
      if (!wedge) {
        exposures.wedge = wedge.why();
        continue;
      }
      exposures.wedge = wedge_readings(*wedge, reading, film, strip, doubt);
      exposures.wedge_place_doubtful = wedge->place_doubtful;
    }
  }
  for (const MarkedArea& marked : target.areas) {
    exposures.marked_areas.push_back(marked_area(info, layout, readings, marked));
    exposures.marked_areas.back().target_index =
        static_cast<int>(exposures.marked_areas.size()) - 1;
  }
  return exposures;
}

}  // namespace fogline
