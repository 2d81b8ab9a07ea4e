#include "page/page_parts.h"
#include "words/phrases.h"
#include "words/report_words.h"
#include "words/rescan_lines.h"
#include "words/story.h"

#include <fogline/words/refusal_words.h>

#include <algorithm>

// What is told of the scans: whether they can be trusted, what isn't sure, how to scan better, how
// it was measured.

namespace fogline {
namespace {

Markup sheet(std::string_view title, const std::vector<std::string_view>& lines) {
  return Markup().add(Element("h3").text(title)).add(list_markup(lines));
}

}  // namespace

Markup trust_part(const RollPage& page) {
  Markup markup;
  for (const ScanMeasurement& scan : page.measurement().scans) {
    Element told("p");
    told.text(scan.info.file + ". ").add(sentence_markup(fitness_sentence(scan)));
    markup.add(told).add(cautions_list(scan.cautions));
  }
  for (const UnreadFile& file : page.measurement().unread) {
    Element told("p");
    told.text(file.file + ": ").add(Element("b").text(not_read_words())).text(". ");
    markup.add(told.add(sentence_markup(sentence_of_refusal(file.file, file.why))));
  }
  return markup.add(budget_part(page.measurement(), page.units));
}

Markup unsure_part(const RollPage& page) {
  return list_markup(unsure_sentences(page.record));
}

Markup scanning_part(const RollPage& page) {
  const auto& scans = page.measurement().scans;
  const auto by_camera = [](const ScanMeasurement& scan) { return scan.info.camera; };
  Element setup("div");
  setup.set("class", "small setup");
  if (scans.empty() || !std::all_of(scans.begin(), scans.end(), by_camera)) {
    setup.add(sheet(scan_sheet_words.whole_flatbed, flatbed_lines()));
  }
  if (std::any_of(scans.begin(), scans.end(), by_camera)) {
    setup.add(sheet(scan_sheet_words.whole_camera, camera_lines()));
  }
  return list_markup(scan_advice(page.record)).add(setup);
}

Markup method_part(const RollPage& page) {
  Markup markup;
  for (const ScanMeasurement& scan : page.measurement().scans) {
    markup.add(Element("h3").text(scan.info.file)).add(list_markup(method_sentences(scan)));
  }
  return markup.add(paragraph(method_explanation()));
}

}  // namespace fogline
