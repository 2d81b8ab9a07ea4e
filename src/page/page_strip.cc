#include "page/draw/escape.h"
#include "page/mark_labels.h"
#include "page/page_parts.h"

#include <algorithm>
#include <array>
#include <cmath>

// The drawing over the picture. All outlines of one kind are one path, drawn twice: a white casing
// below, so that a thin line shows on dark and on clear film alike, and the line itself. Numbers
// are text of the page, not of the drawing, so that they keep their size when the picture shrinks.

namespace fogline {
namespace {

struct KindStyle {
  OutlineKind kind;
  const char* css_class;
  /// Drawn with a white line below it, to show on dark film.
  bool cased;
  const char* words;
};

constexpr std::array<KindStyle, 10> kind_styles{{
    {OutlineKind::strip, "k-strip", true, "edge of the film"},
    {OutlineKind::perforation, "k-perforation", false, "perforation"},
    {OutlineKind::opaque, "k-opaque", true, "opaque, for stray light"},
    {OutlineKind::light_path, "k-light-path", false, "bare light: density zero"},
    {OutlineKind::clear_film, "k-clear-film", true, "clear film: base plus fog"},
    {OutlineKind::edge_print, "k-edge-print", true, "edge print"},
    {OutlineKind::leader, "k-leader", true, "fogged leader"},
    {OutlineKind::tone_area, "k-tone-area", false, "where tone was read"},
    {OutlineKind::frame, "k-frame", true,
     "frame, numbered; dashed where cut or placed by its neighbours"},
    {OutlineKind::exposed_step, "k-step", false, "known exposure, read for the curve"},
}};

std::string path_data(const std::vector<Outline>& outlines, OutlineKind kind, bool partial,
                      double scale) {
  std::string data;
  for (const Outline& outline : outlines) {
    if (outline.kind != kind || outline.partial != partial || outline.points.size() < 2) {
      continue;
    }
    char command = 'M';
    for (const PointPx& point : outline.points) {
      data += command;
      data += machine_number(point.x / scale, 1) + " " + machine_number(point.y / scale, 1);
      command = 'L';
    }
    data += "Z";
  }
  return data;
}

std::string percent(double share) {
  return machine_number(100.0 * share, 2) + "%";
}

std::string drawing(const ScanMeasurement& scan, const PagePicture& picture, std::string& key) {
  std::string html;
  for (const KindStyle& style : kind_styles) {
    bool drawn = false;
    for (const bool partial : {false, true}) {
      const std::string data =
          path_data(scan.outlines, style.kind, partial, picture.scan_px_per_pixel);
      if (!data.empty()) {
        html += style.cased ? "<path class=\"casing\" d=\"" + data + "\"/>" : "";
        html += std::string("<path class=\"line ") + style.css_class + (partial ? " partial" : "") +
                "\" d=\"" + data + "\"/>\n";
        drawn = true;
      }
    }
    if (drawn) {
      key += std::string("<li><svg aria-hidden=\"true\"><path class=\"line ") + style.css_class +
             "\" d=\"M1 4H27\"/></svg>" + style.words + "</li>\n";
    }
  }
  return html;
}

// Numbers of the frames whose middle lies in a window of the picture, placed in shares of it.
std::string frame_numbers(const ScanMeasurement& scan, double scale, const BoxPx& window) {
  std::string html;
  for (const FrameMeasurement& frame : scan.frames) {
    const BoxPx& box = frame.box_px;
    const double x = ((box.x + box.width / 2.0) / scale - window.x) / window.width;
    const double y = ((box.y + box.height / 2.0) / scale - window.y) / window.height;
    if (x > 0.0 && x < 1.0 && y > 0.0 && y < 1.0) {
      // A number in the very corner of a piece would be cut off.
      html += "<b style=\"left:" + percent(std::clamp(x, 0.05, 0.95)) + ";top:" + percent(y) +
              "\">" + std::to_string(frame.number) + "</b>";
    }
  }
  return html;
}

// Outlines of all marks, numbered or not.
std::string mark_outlines(const ScanMeasurement& scan, double scale) {
  std::string data;
  for (const Mark& mark : scan.marks) {
    const BoxPx box = mark_outline(mark, scale);
    data.append("M").append(machine_number(box.x, 1)).append(" ");
    data.append(machine_number(box.y, 1)).append("h").append(machine_number(box.width, 1));
    data.append("v").append(machine_number(box.height, 1)).append("h");
    data.append(machine_number(-box.width, 1)).append("Z");
  }
  return data.empty() ? data
                      : "<path class=\"casing\" d=\"" + data +
                            "\"/><path class=\"line k-mark\" d=\"" + data + "\"/>\n";
}

std::string point_data(const PointPx& point) {
  return machine_number(point.x, 1) + " " + machine_number(point.y, 1);
}

// Numbers of the marks beside a window, and the lines that lead to them.
struct MarkLabels {
  std::string lines;
  std::string numbers;
};

MarkLabels mark_labels(const MarkList& marks, double scale, const BoxPx& window,
                       double room_share) {
  MarkLabels html;
  for (const MarkLabel& label : place_labels(marks.numbered, scale, window, room_share)) {
    for (const LinePiece& piece : label.line) {
      html.lines.append("M").append(point_data(piece.from));
      html.lines.append("L").append(point_data(piece.to));
    }
    constexpr std::array<const char*, 4> classes{"t", "b", "l", "r"};
    html.numbers += std::string("<i class=\"m ") + classes[static_cast<std::size_t>(label.side)] +
                    "\" style=\"left:" + percent((label.place.x - window.x) / window.width) +
                    ";top:" + percent((label.place.y - window.y) / window.height) + "\">" +
                    std::to_string(label.number) + "</i>";
  }
  if (!html.lines.empty()) {
    html.lines = "<path class=\"casing\" d=\"" + html.lines + "\"/><path class=\"lead\" d=\"" +
                 html.lines + "\"/>";
  }
  return html;
}

/// What a window of the drawing shows, and how much of its side a number takes.
struct StripDrawing {
  const ScanMeasurement& scan;
  const MarkList& marks;
  double scale = 1.0;
  std::size_t index = 0;
};

// A window of the drawing, in pixels of the picture, as wide as the page lets it be.
std::string window_html(const StripDrawing& drawing, const BoxPx& window, double room_share) {
  const MarkLabels labels = mark_labels(drawing.marks, drawing.scale, window, room_share);
  const bool standing = window.height > window.width;
  const std::string left = machine_number(window.x, 1);
  const std::string width = machine_number(window.width, 1);
  const std::string height = machine_number(window.height, 1);
  const std::string view = left + " 0 " + width + " " + height;
  // The drawing is cut at the window; the lines to the numbers go beyond it.
  return std::string("<div class=\"strip") +
         (labels.numbers.empty() ? ""
          : standing             ? " marked-beside"
                                 : " marked") +
         "\" style=\"--shape:" + machine_number(window.width / window.height, 4) +
         "\"><svg viewBox=\"" + view + "\"><svg x=\"" + left + "\" width=\"" + width +
         "\" height=\"" + height + "\" viewBox=\"" + view + "\"><use href=\"#drawing-" +
         std::to_string(drawing.index) + "\"/></svg>" + labels.lines + "</svg>" +
         frame_numbers(drawing.scan, drawing.scale, window) + labels.numbers + "</div>\n";
}

// A long strip is shown whole, and for narrow screens once more in pieces below one another.
std::string windows_html(const StripDrawing& drawing, const PagePicture& picture) {
  constexpr double longest_shape = 3.0;  // longer, and a frame of 135 film is below 100 px there
  constexpr double piece_shape = 2.4;
  // A number of two figures takes 19 points; a phone's window has 330, a wider screen's 600.
  constexpr double narrow_room = 0.058;
  constexpr double wide_room = 0.032;
  const double width = picture.width;
  const double height = picture.height;
  if (width / height <= longest_shape) {
    return window_html(drawing, {0.0, 0.0, width, height}, narrow_room);
  }
  const int pieces = static_cast<int>(std::ceil(width / height / piece_shape));
  std::string html = "<div class=\"whole\">" +
                     window_html(drawing, {0.0, 0.0, width, height}, wide_room) +
                     "</div>\n<div class=\"pieces\">";
  for (int i = 0; i < pieces; ++i) {
    html += window_html(drawing, {width * i / pieces, 0.0, width / pieces, height}, narrow_room);
  }
  return html + "</div>\n";
}

}  // namespace

bool has_picture(const PagePicture& picture) {
  return !picture.bytes.empty() && picture.width > 0 && picture.height > 0;
}

std::string strip_figure(const ScanMeasurement& scan, const PagePicture& picture, std::size_t index,
                         const MarkList& marks) {
  if (!has_picture(picture)) {
    return "";
  }
  const std::string number = std::to_string(index);
  const std::string file = html_escaped(scan.info.file);
  std::string key;
  std::string lines = drawing(scan, picture, key);
  if (!scan.marks.empty()) {
    lines += mark_outlines(scan, picture.scan_px_per_pixel);
    key +=
        "<li><svg aria-hidden=\"true\"><path class=\"line k-mark\" d=\"M10 1H18V7H10Z\"/></svg>"
        "mark, numbered beside the strip</li>\n";
  }
  std::string html =
      "<figure class=\"wide\">\n<svg class=\"store\" aria-hidden=\"true\"><defs>"
      "<g id=\"drawing-" +
      number + "\"><image id=\"scan-" + number + "\" width=\"" + std::to_string(picture.width) +
      "\" height=\"" + std::to_string(picture.height) + "\" href=\"data:" + picture.media_type +
      ";base64," + base64_from_bytes(picture.bytes) + "\"/>\n" + lines +
      "</g></defs></svg>\n<div class=\"panel\" role=\"img\" aria-label=\"" + file +
      ", the scan as it is, " + std::to_string(scan.frames.size()) +
      (scan.frames.size() == 1 ? " frame" : " frames") + " and " +
      std::to_string(scan.marks.size()) + (scan.marks.size() == 1 ? " mark" : " marks") +
      " outlined\">\n" + windows_html({scan, marks, picture.scan_px_per_pixel, index}, picture) +
      "</div>\n";
  html += "<figcaption>" + file;
  html += key.empty() ? ": nothing was found to outline."
                      : ". Every number on this page comes from inside these lines:<ul "
                        "class=\"key\">" +
                            key + "</ul>";
  return html + "</figcaption></figure>\n";
}

}  // namespace fogline
