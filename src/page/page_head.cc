#include "page/draw/escape.h"
#include "page/page_parts.h"
#include "words/recipe.h"
#include "words/safety.h"
#include "words/verdict.h"

#include <algorithm>

// The first screen: verdict, tonight, next roll. It must fit a phone of 360 by 640 points, so steps
// are told by what is done here and in full further down.

namespace fogline {
namespace {

constexpr std::size_t steps_at_first = 3;

std::string short_name(const std::string& file) {
  return file.substr(file.rfind('/') + 1);  // npos + 1 is 0: a name without folders
}

std::string eyebrow(const RollRecord& record) {
  std::string text;
  if (record.card) {
    text = record.card->name;
    text += record.card->film ? " · " + *record.card->film : "";
    text += record.card->developed ? " · " + *record.card->developed : "";
    return text;
  }
  return page_title(record.measurement) +
         (record.measurement.scans.size() > 1 ? " and others" : "");
}

std::string tonight(const Advice& advice) {
  const std::vector<TonightStep> steps = tonight_steps(advice);
  if (steps.empty()) {
    return "";
  }
  std::string html = "<div class=\"tonight\">\n<h2>Do tonight";
  html += tonight_goes_on(advice) ? " <a href=\"#tonight\">in full</a>" : "";
  html += "</h2>\n<ol>\n";
  for (std::size_t i = 0; i < std::min(steps.size(), steps_at_first); ++i) {
    html += "<li>" + sentence_html(steps[i].what) + "</li>\n";
  }
  return html + "</ol>\n</div>\n";
}

std::string next_roll(const Advice& advice) {
  std::string html = "<div class=\"next\">\n<h2>Next roll <a href=\"#baths\">why</a></h2>\n<dl>\n";
  for (const RecipeLine& line : recipe_lines(advice)) {
    html += "<div class=\"" + std::string(line.name) + "\"><dt>" + std::string(line.name) +
            "</dt><dd>" + sentence_html(line.setting);
    html += line.note.empty() ? "" : " <span>" + sentence_html(line.note) + "</span>";
    html += "</dd></div>\n";
  }
  return html + "</dl>\n" + cautions_link() + "</div>\n";
}

}  // namespace

std::string cautions_link() {
  return "<p class=\"small\">" + std::string(safety_line()) +
         " <a href=\"#cautions\">All cautions</a></p>\n";
}

std::string page_title(const RollMeasurement& measurement) {
  if (!measurement.scans.empty()) {
    return short_name(measurement.scans.front().info.file);
  }
  return measurement.unread.empty() ? "no scan" : short_name(measurement.unread.front().file);
}

bool tells_little(const RollMeasurement& measurement) {
  return std::any_of(measurement.scans.begin(), measurement.scans.end(), [](const auto& scan) {
    return scan.fitness == Fitness::marks_only || scan.fitness == Fitness::unfit;
  });
}

bool tonight_goes_on(const Advice& advice) {
  const std::vector<TonightStep> steps = tonight_steps(advice);
  return steps.size() > steps_at_first ||
         std::any_of(steps.begin(), steps.end(),
                     [](const TonightStep& step) { return step.what != step.full; });
}

std::string head_part(const RollRecord& record, DensityUnits units) {
  const Verdict verdict = verdict_of(record, units);
  std::string html = "<header>\n<p class=\"eyebrow\">" + html_escaped(eyebrow(record)) +
                     "</p>\n<h1>" + sentence_html(verdict.judgement) + "</h1>\n";
  for (const std::string& sentence :
       {verdict.also, tells_little(record.measurement) ? verdict.trust : std::string()}) {
    html += sentence.empty() ? "" : "<p>" + sentence_html(sentence) + "</p>\n";
  }
  html += "</header>\n";
  if (record.judgement.advice) {
    html += "<div class=\"todo\">\n" + tonight(*record.judgement.advice) +
            next_roll(*record.judgement.advice) + "</div>\n";
  }
  return html;
}

}  // namespace fogline
