#include "roll/target/printed_wedge.h"

#include "film/wedges/find_wedges.h"
#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fogline {

namespace {

/// Clear film is drawn as this much light, so that what is a little brighter still fits.
constexpr double clear_light = 0.8;
/// Kept from the holes and from the film's edges, mm.
constexpr double edge_margin_mm = 0.5;
/// Beyond the most exposed step: less than this part of its net density is film that the wedge's
/// frame or the gate kept dark.
constexpr double dark_part = 0.5;
/// What is thinner than this above base beyond the least exposed step is clear film beside the row.
constexpr double clear_density = 0.03;

/// The strip's picture area as light, as if clear film were the lamp.
struct FilmPicture {
  ScanGrid grid;
  int first_row = 0;
};

FilmPicture film_picture(const DensityStrip& density, const FilmStrip& film, double base) {
  double begin = film.across_begin_mm + edge_margin_mm;
  double end = film.across_end_mm - edge_margin_mm;
  if (film.format == FilmFormat::f135) {
    const double rows = film_135::row_across_mm - film_135::hole_across_mm / 2.0 - edge_margin_mm;
    begin = std::max(begin, -rows);
    end = std::min(end, rows);
  }
  FilmPicture picture;
  picture.first_row = density.row(begin);
  const int rows = std::max(0, density.row(end) - picture.first_row);
  const int columns = density.visual.width();
  picture.grid.light = LightRaster(columns, rows, 1);
  picture.grid.clipped = Raster<std::uint8_t>(columns, rows, 1);
  for (int y = 0; y < rows; ++y) {
    for (int x = 0; x < columns; ++x) {
      const float value = density.visual.at(x, y + picture.first_row);
      const double light =
          std::isnan(value) ? 0.0 : clear_light * std::pow(10.0, base - static_cast<double>(value));
      picture.grid.light.set_light(x, y, 0, static_cast<float>(light));
    }
  }
  return picture;
}

/// Where the step of a slot lies: its extent, and how far the next one is.
struct SlotPlace {
  FilmExtent first;
  PointMm pitch;

  [[nodiscard]] FilmExtent at(int slot) const {
    return {first.along_begin_mm + slot * pitch.along_mm,
            first.along_end_mm + slot * pitch.along_mm,
            first.across_begin_mm + slot * pitch.across_mm,
            first.across_end_mm + slot * pitch.across_mm};
  }
};

FilmExtent extent_of(const WedgeStep& step, const DensityStrip& density, int first_row) {
  constexpr double far = std::numeric_limits<double>::infinity();
  FilmExtent extent{far, -far, far, -far};
  for (const PointPx& corner : step.corners_px) {
    const double along = density.extent.along_begin_mm + corner.x / density.pixels_per_mm;
    const double across =
        density.extent.across_begin_mm + (corner.y + first_row) / density.pixels_per_mm;
    extent.along_begin_mm = std::min(extent.along_begin_mm, along);
    extent.along_end_mm = std::max(extent.along_end_mm, along);
    extent.across_begin_mm = std::min(extent.across_begin_mm, across);
    extent.across_end_mm = std::max(extent.across_end_mm, across);
  }
  return extent;
}

SlotPlace slot_place(const FoundWedge& wedge, const DensityStrip& density, int first_row) {
  const FilmExtent first = extent_of(wedge.steps.front(), density, first_row);
  const FilmExtent last = extent_of(wedge.steps.back(), density, first_row);
  const int slots = wedge.steps.back().slot - wedge.steps.front().slot;
  return {
      first,
      {0.5 * (last.along_begin_mm + last.along_end_mm - first.along_begin_mm - first.along_end_mm) /
           slots,
       0.5 *
           (last.across_begin_mm + last.across_end_mm - first.across_begin_mm -
            first.across_end_mm) /
           slots}};
}

double net_at(const DensityStrip& density, const FilmExtent& place, double base) {
  // Stands for "no light left".
  constexpr double darkest = 5.0;
  std::vector<double> values;
  for (int y = density.row(place.across_begin_mm); y < density.row(place.across_end_mm); ++y) {
    for (int x = density.column(place.along_begin_mm); x < density.column(place.along_end_mm);
         ++x) {
      const float value = density.visual.at(x, y);
      if (!std::isnan(value)) {
        values.push_back(std::min(darkest, static_cast<double>(value)));
      }
    }
  }
  return values.empty() ? NAN : median(values) - base;
}

/// Steps beyond the most exposed one found that the shoulder or the scan's noise drowns: up to
/// where the film is dark again, which must be a whole number of steps away. Nothing where no such
/// end is in sight.
std::optional<int> drowned_steps(const DensityStrip& density, const SlotPlace& place, int last_slot,
                                 double base, int most) {
  constexpr int parts = 20;  // of a pitch
  constexpr double slice = 0.08;
  constexpr double off_whole = 0.15;
  FilmExtent thin = place.at(last_slot);
  const double dense = net_at(density, thin, base);
  // A slice of the step, square to the row.
  const bool along = std::abs(place.pitch.along_mm) > std::abs(place.pitch.across_mm);
  double& begin = along ? thin.along_begin_mm : thin.across_begin_mm;
  double& end = along ? thin.along_end_mm : thin.across_end_mm;
  const double pitch = along ? place.pitch.along_mm : place.pitch.across_mm;
  const double middle = 0.5 * (begin + end);
  for (int i = parts / 4; i <= (most + 2) * parts; ++i) {
    const double at = middle + pitch * i / parts;
    begin = at - slice * std::abs(pitch);
    end = at + slice * std::abs(pitch);
    const double net = net_at(density, thin, base);
    if (std::isnan(net)) {
      return std::nullopt;
    }
    if (net < dark_part * dense) {
      const double steps = static_cast<double>(i) / parts - 0.5;
      const double whole = std::round(steps);
      const bool fits = std::abs(steps - whole) < off_whole && whole >= 0.0 && whole <= most;
      return fits ? std::optional(static_cast<int>(whole)) : std::nullopt;
    }
  }
  return std::nullopt;
}

}  // namespace

Known<PrintedWedge> find_printed_wedge(const StripReading& reading, const FilmStrip& film,
                                       const WedgeReference& reference) {
  const double base = reading.clear->visual;
  const FilmPicture picture = film_picture(reading.density, film, base);
  if (picture.grid.light.empty()) {
    return Unknown::no_film_for_wedge;
  }
  const WedgeSearch search = find_wedges(picture.grid);
  if (search.wedges.empty()) {
    return Unknown::no_printed_wedge;
  }
  const FoundWedge& found = search.wedges.front();
  const SlotPlace place = slot_place(found, reading.density, picture.first_row);
  const int steps = static_cast<int>(reference.steps.size());
  // Where the film is dark again, the wedge ended: told from there, not from its light end, where
  // clear film looks like one more step.
  const int last_found = found.steps.back().slot;
  const std::optional<int> drowned =
      drowned_steps(reading.density, place, last_found, base, steps - 1);
  const int last_slot = last_found + drowned.value_or(0);
  const int first_slot = last_slot - steps + 1;
  for (int slot = 0; slot < first_slot; ++slot) {
    if (!(net_at(reading.density, place.at(slot), base) < clear_density)) {
      return fact_of(Unknown::printed_steps_too_many,
                     {static_cast<double>(last_slot + 1 - slot), static_cast<double>(steps)},
                     {reference.name});
    }
  }
  PrintedWedge printed;
  printed.place_doubtful = !drowned && last_found + 1 != steps;
  // The least exposed steps are as clear as the film around them: their places are known.
  for (int index = steps - 1; index >= 0; --index) {
    const FilmExtent extent = place.at(last_slot - index);
    const bool on_film =
        extent.along_begin_mm > film.along_begin_mm && extent.along_end_mm < film.along_end_mm;
    const auto area = on_film ? read_exposed_area(reading.density, extent) : std::nullopt;
    if (area) {
      printed.steps.push_back({*area, index});
    }
  }
  return printed;
}

}  // namespace fogline
