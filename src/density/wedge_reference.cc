#include <fogline/density/scanner_calibration.h>

#include <cstdio>

namespace fogline {

WedgeReference nominal_wedge(int steps, double step_density) {
  // The lightest step of tablets as sold is film base and a little silver.
  constexpr double first_density = 0.05;
  WedgeReference reference;
  reference.nominal = true;
  char name[32];
  std::snprintf(name, sizeof name, "%dx%g", steps, step_density);
  reference.name = name;
  for (int i = 0; i < steps; ++i) {
    reference.steps.push_back({std::to_string(i + 1), first_density + step_density * i, {}});
  }
  return reference;
}

}  // namespace fogline
