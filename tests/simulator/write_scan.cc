#include "simulator/picture_files.h"
#include "simulator/render.h"

#include <filesystem>
#include <fstream>
#include <stdexcept>

namespace filmsim {
namespace {

double told_pixels_per_inch(const Scenario& scenario) {
  constexpr double kMmPerInch = 25.4;
  switch (scenario.encoding.resolution_tag) {
    case ResolutionTag::kRight:
      return scenario.pixels_per_mm * kMmPerInch;
    case ResolutionTag::kAbsent:
      return 0.0;
    case ResolutionTag::kWrong:
      return scenario.encoding.wrong_pixels_per_inch;
  }
  return 0.0;
}

const char* file_ending(FileKind kind) {
  switch (kind) {
    case FileKind::kTiff:
      return ".tif";
    case FileKind::kPng:
      return ".png";
    case FileKind::kJpeg:
      return ".jpg";
  }
  return "";
}

}  // namespace

std::string write_scan(const Simulated& simulated, const std::string& wanted_path) {
  const EncodingSettings& encoding = simulated.scenario.encoding;
  std::filesystem::path file(wanted_path);
  file.replace_extension(file_ending(encoding.file));
  const std::string path = file.string();
  const double resolution = told_pixels_per_inch(simulated.scenario);
  switch (encoding.file) {
    case FileKind::kTiff:
      write_tiff(simulated.picture, encoding, resolution, path);
      break;
    case FileKind::kPng:
      write_png(simulated.picture, encoding, resolution, path);
      break;
    case FileKind::kJpeg:
      write_jpeg(simulated.picture, encoding, resolution, path);
      break;
  }
  std::filesystem::path truth_path(path);
  truth_path.replace_extension(".truth.json");
  std::ofstream truth(truth_path);
  truth << truth_json(simulated) << '\n';
  if (!truth) throw std::runtime_error("can't write " + truth_path.string());
  return path;
}

}  // namespace filmsim
