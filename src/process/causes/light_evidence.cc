#include "process/causes/light_evidence.h"

namespace fogline {

namespace {

Fact<Evidence> tone_evidence(Evidence kind, Evidence at_least, const NetReading& reading,
                             int frames, double usual_from, double usual_to) {
  return fact_of(reading.at_least ? at_least : kind,
                 {reading.density, static_cast<double>(frames), usual_from, usual_to});
}

Fact<Evidence> print_evidence(const NetReading& print, const RollPopulation& population) {
  if (print.density >= population.greatest_edge_print_density) {
    return fact_of(
        print.at_least ? Evidence::edge_print_blunt_at_least : Evidence::edge_print_blunt,
        {print.density});
  }
  return fact_of(print.at_least ? Evidence::edge_print_at_least : Evidence::edge_print,
                 {print.density, population.edge_print_sd_share});
}

Fact<Evidence> leader_evidence(const NetReading& leader, double black_density) {
  if (leader.at_least) {
    return fact_of(Evidence::leader_black_at_least, {leader.density});
  }
  if (leader.density >= black_density) {
    return fact_of(Evidence::leader_black, {leader.density});
  }
  return fact_of(Evidence::leader_grey, {leader.density, black_density});
}

}  // namespace

std::vector<Fact<Evidence>> light_evidence(const LightSigns& signs, const ReadingScale& scale,
                                           const Aim& aim, const RollPopulation& population) {
  std::vector<Fact<Evidence>> evidence;
  const double factor = scale.factor * aim.contrast_index / population.usual_contrast_index;
  if (signs.shadow) {
    evidence.push_back(
        tone_evidence(Evidence::shadow, Evidence::shadow_at_least, *signs.shadow, signs.frames,
                      (population.shadow_density - population.shadow_half_density) * factor,
                      (population.shadow_density + population.shadow_half_density) * factor));
  }
  if (signs.highlight) {
    evidence.push_back(tone_evidence(
        Evidence::highlight, Evidence::highlight_at_least, *signs.highlight, signs.frames,
        (population.highlight_density - population.highlight_half_density) * factor,
        (population.highlight_density + population.highlight_half_density) * factor));
  }
  if (signs.edge_print) {
    evidence.push_back(print_evidence(*signs.edge_print, population));
  }
  if (signs.leader) {
    evidence.push_back(leader_evidence(*signs.leader, population.black_leader_density));
  }
  if (signs.base_fog) {
    const bool f135 = signs.format == FilmFormat::f135;
    evidence.push_back(
        fact_of(f135 ? Evidence::base_fog_135 : Evidence::base_fog_clear, {signs.base_fog->value}));
  }
  return evidence;
}

}  // namespace fogline
