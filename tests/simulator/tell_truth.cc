#include "simulator/tell_truth.h"

#include <algorithm>

namespace filmsim {
namespace {

constexpr double kMostlyClipped = 0.5;    // of the bare light at the top code: no reference
constexpr double kPartlyClipped = 0.005;  // more than noise puts there
constexpr double kWorthTelling = 0.02;    // frames that show less are not counted

double clipped_share(const Picture& picture, const std::vector<std::size_t>& bare_px) {
  if (bare_px.empty()) return 0.0;
  double worst = 0.0;
  for (int c = 0; c < picture.channels; ++c) {
    std::size_t clipped = 0;
    for (const std::size_t i : bare_px) {
      const std::size_t at =
          i * static_cast<std::size_t>(picture.channels) + static_cast<std::size_t>(c);
      if (picture.codes[at] == picture.top()) ++clipped;
    }
    worst = std::max(worst, static_cast<double>(clipped) / static_cast<double>(bare_px.size()));
  }
  return worst;
}

std::string zero_visible(const Truth& truth, const FilmPlanes& planes,
                         const std::vector<std::size_t>& bare_px) {
  constexpr std::size_t kFewestHoles = 4;
  std::size_t holes = 0;
  for (const StripTruth& strip : truth.strips) holes += strip.holes_px.size();
  if (holes >= kFewestHoles) return "holes";
  // Bare light beside the film, not in a hole.
  constexpr std::size_t kFewestPixels = 400;
  std::size_t gap = 0;
  for (const std::size_t i : bare_px) gap += planes.strip[i] == 0 ? 1U : 0U;
  return gap >= kFewestPixels ? "gap" : "none";
}

void judge(Simulated& simulated) {
  Truth& truth = simulated.truth;
  const EncodingSettings& encoding = simulated.scenario.encoding;
  const auto say = [&](const char* fitness, const char* reason) {
    truth.expected_fitness = fitness;
    truth.reason = reason;
  };
  if (simulated.scenario.positive_picture) return say("unfit", "not a negative");
  bool film_shows = false;
  for (const StripTruth& strip : truth.strips) film_shows |= strip.box_px.width > 0.0;
  if (!film_shows) return say("unfit", "no film in the picture");
  if (encoding.inverted) return say("unfit", "inverted");
  if (encoding.stretch_high < 1.0 || encoding.stretch_low > 0.0) {
    return say("unfit", "levels stretched, clear film clipped");
  }
  if (truth.zero_visible == "none") return say("relative", "no bare light in sight");
  if (truth.zero_clipped_share > kMostlyClipped) return say("relative", "bare light clipped");
  if (truth.zero_clipped_share > kPartlyClipped) return say("fit", "bare light partly clipped");
  const bool untold = encoding.tone_told == ToneTold::kUntold;
  say("fit", untold ? "tone curve not told by the file" : "");
}

}  // namespace

void tell_truth(Simulated& simulated, const FilmPlanes& planes, const CameraGeometry& camera,
                const std::vector<StripGeometry>& geometries,
                const std::vector<std::size_t>& bare_px) {
  const Scenario& scenario = simulated.scenario;
  Truth& truth = simulated.truth;
  int number = 0;
  for (std::size_t s = 0; s < scenario.strips.size(); ++s) {
    truth.strips.push_back(strip_truth(scenario, s, planes, camera, geometries[s]));
    for (std::size_t f = 0; f < scenario.strips[s].frames.size(); ++f) {
      FrameTruth frame = frame_truth(scenario, s, f, planes, camera, geometries[s]);
      if (frame.visible_share < kWorthTelling) continue;
      frame.number = ++number;
      truth.frames.push_back(frame);
    }
  }
  truth.zero_visible = zero_visible(truth, planes, bare_px);
  truth.zero_clipped_share = clipped_share(simulated.picture, bare_px);
  judge(simulated);
}

}  // namespace filmsim
