#include "simulator/foreign_fitness.h"

#include <algorithm>

namespace filmsim {
namespace {

constexpr double kMostlyClipped = 0.5;  // of an area: nothing can be read from it
constexpr int kCodesOfTop = 1;          // of 255: what a JPEG makes of the top code
constexpr double kDark = 0.08;          // of the top code: a channel without light

struct Area {
  double clipped = 0.0;  // share at the top
  double level = 0.0;    // median, share of the top code
};

Area area_of(const Picture& picture, const std::vector<std::size_t>& pixels, std::size_t channel) {
  if (pixels.empty()) return {};
  const int top = picture.top();
  const int clipped_from = top - top / 255 * kCodesOfTop;
  std::vector<int> codes;
  for (const std::size_t i : pixels) {
    codes.push_back(picture.codes[i * static_cast<std::size_t>(picture.channels) + channel]);
  }
  const auto clipped =
      std::count_if(codes.begin(), codes.end(), [&](int code) { return code >= clipped_from; });
  const auto middle = codes.begin() + static_cast<std::ptrdiff_t>(codes.size() / 2);
  std::nth_element(codes.begin(), middle, codes.end());
  return {static_cast<double>(clipped) / static_cast<double>(codes.size()),
          static_cast<double>(*middle) / top};
}

bool tells(const Area& area) {
  return area.clipped <= kMostlyClipped && area.level >= kDark;
}

}  // namespace

void judge_foreign(Simulated& simulated, const std::vector<std::size_t>& bare_px,
                   const std::vector<std::size_t>& clear_px) {
  Truth& truth = simulated.truth;
  if (truth.expected_fitness == "unfit") return;
  bool clear_tells = clear_px.empty();
  bool both_tell = false;
  for (int c = 0; c < simulated.picture.channels; ++c) {
    const auto channel = static_cast<std::size_t>(c);
    const bool clear = clear_px.empty() || tells(area_of(simulated.picture, clear_px, channel));
    const bool bare = tells(area_of(simulated.picture, bare_px, channel));
    clear_tells = clear_tells || clear;
    both_tell = both_tell || (clear && bare);
  }
  if (!clear_tells) {
    truth.expected_fitness = "unfit";
    truth.reason = "clear film at the top code or without light in all channels";
  } else if (truth.zero_visible == "none") {
    truth.expected_fitness = "relative";
    truth.reason = "no bare light in sight";
  } else if (!both_tell) {
    truth.expected_fitness = "relative";
    truth.reason = "bare light at the top code";
  } else {
    truth.expected_fitness = "fit";
    truth.reason = simulated.scenario.foreign->finish ? "a finished picture" : "";
  }
}

}  // namespace filmsim
