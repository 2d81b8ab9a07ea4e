// Uses fogline as a stranger would: public headers only. Measures a scan whose base plus fog is
// known, and prints what it read. Exit status 0 if the library does what its headers promise.
//   consumer SCAN BASE_FOG
#include <fogline/base/refusal.h>
#include <fogline/pixels/open_scan.h>
#include <fogline/roll/measure_roll.h>
#include <fogline/tables/read_tables.h>

#include <cmath>
#include <cstdlib>
#include <iostream>
#include <string>

namespace {

/// A third of the doubt (95 %) that the reading itself states.
constexpr double tolerance = 0.006;

bool refuses_absent_scan() {
  try {
    fogline::open_scan("no-such-scan.tif", {});
  } catch (const fogline::FileError& error) {
    return error.file() == "no-such-scan.tif";
  }
  return false;
}

bool measures(const std::string& file, double true_base_fog) {
  const auto scan = fogline::open_scan(file, {});
  fogline::MeasureOptions options;
  options.knowledge = fogline::shipped_scan_knowledge();
  const fogline::MeasuredRoll roll = fogline::measure_roll(*scan, options);
  const auto& base_fog = roll.measurement.scans.front().base_fog;
  if (!base_fog) {
    return false;
  }
  std::cout << "base plus fog " << base_fog->visual.value << " +- " << base_fog->visual.u95 << '\n';
  return std::abs(base_fog->visual.value - true_base_fog) < tolerance;
}

}  // namespace

int main(int count, char** words) {
  if (count != 3 || !refuses_absent_scan() || !measures(words[1], std::atof(words[2]))) {
    std::cerr << "The installed library does not keep the promises of its headers.\n";
    return 1;
  }
  return 0;
}
