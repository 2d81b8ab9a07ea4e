#include "terminal/budget.h"

#include "words/budget_words.h"
#include "words/columns.h"

#include <algorithm>
#include <vector>

namespace fogline {

void put_budgets(TextLayout& layout, const RollMeasurement& measurement, DensityUnits units) {
  std::vector<std::vector<std::string>> rows = budget_rows(measurement, units);
  rows.insert(rows.begin(), budget_head());
  layout.heading("Where each doubt comes from");
  if (rows.size() == 1) {
    layout.paragraph("No density was told, so there is no doubt to break up.");
    return;
  }
  std::vector<std::size_t> widths(rows.front().size(), 0);
  for (const std::vector<std::string>& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths[i] = std::max(widths[i], columns(row[i]));
    }
  }
  for (std::size_t r = 0; r < rows.size(); ++r) {
    std::string line;
    for (std::size_t i = 0; i < rows[r].size(); ++i) {
      line += padded(rows[r][i], widths[i]) + "  ";
    }
    layout.line(line.substr(0, line.find_last_not_of(' ') + 1), r == 0);
  }
  layout.paragraph(budget_explanation());
}

}  // namespace fogline
