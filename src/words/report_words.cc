#include "words/report_words.h"

#include "words/aim_words.h"
#include "words/curve_words.h"
#include "words/evidence_words.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/phrases.h"
#include "words/unknown_words.h"

#include <algorithm>

namespace fogline {

std::string report_name(const RollMeasurement& measurement) {
  if (!measurement.scans.empty()) {
    return short_name(measurement.scans.front().info.file);
  }
  return measurement.unread.empty() ? "no scan" : short_name(measurement.unread.front().file);
}

std::string report_eyebrow(const JudgedRoll& roll) {
  if (!roll.card) {
    return report_name(roll.measurement) + (roll.measurement.scans.size() > 1 ? " and others" : "");
  }
  std::string text = roll.card->name;
  text += roll.card->film ? " · " + *roll.card->film : "";
  text += roll.card->developed ? " · " + *roll.card->developed : "";
  return text;
}

std::string report_title(const std::string& name) {
  return name + " – roll report";
}

std::string calibration_title(const std::string& name) {
  return name + " – scanner calibration";
}

std::string short_name(const std::string& file) {
  return file.substr(file.rfind('/') + 1);  // npos + 1 is 0: a name without folders
}

std::string written_by(const std::string& tool_version) {
  return "Written by fogline " + tool_version +
         ". This page holds everything it shows: no script, no network.";
}

std::string_view calibration_use() {
  return "Use it: fogline measure strip.tif --scanner SCANNER.json";
}

std::string_view no_objection() {
  return "Nothing stands against it.";
}

std::string_view nameless_scanner() {
  return "scanner";
}

std::string_view left_out_words() {
  return "left out";
}

std::string_view all_cautions_words() {
  return "All cautions";
}

std::string_view whole_steps_words() {
  return "in full";
}

std::string_view reasons_words() {
  return "why";
}

std::string_view not_read_words() {
  return "not read";
}

std::string base_fog_sentence(const ScanMeasurement& scan, DensityUnits units) {
  if (!scan.base_fog) {
    const std::string reason = told_reason(scan.base_fog);
    return "Base plus fog isn't known." + (reason.empty() ? reason : " " + reason);
  }
  std::string text = "Base plus fog is " + sentence_from_density(scan.base_fog->visual, units) +
                     ", read " + std::string(place_phrase(scan.base_fog->source));
  if (scan.base_fog->area_mm2) {
    text += " over " + text_from_number(*scan.base_fog->area_mm2, 0) + " mm²";
  }
  return text + ": the film's own base, with whatever veil and dye is left in it.";
}

std::string channel_sentence(const ScanMeasurement& scan, DensityUnits units) {
  if (!scan.base_fog || !scan.base_fog->channels) {
    return "";
  }
  const auto& [red, green, blue] = *scan.base_fog->channels;
  return "In this scanner's own bands: red " + sentence_from_density(red, units) + ", green " +
         sentence_from_density(green, units) + ", blue " + sentence_from_density(blue, units) + ".";
}

std::vector<std::string> belief_sentences(const Judgement& judgement) {
  const LightOrTime& weighed = judgement.light_or_time;
  std::vector<std::string> sentences;
  if (weighed.contrast_index) {
    sentences.push_back("Contrast index as believed now " +
                        sentence_from_density(*weighed.contrast_index, DensityUnits::density) +
                        "; the aim is " + text_from_number(judgement.aim.contrast_index, 2) +
                        " ± " + text_from_number(judgement.aim.tolerance, 2) + " (" +
                        aim_source_words(judgement.aim) + ").");
  }
  if (weighed.exposure_stops) {
    sentences.push_back("Light over the usual placement " +
                        sentence_from_density(*weighed.exposure_stops, DensityUnits::density) +
                        " stops (more is plus).");
  }
  return sentences;
}

std::string would_tell_sentence(const LightOrTime& weighed) {
  return weighed.would_tell_most ? "What would tell most: " +
                                       std::string(measurement_sentence(*weighed.would_tell_most))
                                 : "";
}

std::vector<const Finding*> findings_beside_causes(const JudgedRoll& roll) {
  std::vector<const Finding*> found = findings_at(roll, FindingPlace::light_or_time);
  if (roll.judgement.light_or_time.judged()) {
    std::erase_if(found, [](const Finding* finding) {
      return finding->cause != Cause::weak_developer && finding->cause != Cause::drift;
    });
  }
  return found;
}

std::string zones_sentence(const ZonePlacement& placement) {
  std::string text = "Net density of zones 0 to X:";
  for (const ZoneDensity& zone : placement.zones) {
    text += " ";
    text += zone.net_density ? text_from_number(zone.net_density->value, 2) : std::string("–");
  }
  return text + (placement.metered ? " (the metered tone on Zone V)."
                                   : " (Zone I laid on the speed point).");
}

std::vector<std::string> mark_sentences(const ScanMeasurement& scan, const MarkList& list) {
  std::vector<std::string> sentences;
  if (list.numbered.empty() && !scan.marks_limit) {
    sentences.emplace_back("No mark was found.");
  }
  if (scan.marks_limit) {
    sentences.push_back(unknown_sentence(*scan.marks_limit));
  }
  if (!list.others.empty()) {
    sentences.push_back("Less telling, outlined without a number: " + mark_counts(list.others) +
                        ".");
  }
  return sentences;
}

std::string frame_note(const FrameMeasurement& frame) {
  if (frame.repeats_frame) {
    return std::string("(").append(std::to_string(*frame.repeats_frame)).append(" again)");
  }
  return frame.cut ? "(cut)" : frame.inferred ? "(blank?)" : "";
}

std::string_view whole_setup_sentence() {
  return "The whole set-up: fogline help scanning.";
}

std::string_view method_explanation() {
  return "Density is how many times less light comes through, as a power of ten: 0.3 halves the "
         "light, 1.0 leaves a tenth. Shadow, middle and highlight are the 2nd, 50th and 98th "
         "percentile of a frame's density over spots of 0.1 mm, its border left out. A doubt (±) "
         "covers the true value 95 times in 100. Paper suits a frame whose range is the paper's "
         "own (ISO 6846).";
}

std::string measured_by(const std::string& tool_version) {
  return "Measured by fogline " + tool_version + ".";
}

std::string_view no_budget_sentence() {
  return "No density was told, so there is no doubt to break up.";
}

}  // namespace fogline
