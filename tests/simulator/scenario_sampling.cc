#include "simulator/scenario_sampling.h"

#include "simulator/device_sampling.h"
#include "simulator/foreign_scenarios.h"
#include "simulator/layout_sampling.h"

#include <array>
#include <cmath>
#include <functional>
#include <stdexcept>
#include <utility>

namespace filmsim {
namespace {

FilmAxis random_axis(Random& random) {
  return random.chance(0.7) ? FilmAxis::kX : FilmAxis::kY;
}

// Strips of one 135 roll on a flatbed's open glass.
Scenario strips_135(Random& random, int strips, StripLayout layout, double pixels_per_mm) {
  Scenario scenario;
  scenario.pixels_per_mm = pixels_per_mm;
  const Roll roll = sample_roll(layout.format, random);
  for (int i = 0; i < strips; ++i) {
    scenario.strips.push_back(lay_out_strip(roll, layout, random));
  }
  scenario.scanner = sample_scanner(Device::kFlatbed, random);
  scenario.encoding = sample_encoding(random);
  arrange_on_glass(scenario, random.uniform(3.0, 8.0), random.uniform(2.0, 6.0));
  return scenario;
}

StripLayout ordinary_layout(Random& random) {
  StripLayout layout;
  layout.axis = random_axis(random);
  layout.frames = random.integer(2, 4);
  layout.leader = random.chance(0.1);
  return layout;
}

Scenario flatbed_open(Random& random) {
  Scenario s = strips_135(random, 1, ordinary_layout(random), random.uniform(10.0, 18.0));
  if (random.chance(0.25)) {
    // The picture's border cuts the strip.
    const bool x = s.strips[0].geometry.axis == FilmAxis::kX;
    int& length = x ? s.width_px : s.height_px;
    length = static_cast<int>(length * random.uniform(0.65, 0.9));
  }
  return s;
}

Scenario flatbed_holder(Random& random) {
  StripLayout layout = ordinary_layout(random);
  layout.leader = false;
  layout.rotation_sd_deg = 0.1;
  Scenario s = strips_135(random, 1, layout, random.uniform(10.0, 18.0));
  put_in_holder(s, HolesShown::kWhole, random);
  return s;
}

Scenario holder_masked(Random& random) {
  StripLayout layout = ordinary_layout(random);
  layout.leader = false;
  layout.rotation_sd_deg = 0.1;
  Scenario s = strips_135(random, 1, layout, random.uniform(10.0, 18.0));
  if (random.chance(0.35)) s.scanner = sample_scanner(Device::kFilmScanner, random);
  if (random.chance(0.3)) {
    put_in_frame_holder(s, random);
  } else {
    put_in_holder(s, random.chance(0.4) ? HolesShown::kPartly : HolesShown::kNone, random);
  }
  return s;
}

Scenario glass_full(Random& random) {
  StripLayout layout = ordinary_layout(random);
  layout.frames = random.integer(3, 6);
  Scenario s = strips_135(random, random.integer(2, 6), layout, random.uniform(8.0, 11.0));
  if (random.chance(0.2)) put_in_holder(s, HolesShown::kWhole, random);
  return s;
}

// A camera over a light panel: the strip runs past the picture's borders.
Scenario camera_picture(Random& random, int frames, double pixels_per_mm) {
  Scenario s;
  s.pixels_per_mm = pixels_per_mm;
  StripLayout layout;
  layout.frames = frames + 2;
  layout.axis = random.chance(0.75) ? FilmAxis::kX : FilmAxis::kY;
  layout.rotation_sd_deg = 0.8;
  StripPlan strip = lay_out_strip(sample_roll(FilmFormat::k135, random), layout, random);
  // Looks at the middle of the wanted frames.
  const auto last = static_cast<std::size_t>(frames);
  const double look = 0.5 * (strip.frames[1].middle_u_mm + strip.frames[last].middle_u_mm) +
                      random.normal(0.0, 0.6);
  const double from_middle = 0.5 * strip.geometry.length_mm - look;
  const bool x = layout.axis == FilmAxis::kX;
  strip.geometry.middle_mm =
      x ? Point{from_middle, random.normal(0.0, 0.6)} : Point{random.normal(0.0, 0.6), from_middle};
  s.strips.push_back(strip);
  const double along = frames * 38.0 + random.uniform(1.5, 7.0);
  const double across = random.uniform(30.0, 41.0);
  s.width_px = static_cast<int>((x ? along : across) * pixels_per_mm);
  s.height_px = static_cast<int>((x ? across : along) * pixels_per_mm);
  s.camera = sample_camera(random);
  s.scanner = sample_scanner(Device::kCamera, random);
  s.encoding = sample_encoding(random);
  s.encoding.resolution_tag = random.chance(0.5) ? ResolutionTag::kAbsent : ResolutionTag::kWrong;
  return s;
}

Scenario camera_frame(Random& random) {
  Scenario s = camera_picture(random, 1, random.uniform(16.0, 26.0));
  if (random.chance(0.4)) {
    // A mask that hides one row of holes in part.
    HolderWindow window;
    const bool x = s.strips[0].geometry.axis == FilmAxis::kX;
    const double across = random.uniform(30.5, 35.0);
    const double shift = (random.chance(0.5) ? 1.0 : -1.0) * random.uniform(0.0, 2.0);
    window.width_mm = x ? 60.0 : across;
    window.height_mm = x ? across : 60.0;
    window.middle_mm = x ? Point{0.0, shift} : Point{shift, 0.0};
    s.holder = {true, {window}, {}};
  }
  return s;
}

Scenario camera_strip(Random& random) {
  return camera_picture(random, random.integer(2, 3), random.uniform(12.0, 18.0));
}

Scenario medium(Random& random) {
  constexpr std::array<double, 4> kLengthsMm = {41.5, 56.0, 70.0, 84.0};
  StripLayout layout;
  layout.format = FilmFormat::k120;
  layout.axis = random_axis(random);
  layout.frame_length_mm = kLengthsMm[static_cast<std::size_t>(random.integer(0, 3))];
  layout.frame_width_mm = random.uniform(55.3, 56.3);
  layout.frames = layout.frame_length_mm > 60.0 ? 2 : random.integer(2, 3);
  Scenario s = strips_135(random, 1, layout, random.uniform(8.0, 12.0));
  // Gaps of roll film without holes vary more and are wider.
  double u = random.uniform(1.0, 6.0);
  for (FramePlan& frame : s.strips[0].frames) {
    frame.middle_u_mm = u + 0.5 * frame.length_mm;
    frame.middle_v_mm = random.uniform(-0.5, 0.5);
    u += frame.length_mm + random.uniform(3.0, 9.0);
  }
  s.strips[0].geometry.length_mm = u - random.uniform(0.5, 2.0);
  arrange_on_glass(s, 0.0, random.uniform(2.0, 6.0));
  return s;
}

Scenario sheet(Random& random) {
  StripLayout layout;
  layout.format = FilmFormat::kSheet;
  layout.axis = random_axis(random);
  layout.frames = 1;
  layout.frame_length_mm = kSheetLengthMm - 2.0 * kSheetRebateMm - random.uniform(0.0, 3.0);
  layout.frame_width_mm = kSheetWidthMm - 2.0 * kSheetRebateMm - random.uniform(0.0, 1.0);
  Scenario s = strips_135(random, 1, layout, random.uniform(8.0, 11.0));
  StripPlan& strip = s.strips[0];
  strip.edge_print = false;
  strip.geometry.length_mm = kSheetLengthMm;
  strip.geometry.bow_mm = 0.0;
  strip.geometry.notch = true;
  strip.frames[0].middle_u_mm = 0.5 * kSheetLengthMm + random.uniform(-0.5, 0.5);
  strip.frames[0].middle_v_mm = random.uniform(-0.3, 0.3);
  arrange_on_glass(s, 0.0, random.uniform(2.0, 6.0));
  return s;
}

Scenario cut_frame(Random& random) {
  StripLayout layout = ordinary_layout(random);
  layout.frames = 1;
  layout.leader = false;
  layout.rotation_sd_deg = 1.5;
  return strips_135(random, 1, layout, random.uniform(10.0, 20.0));
}

Scenario eight_bit(Random& random) {
  Scenario s = flatbed_open(random);
  s.encoding.bits = 8;
  s.encoding.transfer = Transfer::kSrgb;
  s.encoding.tone_told = random.chance(0.5) ? ToneTold::kUntold : ToneTold::kIccProfile;
  return s;
}

Scenario png(Random& random) {
  Scenario s = flatbed_open(random);
  s.encoding.file = FileKind::kPng;
  s.encoding.tone_told = ToneTold::kIccProfile;
  if (random.chance(0.3)) s.encoding.bits = 8;
  return s;
}

// Evenly lit wall, one stop apart from five under to the most that fits: a target of known
// exposures on the film itself.
Scenario bracket(Random& random) {
  StripLayout layout;
  layout.frames = 6;
  Scenario s = strips_135(random, 2, layout, random.uniform(8.0, 11.0));
  int stop = -5;
  for (StripPlan& strip : s.strips) {
    for (FramePlan& frame : strip.frames) {
      frame.scene.kind = SceneKind::kEvenWall;
      frame.scene.falloff = random.uniform(0.0, 0.05);
      frame.exposure_error_stops = stop++ + random.normal(0.0, 0.1);
      frame.mean_log_h = 1.0 + 0.30103 * frame.exposure_error_stops;
    }
  }
  return s;
}

Scenario jpeg(Random& random) {
  Scenario s = eight_bit(random);
  s.encoding.file = FileKind::kJpeg;
  s.encoding.jpeg_quality = random.integer(70, 97);
  return s;
}

Scenario untold(Random& random) {
  Scenario s = flatbed_open(random);
  s.encoding.tone_told = ToneTold::kUntold;
  return s;
}

Scenario blank_frames(Random& random) {
  StripLayout layout = ordinary_layout(random);
  layout.frames = random.integer(3, 5);
  layout.blank_chance = 0.4;
  return strips_135(random, 1, layout, random.uniform(10.0, 15.0));
}

Scenario overlap(Random& random) {
  StripLayout layout = ordinary_layout(random);
  layout.frames = random.integer(3, 5);
  layout.overlap_chance = 0.4;
  return strips_135(random, 1, layout, random.uniform(10.0, 15.0));
}

Scenario half_frame(Random& random) {
  StripLayout layout = ordinary_layout(random);
  layout.frames = random.integer(4, 7);
  layout.frame_length_mm = random.uniform(17.3, 18.0);
  Scenario s = strips_135(random, 1, layout, random.uniform(10.0, 15.0));
  // Four holes a frame: the gap is what the gate leaves of 19 mm.
  double u = random.uniform(0.4, 1.5);
  for (FramePlan& frame : s.strips[0].frames) {
    frame.middle_u_mm = u + 0.5 * frame.length_mm;
    u += 19.0 + random.normal(0.0, 0.15);
  }
  s.strips[0].geometry.length_mm = u - 0.3;
  s.strips[0].leader_mm = s.strips[0].geometry.tongue_mm = 0.0;
  arrange_on_glass(s, 0.0, random.uniform(2.0, 6.0));
  return s;
}

Scenario unfit_inverted(Random& random) {
  Scenario s = flatbed_open(random);
  s.encoding.inverted = true;
  return s;
}

Scenario unfit_stretched(Random& random) {
  Scenario s = flatbed_open(random);
  const Rgb clear = clear_density(s.strips[0].stock);
  const double base_light = 0.9 * s.scanner.bare_level * std::pow(10.0, -clear[1]);
  s.encoding.stretch_high = encoded_from_light(base_light, s.encoding);
  s.encoding.stretch_low = encoded_from_light(0.02 * s.scanner.bare_level, s.encoding);
  return s;
}

Scenario unfit_no_film(Random& random) {
  Scenario s = flatbed_open(random);
  s.strips.clear();
  return s;
}

// A photograph on paper or a slide: dark where it was dark, no film to be found.
Scenario unfit_positive(Random& random) {
  Scenario s = unfit_no_film(random);
  s.positive_picture = sample_frame(sample_roll(FilmFormat::k135, random), random).scene;
  return s;
}

// A holder whose windows all miss the film.
Scenario unfit_hidden(Random& random) {
  Scenario s = flatbed_open(random);
  s.holder.present = true;
  return s;
}

Scenario clipped_zero(Random& random) {
  Scenario s = flatbed_open(random);
  if (random.chance(0.5)) {
    s.scanner.bare_level = random.uniform(1.1, 1.5);
  } else {
    s.scanner.exposure_rule = ExposureRule::kClippedShare;
    s.scanner.clipped_share = random.uniform(0.05, 0.95);
  }
  return s;
}

// Small and quick, with everything a scanner can do.
Scenario tiny(Random& random) {
  StripLayout layout;
  layout.axis = random_axis(random);
  layout.frames = random.integer(1, 2);
  Scenario s = strips_135(random, 1, layout, random.uniform(10.0, 12.0));
  constexpr std::array kDevices = {Device::kFlatbed, Device::kCamera, Device::kFilmScanner};
  s.scanner = sample_scanner(kDevices[static_cast<std::size_t>(random.integer(0, 2))], random);
  if (random.chance(0.25)) s.encoding.bits = 8;
  if (random.chance(0.3)) put_in_holder(s, HolesShown::kWhole, random);
  return s;
}

using Samplers = std::vector<std::pair<std::string, std::function<Scenario(Random&)>>>;

const Samplers& samplers() {
  static const Samplers kSamplers = {{"flatbed-135-open", flatbed_open},
                                     {"flatbed-135-holder", flatbed_holder},
                                     {"holder-masked", holder_masked},
                                     {"glass-full", glass_full},
                                     {"camera-frame", camera_frame},
                                     {"camera-strip", camera_strip},
                                     {"medium-120", medium},
                                     {"sheet", sheet},
                                     {"cut-frame", cut_frame},
                                     {"eight-bit", eight_bit},
                                     {"jpeg", jpeg},
                                     {"png", png},
                                     {"untold-16-bit", untold},
                                     {"blank-frames", blank_frames},
                                     {"overlap", overlap},
                                     {"half-frame", half_frame},
                                     {"unfit-inverted", unfit_inverted},
                                     {"unfit-stretched", unfit_stretched},
                                     {"unfit-no-film", unfit_no_film},
                                     {"unfit-positive", unfit_positive},
                                     {"unfit-hidden", unfit_hidden},
                                     {"clipped-zero", clipped_zero},
                                     {"bracket-135", bracket},
                                     {"tiny", tiny}};
  return kSamplers;
}

std::vector<std::string> names_of(const Samplers& samplers) {
  std::vector<std::string> names;
  for (const auto& [name, sampler] : samplers) names.push_back(name);
  return names;
}

}  // namespace

const std::vector<std::string>& scenario_kinds() {
  static const std::vector<std::string> kKinds = names_of(samplers());
  return kKinds;
}

const std::vector<std::string>& foreign_kinds() {
  static const std::vector<std::string> kKinds = names_of(foreign_samplers());
  return kKinds;
}

Scenario sample_scenario(const std::string& kind, std::uint64_t seed) {
  for (const Samplers* list : {&samplers(), &foreign_samplers()}) {
    for (const auto& [name, sampler] : *list) {
      if (name != kind) continue;
      std::uint64_t part = 0;
      for (const char letter : kind) part = part * 131U + static_cast<unsigned char>(letter);
      Random random(seed, part);
      Scenario scenario = sampler(random);
      scenario.kind = kind;
      scenario.seed = seed;
      return scenario;
    }
  }
  throw std::invalid_argument("no kind of scan is called '" + kind + "'");
}

}  // namespace filmsim
