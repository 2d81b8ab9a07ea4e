#include "words/roll_numbers.h"

#include "process/paper_grade.h"
#include "words/film_words.h"
#include "words/judgement_words.h"
#include "words/phrases.h"
#include "words/verdict.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace fogline {
namespace {

std::string plain(const Quantity& quantity) {
  return sentence_from_density(quantity, DensityUnits::density);
}

class Numbers {
 public:
  void add(const char* name, std::string value, std::string note = "") {
    numbers_.push_back({name, std::move(value), std::move(note)});
  }
  std::vector<RollNumber> take() { return std::move(numbers_); }

 private:
  std::vector<RollNumber> numbers_;
};

void add_clear_film(Numbers& numbers, const RollMeasurement& measurement, DensityUnits units) {
  if (const auto base_fog = roll_base_fog(measurement)) {
    const bool several = measurement.scans.size() > 1;
    numbers.add("base plus fog", sentence_from_density(*base_fog, units),
                several ? "the middle one of the scans"
                        : std::string("read ").append(
                              place_phrase(measurement.scans.front().base_fog->source)));
  }
  for (const ScanMeasurement& scan : measurement.scans) {
    if (!scan.tint.components.empty()) {
      const TintComponent& tint = scan.tint.components.front();
      numbers.add("tint", sentence_from_density(tint.density, units),
                  std::string(tint_name(tint.kind)));
      return;
    }
  }
}

/// A median of the frames, counted from where the scan counts, and above clear film.
void add_tone(Numbers& numbers, const char* name, const Known<Quantity>& tone,
              const Known<Quantity>& net, DensityUnits units, std::string note = "") {
  if (tone) {
    note += note.empty() || !net ? "" : ", ";
    note += net ? sentence_from_density(*net, units) + " above base plus fog" : "";
    numbers.add(name, sentence_from_density(*tone, units), note);
  }
}

void add_tones(Numbers& numbers, const RollMeasurement& measurement, DensityUnits units) {
  if (!measurement.medians) {
    return;
  }
  const RollMedians& medians = *measurement.medians;
  const std::size_t frames = counted_frames(measurement).size();
  const std::string median = frames > 1 ? "median of " + std::to_string(frames) + " frames" : "";
  add_tone(numbers, "shadow", medians.shadow, medians.net_shadow, units, median);
  add_tone(numbers, "middle", medians.middle, medians.net_middle, units);
  add_tone(numbers, "highlight", medians.highlight, medians.net_highlight, units);
  if (medians.range) {
    const auto paper = asked_paper_range(measurement);
    numbers.add("range", sentence_from_density(*medians.range, units),
                paper ? "asks for paper of about log range " +
                            text_from_number(paper->value, decimals_from_doubt(paper->u95))
                      : std::string());
  }
}

void add_belief(Numbers& numbers, const Judgement& judgement, const std::string& told) {
  const auto& contrast = judgement.light_or_time.contrast_index;
  if (contrast && told.find(plain(*contrast)) == std::string::npos) {
    numbers.add("contrast index", plain(*contrast),
                "aim " + text_from_number(judgement.aim.contrast_index, 2) + " ± " +
                    text_from_number(judgement.aim.tolerance, 2));
  }
  const auto& stops = judgement.light_or_time.exposure_stops;
  if (stops) {
    Quantity amount = *stops;
    amount.value = std::abs(amount.value);
    if (told.find(plain(amount)) == std::string::npos) {
      numbers.add("light", plain(*stops) + " stops", "from the usual placement; more is plus");
    }
  }
}

void add_curve(Numbers& numbers, const JudgedRoll& roll) {
  if (!roll.measurement.sensitometry) {
    return;
  }
  const Sensitometry& read = *roll.measurement.sensitometry;
  numbers.add("exposures", std::to_string(read.curve.steps.size()), "through which the curve runs");
  if (const auto& gamma = read.readings.gamma) {
    numbers.add("gamma", plain(*gamma), "slope of the straight line");
  }
  if (const auto& index = read.placement.exposure_index) {
    const std::optional<double>& set = read.scale.exposure_index;
    numbers.add("exposure index",
                text_from_number(index->value, 0) + " ± " + text_from_number(index->u95, 0),
                "Zone I at the speed point" +
                    (set ? "; " + text_from_number(*set, 0) + " was set" : std::string()));
  }
  const auto& curve = roll.judgement.curve;
  if (curve && curve->diffusion_range && curve->condenser_range) {
    numbers.add("paper", "R " + std::to_string(iso_range(curve->diffusion_range->value)),
                "ISO range by diffusion light; R " +
                    std::to_string(iso_range(curve->condenser_range->value)) + " by condenser");
  }
}

void add_marks(Numbers& numbers, const RollMeasurement& measurement) {
  std::vector<const Mark*> marks;
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const Mark& mark : scan.marks) {
      marks.push_back(&mark);
    }
  }
  if (!marks.empty()) {
    numbers.add("marks", std::to_string(marks.size()), mark_counts(marks));
  }
}

}  // namespace

std::vector<RollNumber> roll_numbers(const JudgedRoll& roll, DensityUnits units) {
  Numbers numbers;
  add_belief(numbers, roll.judgement, judgement_sentence(roll));
  add_clear_film(numbers, roll.measurement, units);
  add_tones(numbers, roll.measurement, units);
  add_curve(numbers, roll);
  add_marks(numbers, roll.measurement);
  return numbers.take();
}

}  // namespace fogline
