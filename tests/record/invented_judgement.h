#pragma once

#include "record/invented_roll.h"

#include <fogline/record/record_json.h>

#include <string>
#include <utility>
#include <vector>

// Judged rolls: what is concluded from the invented scans is invented too.

namespace fogline::invented {

/// A roll of which nothing is concluded.
inline RollRecord record(RollMeasurement roll) {
  RollRecord record;
  record.tool_version = "0.1.0";
  record.measurement = std::move(roll);
  return record;
}

inline RollCard card() {
  RollCard card;
  card.name = "Roll 12";
  card.film = "grey box, iso 400";
  card.film_type = FilmType::tabular;
  card.exposure_index = 320.0;
  card.print_with = PrintWith::diffusion;
  card.developed = "2025-10-09";
  card.base_tint = {{0.26, 0.26, 0.27}};
  card.development.developer = "liquid developer";
  card.development.dilution = "1+14";
  card.development.volume_ml = 300.0;
  card.development.time_s = 450.0;
  card.development.temperature_c = 20.0;
  card.stop.kind = "acid";
  card.stop.time_s = 30.0;
  card.fix.kind = FixKind::rapid;
  card.fix.time_s = 180.0;
  card.fix.rolls_before = 9;
  card.wash.fills = {5, 10, 20};
  return card;
}

inline Mark mark(MarkKind kind, const BoxPx& box, double size_mm, double contrast,
                 double confidence) {
  Mark mark;
  mark.kind = kind;
  mark.strip = 1;
  mark.box_px = box;
  mark.size_mm = size_mm;
  mark.contrast_density = contrast;
  mark.area_mm2 = 0.6 * size_mm * size_mm;
  mark.confidence = confidence;
  return mark;
}

/// A ring, a bubble, dust, a pinhole at the very edge of the picture, and a scratch through it all.
inline std::vector<Mark> marks() {
  std::vector<Mark> marks{mark(MarkKind::drying_mark, {140.0, 90.0, 22.0, 20.0}, 2.2, 0.12, 0.93),
                          mark(MarkKind::air_bell, {520.0, 200.0, 9.0, 9.0}, 0.9, -0.31, 0.88),
                          mark(MarkKind::dust, {540.0, 215.0, 3.0, 4.0}, 0.4, 0.62, 0.99),
                          mark(MarkKind::pinhole, {1296.0, 340.0, 3.0, 3.0}, 0.2, -0.9, 0.71),
                          mark(MarkKind::scratch, {10.0, 130.0, 1280.0, 4.0}, 128.0, -0.08, 0.97)};
  marks.back().contrast_density = Unknown::uneven_surround;
  return marks;
}

inline Tint dye() {
  Tint tint;
  tint.kind = TintKind::dye_left;
  tint.density = density(0.084, 0.021);
  tint.confidence = 0.97;
  tint.components = {{TintKind::dye_left, density(0.084, 0.021), 0.97},
                     {TintKind::yellow_stain, density(0.031, 0.024), 0.56}};
  tint.detection_limit = 0.03;
  tint.may_be_stock = false;
  return tint;
}

inline Advice advice() {
  Advice advice;
  DevelopmentAdvice& development = advice.development;
  development.time_s = 600.0;
  development.time_u95_s = 80.0;
  development.temperature_c = 20.0;
  development.change_percent = 33.3;
  development.predicted_contrast_index = density(0.57, 0.09);
  development.reasons = {fact_of(DevelopmentReason::contrast_seen, {0.42, 0.34, 0.50, 0.58}),
                         fact_of(DevelopmentReason::time_lands, {600.0, 0.05, 0.62, 0.04})};
  advice.exposure.change_stops = 1.0 / 3.0;
  advice.exposure.exposure_index = 250.0;
  advice.exposure.reasons = {fact_of(ExposureReason::give_more_light, {1.0 / 3.0})};
  advice.stop.time_s = 30.0;
  advice.stop.change = BathChange::keep;
  advice.stop.reasons = {fact_of(BathReason::stop_enough, {30.0, 180.0})};
  advice.fix.time_s = 360.0;
  advice.fix.change = BathChange::renew;
  advice.fix.reasons = {fact_of(BathReason::takes_too_much_silver, {21.0, 20.0, 1.7}),
                        fact_of(BathReason::handle_with_care)};
  advice.wash.fills = {5, 10, 20, 30};
  advice.wash.change = BathChange::longer;
  advice.wash.reasons = {fact_of(BathReason::fill_for_dye)};
  advice.this_roll = {fact_of(RescueStep::fix_for_dye), fact_of(RescueStep::wash_out_dye),
                      fact_of(RescueStep::wipe_drying_marks),
                      fact_of(RescueStep::handle_with_care)};
  return advice;
}

inline LightOrTime weighed(const CauseProbabilities& causes, const Quantity& stops,
                           const Quantity& contrast) {
  LightOrTime weighed;
  weighed.causes = causes;
  weighed.exposure_stops = stops;
  weighed.latitude_stops = 2.0 / 3.0;
  weighed.contrast_index = contrast;
  weighed.evidence = {fact_of(Evidence::shadow, {0.10, 3.0, 0.20, 0.40}),
                      fact_of(Evidence::highlight, {0.78, 3.0, 1.05, 1.35})};
  weighed.would_tell_most = FurtherMeasurement::scan_leader;
  return weighed;
}

inline Finding finding(Cause cause, double confidence, const Fact<CauseStatement>& statement,
                       const std::vector<Fact<Evidence>>& evidence) {
  Finding finding = finding_of(cause, confidence);
  finding.statements = {statement};
  finding.evidence = evidence;
  return finding;
}

/// Under-developed, with dye left, marks, a card and advice.
inline RollRecord short_record() {
  RollRecord short_roll = record(roll());
  short_roll.card = card();
  ScanMeasurement& scan = short_roll.measurement.scans.front();
  scan.tint = dye();
  scan.marks = marks();
  Judgement& judgement = short_roll.judgement;
  judgement.light_or_time =
      weighed({0.06, 0.13, 0.01, 0.79, 0.01}, density(-0.2, 0.3), density(0.42, 0.08));
  const auto& seen = judgement.light_or_time.evidence;
  judgement.findings = {
      finding(Cause::dye_left, 0.97, fact_of(CauseStatement::dye_left),
              {fact_of(Evidence::coloured_veil, {0.084, 0.021})}),
      finding(Cause::drying_marks, 0.93, fact_of(CauseStatement::drops_dried),
              {fact_of(Evidence::drying_marks, {1.0})}),
      finding(Cause::under_developed, 0.79,
              fact_of(CauseStatement::development_short, {0.42, 0.08, 0.58}), seen),
      finding(Cause::under_exposed, 0.13, fact_of(CauseStatement::perhaps_too_little_light, {0.13}),
              seen)};
  judgement.advice = advice();
  return short_roll;
}

/// All right, without a card, clean.
inline RollRecord normal_record() {
  RollRecord normal = record(roll());
  Tint& tint = normal.measurement.scans.front().tint;
  tint.kind = TintKind::none;
  tint.confidence = 0.98;
  tint.detection_limit = 0.03;
  Judgement& judgement = normal.judgement;
  judgement.light_or_time =
      weighed({0.83, 0.05, 0.06, 0.03, 0.03}, density(0.1, 0.7), density(0.57, 0.07));
  judgement.light_or_time.would_tell_most.reset();
  judgement.findings = {
      finding(Cause::normal, 0.83,
              fact_of(CauseStatement::light_and_development_right, {0.57, 0.07, 0.58}), {})};
  Advice same;
  same.development.change_percent = 0.0;
  same.development.reasons = {fact_of(DevelopmentReason::within_tolerance, {0.05})};
  same.exposure.change_stops = 0.0;
  same.fix.reasons = {fact_of(BathReason::fixer_kind_untold, {180.0, 360.0, 300.0, 600.0})};
  same.wash.time_s = 600.0;
  same.this_roll = {fact_of(RescueStep::nothing_needed)};
  judgement.advice = same;
  return normal;
}

/// Light and time can't be told apart.
inline RollRecord undecided_record() {
  RollRecord undecided = short_record();
  LightOrTime& light_or_time = undecided.judgement.light_or_time;
  light_or_time = weighed({0.22, 0.36, 0.0, 0.41, 0.01}, density(-0.6, 1.1), density(0.48, 0.16));
  undecided.judgement.findings.erase(undecided.judgement.findings.begin() + 2,
                                     undecided.judgement.findings.end());
  undecided.judgement.advice->development = {};
  undecided.judgement.advice->exposure = {};
  return undecided;
}

}  // namespace fogline::invented
