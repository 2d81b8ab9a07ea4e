#include "page/html.h"

#include "page/draw/escape.h"
#include "page/page_parts.h"
#include "page/page_style.h"
#include "words/caution_words.h"
#include "words/judgement_words.h"
#include "words/phrases.h"
#include "words/rescan_lines.h"
#include "words/safety.h"
#include "words/story.h"
#include "words/verdict.h"

#include <fogline/words/refusal_words.h>

namespace fogline {
namespace {

std::string section(std::string_view title, const std::string& body, std::string_view id = "") {
  if (body.empty()) {
    return "";
  }
  std::string html = "<section";
  html += id.empty() ? std::string() : " id=\"" + std::string(id) + "\"";
  return html + ">\n<h2>" + std::string(title) + "</h2>\n" + body + "</section>\n";
}

std::string head(const RollRecord& record, const std::string& title) {
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n" +
         std::string(page_marker) + html_escaped(record.tool_version) +
         "\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
         html_escaped(title) + "</title>\n<style>" + std::string(page_style()) +
         "</style>\n</head>\n<body>\n<main>\n";
}

std::string trust_part(const RollMeasurement& measurement) {
  std::string html;
  for (const ScanMeasurement& scan : measurement.scans) {
    html += "<p>" + html_escaped(scan.info.file) + ". " + sentence_html(fitness_sentence(scan)) +
            "</p>\n";
    if (!scan.cautions.empty()) {
      html += "<ul>\n";
      for (const Caution& caution : scan.cautions) {
        html +=
            std::string(caution.severity == Severity::note ? "<li>" : "<li class=\"weighty\">") +
            sentence_html(caution_sentence(caution)) + "</li>\n";
      }
      html += "</ul>\n";
    }
  }
  for (const UnreadFile& file : measurement.unread) {
    html += "<p>" + html_escaped(file.file) + ": <b>not read</b>. " +
            sentence_html(sentence_of_refusal(file.file, file.why)) + "</p>\n";
  }
  return html;
}

std::string clear_film_findings(const RollRecord& record) {
  std::string html;
  for (const std::string& sentence : fog_sentences(record)) {
    html += "<p>" + sentence_html(sentence) + "</p>\n";
  }
  return html;
}

std::string method_part(const RollRecord& record) {
  std::string html;
  for (const ScanMeasurement& scan : record.measurement.scans) {
    html += "<h3>" + html_escaped(scan.info.file) + "</h3>\n" + list_html(method_sentences(scan));
  }
  return html +
         "<p>Density is how many times less light comes through, as a power of ten: 0.3 halves the "
         "light, 1.0 leaves a tenth. Shadow, middle and highlight are the 2nd, 50th and 98th "
         "percentile of a frame's density over spots of 0.1 mm, its border left out. A doubt (±) "
         "covers the true value 95 times in 100. Paper suits a frame whose range is the paper's "
         "own "
         "(ISO 6846).</p>\n";
}

std::string sheet_html(std::string_view title, const std::vector<std::string_view>& lines) {
  return "<h3>" + std::string(title) + "</h3>\n" +
         list_html(std::vector<std::string>(lines.begin(), lines.end()));
}

std::string scanning_part(const RollRecord& record) {
  const std::vector<std::string> advice = scan_advice(record);
  bool any_camera = false;
  bool any_scanner = record.measurement.scans.empty();
  for (const ScanMeasurement& scan : record.measurement.scans) {
    any_camera = any_camera || scan.info.camera;
    any_scanner = any_scanner || !scan.info.camera;
  }
  std::string html = advice.empty() ? std::string() : list_html(advice);
  html += "<div class=\"small setup\">\n";
  html += any_scanner ? sheet_html("The whole set-up of a flatbed", flatbed_lines()) : "";
  html += any_camera ? sheet_html("The whole set-up of a camera", camera_lines()) : "";
  return html + "</div>\n";
}

std::string footer(const RollRecord& record) {
  std::string html = "</main>\n<footer id=\"cautions\">\n<h2>Cautions</h2>\n";
  const auto sentences = safety_sentences();
  html += list_html(std::vector<std::string>(sentences.begin(), sentences.end()));
  return html + "<p>Written by fogline " + html_escaped(record.tool_version) +
         ". This page holds everything it shows: no script, no network.</p>\n</footer>\n</body>\n"
         "</html>\n";
}

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos;
       at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
}

}  // namespace

std::string sentence_html(std::string_view sentence) {
  std::string html = html_escaped(sentence);
  replace_all(html, " ± ", "&nbsp;±&nbsp;");
  replace_all(html, " %", "&nbsp;%");
  replace_all(html, " °C", "&nbsp;°C");
  replace_all(html, "--transfer linear", "<span class=\"nb\">--transfer linear</span>");
  return html;
}

std::string list_html(const std::vector<std::string>& sentences) {
  if (sentences.empty()) {
    return "";
  }
  std::string html = "<ul>\n";
  for (const std::string& sentence : sentences) {
    html += "<li>" + sentence_html(sentence) + "</li>\n";
  }
  return html + "</ul>\n";
}

std::string html_from_record(const RollRecord& record, const std::vector<PagePicture>& pictures,
                             const HtmlOptions& options) {
  const RollMeasurement& measurement = record.measurement;
  const Verdict verdict = verdict_of(record, options.units);
  const std::vector<MarkList> marks = mark_lists(measurement);
  const bool several = measurement.scans.size() > 1;
  std::string figures = "<p>" + sentence_html(verdict.reading) + "</p>\n";
  std::string clear_film = clear_film_findings(record);
  std::string scales;
  for (std::size_t i = 0; i < measurement.scans.size(); ++i) {
    const ScanMeasurement& scan = measurement.scans[i];
    const PagePicture picture = i < pictures.size() ? pictures[i] : PagePicture{};
    figures += strip_figure(scan, picture, i, marks[i]);
    clear_film += clear_film_part(scan, options.units, several);
    scales += scale_figure(scan, picture, i, record.judgement.aim, options.units, several);
  }
  const std::string better = section("How to scan better", scanning_part(record));
  const bool better_first = tells_little(measurement);
  return head(record, page_title(measurement) + " – roll report") +
         head_part(record, options.units) + (better_first ? better : "") +
         section("The strip", figures) + "<div class=\"evidence\">\n" +
         section("Shadow and highlight", scales + frame_table(measurement, options.units)) +
         section("Light or time?", measurement.scans.empty() ? "" : light_part(record)) +
         section("The curve", curve_part(record)) + section("Clear film", clear_film) +
         section("Marks", marks_part(record, pictures, marks, options.units)) +
         section("Do tonight", tonight_part(record), "tonight") +
         section("Your baths", baths_part(record), "baths") +
         section("Can this scan be trusted?",
                 trust_part(measurement) + budget_part(measurement, options.units)) +
         section("What is not sure", list_html(unsure_sentences(record))) +
         (better_first ? "" : better) +
         section("How it was measured", measurement.scans.empty() ? "" : method_part(record)) +
         "</div>\n" + footer(record);
}

}  // namespace fogline
