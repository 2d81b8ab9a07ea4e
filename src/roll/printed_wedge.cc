#include "roll/printed_wedge.h"

#include <fogline/film/find_wedges.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// Clear film is drawn as this much light, so that what is a little brighter still fits.
constexpr double clear_light = 0.8;
/// Kept from the holes and from the film's edges, mm.
constexpr double edge_margin_mm = 0.5;
/// Beyond the most exposed step: less than this part of its net density is film that the wedge's
/// frame or the gate kept dark.
constexpr double dark_part = 0.5;
/// Further steps that the shoulder drowns differ from their neighbour by less than this.
constexpr double drowned_density = 0.06;

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
    return {first.along_begin_mm + slot * pitch.along_mm, first.along_end_mm + slot * pitch.along_mm,
            first.across_begin_mm + slot * pitch.across_mm,
            first.across_end_mm + slot * pitch.across_mm};
  }
};

FilmExtent extent_of(const WedgeStep& step, const DensityStrip& density, int first_row) {
  FilmExtent extent{INFINITY, -INFINITY, INFINITY, -INFINITY};
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
  return {first,
          {0.5 * (last.along_begin_mm + last.along_end_mm - first.along_begin_mm -
                  first.along_end_mm) /
               slots,
           0.5 * (last.across_begin_mm + last.across_end_mm - first.across_begin_mm -
                  first.across_end_mm) /
               slots}};
}

/// Steps beyond the most exposed one found that the shoulder drowns, up to where the film is dark
/// again; nothing where no such end is in sight.
std::optional<int> drowned_steps(const DensityStrip& density, const SlotPlace& place, int last_slot,
                                 double base, int most) {
  const auto last = read_exposed_area(density, place.at(last_slot));
  if (!last) {
    return std::nullopt;
  }
  double before = last->density;
  for (int beyond = 0; beyond <= most; ++beyond) {
    const auto next = read_exposed_area(density, place.at(last_slot + beyond + 1));
    if (!next) {
      return std::nullopt;
    }
    if (next->density - base < dark_part * (last->density - base)) {
      return beyond;
    }
    if (std::abs(next->density - before) > drowned_density) {
      return std::nullopt;
    }
    before = next->density;
  }
  return std::nullopt;
}

}  // namespace

PrintedWedge find_printed_wedge(const StripReading& reading, const FilmStrip& film,
                                const WedgeReference& reference) {
  PrintedWedge printed;
  const double base = reading.clear->visual;
  const FilmPicture picture = film_picture(reading.density, film, base);
  if (picture.grid.light.empty()) {
    printed.failure = "too little film is in sight";
    return printed;
  }
  const WedgeSearch search = find_wedges(picture.grid);
  if (search.wedges.empty()) {
    printed.failure =
        "no printed wedge is in sight: no row of five or more even areas of one size that darken "
        "from one to the next";
    return printed;
  }
  const FoundWedge& found = search.wedges.front();
  const SlotPlace place = slot_place(found, reading.density, picture.first_row);
  const int steps = static_cast<int>(reference.steps.size());
  const int seen = found.steps.back().slot + 1;
  if (seen > steps) {
    printed.failure = "shows " + std::to_string(seen) + " steps, but " + reference.name + " has " +
                      std::to_string(steps);
    return printed;
  }
  const std::optional<int> drowned =
      drowned_steps(reading.density, place, seen - 1, base, steps - seen);
  printed.place_doubtful = seen < steps && (!drowned || (*drowned > 0 && seen + *drowned < steps));
  const int last_slot = seen - 1 + drowned.value_or(0);
  // The least exposed steps are as clear as the film around them: their places are known.
  for (int index = steps - 1; index >= 0; --index) {
    const FilmExtent extent = place.at(last_slot - index);
    const bool on_film = extent.along_begin_mm > film.along_begin_mm &&
                         extent.along_end_mm < film.along_end_mm;
    const auto area = on_film ? read_exposed_area(reading.density, extent) : std::nullopt;
    if (area) {
      printed.steps.push_back({*area, index});
    }
  }
  return printed;
}

}  // namespace fogline
