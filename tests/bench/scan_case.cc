#include "scan_case.h"

#include "bare_decode.h"
#include "compare.h"
#include "simulator/render.h"
#include "simulator/scenario_sampling.h"

#include <fogline/base/error.h>
#include <fogline/io/open_scan.h>
#include <fogline/roll/measure_roll.h>

#include <chrono>
#include <filesystem>

namespace bench {

namespace {

double seconds_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

bool Compared::covers() const {
  if (at_least) {
    return truth >= lower95.value_or(value - u95);
  }
  return truth >= lower95.value_or(value - u95) && truth <= upper95.value_or(value + u95);
}

ScanCase run_case(const CaseName& name, const std::string& folder, bool timed) {
  ScanCase result;
  result.name = name;
  const filmsim::Simulated simulated =
      filmsim::render(filmsim::sample_scenario(name.kind, name.seed));
  const std::string path =
      write_scan(simulated, folder + "/" + name.kind + "-" + std::to_string(name.seed) + ".tif");
  result.bits = simulated.scenario.encoding.bits;
  result.expected_fitness = simulated.truth.expected_fitness;
  try {
    if (timed && path.ends_with(".tif")) {
      result.decode_s = bare_decode_seconds(path);
    }
    const auto start = std::chrono::steady_clock::now();
    const auto source = fogline::open_scan(path, {});
    std::vector<fogline::ScanMeasurement> scans;
    scans.push_back(fogline::measure_scan(*source, {}, 1, {}));
    const fogline::RollMeasurement roll = fogline::join_scans(std::move(scans));
    result.measure_s = seconds_since(start);
    result.read = true;
    compare(simulated, roll, result);
  } catch (const std::exception& error) {
    result.trouble = error.what();
  }
  std::filesystem::remove(path);
  std::filesystem::path truth(path);
  std::filesystem::remove(truth.replace_extension(".truth.json"));
  return result;
}

}  // namespace bench
