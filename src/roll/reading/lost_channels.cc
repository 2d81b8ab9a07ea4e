#include "roll/reading/lost_channels.h"

#include <algorithm>

namespace fogline {

namespace {

/// Shares of pixels at the top code: above it a channel is lost, below it it reads well.
constexpr double lost_share = 0.5;
constexpr double well_share = 0.05;

using Shares = PerChannel<double>;

void raise_to(Shares& greatest, const Shares& shares) {
  for (std::size_t c = 0; c < greatest.size(); ++c) {
    greatest[c] = std::max(greatest[c], shares[c]);
  }
}

/// Greatest shares at the top code, over clear film and the bare light; over clear film alone where
/// no channel reads both well: the bare light is lost then.
Shares greatest_shares(const std::vector<StripReading>& readings) {
  Shares clear{};
  Shares both{};
  for (const StripReading& reading : readings) {
    raise_to(both, reading.zero_clipped_each);
    if (reading.clear) {
      raise_to(clear, reading.clear_clipped_each);
    }
  }
  raise_to(both, clear);
  return *std::min_element(both.begin(), both.end()) < well_share ? both : clear;
}

}  // namespace

std::optional<LostChannels> lost_channels(const ScanInfo& info,
                                          const std::vector<StripReading>& readings) {
  if (info.channels != most_channels) {
    return std::nullopt;
  }
  LostChannels lost{};
  bool any_lost = false;
  bool any_well = false;
  const Shares shares = greatest_shares(readings);
  for (std::size_t c = 0; c < lost.size(); ++c) {
    lost[c] = shares[c] > lost_share;
    any_lost = any_lost || lost[c];
    any_well = any_well || shares[c] < well_share;
  }
  return any_lost && any_well ? std::optional(lost) : std::nullopt;
}

void leave_channels_out(ScanGrid& grid, const LostChannels& lost) {
  double weights = 0.0;
  for (std::size_t c = 0; c < lost.size(); ++c) {
    weights += lost[c] ? 0.0 : visual_weights[c];
  }
  for (int y = 0; y < grid.light.height(); ++y) {
    for (int x = 0; x < grid.light.width(); ++x) {
      float seen = 0.0F;
      unsigned keep = 0;
      for (std::size_t c = 0; c < lost.size(); ++c) {
        if (!lost[c]) {
          seen += static_cast<float>(visual_weights[c] / weights) *
                  grid.light.light(x, y, static_cast<int>(c));
          keep |= 0x11U << c;
        }
      }
      for (std::size_t c = 0; c < lost.size(); ++c) {
        if (lost[c]) {
          grid.light.set_light(x, y, static_cast<int>(c), seen);
        }
      }
      grid.clipped.at(x, y) = static_cast<std::uint8_t>(grid.clipped.at(x, y) & keep);
    }
  }
}

}  // namespace fogline
