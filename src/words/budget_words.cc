#include "words/budget_words.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace fogline {

namespace {

struct SourceColumn {
  DoubtSource source;
  std::string_view head;
};

constexpr std::array<SourceColumn, 8> source_columns{{{DoubtSource::noise, "noise"},
                                                      {DoubtSource::zero, "zero"},
                                                      {DoubtSource::evenness, "even"},
                                                      {DoubtSource::clipping, "clipped"},
                                                      {DoubtSource::stray_light, "stray"},
                                                      {DoubtSource::transfer, "curve"},
                                                      {DoubtSource::certificate, "wedge"},
                                                      {DoubtSource::angle, "angle"}}};

constexpr std::string_view explanation =
    "Half widths that cover 95 of 100, by source; they add in squares. noise: noise and grain over "
    "the area. zero: scatter of the bare light. even: lamp and lens between the places of bare "
    "light. clipped: bare light at the top code. stray: veiling glare left. curve: tone curve, or "
    "the calibration's residual. wedge: the wedge's certificate. angle: directed light reads "
    "silver "
    "denser than a densitometer does; a silver wedge takes that out, but not for the film's base. "
    "The last column is the part that all rolls of this scanner and calibration share: it cancels "
    "when they are compared.";

std::string three_decimals(double value) {
  return std::isfinite(value) ? text_from_number(value, 3) : std::string("–");
}

/// A number's name as people say it. Of several strips each has its base plus fog, named by the
/// strip's place in the report: "strips[0].base_fog".
std::string name_of(const std::string& number) {
  constexpr std::string_view one = "base_fog";
  constexpr std::string_view before = "strips[";
  constexpr std::string_view after = "].base_fog";
  if (number == one) {
    return "base plus fog";
  }
  std::size_t place = 0;
  if (number.starts_with(before) && number.ends_with(after)) {
    std::from_chars(number.data() + before.size(), number.data() + number.size(), place);
    return "strip " + std::to_string(place + 1) + " base plus fog";
  }
  return number;
}

/// One row: name, density with its doubt, a cell a source, the common part.
std::vector<std::string> cells_of(const DoubtBudget& budget, DensityUnits units) {
  const double scale = units == DensityUnits::stops ? 1.0 / std::log10(2.0) : 1.0;
  const NumberText number = text_from_density(budget.quantity, units);
  std::vector<std::string> cells{name_of(budget.number),
                                 number.value + (number.doubt.empty() ? "" : " " + number.doubt)};
  for (const SourceColumn& column : source_columns) {
    const auto line = std::find_if(budget.lines.begin(), budget.lines.end(),
                                   [&](const BudgetLine& l) { return l.source == column.source; });
    cells.push_back(line == budget.lines.end()
                        ? std::string("–")
                        : three_decimals(scale * coverage_factor_95 * line->standard_density));
  }
  cells.push_back(budget.quantity.u95_common ? three_decimals(scale * *budget.quantity.u95_common)
                                             : std::string("–"));
  return cells;
}

}  // namespace

std::vector<std::string> budget_head() {
  std::vector<std::string> cells{"number", "density"};
  for (const SourceColumn& column : source_columns) {
    cells.emplace_back(column.head);
  }
  cells.emplace_back("shared");
  return cells;
}

std::string_view budget_explanation() {
  return explanation;
}

std::vector<std::vector<std::string>> budget_rows(const RollMeasurement& measurement,
                                                  DensityUnits units) {
  std::vector<std::vector<std::string>> rows;
  for (const ScanMeasurement& scan : measurement.scans) {
    for (const DoubtBudget& budget : scan.budgets) {
      rows.push_back(cells_of(budget, units));
    }
  }
  return rows;
}

}  // namespace fogline
