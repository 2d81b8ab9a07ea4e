#include "roll/reading/scan_budget.h"

#include "roll/reading/scan_doubt.h"

#include <string>

namespace fogline {

std::vector<DoubtBudget> strip_budgets(const ScanInfo& info, const StripReading& reading,
                                       const Known<BaseFog>& base_fog, const std::string& name,
                                       const std::vector<FrameMeasurement>& frames) {
  std::vector<DoubtBudget> budgets;
  if (!reading.clear) {
    return budgets;
  }
  if (base_fog) {
    budgets.push_back({name, base_fog->visual,
                       budget_of_density(doubt_of_clear_film(info, reading), base_fog->visual.value,
                                         reading.clear_silver.greatest)});
  }
  const DoubtSources doubt = doubt_of(info, reading);
  for (const FrameMeasurement& frame : frames) {
    const auto add = [&](const char* tone, const Known<Quantity>& quantity) {
      if (quantity) {
        const double net = quantity->value - base_below_silver(reading);
        budgets.push_back({"frame " + std::to_string(frame.number) + " " + tone, *quantity,
                           budget_of_density(doubt, quantity->value, net)});
      }
    };
    add("shadow", frame.tone.shadow);
    add("middle", frame.tone.middle);
    add("highlight", frame.tone.highlight);
  }
  return budgets;
}

}  // namespace fogline
