#include "roll/reading/strip_numbers.h"

#include "density/callier.h"
#include "numerics/robust.h"
#include "roll/reading/frame_place.h"
#include "roll/reading/outlines.h"
#include "roll/reading/physical_limits.h"
#include "roll/reading/scan_doubt.h"
#include "sensitometry/read_tone.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// Strokes of the edge print are narrow: blur and pixels take up to this share of their net density
/// (95 %; the bench's own strokes at 10 pixels a millimetre).
constexpr double stroke_share_95 = 0.15;

BaseFog base_fog_of(const ClearFilm& clear, const DoubtSources& doubt, double silver, int channels,
                    bool scale_known) {
  BaseFog base;
  base.visual = quantity_of_density(doubt, clear.visual, silver);
  if (channels == most_channels) {
    PerChannel<Quantity> each;
    for (std::size_t c = 0; c < each.size(); ++c) {
      each[c] = quantity_of_density(doubt, clear.density[c], silver);
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

/// A density that may lie beyond what the scan tells: then its end, as a lower bound.
Quantity bounded_quantity(const DoubtSources& doubt, double density, double base) {
  const double reach = density_reach(doubt);
  const double told = std::min(density, reach);
  Quantity quantity = quantity_of_density(doubt, told, told - base);
  quantity.at_least = density > reach;
  return quantity;
}

}  // namespace

StripNumbers strip_numbers(const ScanInfo& info, const FilmStrip& film, const StripReading& reading,
                           int number, int first_frame, bool densities) {
  StripNumbers numbers;
  StripMeasurement& strip = numbers.strip;
  strip.number = number;
  strip.format = film.format;
  strip.rotation_deg = film.map.rotation_deg();
  strip.perforations = static_cast<int>(film.perforations.size());
  const DoubtSources doubt = doubt_of(info, reading);
  const bool readable = densities && reading.clear.has_value();
  strip.base_fog = densities ? Unknown::no_zero_for_base : Unknown::no_densities;
  if (readable && reading.zero != ZeroSource::none) {
    strip.base_fog = base_fog_of(*reading.clear, doubt_of_clear_film(info, reading),
                                 reading.clear_silver.greatest, reading.colours ? info.channels : 1,
                                 film.scale_known);
  }
  const double limit = density_reach(doubt);
  int frame_number = first_frame;
  for (const FilmFrame& frame : film.frames) {
    FrameMeasurement measured = frame_place(frame, film.map, frame_number++, number);
    FrameSketch sketch;
    const std::optional<FilmExtent> area = tone_area(frame);
    if (!readable) {
      measured.tone = unread_tone(Unknown::no_densities);
    } else if (!area) {
      measured.tone = unread_tone(Unknown::frame_hidden);
    } else {
      measured.tone = read_tone(reading.density, *area, base_below_silver(reading), doubt, limit);
      if (measured.tone.shadow &&
          lies_below_clear_film(info, reading, measured.tone.shadow->value)) {
        measured.tone = unread_tone(Unknown::frame_below_clear);
      }
      sketch = sketch_of(reading.density, *area);
    }
    numbers.frames.push_back(std::move(measured));
    numbers.sketches.push_back(std::move(sketch));
  }
  numbers.outlines = strip_outlines(film, reading, number, first_frame);
  strip.box_px = bounding_box(numbers.outlines.front(), info);
  return numbers;
}

Known<BaseFog> combined_base_fog(const std::vector<StripNumbers>& strips) {
  std::vector<double> visuals;
  const BaseFog* widest = nullptr;
  double area = 0.0;
  for (const StripNumbers& numbers : strips) {
    const StripMeasurement& strip = numbers.strip;
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

FactoryDensities factory_densities(const ScanInfo& info,
                                   const std::vector<StripReading>& readings) {
  FactoryDensities factory{Unknown::no_edge_print, Unknown::no_leader};
  std::vector<double> prints;
  const StripReading* print_strip = nullptr;
  for (const StripReading& reading : readings) {
    if (!reading.clear) {
      continue;
    }
    if (reading.edge_print) {
      prints.push_back(reading.edge_print->density);
      print_strip = print_strip == nullptr ? &reading : print_strip;
    }
    if (reading.leader && !factory.leader) {
      factory.leader =
          bounded_quantity(doubt_of(info, reading), reading.leader->density, reading.clear->visual);
    }
  }
  if (print_strip != nullptr) {
    const double base = print_strip->clear->visual;
    Quantity print = bounded_quantity(doubt_of(info, *print_strip), median(prints), base);
    print.u95 = std::hypot(print.u95, stroke_share_95 * (print.value - base));
    factory.edge_print = print;
  }
  return factory;
}

}  // namespace fogline
