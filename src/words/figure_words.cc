#include "words/figure_words.h"

#include "words/aim_words.h"

namespace fogline {
namespace {

constexpr double usual_contrast_index = 0.58;
constexpr WishedTones usual_tones{0.20, 0.40, 1.05, 1.35};

std::string counted(std::size_t count, std::string_view one, std::string_view many) {
  return std::to_string(count).append(" ").append(count == 1 ? one : many);
}

std::string range_words(double from, double to) {
  return text_from_number(from, 2) + " to " + text_from_number(to, 2);
}

}  // namespace

std::string strip_name(const ScanMeasurement& scan) {
  return scan.info.file + ", the scan as it is, " + counted(scan.frames.size(), "frame", "frames") +
         " and " + counted(scan.marks.size(), "mark", "marks") + " outlined";
}

std::string strip_caption(const std::string& file, bool nothing_drawn) {
  return file + (nothing_drawn ? ": nothing was found to outline."
                               : ". Every number on this page comes from inside these lines:");
}

std::string_view mark_outline_words() {
  return "mark, numbered beside the strip";
}

WishedTones wished_tones(const Aim& aim) {
  const double factor = aim.contrast_index / usual_contrast_index;
  return {factor * usual_tones.shadow_from, factor * usual_tones.shadow_to,
          factor * usual_tones.highlight_from, factor * usual_tones.highlight_to};
}

std::string scale_caption(const ScanMeasurement& scan, const Aim& aim, DensityUnits units,
                          bool aim_is_drawn) {
  const bool in_stops = units == DensityUnits::stops;
  std::string text =
      "Each line runs from a frame's shadow to its highlight, the dot is its middle tone, the "
      "shaded ends are the doubt. Numbers above: ";
  text += in_stops ? "stops of light held back" : "density";
  text +=
      scan.densities_above == DensitiesAbove::base ? " above clear film" : " above the bare light";
  text += in_stops ? "; below: density." : "; below: the same in stops.";
  if (aim_is_drawn) {
    const WishedTones wished = wished_tones(aim);
    text += " The dashed bands are where a usual picture's shadow (" +
            range_words(wished.shadow_from, wished.shadow_to) + ") and highlight (" +
            range_words(wished.highlight_from, wished.highlight_to) +
            ") are wished above clear film, for a contrast index of " +
            text_from_number(aim.contrast_index, 2) + " (common practice, no source).";
  }
  return text;
}

std::string_view shadow_aim_words() {
  return "shadow aim";
}

std::string_view highlight_aim_words() {
  return "highlight aim";
}

std::string base_fog_words(const Quantity& visual, DensityUnits units) {
  return "base plus fog " + sentence_from_density(visual, units);
}

std::string curve_caption(const Sensitometry& read, const Aim& aim, bool wished) {
  const std::string_view counted_from = read.scale.absolute ? "log exposure in lux seconds"
                                        : read.scale.metered_log_h
                                            ? "log exposure from the metered one"
                                            : "log exposure: minus the wedge's density";
  std::string text = "Net density (above base plus fog) over ";
  text += counted_from;
  text +=
      ", with zones above the numbers, a stop apart. Dots are the exposures, crosses those left "
      "out, the band holds the true curve 95 times in 100. The two arcs and the line through "
      "their centre tell the contrast index; the thin triangle is that of ISO 6 (up 0.80 over "
      "1.30)";
  if (wished) {
    text += "; dashed: the same film developed to " + text_from_number(aim.contrast_index, 2);
  }
  return text + ".";
}

std::string contrast_index_words(const Quantity& index) {
  return "contrast index " + sentence_from_density(index, DensityUnits::density);
}

NumberSentence contrast_words_of(const Quantity& contrast, const Aim& aim) {
  return {"Contrast index about ", sentence_from_density(contrast, DensityUnits::density),
          "; " + aim_source_words(aim) + " is " + text_from_number(aim.contrast_index, 2) +
              ", and nothing within " + text_from_number(aim.tolerance, 2) +
              " of it is called wrong."};
}

NumberSentence light_words_of(const Quantity& stops) {
  return {"Light ", sentence_from_density(stops, DensityUnits::density) + " stops",
          " from the usual placement; more is plus."};
}

std::string response_caption(const ScannerCalibration& calibration) {
  return std::string("Code below full scale (as a power of ten) over density") +
         (calibration.channels == 1 ? ""
                                    : ": red, green and blue channel, solid, dashed and dotted") +
         ". A cross is a step that was left out. A straight line at 45° would be a scanner whose "
         "codes are light.";
}

std::string_view residual_caption() {
  return "Density read less density of the reference, over density. The band covers the truth 95 "
         "times in 100, the certificate's own doubt not counted; right of the limit densities are "
         "told no better than within 0.1.";
}

std::string_view found_steps_caption() {
  return "Where each step was read; orange: left out.";
}

std::string_view cutouts_caption() {
  return "All at one scale; the line is 1 mm of film.";
}

std::string_view swatch_words() {
  return "clear film as measured";
}

std::string_view neutral_words() {
  return "a neutral of the same density";
}

}  // namespace fogline
