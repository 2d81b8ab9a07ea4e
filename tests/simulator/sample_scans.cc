#include "simulator/sample_scans.h"

#include "simulator/layout_sampling.h"
#include "simulator/random.h"

#include <cmath>
#include <utility>

namespace filmsim {
namespace {

struct SceneChoice {
  SceneKind kind;
  std::uint64_t seed;
  double mean_log_h;
};

FramePlan frame(const SceneChoice& choice, double middle_u_mm) {
  FramePlan plan;
  plan.middle_u_mm = middle_u_mm;
  plan.middle_v_mm = 0.1;
  plan.scene.kind = choice.kind;
  plan.scene.seed = choice.seed;
  plan.scene.log_range = 2.15;
  plan.mean_log_h = choice.mean_log_h;
  return plan;
}

StripPlan strip_135(const std::vector<SceneChoice>& choices) {
  constexpr double kEndMm = 1.2;
  StripPlan strip;
  double u = kEndMm + 18.0;
  for (const SceneChoice& choice : choices) {
    strip.frames.push_back(frame(choice, u));
    u += k135FramePitchMm;
  }
  strip.geometry.length_mm = u - k135FramePitchMm + 18.0 + kEndMm;
  strip.geometry.hole_phase_mm = 2.1;
  strip.geometry.shrinkage = 0.001;
  strip.edge_shade = 0.15;
  return strip;
}

// A well-behaved flatbed with open glass around the film.
Scenario flatbed(StripPlan strip, double pixels_per_inch, double margin_mm) {
  Scenario scenario;
  scenario.pixels_per_mm = pixels_per_inch / 25.4;
  scenario.strips.push_back(std::move(strip));
  ScannerSettings& s = scenario.scanner;
  s.lamp = {0.97, 1.0, 0.95};
  s.callier = 1.08;
  s.glare = {0.006, 2.0, 25.0, 0.4, true, 2.0};
  s.blur_um = 22.0;
  s.tilt_x = {0.006, 0.005, 0.006};
  s.tilt_y = {-0.004, -0.004, -0.003};
  s.full_well = 60000.0;
  s.adc_bits = 14;
  s.black_offset = 0.0004;
  scenario.encoding.compressed = true;
  arrange_on_glass(scenario, 0.0, margin_mm);
  return scenario;
}

Scenario good_135() {
  StripPlan strip = strip_135({{SceneKind::kStreet, 4, 1.25},
                               {SceneKind::kPortrait, 11, 1.2},
                               {SceneKind::kLandscape, 5, 1.2}});
  strip.stock.base = {0.245, 0.24, 0.243};
  strip.stock.fog = 0.04;
  strip.geometry.rotation_deg = 0.4;
  strip.first_frame_number = 11;
  Random random(101);
  add_everyday_dirt(strip, 4.0, random);
  Scenario scenario = flatbed(strip, 600.0, 3.0);
  scenario.encoding.transfer = Transfer::kSrgb;
  scenario.seed = 101;
  return scenario;
}

Scenario thin_dye_135() {
  StripPlan strip = strip_135({{SceneKind::kLandscape, 21, 1.2}, {SceneKind::kStreet, 22, 1.1}});
  strip.stock.base = {0.232, 0.23, 0.235};
  strip.stock.fog = 0.03;
  strip.stock.curve.contrast_index = 0.42;
  strip.stock.curve.maximum_density = 1.9;
  strip.stock.dye_left = {0.012, 0.085, 0.025};
  strip.geometry.rotation_deg = -0.7;
  strip.first_frame_number = 24;
  Random random(102);
  add_everyday_dirt(strip, 5.0, random);
  Scenario scenario = flatbed(strip, 600.0, 3.0);
  scenario.encoding.transfer = Transfer::kLinear;
  scenario.seed = 102;
  return scenario;
}

MarkPlan mark(MarkKind kind, Point middle_mm, double size_mm, double width_mm, double strength) {
  MarkPlan plan;
  plan.kind = kind;
  plan.middle_mm = middle_mm;
  plan.size_mm = size_mm;
  plan.width_mm = width_mm;
  plan.strength = strength;
  plan.angle_deg = 40.0;
  plan.seed = static_cast<std::uint64_t>(1000.0 * middle_mm.x + middle_mm.y);
  return plan;
}

Scenario marks_135() {
  StripPlan strip = strip_135({{SceneKind::kLandscape, 31, 1.35}, {SceneKind::kSnow, 32, 1.3}});
  strip.stock.base = {0.226, 0.22, 0.224};
  strip.stock.granularity = 2.0e-4;
  strip.stock.grain_um = 9.0;
  strip.first_frame_number = 4;
  strip.marks = {mark(MarkKind::kDryingMark, {12.0, 11.0}, 6.0, 0.4, 0.10),
                 mark(MarkKind::kDryingMark, {27.0, 17.5}, 4.0, 0.35, 0.08),
                 mark(MarkKind::kDryingMark, {53.0, 12.5}, 7.5, 0.5, 0.12),
                 mark(MarkKind::kDryingMark, {66.0, 23.0}, 3.5, 0.3, 0.09),
                 mark(MarkKind::kAirBell, {7.0, 7.5}, 0.9, 0.0, 0.6),
                 mark(MarkKind::kAirBell, {9.2, 7.1}, 0.6, 0.0, 0.7),
                 mark(MarkKind::kAirBell, {20.5, 8.2}, 1.2, 0.0, 0.5),
                 mark(MarkKind::kAirBell, {33.0, 6.9}, 0.5, 0.0, 0.65),
                 mark(MarkKind::kAirBell, {46.0, 7.6}, 1.0, 0.0, 0.6),
                 mark(MarkKind::kAirBell, {59.5, 8.9}, 0.8, 0.0, 0.55),
                 mark(MarkKind::kAirBell, {71.0, 7.3}, 1.4, 0.0, 0.5),
                 mark(MarkKind::kPinhole, {15.5, 9.0}, 0.16, 0.0, 1.0),
                 mark(MarkKind::kPinhole, {62.5, 15.0}, 0.2, 0.0, 1.0),
                 mark(MarkKind::kFibre, {24.0, 24.0}, 3.0, 0.025, 1.0),
                 mark(MarkKind::kScratch, {57.0, 19.0}, 34.0, 0.05, -0.3)};
  Random random(103);
  add_everyday_dirt(strip, 6.0, random);
  Scenario scenario = flatbed(strip, 1200.0, 0.8);
  scenario.scanner.full_well = 1500000.0;
  scenario.scanner.adc_bits = 12;
  scenario.scanner.blur_um = 28.0;
  scenario.encoding.transfer = Transfer::kLinear;
  scenario.seed = 103;
  return scenario;
}

Scenario good_120() {
  StripPlan strip;
  strip.geometry.format = FilmFormat::k120;
  strip.stock.base = {0.082, 0.08, 0.081};
  strip.stock.fog = 0.05;
  strip.stock.curve.family = CurveFamily::kStraightLine;
  strip.stock.curve.contrast_index = 0.6;
  strip.geometry.length_mm = 122.0;
  strip.geometry.rotation_deg = 0.3;
  strip.frames = {frame({SceneKind::kPortrait, 41, 1.25}, 30.5),
                  frame({SceneKind::kLandscape, 42, 1.25}, 91.5)};
  for (FramePlan& plan : strip.frames) plan.length_mm = plan.width_mm = 56.0;
  strip.first_frame_number = 7;
  Random random(104);
  add_everyday_dirt(strip, 5.0, random);
  Scenario scenario = flatbed(strip, 360.0, 4.0);
  scenario.encoding.transfer = Transfer::kPower;
  scenario.encoding.exponent = 2.19921875;
  scenario.seed = 104;
  return scenario;
}

/// An even wall at six exposures two stops apart, least first; the strip lies the other way round.
Scenario bracket_135() {
  constexpr int kFrames = 6;
  constexpr double kStop = 0.30103;
  constexpr double kMeteredLogH = 1.05;
  std::vector<SceneChoice> choices;
  for (int i = kFrames - 1; i >= 0; --i) {
    choices.push_back({SceneKind::kEvenWall, 1, kMeteredLogH + kStop * (2.0 * i - 5.0)});
  }
  StripPlan strip = strip_135(choices);
  strip.stock.base = {0.245, 0.24, 0.243};
  strip.stock.fog = 0.04;
  strip.stock.curve.family = CurveFamily::kQuantumCount;
  strip.stock.curve.contrast_index = 0.66;
  strip.geometry.rotation_deg = -0.3;
  strip.first_frame_number = 1;
  for (FramePlan& plan : strip.frames) {
    plan.scene.flare = 0.0;
    plan.scene.falloff = 0.03;
  }
  Scenario scenario = flatbed(strip, 300.0, 3.0);
  scenario.encoding.transfer = Transfer::kSrgb;
  scenario.seed = 106;
  return scenario;
}

}  // namespace

std::vector<SampleScan> sample_scans() {
  std::vector<SampleScan> samples = {{"good-135", good_135()},
                                     {"thin-dye-135", thin_dye_135()},
                                     {"marks-135", marks_135()},
                                     {"good-120", good_120()},
                                     {"bracket-135", bracket_135()}};
  for (SampleScan& sample : samples) sample.scenario.kind = "sample " + sample.name;
  return samples;
}

WedgePlan sample_wedge() {
  const Scenario strip = good_135();
  WedgePlan wedge;
  wedge.seed = 105;
  wedge.scanner = strip.scanner;
  wedge.encoding = strip.encoding;
  wedge.callier = strip.scanner.callier;
  constexpr int kSteps = 21;
  for (int i = 0; i < kSteps; ++i) {
    const double step = static_cast<double>(i);
    // Real wedges aren't quite even.
    wedge.densities.push_back(0.05 + 0.148 * step + 0.012 * std::sin(1.7 * step));
    wedge.certified.push_back(0.01 * std::round(100.0 * wedge.densities.back()));
  }
  wedge.pitch_mm = 5.0;
  wedge.width_mm = 16.0;
  wedge.direction_deg = 180.6;
  wedge.bare_mm = 4.0;
  wedge.margin_mm = 10.0;
  wedge.pixels_per_mm = 8.0;
  return wedge;
}

}  // namespace filmsim
