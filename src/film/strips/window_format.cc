#include "film/strips/window_format.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {

namespace {

/// Resolution tags outside this can't be a scan of film, pixels per mm: what editors and cameras
/// write for want of better (72, 96 pixels an inch) lies below.
constexpr double least_tag = 3.9;
constexpr double greatest_tag = 400.0;
/// Tolerance of a film's width on bare light, share: tags err by a percent, blur adds a pixel.
constexpr double width_tolerance = 0.025;
/// Sheet film, mm (ISO 1012; from memory): about 100 x 125, 88 x 118, 128 x 178.
constexpr std::array<std::array<double, 2>, 3> sheets_mm{
    {{100.0, 125.4}, {88.0, 118.0}, {128.0, 178.0}}};
/// Widths of film without a name here, mm: 127 and 110 film (from memory).
constexpr std::array<double, 2> other_widths_mm{46.0, 16.0};
/// Widths of holder windows that show 135 film, and 120 film, mm.
constexpr std::array<double, 2> window_135_mm{21.0, 36.5};
constexpr std::array<double, 2> window_120_mm{50.0, 63.5};
/// Widths of windows that show a sheet, mm: the largest sheet is about 203 x 254.
constexpr std::array<double, 2> window_sheet_mm{80.0, 205.0};

bool near_mm(double value, double wanted) {
  return std::abs(value - wanted) < width_tolerance * wanted;
}

FilmFormat format_on_bare_light(double length_mm, double width_mm) {
  if (near_mm(width_mm, film_120::width_mm)) {
    return FilmFormat::f120;
  }
  for (const auto& sheet : sheets_mm) {
    if (near_mm(width_mm, sheet[0]) && near_mm(length_mm, sheet[1])) {
      return FilmFormat::sheet;
    }
  }
  return FilmFormat::unknown;
}

FilmFormat format_in_holder(double length_mm, double width_mm) {
  if (width_mm > window_135_mm[0] && width_mm < window_135_mm[1]) {
    return FilmFormat::f135;
  }
  if (width_mm > window_120_mm[0] && width_mm < window_120_mm[1]) {
    return FilmFormat::f120;
  }
  if (width_mm > window_sheet_mm[0] && width_mm < window_sheet_mm[1] &&
      length_mm < 2.0 * width_mm) {
    return FilmFormat::sheet;
  }
  return FilmFormat::unknown;
}

/// Whether a tag makes a film's known width of what was found: a wrong one makes any.
bool film_has_width(FilmFormat format, double width_mm, Surround surround) {
  return format != FilmFormat::unknown ||
         (surround == Surround::bare_light &&
          std::any_of(other_widths_mm.begin(), other_widths_mm.end(),
                      [&](double known) { return near_mm(width_mm, known); }));
}

}  // namespace

std::optional<double> sheet_width_mm(double aspect) {
  constexpr double aspect_tolerance = 0.02;
  for (const auto& sheet : sheets_mm) {
    if (std::abs(aspect * sheet[0] / sheet[1] - 1.0) < aspect_tolerance) {
      return sheet[0];
    }
  }
  return std::nullopt;
}

double usual_width_mm(FilmFormat format, Surround surround) {
  switch (format) {
    case FilmFormat::f120:
      return surround == Surround::bare_light ? film_120::width_mm : film_120::frame_across_mm;
    case FilmFormat::sheet:
      return sheets_mm[0][0];
    case FilmFormat::f135:
    case FilmFormat::unknown:
      break;
  }
  return film_135::frame_across_mm;
}

FormatGuess guess_format(const FilmWindow& window, double scan_px, const FindOptions& options) {
  FormatGuess guess;
  const double width_px = window.width_px * scan_px;
  const double length_px = window.length_px * scan_px;
  bool tag_usable = options.tag_pixels_per_mm && *options.tag_pixels_per_mm > least_tag &&
                    *options.tag_pixels_per_mm < greatest_tag;
  if (tag_usable) {
    guess.pixels_per_mm = *options.tag_pixels_per_mm;
    const double width_mm = width_px / guess.pixels_per_mm;
    const double length_mm = length_px / guess.pixels_per_mm;
    guess.format = window.surround == Surround::bare_light
                       ? format_on_bare_light(length_mm, width_mm)
                       : format_in_holder(length_mm, width_mm);
    tag_usable = options.format || film_has_width(guess.format, width_mm, window.surround);
  }
  if (options.format) {
    guess.format = *options.format;
  }
  if (!tag_usable) {
    guess.pixels_per_mm = width_px / usual_width_mm(guess.format, window.surround);
    guess.scale_known = false;
  }
  return guess;
}

std::vector<FrameKind> frame_kinds(const FilmStrip& film, const FindOptions& options,
                                   double frame_height_mm) {
  constexpr double rare = 3.0;
  if (options.frame_mm) {
    return {{*options.frame_mm, 1.0, 0.0}};
  }
  switch (film.format) {
    case FilmFormat::f120:
      return {{56.0, 1.6, 0.0}, {41.5, 1.4, 0.0},  {70.0, 1.6, 0.0},
              {84.0, 2.0, 0.0}, {77.0, 1.6, rare}, {118.0, 2.0, rare}};
    case FilmFormat::sheet: {
      const double length = film.along_end_mm - film.along_begin_mm;
      return {{length - 5.0, 4.0, 0.0}};
    }
    case FilmFormat::f135:
    case FilmFormat::unknown:
      break;
  }
  const double height = film.scale_known ? film_135::frame_across_mm : frame_height_mm;
  return {{1.5 * height, 0.035 * height, 0.0},
          {height, 0.03 * height, rare},
          {0.75 * height, 0.03 * height, rare}};
}

double frame_height_mm(const FilmStrip& film) {
  const double width = film.across_end_mm - film.across_begin_mm;
  switch (film.format) {
    case FilmFormat::f120:
      return std::min(width, film_120::frame_across_mm);
    case FilmFormat::sheet:
      return width - 5.0;
    case FilmFormat::f135:
    case FilmFormat::unknown:
      break;
  }
  return std::min(width, film_135::frame_across_mm);
}

}  // namespace fogline
