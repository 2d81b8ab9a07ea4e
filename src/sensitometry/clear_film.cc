#include "sensitometry/clear_film.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace fogline {

namespace {

/// Distances kept from holes and from frames, mm.
constexpr double hole_margin_mm = 0.5;
constexpr double frame_margin_mm = 0.4;
/// In a holder's window: margin and reach of the rim round a frame, mm.
constexpr double rim_margin_mm = 0.25;
constexpr double rim_mm = 0.65;
/// Narrowest patch worth reading, mm.
constexpr double least_side_mm = 0.25;
/// Length of the pieces in which long stretches are read, mm.
constexpr double piece_mm = 4.0;
/// How much denser than the clear share of patches a patch may read and still be clear.
constexpr double clear_band = 0.03;

bool is_patch(const FilmExtent& area) {
  return area.along_end_mm - area.along_begin_mm >= least_side_mm &&
         area.across_end_mm - area.across_begin_mm >= least_side_mm;
}

void add_patch(std::vector<ClearPatch>& patches, const FilmStrip& film, FilmExtent area,
               BaseFogSource source, double margin_mm = frame_margin_mm) {
  area.along_begin_mm = std::max(area.along_begin_mm, film.along_begin_mm + margin_mm);
  area.along_end_mm = std::min(area.along_end_mm, film.along_end_mm - margin_mm);
  area.across_begin_mm = std::max(area.across_begin_mm, film.across_begin_mm + margin_mm);
  area.across_end_mm = std::min(area.across_end_mm, film.across_end_mm - margin_mm);
  const bool fogged =
      std::any_of(film.leaders.begin(), film.leaders.end(), [&](const FilmExtent& leader) {
        return area.along_begin_mm < leader.along_end_mm + piece_mm &&
               area.along_end_mm > leader.along_begin_mm - piece_mm;
      });
  if (is_patch(area) && !fogged) {
    patches.push_back({area, source});
  }
}

/// Between two holes of a row.
void add_bridges(std::vector<ClearPatch>& patches, const FilmStrip& film) {
  const double half_across = film_135::hole_across_mm / 2.0 - hole_margin_mm;
  const double half_along = (film_135::pitch_mm - film_135::hole_along_mm) / 2.0 - hole_margin_mm;
  for (const Perforation& hole : film.perforations) {
    const double centre = hole.film.along_mm + film_135::pitch_mm / 2.0;
    add_patch(patches, film,
              {centre - half_along, centre + half_along, hole.film.across_mm - half_across,
               hole.film.across_mm + half_across},
              BaseFogSource::rebate);
  }
}

/// Gaps between frames, over the frames' height.
void add_gaps(std::vector<ClearPatch>& patches, const FilmStrip& film) {
  for (std::size_t i = 1; i < film.frames.size(); ++i) {
    const FilmFrame& before = film.frames[i - 1];
    const FilmFrame& after = film.frames[i];
    if (before.inferred || after.inferred) {
      continue;
    }
    const double begin = before.along_end_mm + frame_margin_mm;
    const double end = after.along_begin_mm - frame_margin_mm;
    for (double t = before.across_begin_mm + 1.0; t + piece_mm < before.across_end_mm;
         t += piece_mm) {
      add_patch(patches, film, {begin, end, t, t + piece_mm}, BaseFogSource::between_frames);
    }
  }
}

/// Blank frames, clear of their borders.
void add_blanks(std::vector<ClearPatch>& patches, const FilmStrip& film) {
  for (const FilmFrame& frame : film.frames) {
    if (!frame.inferred) {
      continue;
    }
    for (double s = frame.along_begin_mm + piece_mm; s + 2.0 * piece_mm < frame.along_end_mm;
         s += piece_mm) {
      for (double t = frame.across_begin_mm + 1.0; t + piece_mm < frame.across_end_mm;
           t += piece_mm) {
        add_patch(patches, film, {s, s + piece_mm, t, t + piece_mm},
                  BaseFogSource::unexposed_frame);
      }
    }
  }
}

/// Margins round the frames of film without perforations in sight. A holder may show no more than a
/// rim of them.
void add_margins(std::vector<ClearPatch>& patches, const FilmStrip& film) {
  for (const FilmFrame& frame : film.frames) {
    if (frame.inferred) {
      continue;
    }
    for (double s = frame.along_begin_mm; s + piece_mm < frame.along_end_mm; s += piece_mm) {
      add_patch(patches, film,
                {s, s + piece_mm, film.across_begin_mm, frame.across_begin_mm - rim_margin_mm},
                BaseFogSource::rebate, rim_margin_mm);
      add_patch(patches, film,
                {s, s + piece_mm, frame.across_end_mm + rim_margin_mm, film.across_end_mm},
                BaseFogSource::rebate, rim_margin_mm);
    }
    for (double t = frame.across_begin_mm + 1.0; t + piece_mm < frame.across_end_mm;
         t += piece_mm) {
      add_patch(
          patches, film,
          {frame.along_begin_mm - rim_mm, frame.along_begin_mm - rim_margin_mm, t, t + piece_mm},
          BaseFogSource::between_frames, rim_margin_mm);
      add_patch(patches, film,
                {frame.along_end_mm + rim_margin_mm, frame.along_end_mm + rim_mm, t, t + piece_mm},
                BaseFogSource::between_frames, rim_margin_mm);
    }
  }
}

struct PatchReading {
  PerChannel<double> density{};
  double visual = 0.0;
  ClearPatch patch;
};

std::optional<PatchReading> read_patch(const DensityStrip& density, const ClearPatch& patch) {
  PatchReading reading;
  reading.patch = patch;
  const int x0 = density.column(patch.area.along_begin_mm);
  const int x1 = density.column(patch.area.along_end_mm);
  const int y0 = density.row(patch.area.across_begin_mm);
  const int y1 = density.row(patch.area.across_end_mm);
  const auto middle = [&](const Raster<float>& raster, int channel) {
    std::vector<double> values;
    for (int y = y0; y <= y1; ++y) {
      for (int x = x0; x <= x1; ++x) {
        if (std::isfinite(raster.at(x, y, channel))) {
          values.push_back(static_cast<double>(raster.at(x, y, channel)));
        }
      }
    }
    return median(values);
  };
  reading.visual = middle(density.visual, 0);
  for (int c = 0; c < density.channels.channels(); ++c) {
    reading.density[static_cast<std::size_t>(c)] = middle(density.channels, c);
  }
  return std::isnan(reading.visual) ? std::nullopt : std::optional(reading);
}

double area_of(const FilmExtent& area) {
  return (area.along_end_mm - area.along_begin_mm) * (area.across_end_mm - area.across_begin_mm);
}

}  // namespace

std::vector<ClearPatch> clear_patches(const FilmStrip& film) {
  std::vector<ClearPatch> patches;
  add_bridges(patches, film);
  add_gaps(patches, film);
  add_blanks(patches, film);
  if (film.perforations.empty()) {
    add_margins(patches, film);
  }
  return patches;
}

std::optional<ClearFilm> read_clear_film(const DensityStrip& density,
                                         const std::vector<ClearPatch>& patches,
                                         double clear_share) {
  std::vector<PatchReading> readings;
  std::vector<double> visuals;
  for (const ClearPatch& patch : patches) {
    if (const std::optional<PatchReading> reading = read_patch(density, patch)) {
      readings.push_back(*reading);
      visuals.push_back(reading->visual);
    }
  }
  if (readings.empty()) {
    return std::nullopt;
  }
  const double clear = percentile(visuals, clear_share);
  ClearFilm film;
  std::map<BaseFogSource, double> areas;
  std::vector<double> used_visuals;
  PerChannel<std::vector<double>> used_channels;
  for (const PatchReading& reading : readings) {
    if (std::abs(reading.visual - clear) > clear_band) {
      continue;
    }
    film.used.push_back(reading.patch);
    film.area_mm2 += area_of(reading.patch.area);
    areas[reading.patch.source] += area_of(reading.patch.area);
    used_visuals.push_back(reading.visual);
    for (std::size_t c = 0; c < used_channels.size(); ++c) {
      used_channels[c].push_back(reading.density[c]);
    }
  }
  const LocationScale visual = robust_location(used_visuals);
  film.visual = visual.location;
  film.scatter = visual.scale;
  for (std::size_t c = 0; c < used_channels.size(); ++c) {
    film.density[c] = median(used_channels[c]);
  }
  film.source = std::max_element(areas.begin(), areas.end(), [](const auto& a, const auto& b) {
                  return a.second < b.second;
                })->first;
  return film;
}

}  // namespace fogline
