#include "page/draw/plot.h"
#include "page/page_parts.h"
#include "words/figure_words.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <vector>

// The density scale of a roll: one row a frame, from shadow to highlight, with a dot at the middle
// tone and a band of doubt at both ends. Places along the scale are percentages and heights are
// points, so that the figure fits any width and its letters keep their size.

namespace fogline {
namespace {

constexpr Scale scale{0.0, 3.0};      // to the density that a good scan still tells
constexpr double grid_density = 0.3;  // one stop of light, to a third of a percent
constexpr double grid_stops = 10.0;   // the whole scale in stops
constexpr double head = 42.0;         // names of the aim's bands, then the upper numbers
constexpr double row_height = 38.0;
constexpr double foot = 46.0;  // the name of the dashed line, then the lower numbers
constexpr double name_height = 16.0;
constexpr double grid_top = head - 6.0;
constexpr double upper_numbers = head - 11.0;

Place place(double density) {
  return percent(scale.held_share(density));
}

Element vertical(std::string_view css_class, double density, double top, double bottom) {
  return line(css_class, {place(density), place(density)}, {points(top), points(bottom)});
}

Element doubt(std::string_view css_class, const Quantity& density, double top, double bottom) {
  const double from = density.lower95.value_or(density.value - density.u95);
  const double to = density.upper95.value_or(density.value + density.u95);
  return band(css_class, {place(from), place(to)}, {points(top), points(bottom)});
}

// Density above and stops below, or the other way round, as the reader asked.
Markup axes(double bottom, DensityUnits units) {
  const AxisMarks densities{scale, grid_density, 1};
  const AxisMarks stops{{0.0, grid_stops}, 1.0, 0};
  const bool density_first = units == DensityUnits::density;
  AxisX axis{
      "grid", {points(grid_top), points(bottom + name_height + 8.0)}, points(upper_numbers), 0.0};
  Markup markup = axis_x(density_first ? densities : stops, axis);
  axis.numbers = points(bottom + name_height + 23.0);
  return markup.add(axis_x_numbers(density_first ? stops : densities, axis));
}

// One end of a frame's line with its doubt. A highlight that is only known to be denser than the
// scan can tell ends in an arrow instead of a band.
Markup line_end(const Quantity& density, double middle_y) {
  constexpr double half_height = 7.0;
  if (density.at_least || density.value > scale.to) {
    PathData arrow(0);
    arrow.move_to(0.0, 0.0).line_to(12.0, 0.0);
    arrow.move_to(7.0, -5.0).line_to(12.0, 0.0).line_to(7.0, 5.0);
    Element at("svg");
    at.set("x", place(density.value).text()).set("y", points(middle_y).text());
    at.set("width", 1).set("height", 1).set("overflow", "visible");
    return Markup().add(at.add(path("more", arrow)));
  }
  const double top = middle_y - half_height;
  const double bottom = middle_y + half_height;
  return Markup()
      .add(doubt("doubt", density, top, bottom))
      .add(vertical("end", density.value, top, bottom));
}

Markup frame_row(const FrameMeasurement& frame, int row) {
  const FrameTone& tone = frame.tone;
  const double middle_y = head + row_height * (row + 0.5);
  const Place y = points(middle_y);
  Markup markup;
  for (const auto& end : {tone.shadow, tone.highlight}) {
    markup.add(end ? line_end(*end, middle_y) : Markup());
  }
  if (tone.shadow && tone.highlight) {
    const bool is_faint = frame.inferred || frame.cut || frame.repeats_frame.has_value();
    markup.add(line(is_faint ? "span faintly" : "span",
                    {place(tone.shadow->value), place(tone.highlight->value)}, {y, y}));
  }
  if (tone.middle) {
    constexpr double radius = 3.5;
    markup.add(dot("mid", radius, place(tone.middle->value), y));
  }
  return markup;
}

Markup base_line(const ScanMeasurement& scan, double bottom, DensityUnits units) {
  if (!scan.base_fog || scan.densities_above == DensitiesAbove::base) {
    return {};
  }
  const Quantity& visual = scan.base_fog->visual;
  // The name stands right of its line, a blank away.
  constexpr std::string_view blank = "\u00A0";
  return Markup()
      .add(doubt("baseband", visual, grid_top, bottom + 4.0))
      .add(vertical("base", visual.value, grid_top, bottom + name_height))
      .add(label("word", {place(visual.value), points(bottom + name_height), Anchor::start},
                 std::string(blank) + base_fog_words(visual, units)));
}

// What density 0 of the film is on this scale; absent where it isn't known.
std::optional<double> clear_density(const ScanMeasurement& scan) {
  if (scan.densities_above == DensitiesAbove::base) {
    return 0.0;
  }
  return scan.base_fog ? std::optional(scan.base_fog->visual.value) : std::nullopt;
}

Markup aim_band(double from, double to, double bottom, std::string_view name, Anchor anchor) {
  constexpr double name_y = 12.0;
  const Place name_x = place(anchor == Anchor::end ? to : from);
  return Markup()
      .add(band("aim", {place(from), place(to)}, {points(grid_top), points(bottom + 4.0)}))
      .add(label("aim-word", {name_x, points(name_y), anchor}, name));
}

// The two names grow away from each other, so that they don't meet on a narrow page.
Markup aim_bands(const ScanMeasurement& scan, const Aim& aim, double bottom) {
  const auto clear = clear_density(scan);
  if (!clear) {
    return {};
  }
  const WishedTones wished = wished_tones(aim);
  return Markup()
      .add(aim_band(*clear + wished.shadow_from, *clear + wished.shadow_to, bottom,
                    shadow_aim_words(), Anchor::end))
      .add(aim_band(*clear + wished.highlight_from, *clear + wished.highlight_to, bottom,
                    highlight_aim_words(), Anchor::start));
}

// The frame itself, cut out of the picture drawn above, as large as its row lets it be.
Markup thumbnail(const BoxPx& box, const PagePicture& picture, std::size_t index) {
  constexpr double widest = 48.0;
  constexpr double highest = 34.0;
  if (!(has_picture(picture) && box.width > 0.0 && box.height > 0.0)) {
    return {};
  }
  const double shown = std::min(widest / box.width, highest / box.height);
  const double reduced = picture.scan_px_per_pixel;
  Element window =
      window_on("#scan-" + std::to_string(index),
                {box.x / reduced, box.y / reduced, box.width / reduced, box.height / reduced}, 0);
  return Markup().add(
      window.set("width", box.width * shown, 0).set("height", box.height * shown, 0));
}

/// Frames of a target are no pictures.
std::vector<FrameMeasurement> picture_frames(const ScanMeasurement& scan) {
  std::vector<FrameMeasurement> frames;
  std::copy_if(scan.frames.begin(), scan.frames.end(), std::back_inserter(frames),
               [](const FrameMeasurement& frame) { return !frame.target; });
  return frames;
}

Element names_column(const ScanMeasurement& scan, const PagePicture& picture, std::size_t index) {
  Element names("div");
  names.set("class", "names").set("aria-hidden", "true");
  for (const FrameMeasurement& frame : picture_frames(scan)) {
    names.add(Element("div")
                  .add(Element("span").text(std::to_string(frame.number)))
                  .add(thumbnail(frame.box_px, picture, index)));
  }
  return names;
}

}  // namespace

Markup scale_figure(const RollPage& page, std::size_t index) {
  const ScanMeasurement& scan = page.measurement().scans[index];
  const Aim& aim = page.record.judgement.aim;
  const std::vector<FrameMeasurement> frames = picture_frames(scan);
  if (frames.empty()) {
    return {};
  }
  const double bottom = head + row_height * static_cast<double>(frames.size());
  Element svg("svg");
  svg.set("height", bottom + foot, 0).set("role", "img").set("aria-label", figure_names.scale);
  svg.add(axes(bottom, page.units)).add(aim_bands(scan, aim, bottom));
  svg.add(base_line(scan, bottom, page.units));
  int row = 0;
  for (const FrameMeasurement& frame : frames) {
    svg.add(frame_row(frame, row++));
  }
  Element drawing("div");
  drawing.set("class", "scale").add(names_column(scan, page.pictures[index], index)).add(svg);
  Element caption("figcaption");
  caption.text(page.is_of_several() ? scan.info.file + ". " : "");
  caption.text(scale_caption(scan, aim, page.units, clear_density(scan).has_value()));
  return Markup().add(Element("figure").add(drawing).add(caption));
}

}  // namespace fogline
