#include "sensitometry/read_tone.h"

#include "numerics/robust.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace fogline {

namespace {

constexpr double border_margin_mm = 0.7;
/// Narrowest area with a tone of its own, mm.
constexpr double least_side_mm = 2.0;
constexpr double shadow_share = 0.02;
constexpr double middle_share = 0.50;
constexpr double highlight_share = 0.98;
/// Stands for "no light left" when percentiles are taken.
constexpr double darkest_density = 5.0;

Quantity bounded(const DoubtSources& doubt, double density, double base, double limit) {
  if (density < limit) {
    return quantity_of_density(doubt, density, density - base);
  }
  Quantity quantity = quantity_of_density(doubt, limit, limit - base);
  quantity.at_least = true;
  quantity.lower95 = limit - quantity.u95;
  quantity.upper95.reset();
  return quantity;
}

}  // namespace

std::optional<FilmExtent> tone_area(const FilmFrame& frame) {
  const FilmExtent area{
      frame.along_begin_mm + border_margin_mm, frame.along_end_mm - border_margin_mm,
      frame.across_begin_mm + border_margin_mm, frame.across_end_mm - border_margin_mm};
  const bool wide = area.along_end_mm - area.along_begin_mm >= least_side_mm &&
                    area.across_end_mm - area.across_begin_mm >= least_side_mm;
  return wide ? std::optional(area) : std::nullopt;
}

FrameTone unread_tone(Unknown why) {
  return {why, why, why, why, why};
}

FrameTone read_tone(const DensityStrip& density, const FilmExtent& area, double base,
                    const DoubtSources& doubt, double limit) {
  std::vector<double> values;
  for (int y = density.row(area.across_begin_mm); y < density.row(area.across_end_mm); ++y) {
    for (int x = density.column(area.along_begin_mm); x < density.column(area.along_end_mm); ++x) {
      const float value = density.visual.at(x, y);
      if (!std::isnan(value)) {
        values.push_back(std::min(darkest_density, static_cast<double>(value)));
      }
    }
  }
  FrameTone tone;
  if (values.empty()) {
    return unread_tone(Unknown::frame_hidden);
  }
  const double shadow = percentile(values, shadow_share);
  const double middle = percentile(values, middle_share);
  const double highlight = percentile(values, highlight_share);
  tone.shadow = bounded(doubt, shadow, base, limit);
  tone.middle = bounded(doubt, middle, base, limit);
  tone.highlight = bounded(doubt, highlight, base, limit);
  const double low = tone.shadow->value;
  const double high = tone.highlight->value;
  Quantity range{high - low, u95_of_range(doubt, low, high), {}, {}, {}, false};
  range.at_least = tone.highlight->at_least;
  if (range.at_least) {
    range.lower95 = range.value - range.u95;
    tone.paper_range = Unknown::frame_too_dense;
  } else {
    tone.paper_range = range.value;
  }
  tone.range = range;
  return tone;
}

}  // namespace fogline
