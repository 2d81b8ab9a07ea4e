#include "process/paper_grade.h"

namespace fogline {
namespace {

constexpr double soft_below = 1.45;
constexpr double normal_below = 1.20;
constexpr double hard_below = 1.00;
constexpr double very_hard_below = 0.75;

}  // namespace

PaperGrade paper_grade(double log_exposure_range) {
  if (log_exposure_range < very_hard_below) {
    return PaperGrade::very_hard;
  }
  if (log_exposure_range < hard_below) {
    return PaperGrade::hard;
  }
  if (log_exposure_range < normal_below) {
    return PaperGrade::normal;
  }
  return log_exposure_range < soft_below ? PaperGrade::soft : PaperGrade::very_soft;
}

std::optional<Quantity> asked_paper_range(const RollMeasurement& roll) {
  if (!roll.medians || !roll.medians->range || roll.medians->range->at_least) {
    return std::nullopt;
  }
  return *roll.medians->range;
}

}  // namespace fogline
