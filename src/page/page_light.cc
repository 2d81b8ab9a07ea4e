#include "page/draw/escape.h"
#include "page/page_parts.h"
#include "words/aim_words.h"
#include "words/evidence_words.h"
#include "words/judgement_words.h"
#include "words/unknown_words.h"

#include <algorithm>
#include <cmath>

// Light or time: the five causes as bars of ink, each with its name and number, so that the table
// is the chart; then where contrast and light lie, each on a line with its aim.

namespace fogline {
namespace {

std::string odds_table(const CauseProbabilities& causes) {
  std::string html =
      "<table class=\"odds\"><caption>How likely each is the main cause of how this roll looks, "
      "prior knowledge of home-developed rolls included.</caption>\n<tbody>\n";
  for (const CauseChance& chance : cause_chances(causes)) {
    html += "<tr><th scope=\"row\">" + std::string(chance.name) +
            "</th><td class=\"bar\"><svg aria-hidden=\"true\"><rect class=\"odd\" width=\"" +
            machine_number(100.0 * std::clamp(chance.probability, 0.0, 1.0), 1) +
            "%\" height=\"12\"/></svg></td><td>" + sentence_html(chance_text(chance.probability)) +
            "</td></tr>\n";
  }
  return html + "</tbody></table>\n";
}

/// A quantity on a line of round steps, with the band that counts as right.
struct NumberLine {
  double from = 0.0;
  double to = 1.0;
  double step = 1.0;
  int decimals = 1;
  bool signed_numbers = false;
  double right_from = 0.0;
  double right_to = 0.0;
  const char* right_name = "";
  const char* spoken = "";
};

class LineDrawing {
 public:
  explicit LineDrawing(const NumberLine& line) : line_(line) {}

  [[nodiscard]] std::string html(const Quantity& value) const {
    const double low = value.lower95.value_or(value.value - value.u95);
    const double high = value.upper95.value_or(value.value + value.u95);
    return std::string("<svg class=\"line-of\" role=\"img\" aria-label=\"") + line_.spoken +
           "\">\n" + axis() + rect("aim", line_.right_from, line_.right_to, 16, 24) +
           "<text class=\"aim-word\" x=\"" + place((line_.right_from + line_.right_to) / 2.0) +
           "\" y=\"11\" text-anchor=\"middle\">" + line_.right_name + "</text>\n" +
           rect("doubt", low, high, 22, 12) + "<circle class=\"mid\" r=\"4.5\" cx=\"" +
           place(value.value) + "\" cy=\"28\"/>\n</svg>\n";
  }

 private:
  [[nodiscard]] double share(double value) const {
    return std::clamp((value - line_.from) / (line_.to - line_.from), 0.0, 1.0);
  }
  [[nodiscard]] std::string place(double value) const {
    return machine_number(100.0 * share(value), 2) + "%";
  }
  [[nodiscard]] std::string rect(const char* css_class, double from, double to, int top,
                                 int height) const {
    return std::string("<rect class=\"") + css_class + "\" x=\"" + place(from) + "\" width=\"" +
           machine_number(100.0 * (share(to) - share(from)), 2) + "%\" y=\"" + std::to_string(top) +
           "\" height=\"" + std::to_string(height) + "\"/>\n";
  }
  [[nodiscard]] std::string axis() const {
    std::string html = "<line class=\"axis\" x1=\"0%\" x2=\"100%\" y1=\"46\" y2=\"46\"/>\n";
    const auto steps = std::lround((line_.to - line_.from) / line_.step);
    for (long i = 0; i <= steps; ++i) {
      const double value = line_.from + static_cast<double>(i) * line_.step;
      const char* sign = line_.signed_numbers && value > 0.0 ? "+" : "";
      html += "<line class=\"axis\" x1=\"" + place(value) + "\" x2=\"" + place(value) +
              "\" y1=\"42\" y2=\"46\"/><text x=\"" + place(value) +
              "\" y=\"60\" text-anchor=\"middle\">" + sign +
              text_from_number(value, line_.decimals) + "</text>\n";
    }
    return html;
  }

  NumberLine line_;
};

std::string contrast_line(const Judgement& judgement) {
  if (!judgement.light_or_time.contrast_index) {
    return "";
  }
  const Quantity& contrast = *judgement.light_or_time.contrast_index;
  const Aim& aim = judgement.aim;
  NumberLine line{0.2,
                  1.0,
                  0.2,
                  1,
                  false,
                  aim.contrast_index - aim.tolerance,
                  aim.contrast_index + aim.tolerance,
                  "aim",
                  "Contrast index of this roll beside the aim"};
  return "<p>Contrast index about <b>" +
         sentence_html(sentence_from_density(contrast, DensityUnits::density)) + "</b>; " +
         html_escaped(aim_source_words(aim)) + " is " + text_from_number(aim.contrast_index, 2) +
         ", and nothing within " + text_from_number(aim.tolerance, 2) +
         " of it is called wrong.</p>\n" + LineDrawing(line).html(contrast);
}

std::string light_line(const LightOrTime& weighed) {
  if (!weighed.exposure_stops) {
    return "";
  }
  const NumberLine line{-3.0,
                        3.0,
                        1.0,
                        0,
                        true,
                        -weighed.latitude_stops,
                        weighed.latitude_stops,
                        "right",
                        "Light that this roll got, in stops from the usual placement"};
  return "<p>Light <b>" +
         sentence_html(sentence_from_density(*weighed.exposure_stops, DensityUnits::density)) +
         " stops</b> from the usual placement; more is plus.</p>\n" +
         LineDrawing(line).html(*weighed.exposure_stops);
}

}  // namespace

std::string light_part(const RollRecord& record) {
  const LightOrTime& weighed = record.judgement.light_or_time;
  std::string html;
  for (const Finding* finding : findings_at(record, FindingPlace::light_or_time)) {
    // The five causes stand in the table, with the evidence they share.
    if (!weighed.judged() || finding->cause == Cause::weak_developer ||
        finding->cause == Cause::drift) {
      html += "<p>" + sentence_html(finding_sentence(*finding)) + "</p>\n" +
              list_html(evidence_sentences(*finding));
    }
  }
  if (weighed.judged()) {
    html += "<div class=\"weigh\">\n" + odds_table(*weighed.causes) + "<figure class=\"lines\">\n" +
            contrast_line(record.judgement) + light_line(weighed) + "</figure>\n</div>\n";
  } else if (const std::string reason = reason_sentence(weighed.causes.why()); !reason.empty()) {
    html += "<p>" + sentence_html(reason) + "</p>\n";
  }
  html += list_html(evidence_sentences(weighed.evidence));
  if (weighed.would_tell_most) {
    html += "<p>What would tell most: " +
            sentence_html(std::string(measurement_sentence(*weighed.would_tell_most))) + "</p>\n";
  }
  return html;
}

}  // namespace fogline
