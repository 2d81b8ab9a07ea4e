#include "process/advice/film_state.h"

namespace fogline {

namespace {

/// Frames whose highlights stay below this (net) are dirt or chance, no pictures.
constexpr double least_picture_density = 0.06;
/// A piece of film shorter than this may be cut from between frames, mm.
constexpr double least_film_mm = 50.0;
/// A shorter piece may be the unexposed end of an exposed roll, mm: about four frames of 135 film.
constexpr double telling_film_mm = 150.0;
/// How often edge print that is there isn't found, hidden by the holder or thin (common practice,
/// no source), and how often dirt or a holder's rim passes for edge print on bare film.
constexpr double print_missed_share = 0.10;
constexpr double print_invented_share = 0.05;
/// How often a piece of this kind is the unexposed end of a roll that is right (common practice, no
/// source).
constexpr double roll_end_share_short = 0.4;
constexpr double roll_end_share_long = 0.08;

/// From this on a fault is said as what happened.
constexpr double told = 0.5;

Finding not_exposed(double confidence) {
  Finding finding = finding_of(Cause::not_exposed, confidence);
  finding.statements.push_back(fact_of(confidence >= told ? CauseStatement::not_exposed
                                                          : CauseStatement::perhaps_not_exposed));
  return finding;
}

Finding not_developed(double confidence) {
  Finding finding = finding_of(Cause::not_developed, confidence);
  finding.statements.push_back(fact_of(confidence >= told ? CauseStatement::not_developed
                                                          : CauseStatement::perhaps_not_developed));
  return finding;
}

}  // namespace

bool shows_no_picture(const LightSigns& signs) {
  const bool empty_frames = signs.highlight && !signs.highlight->at_least &&
                            signs.highlight->density < least_picture_density;
  return signs.readable && signs.film_mm >= least_film_mm &&
         (signs.frames_in_sight == 0 || empty_frames);
}

std::vector<Finding> film_state_findings(const LightSigns& signs) {
  if (!shows_no_picture(signs)) {
    return {};
  }
  const bool print_expected = signs.format == FilmFormat::f135;
  std::vector<Fact<Evidence>> evidence{fact_of(Evidence::no_picture, {signs.film_mm})};
  const double roll_end =
      signs.film_mm < telling_film_mm ? roll_end_share_short : roll_end_share_long;
  // Both faults are about as common; what is seen of print and leader then decides.
  double exposed_weight = 1.0;
  double developed_weight = 1.0;
  if (signs.edge_print) {
    evidence.push_back(fact_of(Evidence::edge_print_there, {signs.edge_print->density}));
    exposed_weight *= 1.0 - print_missed_share;
    developed_weight *= print_invented_share;
  } else if (print_expected) {
    evidence.push_back(fact_of(Evidence::no_edge_print));
    exposed_weight *= print_missed_share;
    developed_weight *= 1.0 - print_invented_share;
  } else {
    evidence.push_back(fact_of(Evidence::edge_print_unread));
  }
  if (signs.leader) {
    evidence.push_back(fact_of(Evidence::leader_there, {signs.leader->density}));
    developed_weight *= print_invented_share;
  }
  // The end of a roll looks like film that was never exposed, developed well.
  const double end_weight = exposed_weight * roll_end / (1.0 - roll_end);
  const double sum = exposed_weight + developed_weight + end_weight;
  std::vector<Finding> findings{not_exposed(exposed_weight / sum),
                                not_developed(developed_weight / sum)};
  for (Finding& finding : findings) {
    finding.evidence = evidence;
  }
  return findings;
}

}  // namespace fogline
