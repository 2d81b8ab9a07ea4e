#include "words/calibration_words.h"

#include "words/number_text.h"
#include "words/unknown_words.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

const char* device_words(ScannerDevice device) {
  switch (device) {
    case ScannerDevice::flatbed:
      return ", flatbed";
    case ScannerDevice::film_scanner:
      return ", film scanner";
    case ScannerDevice::camera:
      return ", camera";
    case ScannerDevice::unknown:
      break;
  }
  return "";
}

std::string count_of_steps(const ScannerCalibration& calibration) {
  const auto used = std::count_if(calibration.steps.begin(), calibration.steps.end(),
                                  [](const CalibrationStep& step) { return step.used; });
  return std::to_string(used) + " of " + std::to_string(calibration.steps.size());
}

const char* step_word(const ScannerCalibration& calibration) {
  switch (calibration.method) {
    case CalibrationMethod::layers:
      return " layers";
    case CalibrationMethod::bracket:
      return " exposures";
    case CalibrationMethod::wedge:
    case CalibrationMethod::nominal_wedge:
      break;
  }
  return " steps";
}

}  // namespace

double calibration_u95(const ScannerCalibration& calibration, double density) {
  const CalibratedDoubt doubt = calibration.doubt_at(density);
  const double certificate = std::hypot(calibration.certificate_doubt * std::min(1.0, density),
                                        calibration.slope_doubt_share * density);
  return coverage_factor_95 * std::hypot(std::hypot(doubt.fit, doubt.stray), certificate);
}

std::string calibration_verdict(const ScannerCalibration& calibration) {
  if (calibration.shape_only) {
    return "The response's shape is known, its scale isn't: densities read with it compare with "
           "one "
           "another, and are no densities yet.";
  }
  const double limit = calibration.density_limit;
  std::string text =
      "Densities up to " + text_from_number(limit, 1) + " can now be measured with this scanner";
  if (limit >= 1.0) {
    text += ": within " + text_from_number(calibration_u95(calibration, 1.0), 3) + " at 1.0";
  }
  constexpr double dense = 2.0;
  if (limit >= dense) {
    text += " and " + text_from_number(calibration_u95(calibration, dense), 3) + " at 2.0";
  }
  return text + ", scan settings being the same.";
}

std::vector<std::string> calibration_method(const ScannerCalibration& calibration) {
  std::vector<std::string> sentences;
  std::string what = count_of_steps(calibration) + step_word(calibration) + " were used";
  switch (calibration.method) {
    case CalibrationMethod::wedge:
      what += "; reference: " + calibration.reference;
      break;
    case CalibrationMethod::nominal_wedge:
      what += "; nominal densities, " + calibration.reference;
      break;
    case CalibrationMethod::layers:
    case CalibrationMethod::bracket:
      break;
  }
  sentences.push_back(what + ".");
  sentences.push_back(
      "Root mean square of their differences from the reference, up to the limit: " +
      text_from_number(calibration.residual_rms, 4) + ".");
  sentences.push_back("Shown were densities from " +
                      text_from_number(calibration.shown_from_density, 2) + " to " +
                      text_from_number(calibration.shown_to_density, 2) +
                      "; deeper film will get lower bounds, nothing is extrapolated.");
  sentences.push_back(stray_sentence(calibration));
  std::string settings = "Settings: " + std::to_string(calibration.bits) + " bits, " +
                         (calibration.channels == 1 ? "grey" : "colour");
  settings += device_words(calibration.device);
  sentences.push_back(settings + ". Scans of film need the same ones; resolution is free.");
  std::string made = "Made ";
  made += calibration.date.empty() ? "" : calibration.date + " ";
  made += "by fogline " + calibration.tool_version;
  made += calibration.checksum.empty() ? "" : ", " + calibration.checksum;
  sentences.push_back(made + ".");
  return sentences;
}

std::string stray_sentence(const ScannerCalibration& calibration) {
  if (calibration.method == CalibrationMethod::layers ||
      calibration.method == CalibrationMethod::bracket) {
    return "Stray light wasn't told: every picture was evenly lit.";
  }
  const CalibratedStray& stray = calibration.stray;
  // A share below nothing can't be: near it the upper end says more than a doubt either way.
  const double u95 = coverage_factor_95 * stray.share_doubt;
  const std::string share =
      stray.share > u95
          ? text_from_number(100.0 * stray.share, 1) + " ± " + text_from_number(100.0 * u95, 1)
          : text_from_number(100.0 * stray.share, 1) + " (at most " +
                text_from_number(100.0 * (stray.share + u95), 1) + ")";
  return "Stray light from afar is " + share + " % of an evenly lit field, told by " +
         (stray.measured ? "opaque areas and " : "") +
         "the shape of the response; a black offset is part of the response. Silver is taken to be "
         "read " +
         text_from_number(calibration.callier, 2) +
         " times as dense as by diffuse light (Callier's factor, usual for the kind of device).";
}

std::string step_fate(const CalibrationStep& step) {
  return step.used || !step.left_out ? "" : unknown_sentence(*step.left_out);
}

std::string step_difference(const CalibrationStep& step) {
  const double difference = step.density - step.reference_density;
  return std::isfinite(difference) ? text_from_number(difference, 3) : std::string("–");
}

}  // namespace fogline
