#include "roll/reading/outlines.h"

#include "sensitometry/read_tone.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

constexpr double side_step_mm = 20.0;

FilmExtent hole_extent(const Perforation& hole, const FilmStrip& film) {
  const double inner = film_135::row_across_mm - film_135::hole_across_mm / 2.0;
  const double in_sight = hole.row < 0 ? -film.across_begin_mm : film.across_end_mm;
  const double outer = std::max(inner, std::min(inner + film_135::hole_across_mm, in_sight));
  FilmExtent extent{hole.film.along_mm - film_135::hole_along_mm / 2.0,
                    hole.film.along_mm + film_135::hole_along_mm / 2.0,
                    hole.row < 0 ? -outer : inner, hole.row < 0 ? -inner : outer};
  extent.along_begin_mm = std::max(extent.along_begin_mm, film.along_begin_mm);
  extent.along_end_mm = std::min(extent.along_end_mm, film.along_end_mm);
  return extent;
}

}  // namespace

Outline outline_of(const FilmMap& map, const FilmExtent& area, OutlineKind kind, int strip,
                   int number, bool partial) {
  Outline outline;
  outline.kind = kind;
  outline.strip = strip;
  outline.number = number;
  outline.partial = partial;
  const double length = area.along_end_mm - area.along_begin_mm;
  const int steps = std::max(1, static_cast<int>(std::ceil(length / side_step_mm)));
  for (int i = 0; i <= steps; ++i) {
    outline.points.push_back(
        map.scan_from_film({area.along_begin_mm + length * i / steps, area.across_begin_mm}));
  }
  for (int i = steps; i >= 0; --i) {
    outline.points.push_back(
        map.scan_from_film({area.along_begin_mm + length * i / steps, area.across_end_mm}));
  }
  return outline;
}

std::vector<Outline> strip_outlines(const FilmStrip& film, const StripReading& reading,
                                    int strip_number, int first_frame) {
  std::vector<Outline> outlines;
  const auto add = [&](const FilmExtent& area, OutlineKind kind, int number = 0,
                       bool partial = false) {
    outlines.push_back(outline_of(film.map, area, kind, strip_number, number, partial));
  };
  add({film.along_begin_mm, film.along_end_mm, film.across_begin_mm, film.across_end_mm},
      OutlineKind::strip);
  for (const Perforation& hole : film.perforations) {
    add(hole_extent(hole, film), OutlineKind::perforation, 0, !hole.whole);
  }
  int number = first_frame;
  for (const FilmFrame& frame : film.frames) {
    add({frame.along_begin_mm, frame.along_end_mm, frame.across_begin_mm, frame.across_end_mm},
        OutlineKind::frame, number, frame.inferred || frame.cut);
    if (const std::optional<FilmExtent> tone = tone_area(frame)) {
      add(*tone, OutlineKind::tone_area, number, frame.cut);
    }
    ++number;
  }
  if (reading.clear) {
    for (const ClearPatch& patch : reading.clear->used) {
      add(patch.area, OutlineKind::clear_film);
    }
  }
  if (reading.zero == ZeroSource::clear_gate) {
    for (const FilmExtent& bare : film.bare_light) {
      add(bare, OutlineKind::light_path);
    }
  }
  if (reading.edge_print) {
    add(reading.edge_print->place, OutlineKind::edge_print);
  }
  if (reading.leader) {
    add(reading.leader->place, OutlineKind::leader);
  }
  return outlines;
}

}  // namespace fogline
