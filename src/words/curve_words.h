#pragma once

#include <fogline/process/judge_roll.h>

#include <string>
#include <vector>

namespace fogline {

/// What the curve says, in sentences: contrast and development, speed, paper and scanning. Without
/// a curve, where the roll should have one: why not. Empty where no target was told.
std::vector<std::string> curve_sentences(const JudgedRoll& record);

/// Why a roll's contrast index isn't known; empty where it is or nobody said why.
std::string contrast_index_reason(const RollMeasurement& roll);

/// The exposures, row by row: name, log H, net density, how far off the curve.
struct StepRow {
  std::string name;
  std::string log_h;
  std::string net_density;
  std::string off_curve;
};
std::vector<StepRow> step_rows(const Sensitometry& read);

/// A zone as it is written: 0, I to X.
std::string zone_numeral(int zone);

/// A number of the curve with its doubt, or "–".
std::string curve_number_text(const CurveReading& reading, int decimals);

/// Why numbers of the curve are missing, each reason once, with the names of the numbers.
std::vector<std::string> missing_numbers(const Sensitometry& read);

/// How the curve was fitted.
std::string curve_method(const Sensitometry& read);

}  // namespace fogline
