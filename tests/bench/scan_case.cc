#include "scan_case.h"

#include "bare_decode.h"
#include "base_fog_limit.h"
#include "compare.h"
#include "measured_process.h"
#include "simulator/render.h"
#include "simulator/scenario_sampling.h"
#include "tables/shipped_knowledge.h"

#include <fogline/base/refusal.h>
#include <fogline/pixels/open_scan.h>
#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <filesystem>

namespace bench {

namespace {

double seconds_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

std::optional<fogline::RollMeasurement> by_library(const std::string& path, ScanCase& result) {
  const auto start = std::chrono::steady_clock::now();
  const auto source = fogline::open_scan(path, {});
  fogline::RollMeasurement roll =
      fogline::measure_roll(*source, fogline::shipped_options()).measurement;
  result.measure_s = seconds_since(start);
  return roll;
}

std::optional<fogline::RollMeasurement> by_process(const std::string& path,
                                                   const std::string& program, ScanCase& result) {
  const std::string json = path + ".report.json";
  MeasuredProcess process = measure_in_process(program, path, json);
  std::filesystem::remove(json);
  result.measure_s = process.seconds;
  result.peak_mb = process.peak_mb;
  result.trouble = process.trouble;
  return std::move(process.roll);
}

}  // namespace

bool Compared::covers() const {
  if (at_least) {
    return truth >= lower95.value_or(value - u95);
  }
  return truth >= lower95.value_or(value - u95) && truth <= upper95.value_or(value + u95);
}

ScanCase run_case(const CaseName& name, const std::string& folder, const std::string& program) {
  ScanCase result;
  result.name = name;
  const filmsim::Simulated simulated =
      filmsim::render(filmsim::sample_scenario(name.kind, name.seed));
  const std::string path =
      write_scan(simulated, folder + "/" + name.kind + "-" + std::to_string(name.seed) + ".tif");
  describe(simulated, result);
  result.foreign = simulated.scenario.foreign.has_value();
  result.finished = result.foreign && simulated.scenario.foreign->finish.has_value();
  // The limit knows the laws as assumed only.
  if (!result.foreign) {
    result.base_fog_between_holes = base_fog_error_between_holes(simulated);
  }
  if (result.base_fog_between_holes) {
    result.base_fog_limit = base_fog_limit_error(simulated.scenario);
  }
  try {
    const std::optional<fogline::RollMeasurement> roll =
        result.foreign ? by_process(path, program, result) : by_library(path, result);
    result.read = roll.has_value();
    result.glance = glance_at(simulated, roll ? &*roll : nullptr);
    if (roll) {
      compare(simulated, *roll, result);
    }
  } catch (const std::exception& error) {
    result.trouble = error.what();
  }
  std::filesystem::remove(path);
  std::filesystem::path truth(path);
  std::filesystem::remove(truth.replace_extension(".truth.json"));
  return result;
}

Timing time_large(double megapixels, bool compressed, const std::string& folder) {
  filmsim::Scenario scenario = filmsim::sample_scenario("flatbed-135-open", 1);
  const double pixels = static_cast<double>(scenario.width_px) * scenario.height_px;
  const double finer = std::sqrt(megapixels * 1e6 / pixels);
  scenario.width_px = static_cast<int>(scenario.width_px * finer);
  scenario.height_px = static_cast<int>(scenario.height_px * finer);
  scenario.pixels_per_mm *= finer;
  scenario.encoding.file = filmsim::FileKind::kTiff;
  scenario.encoding.channels = 3;
  scenario.encoding.bits = 16;
  scenario.encoding.compressed = compressed;
  const std::string path = write_scan(filmsim::render(scenario), folder + "/large.tif");
  Timing timing;
  timing.name = compressed ? "deflate with predictor" : "uncompressed";
  timing.megabytes = 6e-6 * scenario.width_px * scenario.height_px;
  constexpr int rounds = 3;
  timing.measure_s = timing.decode_s = INFINITY;
  for (int round = 0; round < rounds; ++round) {
    timing.decode_s = std::min(timing.decode_s, bare_decode_seconds(path));
    const auto start = std::chrono::steady_clock::now();
    const auto source = fogline::open_scan(path, {});
    fogline::measure_roll(*source, fogline::shipped_options());
    timing.measure_s = std::min(timing.measure_s, seconds_since(start));
  }
  std::filesystem::remove(path);
  return timing;
}

}  // namespace bench
