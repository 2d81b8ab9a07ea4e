#include "glance.h"

#include "compare_frames.h"

#include <algorithm>
#include <cstdio>

namespace bench {

namespace {

constexpr double strip_iou = 0.5;
constexpr double frame_iou = 0.8;
constexpr double said_for_sure = 0.8;

/// Something was outlined, but said to be neither film of a known width nor film with frames.
bool called_no_film(const fogline::ScanMeasurement& scan) {
  return std::any_of(scan.cautions.begin(), scan.cautions.end(),
                     [](const fogline::Caution& caution) {
                       return caution.fact.kind == fogline::CautionKind::no_film ||
                              caution.fact.kind == fogline::CautionKind::no_frames;
                     });
}

bool box_told(const filmsim::StripTruth& strip, const fogline::ScanMeasurement& scan) {
  return std::any_of(scan.strips.begin(), scan.strips.end(),
                     [&](const fogline::StripMeasurement& told) {
                       return box_iou(told.box_px, strip.box_px) >= strip_iou;
                     });
}

bool every_strip_found(const filmsim::Truth& truth, const fogline::ScanMeasurement& scan) {
  return !called_no_film(scan) && std::all_of(truth.strips.begin(), truth.strips.end(),
                                              [&](const filmsim::StripTruth& strip) {
                                                return strip.box_px.width <= 0.0 ||
                                                       box_told(strip, scan);
                                              });
}

int frames_found(const filmsim::Truth& truth, const fogline::ScanMeasurement& scan) {
  return static_cast<int>(std::count_if(
      truth.frames.begin(), truth.frames.end(), [&](const filmsim::FrameTruth& frame) {
        return shows_whole(frame) &&
               std::any_of(scan.frames.begin(), scan.frames.end(),
                           [&](const fogline::FrameMeasurement& told) {
                             return box_iou(told.box_px, frame.box_px) >= frame_iou;
                           });
      }));
}

std::string said(const char* what, double value) {
  char text[64];
  std::snprintf(text, sizeof text, "%s %.3f", what, value);
  return text;
}

std::vector<std::string> impossible_numbers(const fogline::ScanMeasurement& scan) {
  constexpr double least_base = 0.02;
  constexpr double greatest_base = 4.0;
  std::vector<std::string> found;
  const bool above_base = scan.densities_above == fogline::DensitiesAbove::base;
  std::optional<double> clear;
  if (above_base) {
    clear = 0.0;
  } else if (scan.base_fog) {
    clear = scan.base_fog->visual.value;
  }
  if (scan.base_fog &&
      (scan.base_fog->visual.value < least_base || scan.base_fog->visual.value > greatest_base)) {
    found.push_back(said("base plus fog", scan.base_fog->visual.value));
  }
  const auto below_clear = [&](const fogline::Known<fogline::Quantity>& number) {
    return clear && number && number->value + number->u95 < *clear;
  };
  for (const fogline::FrameMeasurement& frame : scan.frames) {
    if (below_clear(frame.tone.shadow)) {
      found.push_back(said("shadow below clear film", frame.tone.shadow->value));
    }
  }
  if (below_clear(scan.leader)) {
    found.push_back(said("leader below clear film", scan.leader->value));
  }
  return found;
}

/// Greatest density of what veils the film evenly, of its haze, and of its image stain, over
/// strips.
struct Veils {
  double even = 0.0;
  double base_colour = 0.0;  ///< the stock's own: densest channel less the clearest
  double haze = 0.0;
  double image_stain = 0.0;
};

Veils true_veils(const filmsim::Scenario& scenario) {
  Veils veils;
  for (const filmsim::StripPlan& strip : scenario.strips) {
    const filmsim::FilmStock& stock = strip.stock;
    const auto [clearest, densest] = std::minmax_element(stock.base.begin(), stock.base.end());
    veils.base_colour = std::max(veils.base_colour, *densest - *clearest);
    for (std::size_t c = 0; c < stock.base.size(); ++c) {
      veils.even = std::max(veils.even, stock.dye_left[c] + stock.yellow_stain[c]);
      veils.haze = std::max(veils.haze, stock.haze[c]);
      veils.image_stain = std::max(veils.image_stain, stock.image_stain[c]);
    }
  }
  return veils;
}

/// The veil that a kind speaks of. Dye and even stain are one: a foreign veil has any colour.
double veil_of(fogline::TintKind kind, const Veils& veils) {
  switch (kind) {
    case fogline::TintKind::fixer_haze:
      return veils.haze;
    case fogline::TintKind::image_stain:
      return veils.image_stain;
    case fogline::TintKind::none:
    case fogline::TintKind::dye_left:
    case fogline::TintKind::sensitising_dye:
    case fogline::TintKind::antihalation_dye:
    case fogline::TintKind::yellow_stain:
      break;
  }
  return veils.even;
}

std::string tint_text(fogline::TintKind kind, double confidence) {
  constexpr const char* names[] = {"none",       "dye left",     "sensitising dye", "backing dye",
                                   "fixer haze", "yellow stain", "image stain"};
  return said(names[static_cast<std::size_t>(kind)], confidence);
}

std::vector<std::string> wrong_tints(const filmsim::Scenario& scenario, const fogline::Tint& tint) {
  constexpr double clearly_tinted = 0.05;
  constexpr double nothing = 0.005;
  Veils veils = true_veils(scenario);
  std::vector<std::string> wrong;
  const bool none_for_sure =
      tint.kind && *tint.kind == fogline::TintKind::none && tint.confidence >= said_for_sure;
  if (none_for_sure && std::max(veils.even, veils.haze) > clearly_tinted) {
    wrong.push_back(tint_text(fogline::TintKind::none, tint.confidence));
  }
  // Where it says so itself, what is told may be the stock's own colour.
  constexpr double coloured_base = 0.03;
  if (tint.may_be_stock && veils.base_colour > coloured_base) {
    veils.even = std::max(veils.even, veils.base_colour);
  }
  for (const fogline::TintComponent& part : tint.components) {
    if (part.confidence >= said_for_sure && part.kind != fogline::TintKind::none &&
        veil_of(part.kind, veils) <= nothing) {
      wrong.push_back(tint_text(part.kind, part.confidence));
    }
  }
  return wrong;
}

}  // namespace

bool Glance::holes_right() const {
  constexpr int near_enough = 2;
  return holes_told >= holes_whole - near_enough &&
         holes_told <= holes_whole + holes_partly + near_enough;
}

Glance glance_at(const filmsim::Simulated& simulated, const fogline::RollMeasurement* roll) {
  Glance glance;
  const filmsim::Truth& truth = simulated.truth;
  for (const filmsim::StripTruth& strip : truth.strips) {
    glance.holes_whole += static_cast<int>(strip.holes_px.size());
    glance.holes_partly += strip.holes_partly;
  }
  if (roll == nullptr || roll->scans.empty()) {
    return glance;
  }
  const fogline::ScanMeasurement& scan = roll->scans.front();
  glance.film_found = every_strip_found(truth, scan);
  for (const fogline::StripMeasurement& strip : scan.strips) {
    glance.holes_told += strip.perforations;
  }
  glance.frames_found = frames_found(truth, scan);
  ScanCase counted;
  count_frames(truth, scan, counted);
  glance.frames_invented = counted.frames_invented;
  glance.impossible = impossible_numbers(scan);
  glance.wrong_tints = wrong_tints(simulated.scenario, scan.tint);
  return glance;
}

}  // namespace bench
