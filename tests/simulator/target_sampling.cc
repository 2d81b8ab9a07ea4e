#include "simulator/target_sampling.h"

#include "simulator/device_sampling.h"
#include "simulator/layout_sampling.h"
#include "simulator/random.h"
#include "simulator/response_shape.h"
#include "simulator/scenario_sampling.h"
#include "simulator/wedge_sampling.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

constexpr std::uint64_t kStream = 5577;
constexpr double kStop = 0.30103;

void expose_bracket(TargetScan& target, Random& random) {
  // Six frames two stops apart on one strip, or eleven and a repeat one stop apart on two.
  const bool two_strips = random.chance(0.6);
  std::vector<StripPlan>& strips = target.scenario.strips;
  if (!two_strips) {
    strips.resize(1);
    arrange_on_glass(target.scenario, 5.0, random.uniform(2.0, 6.0));
    target.stops = {-5.0, -3.0, -1.0, 1.0, 3.0, 5.0};
  } else {
    for (double stop = -5.0; stop <= 5.0; stop += 1.0) target.stops.push_back(stop);
    target.stops.push_back(0.0);
  }
  target.metered_log_h = random.uniform(0.9, 1.15);
  std::size_t next = 0;
  for (StripPlan& strip : strips) {
    std::vector<FramePlan*> frames;
    for (FramePlan& frame : strip.frames) frames.push_back(&frame);
    const bool turned = random.chance(0.5);
    target.strip_turned.push_back(turned);
    if (turned) std::reverse(frames.begin(), frames.end());
    for (FramePlan* frame : frames) {
      frame->exposure_error_stops = target.stops[next++] + random.normal(0.0, target.doubt_stops);
      frame->mean_log_h = target.metered_log_h + kStop * frame->exposure_error_stops;
      frame->scene.flare = 0.0;
    }
  }
}

void expose_wedge(TargetScan& target, Random& random) {
  const bool along = target.kind == TargetKind::kWedgeAlong;
  StripPlan& strip = target.scenario.strips.front();
  target.scenario.strips.resize(1);
  const int count = along ? (random.chance(0.7) ? 21 : 31) : random.integer(9, 11);
  const double range = along ? 3.0 : random.uniform(2.2, 2.7);
  for (int i = 0; i < count; ++i) {
    target.printed.push_back(0.05 + range * i / (count - 1));
  }
  FramePlan frame = strip.frames.front();
  frame.scene = {};
  frame.scene.kind = SceneKind::kPrintedWedge;
  frame.scene.wedge_densities = target.printed;
  frame.scene.wedge_downwards = !along;
  if (random.chance(0.5)) {
    std::reverse(frame.scene.wedge_densities.begin(), frame.scene.wedge_densities.end());
  }
  target.log_h_at_zero = range + 0.05 - random.uniform(0.2, 0.7);
  frame.mean_log_h = target.log_h_at_zero;
  frame.length_mm = along ? count * random.uniform(4.5, 6.0) : random.uniform(14.0, 30.0);
  frame.width_mm = along ? random.uniform(12.0, 24.0) : 24.0;
  frame.middle_u_mm = 0.5 * strip.geometry.length_mm;
  frame.middle_v_mm = 0.0;
  strip.frames = {frame};
  strip.edge_print = random.chance(0.5);
  arrange_on_glass(target.scenario, 5.0, random.uniform(2.0, 6.0));
}

}  // namespace

TargetCurve::TargetCurve(const TargetScan& scan)
    : stock_(scan.scenario.strips.front().stock),
      silver_(stock_.curve),
      zero_log_h_(stock_.curve.speed_point_log_h +
                  (scan.kind == TargetKind::kBracket ? scan.metered_log_h : scan.log_h_at_zero)) {}

double TargetCurve::net_density(double log_h) const {
  return visual_density(stock_, silver_.density(log_h + zero_log_h_)) - visual_density(stock_, 0.0);
}

double TargetCurve::speed_point_log_h() const {
  constexpr double kSpeedPointDensity = 0.10;
  double low = -5.0;
  double high = 2.0;
  for (int i = 0; i < 50; ++i) {
    const double middle = 0.5 * (low + high);
    (net_density(middle) < kSpeedPointDensity ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

TargetScan sample_target(const TargetWish& wish, std::uint64_t seed) {
  TargetScan target;
  target.kind = wish.kind;
  target.doubt_stops = wish.doubt_stops;
  target.scenario = sample_scenario("bracket-135", seed);
  Random random(seed, kStream + static_cast<std::uint64_t>(wish.kind));
  CurveSettings& curve = target.scenario.strips.front().stock.curve;
  curve.family = static_cast<CurveFamily>(random.integer(0, 3));
  curve.contrast_index = random.uniform(0.40, 0.80);
  curve.maximum_density = random.uniform(1.9, 3.0);
  for (StripPlan& strip : target.scenario.strips) strip.stock.curve = curve;
  if (wish.kind == TargetKind::kBracket) {
    expose_bracket(target, random);
  } else {
    expose_wedge(target, random);
  }
  const CalibratedPair pair = sample_pair({false, true, true}, seed);
  target.scanner_wedge = pair.wedge;
  target.certificate_u95 = pair.certificate_u95;
  if (wish.calibratable) {
    ScannerSettings scanner = sample_scanner(Device::kFlatbed, random);
    scanner.bare_level = std::min(scanner.bare_level, 0.92);
    scanner.sharpening = 0.0;
    scanner.response = sample_response(random);
    if (!wish.stray_light) scanner.glare.share = 0.0;
    target.scenario.scanner = scanner;
    target.scanner_wedge.scanner = scanner;
    target.scanner_wedge.callier = scanner.callier;
    target.scenario.encoding = pair.strip.encoding;
    target.scenario.encoding.bits = 16;
    target.scenario.encoding.file = FileKind::kTiff;
    target.scanner_wedge.encoding = target.scenario.encoding;
  } else {
    target.scenario.encoding.bits = 8;
    target.scenario.encoding.transfer = Transfer::kSrgb;
    target.scenario.encoding.file = FileKind::kTiff;
    target.scenario.encoding.tone_told = ToneTold::kUntold;
  }
  return target;
}

}  // namespace filmsim
