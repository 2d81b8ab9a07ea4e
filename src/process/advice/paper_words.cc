#include "process/advice/paper_words.h"

#include <fogline/process/curve_judgement.h>

#include <string>

namespace fogline {
namespace {

constexpr double soft_below = 1.45;
constexpr double normal_below = 1.20;
constexpr double hard_below = 1.00;
constexpr double very_hard_below = 0.75;

/// Directed light sees silver's density higher, in an enlarger with condenser 1.15 to 1.3 times
/// (common practice, no source).
constexpr double condenser_factor = 1.22;

}  // namespace

std::string paper_word(double log_exposure_range) {
  if (log_exposure_range < very_hard_below) {
    return "very hard";
  }
  if (log_exposure_range < hard_below) {
    return "hard";
  }
  if (log_exposure_range < normal_below) {
    return "normal";
  }
  return log_exposure_range < soft_below ? "soft" : "very soft";
}

std::optional<std::string> printing_hint(const RollMeasurement& roll,
                                         std::optional<PrintWith> print_with) {
  if (!roll.medians || !roll.medians->range || roll.medians->range->at_least) {
    return std::nullopt;
  }
  const bool condenser = print_with == PrintWith::condenser;
  const double range = roll.medians->range->value * (condenser ? condenser_factor : 1.0);
  return "Print on " + paper_word(range) + " paper, ISO range about R " +
         std::to_string(iso_range(range)) + (condenser ? ", counted for condenser light." : ".");
}

}  // namespace fogline
