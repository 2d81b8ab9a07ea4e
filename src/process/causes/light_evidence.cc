#include "process/causes/light_evidence.h"

#include "process/advice/spoken_numbers.h"

namespace fogline {

namespace {

/// Base plus fog of 135 film, and of film on clear base (common practice, no source).
constexpr const char* usual_base_135 = "0.20 to 0.35, very fast film to 0.45, clear base less";
constexpr const char* usual_base_clear = "0.05 to 0.20";

std::string density_text(double density) {
  return fixed_text(density, 2);
}

std::string read_text(const NetReading& reading) {
  return (reading.at_least ? "at least " : "") + density_text(reading.density);
}

std::string frames_text(int frames) {
  return frames == 1 ? "in the one frame"
                     : "in the median of " + std::to_string(frames) + " frames";
}

std::string usual_text(double middle, double half, double factor) {
  return density_text((middle - half) * factor) + " to " + density_text((middle + half) * factor);
}

std::string print_sentence(const NetReading& print, const RollPopulation& population) {
  const std::string read = "Edge print: " + read_text(print) + " above clear film; ";
  if (print.density >= population.greatest_edge_print_density) {
    return read + "so dense that it tells nothing more of development.";
  }
  return read + "how dense this film's should be is known to " +
         percent_text(population.edge_print_sd_share) + " only, so it weighs accordingly.";
}

}  // namespace

std::vector<std::string> light_evidence(const LightSigns& signs, const ReadingScale& scale,
                                        const Aim& aim, const RollPopulation& population) {
  std::vector<std::string> evidence;
  const double factor = scale.factor * aim.contrast_index / population.usual_contrast_index;
  if (signs.shadow) {
    evidence.push_back(
        "Shadows: " + read_text(*signs.shadow) + " above clear film " + frames_text(signs.frames) +
        "; usual is " +
        usual_text(population.shadow_density, population.shadow_half_density, factor) + ".");
  }
  if (signs.highlight) {
    evidence.push_back(
        "Highlights: " + read_text(*signs.highlight) + " above clear film " +
        frames_text(signs.frames) + "; usual is " +
        usual_text(population.highlight_density, population.highlight_half_density, factor) + ".");
  }
  if (signs.edge_print) {
    evidence.push_back(print_sentence(*signs.edge_print, population));
  }
  if (signs.leader) {
    const bool black =
        signs.leader->at_least || signs.leader->density >= population.black_leader_density;
    evidence.push_back(
        "Leader: " + read_text(*signs.leader) + " above clear film, " +
        (black ? "black as it should be."
               : "grey; " + density_text(population.black_leader_density) + " or more is usual."));
  }
  if (signs.base_fog) {
    const bool f135 = signs.format == FilmFormat::f135;
    evidence.push_back("Base plus fog: " + density_text(signs.base_fog->value) + "; usual is " +
                       (f135 ? usual_base_135 : usual_base_clear) + ".");
  }
  return evidence;
}

}  // namespace fogline
