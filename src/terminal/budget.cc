#include "terminal/budget.h"

#include "words/budget_words.h"
#include "words/report_words.h"

#include <vector>

namespace fogline {

void put_budgets(TextLayout& layout, const RollMeasurement& measurement, DensityUnits units) {
  std::vector<std::vector<std::string>> rows = budget_rows(measurement, units);
  if (rows.empty()) {
    layout.paragraph(no_budget_sentence());
    return;
  }
  rows.insert(rows.begin(), budget_head());
  put_columns(layout, rows);
  layout.paragraph(budget_explanation());
}

}  // namespace fogline
