#include "words/table_words.h"

#include <algorithm>

namespace fogline {

std::string frame_table_caption(DensityUnits units) {
  return std::string(units == DensityUnits::stops ? "Stops of light held back" : "Density") +
         " of each frame; net is the median above base plus fog; paper is the log exposure range "
         "that a frame asks of the paper.";
}

std::string_view counted_from_words(const RollMeasurement& measurement) {
  const bool from_base = std::any_of(
      measurement.scans.begin(), measurement.scans.end(), [](const ScanMeasurement& scan) {
        return scan.densities_above == DensitiesAbove::base && !scan.frames.empty();
      });
  return from_base ? "Densities count from clear film."
                   : "Densities count from the bare light, base included.";
}

std::string_view mark_table_caption() {
  return "Marks by their number on the strip. Size is the greatest extent; density is that of the "
         "mark against its near surround, rim of a ring, middle of a disc; sure is the chance "
         "that it is there and of this kind.";
}

std::string_view odds_caption() {
  return "How likely each is the main cause of how this roll looks, prior knowledge of "
         "home-developed rolls included.";
}

std::string_view curve_numbers_caption() {
  return "Read from the curve";
}

std::string_view exposure_table_title() {
  return "The exposures";
}

std::string zones_caption(const ZonePlacement& placement) {
  return std::string("Net density of each zone, ") +
         (placement.metered ? "the metered tone on Zone V" : "Zone I laid on the speed point");
}

std::string_view doubt_table_caption() {
  return "What the calibration leaves unsure, 95 of 100; zero, evenness and noise of the film's "
         "own scan come on top.";
}

std::string_view beyond_limit_words() {
  return "beyond the limit";
}

std::string step_table_caption(const ScannerCalibration& calibration) {
  return std::string("Codes are the middle ones of each area") +
         (calibration.channels == 1 ? "" : ", red green blue") + ".";
}

}  // namespace fogline
