// One simulated scan, measured: the numbers that the tables are made of.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace bench {

/// What to simulate.
struct CaseName {
  std::string kind;
  std::uint64_t seed = 1;
};

/// A measured value beside the truth. `at_least` values claim a lower bound only.
struct Compared {
  double truth = 0.0;
  double value = 0.0;
  double u95 = 0.0;
  std::optional<double> lower95;
  std::optional<double> upper95;
  bool at_least = false;

  [[nodiscard]] double error() const { return value - truth; }
  [[nodiscard]] bool covers() const;
};

struct ScanCase {
  CaseName name;
  bool read = false;
  std::string trouble;  // what was thrown
  int bits = 16;
  std::string expected_fitness;  // fit, relative, unfit
  std::string fitness;
  bool transfer_told = true;
  /// Density errors grow with a tone curve read wrongly: whether the curve was the true one.
  bool transfer_right = true;
  std::optional<Compared> base_fog;
  std::vector<Compared> base_fog_channels;
  std::optional<Compared> edge_print;
  std::optional<Compared> leader;
  /// Shadow, middle, highlight, range of one frame, chosen by the seed.
  std::array<std::optional<Compared>, 4> tone;
  std::optional<Compared> contrast;
  bool contrast_possible = false;
  // Frames: those whose border shows and that aren't cut, found at IoU >= 0.9; reported frames on
  // no true one; blank frames inferred rightly and wrongly.
  int frames_to_find = 0;
  int frames_found = 0;
  int frames_invented = 0;
  int blanks_right = 0;
  int blanks_wrong = 0;
  // Film.
  bool format_right = true;
  bool strips_right = true;
  std::optional<double> scale_error;     // share
  std::optional<double> rotation_error;  // degrees, greatest over strips
  std::optional<double> holes_share;     // seen over true
  /// Whole measurement, wall seconds.
  double measure_s = 0.0;
};

/// One large file: whole measurement and libtiff's bare decode of it, wall seconds.
struct Timing {
  std::string name;
  double megabytes = 0.0;
  double measure_s = 0.0;
  double decode_s = 0.0;
};

/// Times a strip rendered so finely that its file has about `megapixels`, 16-bit colour, page cache
/// warm; `compressed`: deflate with predictor.
Timing time_large(double megapixels, bool compressed, const std::string& folder);

/// Simulates, writes into `folder`, measures as the program does, compares, deletes.
ScanCase run_case(const CaseName& name, const std::string& folder);

}  // namespace bench
