#include "compare.h"

#include "compare_frames.h"

#include <algorithm>
#include <cmath>
#include <random>

namespace bench {

namespace {

using fogline::Fitness;
using fogline::Quantity;

std::string fitness_word(Fitness fitness) {
  switch (fitness) {
    case Fitness::measured:
      return "measured";
    case Fitness::comparable:
      return "comparable";
    case Fitness::indicative:
      return "indicative";
    case Fitness::relative:
      return "relative";
    case Fitness::marks_only:
      return "marks-only";
    case Fitness::unfit:
      break;
  }
  return "unfit";
}

double median_of(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

template <typename Member>
double strips_median(const filmsim::Truth& truth, Member member) {
  std::vector<double> values;
  for (const filmsim::StripTruth& strip : truth.strips) {
    values.push_back(member(strip));
  }
  return median_of(values);
}

void compare_base(const filmsim::Truth& truth, const fogline::ScanMeasurement& scan,
                  ScanCase& result) {
  if (!scan.base_fog || truth.strips.empty()) {
    return;
  }
  result.base_fog = compared(
      scan.base_fog->visual,
      strips_median(truth, [](const filmsim::StripTruth& s) { return s.base_fog.visual; }));
  if (scan.base_fog->channels) {
    const auto& channels = *scan.base_fog->channels;
    const std::array<double, 3> true_values{
        strips_median(truth, [](const filmsim::StripTruth& s) { return s.base_fog.red; }),
        strips_median(truth, [](const filmsim::StripTruth& s) { return s.base_fog.green; }),
        strips_median(truth, [](const filmsim::StripTruth& s) { return s.base_fog.blue; })};
    for (std::size_t c = 0; c < channels.size(); ++c) {
      result.base_fog_channels[c] = compared(channels[c], true_values[c]);
    }
  }
}

void compare_exposures(const filmsim::Truth& truth, const fogline::ScanMeasurement& scan,
                       ScanCase& result) {
  if (truth.strips.empty()) {
    return;
  }
  const filmsim::StripTruth& strip = truth.strips.front();
  const double zero =
      scan.densities_above == fogline::DensitiesAbove::base ? strip.base_fog.visual : 0.0;
  if (scan.edge_print && strip.edge_print) {
    result.edge_print = compared(*scan.edge_print, *strip.edge_print - zero);
  }
  const auto leader = std::find_if(
      truth.strips.begin(), truth.strips.end(),
      [](const filmsim::StripTruth& candidate) { return candidate.leader.has_value(); });
  if (scan.leader && leader != truth.strips.end()) {
    result.leader = compared(*scan.leader, *leader->leader - zero);
  }
}

/// One frame a scan, so that the errors that frames of a scan share are counted once.
void compare_tone(const filmsim::Truth& truth, const fogline::ScanMeasurement& scan,
                  ScanCase& result) {
  std::vector<MatchedFrame> matches = matched_frames(truth, scan);
  std::erase_if(matches, [](const MatchedFrame& match) {
    return match.truth->cut || match.frame->cut || !match.truth->shadow ||
           !match.frame->tone.shadow;
  });
  if (matches.empty()) {
    return;
  }
  std::mt19937_64 choice(result.name.seed);
  const MatchedFrame& match = matches[choice() % matches.size()];
  const auto strip = static_cast<std::size_t>(match.truth->strip - 1);
  const double zero = scan.densities_above == fogline::DensitiesAbove::base
                          ? truth.strips[strip].base_fog.visual
                          : 0.0;
  result.tone[0] = compared(*match.frame->tone.shadow, *match.truth->shadow - zero);
  result.tone[1] = compared(*match.frame->tone.middle, *match.truth->middle - zero);
  result.tone[2] = compared(*match.frame->tone.highlight, *match.truth->highlight - zero);
  result.tone[3] =
      compared(*match.frame->tone.range, *match.truth->highlight - *match.truth->shadow);
}

ToneVerdict tone_verdict(const filmsim::EncodingSettings& encoding, const fogline::ScanInfo& info) {
  constexpr int deep = 16;  // 8-bit files that don't tell are sRGB by convention
  if (encoding.tone_told != filmsim::ToneTold::kUntold || encoding.bits < deep) {
    return ToneVerdict::told;
  }
  if (!info.transfer_known) {
    return ToneVerdict::left_open;
  }
  const bool linear = encoding.transfer == filmsim::Transfer::kLinear;
  if (linear != (info.transfer.kind == fogline::TransferKind::linear)) {
    return ToneVerdict::wrong;
  }
  const bool power = encoding.transfer == filmsim::Transfer::kPower;
  return power == (info.transfer.kind == fogline::TransferKind::power) ? ToneVerdict::right
                                                                       : ToneVerdict::near;
}

/// The simulator keeps no name of the device; only cameras have a lens that darkens the corners,
/// only film scanners a Callier factor of 1.2 and more.
std::string device_of(const filmsim::ScannerSettings& scanner) {
  constexpr double directed_callier = 1.2;
  if (scanner.bulge > 0.0) {
    return "camera";
  }
  return scanner.callier >= directed_callier ? "film scanner" : "flatbed";
}

void compare_film(const filmsim::Simulated& simulated, const fogline::ScanMeasurement& scan,
                  ScanCase& result) {
  const filmsim::Truth& truth = simulated.truth;
  result.strips_right = scan.strips.size() == truth.strips.size();
  if (!result.strips_right) {
    return;
  }
  int holes = 0;
  int partly = 0;
  for (std::size_t i = 0; i < scan.strips.size(); ++i) {
    result.format_right =
        result.format_right && same_format(scan.strips[i].format, simulated.scenario.strips[i]);
    const double turn = true_rotation_deg(simulated, i);
    const double error = std::abs(scan.strips[i].rotation_deg - turn);
    result.rotation_error = std::max(result.rotation_error.value_or(0.0), error);
    holes += scan.strips[i].perforations;
    result.holes_whole += static_cast<int>(truth.strips[i].holes_px.size());
    partly += truth.strips[i].holes_partly;
  }
  result.holes_missed = std::max(0, result.holes_whole - holes);
  result.holes_surplus = std::max(0, holes - result.holes_whole - partly);
  const bool camera = simulated.scenario.camera.perspective_x != 0.0 ||
                      simulated.scenario.camera.perspective_y != 0.0 ||
                      simulated.scenario.camera.radial != 0.0;
  if (scan.pixels_per_mm && !camera) {
    result.scale_error = *scan.pixels_per_mm / simulated.scenario.pixels_per_mm - 1.0;
  }
}

}  // namespace

Compared compared(const Quantity& quantity, double truth) {
  return {
      truth, quantity.value, quantity.u95, quantity.lower95, quantity.upper95, quantity.at_least};
}

void describe(const filmsim::Simulated& simulated, ScanCase& result) {
  const filmsim::Truth& truth = simulated.truth;
  // Noise alone puts fewer codes at the top.
  constexpr double unclipped_share = 0.005;
  result.bits = simulated.scenario.encoding.bits;
  result.device = device_of(simulated.scenario.scanner);
  result.expected_fitness = truth.expected_fitness;
  result.holes_seen = truth.expected_fitness == "fit" && truth.zero_visible == "holes" &&
                      truth.zero_clipped_share <= unclipped_share;
  result.frames_to_find =
      static_cast<int>(std::count_if(truth.frames.begin(), truth.frames.end(), shows_whole));
  result.blanks_true = static_cast<int>(std::count_if(
      truth.frames.begin(), truth.frames.end(),
      [](const filmsim::FrameTruth& frame) { return frame.plan->blank && !frame.cut; }));
  result.tone_possible = result.frames_to_find >= 1;
  result.contrast_possible = result.frames_to_find >= 2;
}

void compare(const filmsim::Simulated& simulated, const fogline::RollMeasurement& roll,
             ScanCase& result) {
  const fogline::ScanMeasurement& scan = roll.scans.front();
  result.fitness = fitness_word(scan.fitness);
  result.tone_verdict = tone_verdict(simulated.scenario.encoding, scan.info);
  if (result.expected_fitness == "unfit") {
    return;
  }
  compare_film(simulated, scan, result);
  count_frames(simulated.truth, scan, result);
  if (scan.fitness == Fitness::unfit || scan.fitness == Fitness::marks_only) {
    return;
  }
  compare_base(simulated.truth, scan, result);
  compare_exposures(simulated.truth, scan, result);
  compare_tone(simulated.truth, scan, result);
  if (roll.contrast.contrast_index && !simulated.truth.strips.empty()) {
    result.contrast = compared(*roll.contrast.contrast_index,
                               strips_median(simulated.truth, [](const filmsim::StripTruth& s) {
                                 return s.contrast_index;
                               }));
  }
}

}  // namespace bench
