// A roll as the advice sees it, set up by hand; every number is invented.
#pragma once

#include "process/advice/advise.h"

#include <fogline/tables/prior_knowledge.h>

#include <string>
#include <utility>
#include <vector>

namespace fogline {

struct AdviceCase {
  RollMeasurement roll;
  LightOrTime light_or_time;
  std::vector<Finding> findings;
  Aim aim{0.58, 0.05, "the usual aim"};
  ProcessPriors priors = shipped_prior_knowledge().process;
  RollCard card;
  bool with_card = true;

  AdviceCase() {
    ScanMeasurement scan;
    scan.fitness = Fitness::comparable;
    roll.scans.push_back(std::move(scan));
    light_or_time.judged = true;
    light_or_time.causes.normal = 1.0;
    card.name = "invented";
    card.film_type = FilmType::cubic;
  }

  void contrast(double value, double u95) { light_or_time.contrast_index = quantity(value, u95); }
  void developed(double time_s, double temperature_c) {
    card.development.time_s = time_s;
    card.development.temperature_c = temperature_c;
  }
  void find(const std::string& code, double confidence = 0.9) {
    findings.push_back({code, confidence, "", {}});
  }
  void tint(TintKind kind, double confidence = 0.9) {
    Tint& found = roll.scans.front().tint;
    found.kind = kind;
    found.may_be_stock = false;
    if (kind != TintKind::none) {
      found.components.push_back({kind, quantity(0.06, 0.02), confidence});
    }
  }
  [[nodiscard]] Advice advise() const {
    return fogline::advise(
        {roll, light_or_time, findings, aim, priors, with_card ? &card : nullptr});
  }

  static Quantity quantity(double value, double u95) {
    Quantity made;
    made.value = value;
    made.u95 = u95;
    return made;
  }
};

/// All of a list of sentences, for a search.
inline std::string joined(const std::vector<std::string>& sentences) {
  std::string text;
  for (const std::string& sentence : sentences) {
    text += sentence + "\n";
  }
  return text;
}

}  // namespace fogline
