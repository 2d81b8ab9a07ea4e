#include "simulator/edge_print.h"

#include <array>

namespace filmsim {
namespace {

constexpr double kStrokeMm = 0.3;  // strokes and thinnest bars
constexpr double kSoftMm = 0.05;
constexpr double kReachMm = 0.1;  // beyond a box its light is nothing

// Seven strokes: top, upper right, lower right, bottom, lower left, upper left, middle.
constexpr std::array<unsigned, 10> kDigits = {0x3f, 0x06, 0x5b, 0x4f, 0x66,
                                              0x6d, 0x7d, 0x07, 0x7f, 0x6f};

std::array<Box, 7> digit_strokes(double u, double v, double height) {
  const double w = 0.62 * height;
  const double half = 0.5 * height;
  const double s = kStrokeMm;
  return {Box{u, v, w, s},
          Box{u + w - s, v, s, half},
          Box{u + w - s, v + half, s, half},
          Box{u, v + height - s, w, s},
          Box{u, v + half, s, half},
          Box{u, v, s, half},
          Box{u, v + half - 0.5 * s, w, s}};
}

}  // namespace

EdgePrint::EdgePrint(const StripGeometrySettings& film, double first_u_mm, double pitch_mm,
                     int first_number) {
  const double width = film_width_mm(film.format);
  const double height = 1.6;
  const double margin = film.format == FilmFormat::k135 ? 0.2 : 0.5;
  const int before = static_cast<int>(first_u_mm / pitch_mm) + 1;
  for (int i = -before; first_u_mm + i * pitch_mm < film.length_mm; ++i) {
    const double u = first_u_mm + i * pitch_mm;
    const int number = first_number + i;
    if (number < 0) continue;
    add_number(number, u, margin, height);
    add_number(number, u + 0.5 * pitch_mm, margin, height);
    // The half-way number is told by a bar behind it.
    add({u + 0.5 * pitch_mm + 3.0, margin, 0.9, height});
    add_bar_code(number, u + 3.0, width - margin - height, height);
    add_bar_code(number + 32, u + 0.5 * pitch_mm + 3.0, width - margin - height, height);
    add({u + 9.0, margin, 2.4, 0.5 * height});
    if (film.format == FilmFormat::k135) add_blocks_between_holes(film, u);
  }
  sort_into_bins(film.length_mm);
}

void EdgePrint::add_blocks_between_holes(const StripGeometrySettings& film, double u) {
  constexpr double kAlongMm = 1.0;
  constexpr double kAcrossMm = 2.0;
  const double steps = std::ceil((u - film.hole_phase_mm) / k135PitchMm);
  const double row_middle = k135HoleMarginMm + 0.5 * k135HoleAcrossMm;
  for (const double holes : {0.5, 1.5}) {
    const double middle = film.hole_phase_mm + (steps + holes) * k135PitchMm;
    add({middle - 0.5 * kAlongMm, row_middle - 0.5 * kAcrossMm, kAlongMm, kAcrossMm});
  }
}

void EdgePrint::add(Box box) {
  boxes_.push_back(box);
}

void EdgePrint::add_number(int number, double u, double v, double height) {
  double at = u;
  if (number >= 10) {
    add_number(number / 10, at, v, height);
    at += 0.62 * height + 0.3;
  }
  const auto strokes = digit_strokes(at, v, height);
  const unsigned lit = kDigits[static_cast<std::size_t>(number % 10)];
  for (std::size_t i = 0; i < strokes.size(); ++i) {
    if (((lit >> i) & 1U) != 0U) add(strokes[i]);
  }
}

void EdgePrint::add_bar_code(int number, double u, double v, double height) {
  constexpr int kBits = 11;
  double at = u;
  add({at, v, 3.0 * kStrokeMm, height});
  at += 4.0 * kStrokeMm;
  for (int bit = 0; bit < kBits; ++bit) {
    const bool wide = ((number * 37 + 5) >> bit) % 2 != 0;
    const double bar = wide ? 2.0 * kStrokeMm : kStrokeMm;
    add({at, v, bar, height});
    at += bar + kStrokeMm;
  }
}

void EdgePrint::sort_into_bins(double length_mm) {
  bins_.resize(static_cast<std::size_t>(std::max(1.0, std::ceil(length_mm))));
  const int last = static_cast<int>(bins_.size()) - 1;
  for (std::size_t i = 0; i < boxes_.size(); ++i) {
    const Box& box = boxes_[i];
    const int from = std::max(0, static_cast<int>(std::floor(box.x - kReachMm)));
    const int to = std::min(last, static_cast<int>(std::floor(box.x + box.width + kReachMm)));
    for (int bin = from; bin <= to; ++bin) {
      bins_[static_cast<std::size_t>(bin)].push_back(static_cast<int>(i));
    }
  }
}

float EdgePrint::share(Point film_mm) const {
  if (film_mm.x < 0.0 || bins_.empty()) return 0.0F;
  const auto bin = static_cast<std::size_t>(film_mm.x);
  if (bin >= bins_.size()) return 0.0F;
  float share = 0.0F;
  for (const int i : bins_[bin]) {
    const Box& box = boxes_[static_cast<std::size_t>(i)];
    const double distance = rounded_box_distance(film_mm.x - box.x - 0.5 * box.width,
                                                 film_mm.y - box.y - 0.5 * box.height,
                                                 0.5 * box.width, 0.5 * box.height, 0.0);
    share = std::max(share, covered_share(distance / kSoftMm));
  }
  return share;
}

}  // namespace filmsim
