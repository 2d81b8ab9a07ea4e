#include "process/causes/mark_causes.h"

#include "process/advice/spoken_numbers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace fogline {

namespace {

constexpr double least_confidence = 0.25;
/// Marks of one scan may share one wrong reason, so that many doubtful ones don't make a sure one.
constexpr double greatest_confidence = 0.97;
/// Every film has some dust: pieces a strip of six frames (230 mm) before it is called dirty
/// (common practice, no source).
constexpr double dirty_from = 8.0;

struct MarkCause {
  const char* code;
  std::array<MarkKind, 3> kinds;
  /// Expected number below which nothing is said.
  double least_count;
  const char* message;
  const char* name;
};

constexpr std::array<MarkCause, 6> mark_causes{{
    {"drying-marks",
     {MarkKind::drying_mark, MarkKind::drying_mark, MarkKind::drying_mark},
     0.0,
     "Drops dried on the film.",
     "drying marks"},
    {"air-bells",
     {MarkKind::air_bell, MarkKind::air_bell, MarkKind::air_bell},
     0.0,
     "Air bells clung to the film in the developer.",
     "air bells"},
    {"dirty",
     {MarkKind::dust, MarkKind::fibre, MarkKind::dust},
     dirty_from,
     "Dust and fibres lie on the film, or on the scanner's glass.",
     "pieces of dirt"},
    {"scratched",
     {MarkKind::scratch, MarkKind::scratch, MarkKind::scratch},
     0.0,
     "The film is scratched.",
     "scratches"},
    {"light-struck",
     {MarkKind::light_leak, MarkKind::light_leak, MarkKind::light_leak},
     0.0,
     "Stray light reached the film in camera, cassette or tank.",
     "places struck by light"},
    {"uneven-development",
     {MarkKind::surge, MarkKind::bromide_drag, MarkKind::low_level},
     0.0,
     "Development was uneven: the developer flowed too much or too little.",
     "streaks or bands of development"},
}};

struct Tally {
  double expected = 0.0;
  double none = 1.0;
  int count = 0;
  double greatest_contrast = 0.0;
};

Tally tally_of(const RollMeasurement& roll, const MarkCause& cause) {
  Tally tally;
  for (const ScanMeasurement& scan : roll.scans) {
    for (const Mark& mark : scan.marks) {
      if (std::find(cause.kinds.begin(), cause.kinds.end(), mark.kind) == cause.kinds.end()) {
        continue;
      }
      tally.expected += mark.confidence;
      tally.none *= 1.0 - std::clamp(mark.confidence, 0.0, 1.0);
      ++tally.count;
      tally.greatest_contrast =
          std::max(tally.greatest_contrast, std::abs(mark.contrast_density.value_or(0.0)));
    }
  }
  return tally;
}

/// Probability that a number of independent marks reaches `least`, by the normal limit of the
/// Poisson distribution.
double reaches(double expected, double least) {
  return 0.5 * std::erfc((least - expected) / std::sqrt(2.0 * std::max(expected, 1.0)));
}

double film_strips(const RollMeasurement& roll) {
  std::size_t strips = 0;
  for (const ScanMeasurement& scan : roll.scans) {
    strips += scan.strips.size();
  }
  return std::max(1.0, static_cast<double>(strips));
}

}  // namespace

std::vector<Finding> mark_findings(const RollMeasurement& roll) {
  std::vector<Finding> findings;
  for (const MarkCause& cause : mark_causes) {
    const Tally tally = tally_of(roll, cause);
    if (tally.count == 0) {
      continue;
    }
    const double any = cause.least_count > 0.0
                           ? reaches(tally.expected / film_strips(roll), cause.least_count)
                           : 1.0 - tally.none;
    const double confidence = std::min(greatest_confidence, any);
    if (confidence < least_confidence) {
      continue;
    }
    Finding finding{cause.code, confidence, cause.message, {}};
    std::string seen = std::string("Seen: ") + cause.name + ", " + std::to_string(tally.count);
    if (tally.greatest_contrast > 0.0) {
      seen += "; the strongest " + fixed_text(tally.greatest_contrast, 2) + " off its surround";
    }
    finding.evidence.push_back(seen + ".");
    findings.push_back(finding);
  }
  return findings;
}

}  // namespace fogline
