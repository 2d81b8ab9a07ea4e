#include "app/commands/measure_values.h"

#include "app/command_line/usage_error.h"
#include "app/commands/meaning_from_text.h"
#include "app/commands/option_values.h"

#include <cmath>
#include <vector>

namespace fogline {
namespace {

// Exponents of tone curves in use run from 1 (linear) to about 3; beyond these bounds a number is
// a slip of the hand.
constexpr double least_power = 0.3;
constexpr double greatest_power = 5.0;

// From the smallest subminiature frame to a panorama of the longest camera on roll film.
constexpr double least_frame_mm = 8.0;
constexpr double greatest_frame_mm = 250.0;

// Below the softest and above the hardest negative that any paper takes.
constexpr double least_contrast_index = 0.2;
constexpr double greatest_contrast_index = 1.5;

// More than any film records on either side of the meter.
constexpr double most_area_stops = 20.0;

}  // namespace

DensityUnits units_from_text(const std::string& text) {
  return meaning_from_text("units", units_words, text);
}

std::optional<FilmFormat> format_from_text(const std::string& text) {
  return meaning_from_text("format", format_words, text);
}

ClearReference clear_from_text(const std::string& text) {
  return meaning_from_text("clear", clear_words, text);
}

std::optional<Transfer> transfer_from_text(const std::string& text) {
  Transfer transfer;
  transfer.source = TransferSource::option;
  if (const auto* row = row_of(transfer_words, text)) {
    if (!row->meaning) {
      return std::nullopt;
    }
    transfer.kind = *row->meaning;
    return transfer;
  }
  const auto power = number_from_text(text);
  if (!power || !(*power >= least_power && *power <= greatest_power)) {
    auto choice = words_of(transfer_words);
    choice.emplace_back("a power from 0.3 to 5");
    throw UsageError("--transfer is " + choice_of(choice) + ", not \"" + text + "\"");
  }
  transfer.kind = TransferKind::power;
  transfer.exponent = *power;
  return transfer;
}

double frame_mm_from_text(const std::string& text) {
  const auto length = number_from_text(text);
  if (!length || !(*length >= least_frame_mm && *length <= greatest_frame_mm)) {
    throw UsageError("--frame-mm is a length from 8 to 250 millimetres, not \"" + text + "\"");
  }
  return *length;
}

double contrast_index_from_text(const std::string& text) {
  const auto index = number_from_text(text);
  if (!index || !(*index >= least_contrast_index && *index <= greatest_contrast_index)) {
    throw UsageError("--aim-contrast-index is a contrast index from 0.2 to 1.5, not \"" + text +
                     "\"");
  }
  return *index;
}

MarkedArea area_from_text(const std::string& text) {
  const std::size_t sign = text.find('=');
  std::vector<double> box;
  for (const std::string& part : parts_of(text.substr(0, sign), ',')) {
    box.push_back(number_from_text(part).value_or(NAN));
  }
  std::string after = sign == std::string::npos ? std::string() : text.substr(sign + 1);
  if (after.starts_with('+')) {
    after.erase(0, 1);
  }
  const auto stops = number_from_text(after);
  constexpr std::size_t sides = 4;
  const bool whole = box.size() == sides && box[0] >= 0.0 && box[1] >= 0.0 && box[2] > 0.0 &&
                     box[3] > 0.0 && stops && std::abs(*stops) <= most_area_stops;
  if (!whole) {
    throw UsageError("--area " + text +
                     " must be x,y,width,height=STOPS, in pixels and stops, such as "
                     "--area 1200,300,80,80=-2");
  }
  return {{box[0], box[1], box[2], box[3]}, *stops};
}

}  // namespace fogline
