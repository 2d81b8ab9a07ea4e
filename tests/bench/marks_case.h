// One simulated scan with known marks, or none, searched for marks.
#pragma once

#include "simulator/truth.h"

#include <fogline/marks/mark.h>

#include <cstdint>
#include <string>
#include <vector>

namespace bench {

/// What kind of scan is searched.
enum class MarksScan {
  fine,    ///< one frame of 135, 1200 pixels an inch
  coarse,  ///< two frames, 10 to 18 pixels a millimetre
  medium,  ///< two frames of 120 as coarse: larger pictures, with small closed lines of their own
  fine_clean,  ///< the same without any mark
  coarse_clean,
  medium_clean
};

/// A true mark.
struct TrueMark {
  fogline::MarkKind kind = fogline::MarkKind::unknown;
  double size_mm = 0.0;
  double area_mm2 = 0.0;
  /// Contrast over the grain's standard deviation over the mark's own area.
  double sigmas = 0.0;
  double contrast = 0.0;
  /// Counts for recall: in sight, off holes and edges, above three sigma, large enough.
  bool asked = false;
  bool found = false;
};

/// A mark as told.
struct ToldMark {
  fogline::MarkKind kind = fogline::MarkKind::unknown;
  double confidence = 0.0;
  double size_mm = 0.0;
  double x_px = 0.0;
  double y_px = 0.0;
  double contrast = 0.0;
  /// Its middle lies in a true mark of its kind whose area is within a factor 2 of its own.
  bool right = false;
  /// A true mark lies there, of another kind or size.
  bool something_there = false;
};

struct MarksCase {
  std::uint64_t seed = 0;
  MarksScan scan = MarksScan::fine;
  std::string trouble;
  std::string limits;
  double film_cm2 = 0.0;
  double search_s = 0.0;
  std::vector<TrueMark> truth;
  std::vector<ToldMark> told;
};

const char* mark_name(fogline::MarkKind kind);

/// "fine", "coarse" or "medium", with marks or without.
const char* scan_name(MarksScan scan);

/// A scan of the kind, the same for the same seed.
filmsim::Scenario marks_scenario(std::uint64_t seed, MarksScan scan);

/// A mark as found: middle in stored pixels.
struct FoundMark {
  fogline::MarkKind kind = fogline::MarkKind::unknown;
  double x_px = 0.0;
  double y_px = 0.0;
  double size_mm = 0.0;
  double area_mm2 = 0.0;
};

/// True where the middle of a found mark lies in a drawn one.
bool lies_in(const FoundMark& found, const filmsim::DrawnMark& drawn, double pixels_per_mm);

/// True where it also is of its kind, and its area (length of a line) within a factor 2.
bool is_right(const FoundMark& found, const filmsim::DrawnMark& drawn, double pixels_per_mm);

/// Simulates, writes into `folder`, measures as the program does, compares, deletes the scan unless
/// `keep`.
MarksCase run_marks_case(std::uint64_t seed, MarksScan scan, const std::string& folder, bool keep);

/// Prints every mark told on a scan, one a line: kind, confidence, box in stored pixels, size,
/// contrast.
void list_marks_of_file(const std::string& path);

}  // namespace bench
