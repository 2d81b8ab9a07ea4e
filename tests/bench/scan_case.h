// One simulated scan, measured: the numbers that the tables are made of.
#pragma once

#include "glance.h"

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

/// What became of a 16-bit file that doesn't tell its tone curve.
enum class ToneVerdict {
  told,   ///< the file told it: nothing to find out
  right,  ///< the true curve
  near,   ///< a power curve read as sRGB: curved, but not the same
  wrong,  ///< linear for curved or curved for linear
  left_open
};

struct ScanCase {
  CaseName name;
  bool read = false;
  std::string trouble;  // what was thrown
  // What is true of the scan, whatever was measured.
  std::string device;  // flatbed, camera, film scanner
  int bits = 16;
  std::string expected_fitness;  // fit, relative, unfit
  /// Whole perforations in sight and their light below the top code: the class of the goals.
  bool holes_seen = false;
  /// A whole frame whose border shows / two and more, as tone and contrast need.
  bool tone_possible = false;
  bool contrast_possible = false;

  std::string fitness;
  ToneVerdict tone_verdict = ToneVerdict::told;
  std::optional<Compared> base_fog;
  std::array<std::optional<Compared>, 3> base_fog_channels;  // red, green, blue
  /// Errors of one who knows where the holes are (see base_fog_limit.h): on this scan, and on the
  /// same without stray light.
  std::optional<double> base_fog_between_holes;
  std::optional<double> base_fog_limit;
  std::optional<Compared> edge_print;
  std::optional<Compared> leader;
  /// Shadow, middle, highlight, range of one frame, chosen by the seed.
  std::array<std::optional<Compared>, 4> tone;
  std::optional<Compared> contrast;
  // Frames: those whose border shows and that aren't cut, found at IoU >= 0.9; reported frames on
  // no true one; those on a true one that has another already; blank frames inferred rightly and
  // wrongly.
  int frames_to_find = 0;
  int frames_found = 0;
  int frames_invented = 0;
  int frames_doubled = 0;
  int blanks_true = 0;
  int blanks_right = 0;
  int blanks_wrong = 0;
  // Film.
  bool format_right = true;
  bool strips_right = true;
  std::optional<double> scale_error;     // share
  std::optional<double> rotation_error;  // degrees, greatest over strips
  int holes_whole = 0;                   // true whole perforations in sight
  int holes_missed = 0;                  // fewer reported than show whole
  int holes_surplus = 0;                 // more reported than show whole or in part
  /// By laws that the analyser wasn't built on; of these, a camera's or an editor's finished
  /// picture.
  bool foreign = false;
  bool finished = false;
  Glance glance;
  /// Whole measurement, wall seconds; of foreign scans of the whole process.
  double measure_s = 0.0;
  /// Resident memory of the whole process; 0 where it wasn't one of its own.
  double peak_mb = 0.0;
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

/// Simulates, writes into `folder`, measures as the program does, compares, deletes. Foreign scans
/// are measured by `program` in a process of its own.
ScanCase run_case(const CaseName& name, const std::string& folder, const std::string& program);

}  // namespace bench
