#include "roll/target/scan_target.h"

#include "numerics/robust.h"
#include "roll/reading/place_on_scan.h"
#include "roll/reading/scan_doubt.h"
#include "roll/target/printed_wedge.h"

#include <fogline/base/error.h>
#include <fogline/sensitometry/read_exposed_area.h>

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

void add_marked_area(ScanMeasurement& scan, const ScanWork& work, const MarkedArea& marked,
                     int index) {
  for (std::size_t s = 0; s < work.readings.size(); ++s) {
    const StripReading& reading = work.readings[s];
    const FilmStrip& film = work.layout.strips[s];
    const FilmExtent extent = extent_of(marked.box_px, film.map);
    const bool inside =
        extent.along_begin_mm > film.along_begin_mm && extent.along_end_mm < film.along_end_mm &&
        extent.across_begin_mm > film.across_begin_mm && extent.across_end_mm < film.across_end_mm;
    if (!inside || !reading.clear) {
      continue;
    }
    if (const auto area = read_exposed_area(reading.density, extent)) {
      scan.marked_areas.push_back(reading_of(*area, film, static_cast<int>(s) + 1,
                                             doubt_of(scan.info, reading), reading.clear->visual));
      scan.marked_areas.back().target_index = index;
      return;
    }
  }
  throw FileError(scan.info.file, Refusal::area_off_film, {marked.stops});
}

/// Film one and more pitches beyond the strip's end frames: where the least exposed frames of a
/// bracket lie unseen.
void add_unseen_frames(StripMeasurement& strip, const StripReading& reading, const FilmStrip& film,
                       const DoubtSources& doubt) {
  if (film.frames.empty()) {
    return;
  }
  constexpr double usual_gap_mm = 2.0;
  std::vector<double> pitches;
  for (std::size_t i = 1; i < film.frames.size(); ++i) {
    pitches.push_back(film.frames[i].along_begin_mm - film.frames[i - 1].along_begin_mm);
  }
  const FilmFrame& first = film.frames.front();
  const double pitch =
      pitches.empty() ? first.along_end_mm - first.along_begin_mm + usual_gap_mm : median(pitches);
  const auto add = [&](const FilmFrame& end, double step, std::vector<ExposedReading>& unseen) {
    FilmExtent place = middle_of_frame(end);
    for (;;) {
      place.along_begin_mm += step;
      place.along_end_mm += step;
      const bool on_film =
          place.along_begin_mm > film.along_begin_mm && place.along_end_mm < film.along_end_mm;
      const auto area = on_film ? read_exposed_area(reading.density, place) : std::nullopt;
      if (!area) {
        return;
      }
      unseen.push_back(reading_of(*area, film, strip.number, doubt, reading.clear->visual));
    }
  };
  add(first, -pitch, strip.before_frames);
  add(film.frames.back(), pitch, strip.after_frames);
}

}  // namespace

void add_target_readings(ScanMeasurement& scan, const ScanWork& work,
                         const ExposureTarget& target) {
  for (std::size_t s = 0; s < work.readings.size(); ++s) {
    const StripReading& reading = work.readings[s];
    if (!reading.clear) {
      continue;
    }
    const FilmStrip& film = work.layout.strips[s];
    const int strip = static_cast<int>(s) + 1;
    const double base = reading.clear->visual;
    const DoubtSources doubt = doubt_of(scan.info, reading);
    scan.strips[s].net_doubts = net_doubts_of(doubt, base);
    std::size_t next = 0;
    for (FrameMeasurement& frame : scan.frames) {
      if (frame.strip == strip && next < film.frames.size()) {
        const auto area = read_exposed_area(reading.density, middle_of_frame(film.frames[next++]));
        if (area) {
          frame.even = reading_of(*area, film, strip, doubt, base);
        }
      }
    }
    if (target.bracket) {
      add_unseen_frames(scan.strips[s], reading, film, doubt);
    }
    if (target.wedge && (!scan.exposed_wedge || scan.exposed_wedge->empty())) {
      const auto wedge = find_printed_wedge(reading, film, target.wedge->reference);
      if (!wedge) {
        scan.exposed_wedge = wedge.why();
        continue;
      }
      std::vector<ExposedReading> steps;
      for (const PrintedStep& step : wedge->steps) {
        steps.push_back(reading_of(step.area, film, strip, doubt, base));
        steps.back().target_index = step.reference_index;
      }
      scan.exposed_wedge = std::move(steps);
      scan.wedge_place_doubtful = wedge->place_doubtful;
    }
  }
  int index = 0;
  for (const MarkedArea& marked : target.areas) {
    add_marked_area(scan, work, marked, index++);
  }
}

}  // namespace fogline
