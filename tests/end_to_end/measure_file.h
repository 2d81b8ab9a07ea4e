// Measures files as the program does, and simulates them into a folder that goes away.
#pragma once

#include "simulator/render.h"
#include "simulator/scenario_sampling.h"
#include "tables/shipped_knowledge.h"

#include <fogline/pixels/open_scan.h>
#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include <unistd.h>

namespace end_to_end {

class TemporaryFolder {
 public:
  TemporaryFolder()
      : path_(std::filesystem::temp_directory_path() / ("end-to-end-" + std::to_string(getpid()))) {
    std::filesystem::create_directories(path_);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  TemporaryFolder(TemporaryFolder&&) = delete;
  TemporaryFolder& operator=(TemporaryFolder&&) = delete;
  ~TemporaryFolder() { std::filesystem::remove_all(path_); }

  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }

 private:
  std::filesystem::path path_;
};

inline fogline::RollMeasurement measure_file(const std::string& path) {
  const auto source = fogline::open_scan(path, {});
  return fogline::measure_roll(*source, fogline::shipped_options()).measurement;
}

struct Simulation {
  filmsim::Simulated simulated;
  fogline::RollMeasurement roll;

  [[nodiscard]] const fogline::ScanMeasurement& scan() const { return roll.scans.front(); }
};

inline Simulation simulate(filmsim::Scenario scenario) {
  const TemporaryFolder folder;
  filmsim::Simulated simulated = filmsim::render(std::move(scenario));
  const std::string path = write_scan(simulated, folder.file("scan.tif"));
  fogline::RollMeasurement roll = measure_file(path);
  return {std::move(simulated), std::move(roll)};
}

inline bool has_caution(const fogline::ScanMeasurement& scan, const std::string& code) {
  return std::any_of(scan.cautions.begin(), scan.cautions.end(),
                     [&](const fogline::Caution& caution) {
                       return fogline::caution_code(caution.fact.kind) == code;
                     });
}

inline double iou(const fogline::BoxPx& a, double x, double y, double width, double height) {
  const double w = std::min(a.x + a.width, x + width) - std::max(a.x, x);
  const double h = std::min(a.y + a.height, y + height) - std::max(a.y, y);
  const double common = std::max(0.0, w) * std::max(0.0, h);
  return common / (a.width * a.height + width * height - common);
}

}  // namespace end_to_end
