#include "words/story.h"

#include "words/curve_words.h"
#include "words/phrases.h"
#include "words/unknown_words.h"
#include "words/verdict.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace fogline {
namespace {

void add_once(std::vector<Unsure>& unsure, const std::string& sentence,
              std::optional<Unknown> why = std::nullopt) {
  const auto told = std::find_if(unsure.begin(), unsure.end(), [&](const Unsure& already) {
    return already.sentence == sentence;
  });
  if (!sentence.empty() && told == unsure.end()) {
    unsure.push_back({sentence, why});
  }
}

template <typename T>
void add_reason(const Known<T>& value, std::vector<Unsure>& unsure) {
  if (!value) {
    add_once(unsure, reason_sentence(value.why()), value.why().kind);
  }
}

// Most scans hold no leader, edge print or calibration: that they are missing makes nothing else
// doubtful, so it isn't among these.
void add_scan_reasons(const ScanMeasurement& scan, std::vector<Unsure>& unsure) {
  add_reason(scan.base_fog, unsure);
  add_reason(scan.density_limit, unsure);
  add_reason(scan.exposed_wedge_steps, unsure);
  if (scan.marks_limit) {
    add_once(unsure, unknown_sentence(*scan.marks_limit), scan.marks_limit->kind);
  }
  add_reason(scan.pixels_per_mm, unsure);
  add_reason(scan.veiling_glare, unsure);
  add_reason(scan.tint.kind, unsure);
}

std::string numbers_phrase(const std::vector<int>& numbers) {
  std::string text = numbers.size() == 1 ? "Frame " : "Frames ";
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    if (i > 0) {
      text += i + 1 == numbers.size() ? " and " : ", ";
    }
    text += std::to_string(numbers[i]);
  }
  return text;
}

// Frames that miss a value for one reason share one sentence.
void add_frame_reasons(const ScanMeasurement& scan, std::vector<Unsure>& unsure) {
  std::map<std::string, std::vector<int>> frames_of_reason;
  for (const FrameMeasurement& frame : scan.frames) {
    std::set<std::string> reasons;
    for (const Known<Quantity>* tone :
         {&frame.tone.shadow, &frame.tone.middle, &frame.tone.highlight, &frame.tone.range}) {
      reasons.insert(told_reason(*tone));
    }
    reasons.insert(told_reason(frame.tone.paper_range));
    reasons.erase("");
    for (const std::string& reason : reasons) {
      frames_of_reason[reason].push_back(frame.number);
    }
    if (frame.repeats_frame) {
      add_once(unsure, "Frame " + std::to_string(frame.number) +
                           " shows the same picture as frame " +
                           std::to_string(*frame.repeats_frame) + " and is counted once.");
    }
  }
  for (const auto& [reason, numbers] : frames_of_reason) {
    add_once(unsure, numbers_phrase(numbers) + ": " + reason);
  }
}

std::string transfer_phrase(const Transfer& transfer) {
  std::string text;
  switch (transfer.kind) {
    case TransferKind::linear:
      text = "as linear light";
      break;
    case TransferKind::srgb:
      text = "by the sRGB curve (IEC 61966-2-1)";
      break;
    case TransferKind::power:
      text = transfer.exponent ? "by a power of " + text_from_number(*transfer.exponent, 2)
                               : std::string("by a power");
      break;
    case TransferKind::curve:
      text = "by the file's own tone curve";
      break;
    case TransferKind::scanner:
      text = "by the scanner's own curve";
      break;
  }
  switch (transfer.source) {
    case TransferSource::icc_profile:
      return text + ", as its colour profile says";
    case TransferSource::file_tag:
      return text + ", as the file's tags say";
    case TransferSource::option:
      return text + ", as you said";
    case TransferSource::scanner_file:
      return text + ", as its calibration found";
    case TransferSource::assumed:
      break;
  }
  return text + ", which is assumed: the file doesn't tell";
}

std::string calibration_phrase(const ScanCalibration& calibration) {
  std::string text = "The scanner was calibrated ";
  switch (calibration.method) {
    case CalibrationMethod::wedge:
      text +=
          calibration.reference.empty() ? "by a wedge" : "by the wedge " + calibration.reference;
      break;
    case CalibrationMethod::nominal_wedge:
      text += "by a wedge of nominal densities";
      text += calibration.reference.empty() ? "" : " (" + calibration.reference + ")";
      break;
    case CalibrationMethod::layers:
      text += "by layers of one filter";
      break;
    case CalibrationMethod::bracket:
      text += "by shutter times";
      break;
  }
  text += calibration.own_wedge ? " in this scan" : "";
  text += calibration.date.empty() ? "" : " on " + calibration.date;
  text += calibration.checksum.empty() ? "" : " (" + calibration.checksum + ")";
  return text + ", up to a density of " + text_from_number(calibration.shown_to_density, 1) + ".";
}

}  // namespace

std::vector<Unsure> unsure_of(const JudgedRoll& record) {
  std::vector<Unsure> unsure;
  const RollMeasurement& measurement = record.measurement;
  for (const ScanMeasurement& scan : measurement.scans) {
    add_scan_reasons(scan, unsure);
    add_frame_reasons(scan, unsure);
  }
  add_once(unsure, reason_sentence(record.judgement.light_or_time.causes.why()));
  add_once(unsure, contrast_index_reason(measurement));
  add_once(unsure, told_reason(measurement.contrast.density_range));
  const auto by_silver = [](const ScanMeasurement& scan) {
    return scan.calibration && (scan.calibration->method == CalibrationMethod::wedge ||
                                scan.calibration->method == CalibrationMethod::nominal_wedge);
  };
  const auto device_told = [](const ScanMeasurement& scan) { return scan.device_told; };
  const auto& scans = measurement.scans;
  if (!scans.empty() && std::all_of(scans.begin(), scans.end(), by_silver)) {
    add_once(
        unsure,
        "Scanners light the film from one side more than a densitometer does, which reads "
        "silver denser than it is. The wedge takes that out for silver; how far the film's base, "
        "which is none, was read otherwise is known from the kind of scanner only.");
  } else if (!scans.empty() && std::all_of(scans.begin(), scans.end(), device_told)) {
    add_once(unsure,
             "Silver is denser in light from one side than in a densitometer's; the middle of what "
             "such devices do was taken off, and how far yours differs from it isn't known.");
  } else if (!scans.empty()) {
    add_once(
        unsure,
        "Scanners light the film from one side more than a densitometer does, which reads "
        "silver denser than it is. Comparing rolls from one scanner isn't touched by it; other "
        "people's numbers are. --device says what yours is, and narrows it.");
  }
  return unsure;
}

std::vector<std::string> unsure_sentences(const JudgedRoll& record) {
  std::vector<std::string> sentences;
  for (Unsure& unsure : unsure_of(record)) {
    sentences.push_back(std::move(unsure.sentence));
  }
  return sentences;
}

std::vector<std::string> method_sentences(const ScanMeasurement& scan) {
  std::vector<std::string> sentences;
  const ScanInfo& info = scan.info;
  std::string size = std::to_string(info.width_px) + " × " + std::to_string(info.height_px) +
                     " pixels, " + std::to_string(info.bits) + " bits, " +
                     (info.channels == 1 ? "grey" : "colour");
  if (scan.pixels_per_mm) {
    constexpr double mm_per_inch = 25.4;
    size += ", " + text_from_number(*scan.pixels_per_mm, 1) + " pixels a millimetre (" +
            text_from_number(*scan.pixels_per_mm * mm_per_inch, 0) + " an inch)";
  }
  sentences.push_back(size + ".");
  sentences.push_back("The codes were read " + transfer_phrase(info.transfer) + ".");
  if (scan.calibration) {
    sentences.push_back(calibration_phrase(*scan.calibration));
  }
  std::string zero = "Density zero was read " + std::string(place_phrase(scan.zero.source));
  if (scan.zero.unevenness_density) {
    zero += "; over the film the bare light differs by " +
            text_from_number(*scan.zero.unevenness_density, 2) + " in density";
  }
  sentences.push_back(zero + ".");
  if (scan.veiling_glare) {
    Quantity percent = *scan.veiling_glare;
    percent.value *= 100.0;
    percent.u95 *= 100.0;
    percent.lower95.reset();
    percent.upper95.reset();
    sentences.push_back("Stray light is " + sentence_from_density(percent, DensityUnits::density) +
                        " % of the bare light, and is taken off.");
  }
  if (scan.density_limit) {
    sentences.push_back("Up to a density of " + text_from_number(*scan.density_limit, 1) +
                        " this scan tells densities within 0.1.");
  }
  return sentences;
}

}  // namespace fogline
