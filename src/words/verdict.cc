#include "words/verdict.h"

#include "process/paper_grade.h"
#include "words/caution_words.h"
#include "words/judgement_words.h"
#include "words/phrases.h"

#include <algorithm>

namespace fogline {
namespace {

bool counts_from_base(const RollMeasurement& measurement) {
  return std::any_of(measurement.scans.begin(), measurement.scans.end(), [](const auto& scan) {
    return scan.densities_above == DensitiesAbove::base && !scan.frames.empty();
  });
}

// The film's kind where all strips agree on it, else just "film".
std::string film_of(const RollMeasurement& measurement) {
  std::optional<FilmFormat> format;
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const StripMeasurement& strip : scan.strips) {
      if (format && *format != strip.format) {
        return "film";
      }
      format = strip.format;
    }
  }
  return std::string(film_phrase(format.value_or(FilmFormat::unknown)));
}

std::string span_phrase(const std::vector<const FrameMeasurement*>& frames, DensityUnits units) {
  const Quantity* thinnest = nullptr;
  const Quantity* densest = nullptr;
  for (const FrameMeasurement* frame : frames) {
    const auto& [shadow, middle, highlight, range, paper_range] = frame->tone;
    if (shadow && (thinnest == nullptr || shadow->value < thinnest->value)) {
      thinnest = &*shadow;
    }
    if (highlight && (densest == nullptr || highlight->value > densest->value)) {
      densest = &*highlight;
    }
  }
  if (thinnest == nullptr || densest == nullptr) {
    return "";
  }
  return text_from_density(*thinnest, units).value + " to " +
         text_from_density(*densest, units).value + (units == DensityUnits::stops ? " stops" : "");
}

std::string reading_of_frames(const RollMeasurement& measurement, DensityUnits units) {
  const auto frames = counted_frames(measurement);
  const bool from_base = counts_from_base(measurement);
  std::string text = count_word(frames.size()) +
                     (frames.size() == 1 ? " frame on " : " frames on ") + film_of(measurement) +
                     ": ";
  const auto base_fog = roll_base_fog(measurement);
  if (base_fog) {
    text += "base plus fog " + sentence_from_density(*base_fog, units);
  } else {
    text += "base plus fog can't be told";
  }
  const std::string span = span_phrase(frames, units);
  if (!span.empty()) {
    text += std::string(", picture densities ") + (from_base ? "above clear film " : "") + span;
  }
  if (measurement.medians && measurement.medians->range) {
    text += " (median range " + sentence_from_density(*measurement.medians->range, units) + ")";
  }
  // A paper's range is a property of paper, given in log exposure whatever the units of density. To
  // as many places as the frames' range, so that the two don't seem to differ.
  if (const auto paper = asked_paper_range(measurement)) {
    text += ", which asks for paper of about log range " +
            text_from_number(paper->value, decimals_from_doubt(paper->u95));
  }
  return capitalised(text) + ".";
}

std::string reading_without_frames(const RollMeasurement& measurement, DensityUnits units) {
  if (measurement.scans.empty()) {
    return "No scan could be read.";
  }
  const bool any_film = std::any_of(measurement.scans.begin(), measurement.scans.end(),
                                    [](const auto& scan) { return !scan.strips.empty(); });
  if (!any_film) {
    return "No film was found.";
  }
  const auto base_fog = roll_base_fog(measurement);
  const std::string film = film_of(measurement);
  if (measurement.sensitometry && base_fog) {
    return capitalised(count_word(measurement.sensitometry->curve.steps.size())) +
           " known exposures on " + film + "; base plus fog is " +
           sentence_from_density(*base_fog, units) + ".";
  }
  if (base_fog) {
    return "No frame was found on the " + film + "; base plus fog is " +
           sentence_from_density(*base_fog, units) + ".";
  }
  return "On the " + film + " no density could be read.";
}

std::string trust_of(const RollMeasurement& measurement) {
  const ScanMeasurement* worst = nullptr;
  std::size_t at_worst = 0;
  for (const ScanMeasurement& scan : measurement.scans) {
    if (worst == nullptr || scan.fitness > worst->fitness) {
      worst = &scan;
      at_worst = 0;
    }
    at_worst += scan.fitness == worst->fitness ? 1U : 0U;
  }
  if (worst == nullptr) {
    return "";
  }
  std::string text = fitness_sentence(*worst);
  for (const Caution& caution : worst->cautions) {
    if (worst->fitness == Fitness::unfit && caution.severity == Severity::unfit) {
      text += " " + caution_sentence(caution);
      break;
    }
  }
  if (at_worst < measurement.scans.size()) {
    text = "Of " + count_word(measurement.scans.size()) + " scans, " + count_word(at_worst) +
           (at_worst == 1 ? " is weakest. " : " are weakest. ") + text;
  }
  return text;
}

}  // namespace

std::vector<const FrameMeasurement*> counted_frames(const RollMeasurement& measurement) {
  std::vector<const FrameMeasurement*> frames;
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const FrameMeasurement& frame : scan.frames) {
      if (!frame.repeats_frame && !frame.target && (frame.tone.shadow || frame.tone.middle)) {
        frames.push_back(&frame);
      }
    }
  }
  return frames;
}

std::optional<Quantity> roll_base_fog(const RollMeasurement& measurement) {
  std::vector<Quantity> values;
  for (const ScanMeasurement& scan : measurement.scans) {
    if (scan.base_fog) {
      values.push_back(scan.base_fog->visual);
    }
  }
  if (values.empty()) {
    return std::nullopt;
  }
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end(),
                   [](const Quantity& a, const Quantity& b) { return a.value < b.value; });
  return *middle;
}

Verdict verdict_of(const JudgedRoll& record, DensityUnits units) {
  const RollMeasurement& measurement = record.measurement;
  return {judgement_sentence(record), also_sentence(record),
          counted_frames(measurement).empty() ? reading_without_frames(measurement, units)
                                              : reading_of_frames(measurement, units),
          trust_of(measurement)};
}

}  // namespace fogline
