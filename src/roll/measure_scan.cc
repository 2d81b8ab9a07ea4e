#include "density/callier.h"
#include "numerics/robust.h"
#include "roll/reading/frame_place.h"
#include "roll/reading/outlines.h"
#include "roll/reading/read_scan.h"
#include "roll/reading/scan_budget.h"
#include "roll/reading/scan_calibration.h"
#include "roll/reading/scan_doubt.h"
#include "roll/reading/scan_fitness.h"
#include "roll/reading/scan_marks.h"
#include "roll/reading/scan_picture.h"
#include "roll/reading/scan_tint.h"
#include "roll/target/scan_target.h"
#include "sensitometry/read_tone.h"

#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace fogline {

namespace {

/// Strokes of the edge print are narrow: blur and pixels take up to this share of their net density
/// (95 %; the bench's own strokes at 10 pixels a millimetre).
constexpr double stroke_share_95 = 0.15;

double clipped_pixels_share(const ScanGrid& grid) {
  constexpr int most_bits = 0x70;
  const std::vector<std::uint8_t>& bits = grid.clipped.samples();
  const auto clipped = std::count_if(bits.begin(), bits.end(),
                                     [](std::uint8_t bit) { return (bit & most_bits) != 0; });
  return bits.empty() ? 0.0 : static_cast<double>(clipped) / static_cast<double>(bits.size());
}

BaseFog base_fog_of(const ClearFilm& clear, const DoubtSources& doubt, int channels,
                    bool scale_known) {
  BaseFog base;
  base.visual = quantity_of_density(doubt, clear.visual, usual_fog);
  if (channels == most_channels) {
    PerChannel<Quantity> each;
    for (std::size_t c = 0; c < each.size(); ++c) {
      each[c] = quantity_of_density(doubt, clear.density[c], usual_fog);
    }
    base.channels = each;
  }
  base.source = clear.source;
  if (scale_known) {
    base.area_mm2 = clear.area_mm2;
  }
  return base;
}

BoxPx bounding_box(const Outline& outline, const ScanInfo& info) {
  double left = INFINITY;
  double top = INFINITY;
  double right = -std::numeric_limits<double>::infinity();
  double bottom = -std::numeric_limits<double>::infinity();
  for (const PointPx& point : outline.points) {
    left = std::min(left, point.x);
    top = std::min(top, point.y);
    right = std::max(right, point.x);
    bottom = std::max(bottom, point.y);
  }
  left = std::clamp(left, 0.0, static_cast<double>(info.width_px));
  top = std::clamp(top, 0.0, static_cast<double>(info.height_px));
  right = std::clamp(right, left, static_cast<double>(info.width_px));
  bottom = std::clamp(bottom, top, static_cast<double>(info.height_px));
  return {left, top, right - left, bottom - top};
}

/// True where the scan's densities may be told.
bool tells_densities(const ScanMeasurement& scan) {
  return scan.fitness != Fitness::unfit && scan.fitness != Fitness::marks_only;
}

/// Marks come before tone, which leaves them out, and after the colour of clear film, which reads
/// whole patches.
void add_marks_and_tint(ScanMeasurement& scan, ScanWork& work, const MeasureOptions& options) {
  scan.tint = scan_tint(scan.info, work.layout, work.readings, options.base_tint,
                        tells_densities(scan), *options.knowledge);
  if (scan.fitness == Fitness::unfit) {
    scan.marks_limit = fact_of(Unknown::no_densities);
    return;
  }
  MarkSearch search =
      scan_marks(work.grid, work.layout, work.stray, work.readings, options.knowledge->marks);
  scan.marks = std::move(search.marks);
  scan.marks_limit = search.limits;
  for (std::size_t i = 0; i < work.readings.size(); ++i) {
    leave_out_marks(work.readings[i].density, static_cast<int>(i) + 1, scan.marks,
                    work.layout.strips[i].map);
  }
}

/// Writes one strip's numbers and outlines into the scan.
void add_strip(ScanMeasurement& scan, const ScanWork& work, std::size_t index, int first_frame) {
  const FilmStrip& film = work.layout.strips[index];
  const StripReading& reading = work.readings[index];
  const int strip_number = static_cast<int>(index) + 1;
  const bool densities = tells_densities(scan) && reading.clear.has_value();
  StripMeasurement strip;
  strip.number = strip_number;
  strip.format = film.format;
  strip.rotation_deg = film.map.rotation_deg();
  strip.perforations = static_cast<int>(film.perforations.size());
  const DoubtSources doubt = doubt_of(scan.info, reading);
  strip.base_fog = tells_densities(scan) ? Unknown::no_zero_for_base : Unknown::no_densities;
  if (densities && reading.zero != ZeroSource::none) {
    strip.base_fog = base_fog_of(*reading.clear, doubt_of_clear_film(scan.info, reading),
                                 scan.info.channels, film.scale_known);
  }
  const double limit = density_reach(doubt);
  int number = first_frame;
  for (const FilmFrame& frame : film.frames) {
    FrameMeasurement measured = frame_place(frame, film.map, number++, strip_number);
    const std::optional<FilmExtent> area = tone_area(frame);
    if (!densities) {
      measured.tone = unread_tone(Unknown::no_densities);
    } else if (!area) {
      measured.tone = unread_tone(Unknown::frame_hidden);
    } else {
      measured.tone = read_tone(reading.density, *area, reading.clear->visual, doubt, limit);
      measured.sketch = sketch_of(reading.density, *area);
    }
    scan.frames.push_back(std::move(measured));
  }
  std::vector<Outline> outlines = strip_outlines(film, reading, strip_number, first_frame);
  strip.box_px = bounding_box(outlines.front(), scan.info);
  scan.outlines.insert(scan.outlines.end(), outlines.begin(), outlines.end());
  scan.strips.push_back(strip);
}

/// Base plus fog of a scan: that of its strips, weighted by the area read, their scatter in the
/// doubt.
Known<BaseFog> combined_base_fog(const std::vector<StripMeasurement>& strips) {
  std::vector<double> visuals;
  const BaseFog* widest = nullptr;
  double area = 0.0;
  for (const StripMeasurement& strip : strips) {
    if (strip.base_fog) {
      visuals.push_back(strip.base_fog->visual.value);
      area += strip.base_fog->area_mm2.value_or(0.0);
      if (widest == nullptr ||
          strip.base_fog->area_mm2.value_or(0.0) > widest->area_mm2.value_or(0.0)) {
        widest = &*strip.base_fog;
      }
    }
  }
  if (widest == nullptr) {
    return Unknown::no_zero_for_base;
  }
  BaseFog base = *widest;
  const LocationScale spread = robust_location(visuals);
  base.visual.value = spread.location;
  base.visual.u95 = std::hypot(base.visual.u95, coverage_factor_95 * spread.scale);
  if (base.area_mm2) {
    base.area_mm2 = area;
  }
  return base;
}

/// A density that may lie beyond what the scan tells: then its end, as a lower bound.
Quantity bounded_quantity(const DoubtSources& doubt, double density, double base) {
  const double reach = density_reach(doubt);
  const double told = std::min(density, reach);
  Quantity quantity = quantity_of_density(doubt, told, told - base);
  quantity.at_least = density > reach;
  return quantity;
}

/// Edge print as the median over the strips that show it, leader from the first that does.
void add_factory_exposures(ScanMeasurement& scan, const ScanWork& work) {
  scan.edge_print = Unknown::no_edge_print;
  scan.leader = Unknown::no_leader;
  std::vector<double> prints;
  const StripReading* print_strip = nullptr;
  for (const StripReading& reading : work.readings) {
    if (!reading.clear) {
      continue;
    }
    if (reading.edge_print) {
      prints.push_back(reading.edge_print->density);
      print_strip = print_strip == nullptr ? &reading : print_strip;
    }
    if (reading.leader && !scan.leader) {
      scan.leader = bounded_quantity(doubt_of(scan.info, reading), reading.leader->density,
                                     reading.clear->visual);
    }
  }
  if (print_strip != nullptr) {
    const double base = print_strip->clear->visual;
    Quantity print = bounded_quantity(doubt_of(scan.info, *print_strip), median(prints), base);
    print.u95 = std::hypot(print.u95, stroke_share_95 * (print.value - base));
    scan.edge_print = print;
  }
}

void tell_no_densities(ScanMeasurement& scan) {
  scan.base_fog = Unknown::no_densities;
  scan.edge_print = Unknown::no_densities;
  scan.leader = Unknown::no_densities;
  scan.density_limit = Unknown::no_densities;
}

void add_scan_numbers(ScanMeasurement& scan, const ScanWork& work) {
  for (const StripReading& reading : work.readings) {
    if (reading.zero != ZeroSource::none && scan.zero.source == ZeroSource::none) {
      scan.zero.source = reading.zero;
      scan.zero.unevenness_density = reading.lamp.unevenness_density();
    }
  }
  scan.veiling_glare = Unknown::nothing_opaque;
  if (work.stray.measured()) {
    scan.veiling_glare = Quantity{
        work.stray.share(), coverage_factor_95 * work.stray.share_doubt(), {}, {}, {}, false};
  }
}

}  // namespace

ScanMeasurement measure_scan(ScanSource& source, const MeasureOptions& options, int frame_number,
                             const Progress& progress) {
  if (options.knowledge == nullptr) {
    throw std::invalid_argument("measure_scan needs MeasureOptions::knowledge");
  }
  const ScanScanner scanner(source, options);
  ScanWork work = read_scan(source, options, scanner, progress);
  ScanMeasurement scan;
  scan.info = source.info();
  scan.cautions = scan.info.cautions;
  scan.pixels_per_mm = known_or(work.layout.pixels_per_mm, Unknown::no_scale);
  scan.picture = scan_picture(work.grid);
  add_scan_numbers(scan, work);
  add_calibration(scan, scanner, work);
  judge_fitness(scan, work.layout, work.readings, clipped_pixels_share(work.grid),
                options.knowledge->devices);
  add_marks_and_tint(scan, work, options);
  for (std::size_t i = 0; i < work.layout.strips.size(); ++i) {
    const int first = frame_number + static_cast<int>(scan.frames.size());
    add_strip(scan, work, i, first);
  }
  if (tells_densities(scan)) {
    scan.base_fog = combined_base_fog(scan.strips);
    add_factory_exposures(scan, work);
    const auto read = std::find_if(work.readings.begin(), work.readings.end(),
                                   [](const StripReading& r) { return r.clear.has_value(); });
    scan.density_limit = density_limit(doubt_of(scan.info, *read));
  } else {
    tell_no_densities(scan);
  }
  if (options.target != nullptr && tells_densities(scan)) {
    add_target_readings(scan, work, *options.target);
  }
  add_budgets(scan, work);
  return scan;
}

}  // namespace fogline
