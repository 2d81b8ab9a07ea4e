#include "words/phrases.h"

#include <algorithm>
#include <array>

namespace fogline {
namespace {

// Why a scan is indicative only, from what makes it so (see Fitness).
std::string what_weakens(const ScanMeasurement& scan) {
  constexpr int few_bits = 8;
  std::vector<std::string_view> reasons;
  if (scan.info.transfer.source == TransferSource::assumed) {
    reasons.emplace_back("the tone curve is assumed");
  }
  if (scan.info.bits <= few_bits) {
    reasons.emplace_back("the file has 8 bits");
  }
  if (scan.calibration && scan.calibration->shape_only) {
    reasons.emplace_back("the calibration knows only the response's shape");
  }
  if (scan.zero.source == ZeroSource::scanner_file) {
    reasons.emplace_back("the bare light is remembered, not seen");
  }
  if (has_caution_of(scan, CautionFamily::clipping)) {
    reasons.emplace_back("the bare light is clipped");
  }
  if (reasons.empty()) {
    return "see the cautions";
  }
  std::string text(reasons.front());
  for (std::size_t i = 1; i < reasons.size(); ++i) {
    text += i + 1 == reasons.size() ? " and " : ", ";
    text += reasons[i];
  }
  return text;
}

}  // namespace

bool has_caution_of(const ScanMeasurement& scan, CautionFamily family) {
  return std::any_of(scan.cautions.begin(), scan.cautions.end(), [&](const Caution& caution) {
    return family_of(caution.fact.kind) == family;
  });
}

std::string count_word(std::size_t count) {
  constexpr std::array<std::string_view, 13> words{"no",   "one",    "two",   "three", "four",
                                                   "five", "six",    "seven", "eight", "nine",
                                                   "ten",  "eleven", "twelve"};
  return count < words.size() ? std::string(words[count]) : std::to_string(count);
}

std::string capitalised(std::string text) {
  if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
    text.front() = static_cast<char>(text.front() - 'a' + 'A');
  }
  return text;
}

std::string_view film_phrase(FilmFormat format) {
  switch (format) {
    case FilmFormat::f135:
      return "135 film";
    case FilmFormat::f120:
      return "120 film";
    case FilmFormat::sheet:
      return "sheet film";
    case FilmFormat::unknown:
      break;
  }
  return "film of unknown format";
}

std::string fitness_sentence(const ScanMeasurement& scan) {
  switch (scan.fitness) {
    case Fitness::measured:
      return "Measured: the scanner was calibrated, and the densities hold within their doubt.";
    case Fitness::comparable:
      if (scan.calibration) {
        return "Comparable: the scanner was calibrated, but with other settings than this scan's.";
      }
      return "Comparable: tone curve known, 16 bits, bare light in sight. Good for comparing rolls "
             "scanned at the same settings; no wedge has calibrated this scanner.";
    case Fitness::indicative:
      return "Indicative: " + what_weakens(scan) +
             ". Good for the direction and for large differences, not for the last tenth.";
    case Fitness::relative:
      return "Relative: no bare light is in sight, so densities count from clear film. Ranges "
             "hold; "
             "base plus fog and its tint can't be told.";
    case Fitness::marks_only:
      return "Good for looking at marks only: no density can be read.";
    case Fitness::unfit:
      break;
  }
  return "Unfit: nothing can be measured in this scan.";
}

std::string_view place_phrase(BaseFogSource source) {
  switch (source) {
    case BaseFogSource::rebate:
      return "on the rebate";
    case BaseFogSource::between_frames:
      return "between the frames";
    case BaseFogSource::unexposed_frame:
      return "in an unexposed frame";
    case BaseFogSource::marked_area:
      return "in the area marked";
    case BaseFogSource::lowest_density:
      break;
  }
  return "where the film is thinnest (no clear film was told apart)";
}

std::string_view place_phrase(ZeroSource source) {
  switch (source) {
    case ZeroSource::perforations:
      return "in the perforations";
    case ZeroSource::clear_gate:
      return "in the bare light beside the film";
    case ZeroSource::reference_scan:
      return "in a scan of the bare light";
    case ZeroSource::scanner_file:
      return "in the calibration's scan";
    case ZeroSource::none:
      break;
  }
  return "nowhere: no bare light path is in sight";
}

}  // namespace fogline
