#include "page/draw/plot.h"

#include "words/number_text.h"

#include <cmath>

namespace fogline {

std::string plot_percent(double place) {
  return machine_number(place, 2) + "%";
}

std::string plot_line(std::string_view css_class, double x1, double x2, double y1, double y2) {
  return "<line class=\"" + std::string(css_class) + "\" x1=\"" + plot_percent(x1) + "\" x2=\"" +
         plot_percent(x2) + "\" y1=\"" + plot_percent(y1) + "\" y2=\"" + plot_percent(y2) +
         "\"/>\n";
}

std::string plot_y_axis(const PlotFrame& frame, double step, int decimals) {
  std::string html;
  for (double y = std::ceil(frame.y_from / step - 1e-6) * step; y < frame.y_to + 1e-6; y += step) {
    html += plot_line("grid", 0.0, 100.0, frame.y(y), frame.y(y));
    html += "<text x=\"0\" dx=\"-6\" dy=\"4\" y=\"" + plot_percent(frame.y(y)) +
            "\" text-anchor=\"end\">" + text_from_number(y, decimals) + "</text>\n";
  }
  return html;
}

std::string plot_path(std::string_view css_class, const std::string& data) {
  return "<path class=\"" + std::string(css_class) + "\" d=\"" + data + "\"/>\n";
}

std::string plot_stretched(const std::string& paths) {
  return "<svg width=\"100%\" height=\"100%\" viewBox=\"0 0 100 100\" "
         "preserveAspectRatio=\"none\">\n" +
         paths + "</svg>\n";
}

void add_plot_point(std::string& data, double x, double y) {
  data += data.empty() ? 'M' : 'L';
  data += machine_number(x, 2) + " " + machine_number(y, 2);
}

std::string plot_figure(const std::string& spoken, const std::string& drawing,
                        const std::string& caption, std::string_view css_class) {
  std::string html = "<figure class=\"plot";
  if (!css_class.empty()) {
    html += ' ';
    html += css_class;
  }
  return html + "\"><svg role=\"img\" aria-label=\"" + spoken + "\">\n" + drawing +
         "</svg>\n<figcaption>" + caption + "</figcaption></figure>\n";
}

}  // namespace fogline
