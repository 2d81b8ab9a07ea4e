#include "page/draw/escape.h"
#include "page/page_parts.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <vector>

// The density scale of a roll: one row a frame, from shadow to highlight, with a dot at the middle
// tone and a band of doubt at both ends. Places along the scale are percentages and heights are
// pixels, so that the figure fits any width and its letters keep their size.

namespace fogline {
namespace {

constexpr double scale_end = 3.0;     // the density that a good scan still tells
constexpr double grid_density = 0.3;  // one stop of light, to a third of a percent
constexpr int grid_lines = 10;
constexpr int head_px = 42;  // names of the aim's bands, then the upper numbers
constexpr int row_px = 38;
constexpr int foot_px = 46;  // the name of the dashed line, then the lower numbers
constexpr int name_px = 16;

// Where shadow and highlight of a usual picture are wished, above clear film, for a contrast index
// of 0.58 (common practice, no source); for another aim they lie in proportion.
constexpr double usual_contrast_index = 0.58;
constexpr double shadow_from = 0.20;
constexpr double shadow_to = 0.40;
constexpr double highlight_from = 1.05;
constexpr double highlight_to = 1.35;

std::string place(double density) {
  return machine_number(100.0 * std::clamp(density / scale_end, 0.0, 1.0), 2) + "%";
}

std::string px(double value) {
  return text_from_number(value, 0);
}

std::string vertical(std::string_view css_class, double density, double top, double bottom) {
  return "<line class=\"" + std::string(css_class) + "\" x1=\"" + place(density) + "\" x2=\"" +
         place(density) + "\" y1=\"" + px(top) + "\" y2=\"" + px(bottom) + "\"/>\n";
}

std::string band(std::string_view css_class, double from, double to, double top, double bottom) {
  const double left = std::clamp(from, 0.0, scale_end);
  const double right = std::clamp(to, left, scale_end);
  return "<rect class=\"" + std::string(css_class) + "\" x=\"" + place(left) + "\" width=\"" +
         place(right - left) + "\" y=\"" + px(top) + "\" height=\"" + px(bottom - top) + "\"/>\n";
}

std::string label(std::string_view css_class, double density, double y, std::string_view anchor,
                  const std::string& text) {
  const std::string named =
      css_class.empty() ? std::string() : " class=\"" + std::string(css_class) + "\"";
  return "<text" + named + " x=\"" + place(density) + "\" y=\"" + px(y) + "\" text-anchor=\"" +
         std::string(anchor) + "\">" + text + "</text>\n";
}

// Density above and stops below, or the other way round, as the reader asked.
std::string axis(int bottom, DensityUnits units) {
  std::string html;
  for (int i = 0; i <= grid_lines; ++i) {
    const double density = grid_density * i;
    const std::string as_density = text_from_number(density, 1);
    const std::string as_stops = std::to_string(i);
    const bool density_first = units == DensityUnits::density;
    html += vertical("grid", density, head_px - 6, bottom + name_px + 8);
    html += label("", density, head_px - 11, "middle", density_first ? as_density : as_stops);
    html +=
        label("", density, bottom + name_px + 23, "middle", density_first ? as_stops : as_density);
  }
  return html;
}

double lower_end(const Quantity& density) {
  return density.lower95.value_or(density.value - density.u95);
}
double upper_end(const Quantity& density) {
  return density.upper95.value_or(density.value + density.u95);
}

// One end of a frame's line with its doubt. A highlight that is only known to be denser than the
// scan can tell ends in an arrow instead of a band.
std::string line_end(const Quantity& density, double middle_y) {
  constexpr double half_height = 7.0;
  if (density.at_least || density.value > scale_end) {
    return "<svg x=\"" + place(density.value) + "\" y=\"" + px(middle_y) +
           "\" width=\"1\" height=\"1\" overflow=\"visible\"><path class=\"more\" d=\"M0 "
           "0H12M7 -5L12 0L7 5\"/></svg>\n";
  }
  return band("doubt", lower_end(density), upper_end(density), middle_y - half_height,
              middle_y + half_height) +
         vertical("end", density.value, middle_y - half_height, middle_y + half_height);
}

std::string frame_row(const FrameMeasurement& frame, int row) {
  const FrameTone& tone = frame.tone;
  const int middle_y = head_px + row_px * row + row_px / 2;
  std::string html;
  for (const auto& end : {tone.shadow, tone.highlight}) {
    html += end ? line_end(*end, middle_y) : "";
  }
  if (tone.shadow && tone.highlight) {
    const bool faint = frame.inferred || frame.cut || frame.repeats_frame.has_value();
    html += std::string("<line class=\"span") + (faint ? " faintly" : "") + "\" x1=\"" +
            place(tone.shadow->value) + "\" x2=\"" + place(tone.highlight->value) + "\" y1=\"" +
            px(middle_y) + "\" y2=\"" + px(middle_y) + "\"/>\n";
  }
  if (tone.middle) {
    html += "<circle class=\"mid\" r=\"3.5\" cx=\"" + place(tone.middle->value) + "\" cy=\"" +
            px(middle_y) + "\"/>\n";
  }
  return html;
}

std::string base_line(const ScanMeasurement& scan, int bottom, DensityUnits units) {
  if (!scan.base_fog || scan.densities_above == DensitiesAbove::base) {
    return "";
  }
  const Quantity& visual = scan.base_fog->visual;
  // The name stands right of its line, a blank away.
  return band("baseband", lower_end(visual), upper_end(visual), head_px - 6, bottom + 4) +
         vertical("base", visual.value, head_px - 6, bottom + name_px) +
         label("word", visual.value, bottom + name_px, "start",
               "&#160;base plus fog " + html_escaped(sentence_from_density(visual, units)));
}

// What density 0 of the film is on this scale; absent where it isn't known.
std::optional<double> clear_density(const ScanMeasurement& scan) {
  if (scan.densities_above == DensitiesAbove::base) {
    return 0.0;
  }
  return scan.base_fog ? std::optional(scan.base_fog->visual.value) : std::nullopt;
}

// The two names grow away from each other, so that they don't meet on a narrow page.
std::string aim_band(double from, double to, int bottom, const std::string& name, bool ends_here) {
  return band("aim", from, to, head_px - 6, bottom + 4) + "<text class=\"aim-word\" x=\"" +
         place(ends_here ? to : from) + "\" y=\"12\" text-anchor=\"" +
         (ends_here ? "end" : "start") + "\">" + name + "</text>\n";
}

std::string aim_bands(const ScanMeasurement& scan, const Aim& aim, int bottom) {
  const auto clear = clear_density(scan);
  if (!clear) {
    return "";
  }
  const double factor = aim.contrast_index / usual_contrast_index;
  return aim_band(*clear + factor * shadow_from, *clear + factor * shadow_to, bottom, "shadow aim",
                  true) +
         aim_band(*clear + factor * highlight_from, *clear + factor * highlight_to, bottom,
                  "highlight aim", false);
}

// The frame itself, cut out of the picture drawn above, as large as its row lets it be.
std::string thumbnail(const BoxPx& box, const PagePicture& picture, std::size_t index) {
  constexpr double widest_px = 48.0;
  constexpr double highest_px = 34.0;
  if (!(box.width > 0.0 && box.height > 0.0)) {
    return "";
  }
  const double shown = std::min(widest_px / box.width, highest_px / box.height);
  const double scale = picture.scan_px_per_pixel;
  return "<svg width=\"" + px(box.width * shown) + "\" height=\"" + px(box.height * shown) +
         "\" viewBox=\"" + px(box.x / scale) + " " + px(box.y / scale) + " " +
         px(box.width / scale) + " " + px(box.height / scale) + "\"><use href=\"#scan-" +
         std::to_string(index) + "\"/></svg>";
}

/// Frames of a target are no pictures.
std::vector<FrameMeasurement> picture_frames(const ScanMeasurement& scan) {
  std::vector<FrameMeasurement> frames;
  std::copy_if(scan.frames.begin(), scan.frames.end(), std::back_inserter(frames),
               [](const FrameMeasurement& frame) { return !frame.target; });
  return frames;
}

std::string names_column(const ScanMeasurement& scan, const PagePicture& picture,
                         std::size_t index) {
  std::string html = "<div class=\"names\" aria-hidden=\"true\">\n";
  for (const FrameMeasurement& frame : picture_frames(scan)) {
    html += "<div><span>" + std::to_string(frame.number) + "</span>";
    html += has_picture(picture) ? thumbnail(frame.box_px, picture, index) : "";
    html += "</div>\n";
  }
  return html + "</div>\n";
}

std::string caption(const ScanMeasurement& scan, const Aim& aim, DensityUnits units,
                    bool name_file) {
  const bool in_stops = units == DensityUnits::stops;
  std::string text = name_file ? html_escaped(scan.info.file) + ". " : std::string();
  text +=
      "Each line runs from a frame's shadow to its highlight, the dot is its middle tone, the "
      "shaded ends are the doubt. Numbers above: ";
  text += in_stops ? "stops of light held back" : "density";
  text +=
      scan.densities_above == DensitiesAbove::base ? " above clear film" : " above the bare light";
  text += in_stops ? "; below: density." : "; below: the same in stops.";
  if (clear_density(scan)) {
    const double factor = aim.contrast_index / usual_contrast_index;
    const auto range = [&](double from, double to) {
      return text_from_number(factor * from, 2) + " to " + text_from_number(factor * to, 2);
    };
    text += " The dashed bands are where a usual picture's shadow (" +
            range(shadow_from, shadow_to) + ") and highlight (" +
            range(highlight_from, highlight_to) +
            ") are wished above clear film, for a contrast index of " +
            text_from_number(aim.contrast_index, 2) + " (common practice, no source).";
  }
  return text;
}

}  // namespace

std::string scale_figure(const ScanMeasurement& scan, const PagePicture& picture, std::size_t index,
                         const Aim& aim, DensityUnits units, bool name_file) {
  const std::vector<FrameMeasurement> frames = picture_frames(scan);
  if (frames.empty()) {
    return "";
  }
  const int rows = static_cast<int>(frames.size());
  const int bottom = head_px + row_px * rows;
  std::string html = "<figure><div class=\"scale\">" + names_column(scan, picture, index) +
                     "<svg height=\"" + std::to_string(bottom + foot_px) +
                     "\" role=\"img\" aria-label=\"Shadow, middle and highlight of each frame on "
                     "the density scale; the table below has the numbers\">\n" +
                     axis(bottom, units) + aim_bands(scan, aim, bottom) +
                     base_line(scan, bottom, units);
  int row = 0;
  for (const FrameMeasurement& frame : frames) {
    html += frame_row(frame, row++);
  }
  return html + "</svg></div>\n<figcaption>" + caption(scan, aim, units, name_file) +
         "</figcaption></figure>\n";
}

}  // namespace fogline
