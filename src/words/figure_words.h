#pragma once

#include "words/number_text.h"

#include <fogline/process/judge_roll.h>
#include <fogline/roll/calibrate_scanner.h>

#include <string>
#include <string_view>

namespace fogline {

// What stands below the drawings and what a screen reader says of them.

/// A drawing without its letters: what a screen reader says of it.
struct FigureNames {
  std::string_view curve = "Characteristic curve";
  std::string_view scale =
      "Shadow, middle and highlight of each frame on the density scale; the table below has the "
      "numbers";
  std::string_view contrast = "Contrast index of this roll beside the aim";
  std::string_view light = "Light that this roll got, in stops from the usual placement";
  std::string_view response = "Response: code over density";
  std::string_view residuals = "Differences of the steps from the reference";
  std::string_view steps = "The steps found";
};
inline constexpr FigureNames figure_names;

/// Of a scan's picture: what is drawn on it.
std::string strip_name(const ScanMeasurement& scan);
/// Below it; `nothing_drawn` where no line is.
std::string strip_caption(const std::string& file, bool nothing_drawn);
/// In its key: the outline of a mark.
std::string_view mark_outline_words();

/// Where shadow and highlight of a usual picture are wished, above clear film, for a contrast index
/// of 0.58 (common practice, no source); for another aim they lie in proportion.
struct WishedTones {
  double shadow_from = 0.0;
  double shadow_to = 0.0;
  double highlight_from = 0.0;
  double highlight_to = 0.0;
};
WishedTones wished_tones(const Aim& aim);

std::string scale_caption(const ScanMeasurement& scan, const Aim& aim, DensityUnits units,
                          bool aim_is_drawn);
std::string_view shadow_aim_words();
std::string_view highlight_aim_words();
std::string base_fog_words(const Quantity& visual, DensityUnits units);

/// Below the characteristic curve. `wished`: the curve of the aim is drawn too.
std::string curve_caption(const Sensitometry& read, const Aim& aim, bool wished);
std::string contrast_index_words(const Quantity& index);

/// Over the line that shows contrast or light: the number between `before` and `after`.
struct NumberSentence {
  std::string before;
  std::string number;
  std::string after;
};
NumberSentence contrast_words_of(const Quantity& contrast, const Aim& aim);
NumberSentence light_words_of(const Quantity& stops);

std::string response_caption(const ScannerCalibration& calibration);
std::string_view residual_caption();
std::string_view found_steps_caption();

/// Below the cut-outs of the marks.
std::string_view cutouts_caption();
/// Beside clear film's colour, and beside the neutral next to it.
std::string_view swatch_words();
std::string_view neutral_words();

}  // namespace fogline
