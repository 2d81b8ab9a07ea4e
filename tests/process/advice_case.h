// A roll as the advice sees it, set up by hand; every number is invented.
#pragma once

#include "process/advice/advise.h"
#include "process/prior_knowledge.h"

#include <fogline/tables/read_tables.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>
#include <vector>

namespace fogline {

struct AdviceCase {
  RollMeasurement roll;
  LightOrTime light_or_time;
  std::vector<Finding> findings;
  Aim aim;
  ProcessPriors priors = shipped_prior_knowledge()->process;
  RollCard card;
  bool with_card = true;

  AdviceCase() {
    ScanMeasurement scan;
    scan.fitness = Fitness::comparable;
    roll.scans.push_back(std::move(scan));
    light_or_time.causes = CauseProbabilities{1.0, 0.0, 0.0, 0.0, 0.0};
    card.name = "invented";
    card.film_type = FilmType::cubic;
  }

  void contrast(double value, double u95) { light_or_time.contrast_index = quantity(value, u95); }
  void developed(double time_s, double temperature_c) {
    card.development.time_s = time_s;
    card.development.temperature_c = temperature_c;
  }
  void find(Cause cause, double confidence = 0.9) {
    findings.push_back(finding_of(cause, confidence));
  }
  void light(const CauseProbabilities& causes, double stops, double u95) {
    light_or_time.causes = causes;
    light_or_time.exposure_stops = quantity(stops, u95);
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

/// Which kinds a list of facts holds, in its order.
template <typename Kind>
std::vector<Kind> kinds(const std::vector<Fact<Kind>>& facts) {
  std::vector<Kind> kinds;
  for (const Fact<Kind>& fact : facts) {
    kinds.push_back(fact.kind);
  }
  return kinds;
}

/// A number of the first fact of a kind, by its name; NaN where there is none.
template <typename Kind>
double number_of(const std::vector<Fact<Kind>>& facts, Kind kind, std::string_view name) {
  for (const Fact<Kind>& fact : facts) {
    const auto& names = fact_row(kind).numbers;
    const auto place = std::find(names.begin(), names.end(), name) - names.begin();
    if (fact.kind == kind && static_cast<std::size_t>(place) < fact.numbers.size()) {
      return fact.numbers[static_cast<std::size_t>(place)];
    }
  }
  return std::nan("");
}

}  // namespace fogline
