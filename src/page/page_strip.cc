#include "page/draw/shapes.h"
#include "page/mark_labels.h"
#include "page/page_parts.h"
#include "words/figure_words.h"
#include "words/outline_words.h"
#include "words/verdict.h"

#include <algorithm>
#include <array>
#include <cmath>

// The drawing over the picture. All outlines of one kind are one path, drawn twice: a white casing
// below, so that a thin line shows on dark and on clear film alike, and the line itself. Numbers
// are text of the page, not of the drawing, so that they keep their size when the picture shrinks.

namespace fogline {
namespace {

/// Decimals of a place on a picture, pixels of it.
constexpr int picture_decimals = 1;

struct KindStyle {
  OutlineKind kind;
  std::string_view css_class;
  /// Drawn with a white line below it, to show on dark film.
  bool is_cased;
};

// In the order in which they lie over one another.
constexpr std::array<KindStyle, 10> kind_styles{{{OutlineKind::strip, "k-strip", true},
                                                 {OutlineKind::perforation, "k-perforation", false},
                                                 {OutlineKind::opaque, "k-opaque", true},
                                                 {OutlineKind::light_path, "k-light-path", false},
                                                 {OutlineKind::clear_film, "k-clear-film", true},
                                                 {OutlineKind::edge_print, "k-edge-print", true},
                                                 {OutlineKind::leader, "k-leader", true},
                                                 {OutlineKind::tone_area, "k-tone-area", false},
                                                 {OutlineKind::frame, "k-frame", true},
                                                 {OutlineKind::exposed_step, "k-step", false}}};

PathData outlines_of(const std::vector<Outline>& outlines, OutlineKind kind, bool partial,
                     double scale) {
  PathData data(picture_decimals);
  for (const Outline& outline : outlines) {
    if (outline.kind != kind || outline.partial != partial || outline.points.size() < 2) {
      continue;
    }
    bool is_first = true;
    for (const PointPx& point : outline.points) {
      is_first ? data.move_to(point.x / scale, point.y / scale)
               : data.line_to(point.x / scale, point.y / scale);
      is_first = false;
    }
    data.close();
  }
  return data;
}

/// An entry of the key below the strip: a line as it is drawn there, and its name.
Element key_entry(std::string_view css_class, const PathData& sample, std::string_view words) {
  Element drawing("svg");
  drawing.set("aria-hidden", "true").add(path(css_class, sample));
  return Element("li").add(drawing).text(words);
}

/// What is drawn over the picture, and the key to it.
struct StripLines {
  Markup lines;
  Markup key;
};

void add_outlines(StripLines& drawn, const ScanMeasurement& scan, double scale) {
  PathData sample(0);
  sample.move_to(1.0, 4.0).line_to(27.0, 4.0);
  for (const KindStyle& style : kind_styles) {
    const std::string css_class = "line " + std::string(style.css_class);
    bool is_drawn = false;
    for (const bool partial : {false, true}) {
      const PathData data = outlines_of(scan.outlines, style.kind, partial, scale);
      if (!data.empty()) {
        const std::string own_class = css_class + (partial ? " partial" : "");
        drawn.lines.add(style.is_cased ? cased_path(own_class, data)
                                       : Markup().add(path(own_class, data)));
        is_drawn = true;
      }
    }
    if (is_drawn) {
      drawn.key.add(key_entry(css_class, sample, outline_words(style.kind)));
    }
  }
}

// Outlines of all marks, numbered or not.
void add_marks(StripLines& drawn, const ScanMeasurement& scan, double scale) {
  if (scan.marks.empty()) {
    return;
  }
  PathData data(picture_decimals);
  for (const Mark& mark : scan.marks) {
    data.box(mark_outline(mark, scale));
  }
  PathData sample(0);
  sample.box({10.0, 1.0, 8.0, 6.0});
  drawn.lines.add(cased_path("line k-mark", data));
  drawn.key.add(key_entry("line k-mark", sample, mark_outline_words()));
}

std::string place_style(double left_share, double top_share) {
  return "left:" + percent(100.0 * left_share).text() + ";top:" + percent(100.0 * top_share).text();
}

// Numbers of the frames whose middle lies in a window of the picture, placed in shares of it.
Markup frame_numbers(const ScanMeasurement& scan, double scale, const BoxPx& window) {
  Markup markup;
  for (const FrameMeasurement& frame : scan.frames) {
    const BoxPx& box = frame.box_px;
    const double x = ((box.x + box.width / 2.0) / scale - window.x) / window.width;
    const double y = ((box.y + box.height / 2.0) / scale - window.y) / window.height;
    if (x > 0.0 && x < 1.0 && y > 0.0 && y < 1.0) {
      // A number in the very corner of a piece would be cut off.
      markup.add(Element("b")
                     .set("style", place_style(std::clamp(x, 0.05, 0.95), y))
                     .text(std::to_string(frame.number)));
    }
  }
  return markup;
}

// Numbers of the marks beside a window, and the lines that lead to them.
struct NumberedMarks {
  Markup lines;
  Markup numbers;
};

NumberedMarks numbered_marks(const MarkList& marks, double scale, const BoxPx& window,
                             double room_share) {
  NumberedMarks drawn;
  PathData leads(picture_decimals);
  for (const MarkLabel& label : place_labels(marks.numbered, scale, window, room_share)) {
    for (const LinePiece& piece : label.line) {
      leads.move_to(piece.from.x, piece.from.y).line_to(piece.to.x, piece.to.y);
    }
    constexpr std::array<const char*, 4> classes{"t", "b", "l", "r"};
    Element number("i");
    number.set("class", std::string("m ") + classes[static_cast<std::size_t>(label.side)]);
    number.set("style", place_style((label.place.x - window.x) / window.width,
                                    (label.place.y - window.y) / window.height));
    drawn.numbers.add(number.text(std::to_string(label.number)));
  }
  if (!leads.empty()) {
    drawn.lines = cased_path("lead", leads);
  }
  return drawn;
}

/// A scan's drawing, of which windows are shown, and how it is scaled.
struct StripDrawing {
  const ScanMeasurement& scan;
  const MarkList& marks;
  /// Stored pixels of the scan a pixel of the picture.
  double scale = 1.0;
  std::string id;
};

// A window of the drawing, in pixels of the picture, as wide as the page lets it be.
Element window_part(const StripDrawing& drawing, const BoxPx& window, double room_share) {
  const NumberedMarks marks = numbered_marks(drawing.marks, drawing.scale, window, room_share);
  const bool is_standing = window.height > window.width;
  // The drawing is cut at the window; the lines to the numbers go beyond it.
  Element cut = window_on("#" + drawing.id, window, picture_decimals);
  cut.set("x", window.x, picture_decimals).set("width", window.width, picture_decimals);
  cut.set("height", window.height, picture_decimals);
  Element svg("svg");
  svg.set("viewBox", view_box(window, picture_decimals)).add(cut).add(marks.lines);
  Element strip("div");
  strip.set("class", marks.numbers.empty() ? "strip"
                     : is_standing         ? "strip marked-beside"
                                           : "strip marked");
  strip.set("style", "--shape:" + machine_number(window.width / window.height, 4)).add(svg);
  return strip.add(frame_numbers(drawing.scan, drawing.scale, window)).add(marks.numbers);
}

// A long strip is shown whole, and for narrow screens once more in pieces below one another.
Markup windows_part(const StripDrawing& drawing, const PagePicture& picture) {
  constexpr double longest_shape = 3.0;  // longer, and a frame of 135 film is below 100 px there
  constexpr double piece_shape = 2.4;
  // A number of two figures takes 19 points; a phone's window has 330, a wider screen's 600.
  constexpr double narrow_room = 0.058;
  constexpr double wide_room = 0.032;
  const double width = picture.width;
  const double height = picture.height;
  const BoxPx all{0.0, 0.0, width, height};
  if (width / height <= longest_shape) {
    return Markup().add(window_part(drawing, all, narrow_room));
  }
  const int count = static_cast<int>(std::ceil(width / height / piece_shape));
  Element pieces("div");
  pieces.set("class", "pieces");
  for (int i = 0; i < count; ++i) {
    pieces.add(window_part(drawing, {width * i / count, 0.0, width / count, height}, narrow_room));
  }
  Element whole("div");
  whole.set("class", "whole").add(window_part(drawing, all, wide_room));
  return Markup().add(whole).add(pieces);
}

/// The picture with its lines, kept where the windows find it.
Element store(const PagePicture& picture, const Markup& lines, std::size_t index,
              const std::string& id) {
  Element group("g");
  group.set("id", id).add(picture_element(picture, "scan-" + std::to_string(index))).add(lines);
  Element svg("svg");
  svg.set("class", "store").set("aria-hidden", "true");
  return svg.add(Element("defs").add(group));
}

}  // namespace

Markup strip_figure(const RollPage& page, std::size_t index) {
  const ScanMeasurement& scan = page.measurement().scans[index];
  const PagePicture& picture = page.pictures[index];
  if (!has_picture(picture)) {
    return {};
  }
  StripLines drawn;
  add_outlines(drawn, scan, picture.scan_px_per_pixel);
  add_marks(drawn, scan, picture.scan_px_per_pixel);
  const std::string id = "drawing-" + std::to_string(index);
  Element panel("div");
  panel.set("class", "panel").set("role", "img").set("aria-label", strip_name(scan));
  panel.add(windows_part({scan, page.marks[index], picture.scan_px_per_pixel, id}, picture));
  Element caption("figcaption");
  caption.text(strip_caption(scan.info.file, drawn.key.empty()));
  if (!drawn.key.empty()) {
    caption.add(Element("ul").set("class", "key").add(drawn.key));
  }
  Element figure("figure");
  figure.set("class", "wide").add(store(picture, drawn.lines, index, id)).add(panel);
  return Markup().add(figure.add(caption));
}

Markup strips_part(const RollPage& page) {
  Markup markup = paragraph(verdict_of(page.record, page.units).reading);
  for (std::size_t i = 0; i < page.measurement().scans.size(); ++i) {
    markup.add(strip_figure(page, i));
  }
  return markup;
}

}  // namespace fogline
