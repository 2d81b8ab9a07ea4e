#include "roll/reading/scan_budget.h"

#include "density/callier.h"
#include "roll/reading/scan_doubt.h"

#include <string>

namespace fogline {

void add_budgets(ScanMeasurement& scan, const ScanWork& work) {
  for (std::size_t i = 0; i < work.readings.size(); ++i) {
    const StripReading& reading = work.readings[i];
    if (!reading.clear) {
      continue;
    }
    const DoubtSources doubt = doubt_of(scan.info, reading);
    const Known<BaseFog>& base_fog = scan.strips[i].base_fog;
    if (base_fog) {
      scan.budgets.push_back(
          {scan.strips.size() == 1 ? "base_fog" : "strips[" + std::to_string(i) + "].base_fog",
           base_fog->visual,
           budget_of_density(doubt_of_clear_film(scan.info, reading), base_fog->visual.value,
                             usual_fog)});
    }
    for (const FrameMeasurement& frame : scan.frames) {
      if (frame.strip != static_cast<int>(i) + 1) {
        continue;
      }
      const std::string name = "frame " + std::to_string(frame.number) + " ";
      const auto add = [&](const char* tone, const Known<Quantity>& quantity) {
        if (quantity) {
          const double net = quantity->value - reading.clear->visual;
          scan.budgets.push_back(
              {name + tone, *quantity, budget_of_density(doubt, quantity->value, net)});
        }
      };
      add("shadow", frame.tone.shadow);
      add("middle", frame.tone.middle);
      add("highlight", frame.tone.highlight);
    }
  }
}

}  // namespace fogline
