#include "record/advice_fields.h"
#include "record/judgement_tables.h"
#include "record/measurement_tables.h"
#include "words/advice_words.h"
#include "words/aim_words.h"
#include "words/cause_words.h"
#include "words/evidence_words.h"

namespace fogline {

using enum Presence;
using enum NumberRange;

namespace {

/// The ISO range of a paper repeats its log range.
void walk_iso_range(FieldWalker& walker, std::string_view name, const Known<Quantity>& range) {
  if (!walker.wants_repeats()) {
    return;
  }
  if (range && can_be_told(*range)) {
    walk_repeat(walker, name, iso_range(range->value));
  } else {
    walker.enter(name, null, false);
    walker.because(name, sentence_of_reason(range.why()));
  }
}

/// Null where no zones are known, since normal development is then no finding.
void walk_development_kind(CurveJudgement& judgement, FieldWalker& walker) {
  if (judgement.zones && can_be_told(*judgement.zones)) {
    walk_field(walker, "development", judgement.development, kept, any);
  } else if (walker.wants_repeats()) {
    walker.enter("development", null, false);
    walker.because("development", sentence_of_reason(judgement.zones.why()));
  }
}

/// What would tell most, as its code.
template <typename Struct>
Field<Struct> measurement_code(std::optional<FurtherMeasurement> Struct::*member) {
  return {"would_tell_most_code", [=](Struct& object, FieldWalker& walker) {
            walk_measurement_code(walker, object.*member);
          }};
}

}  // namespace

template <>
const Fields<UnfitScan>& fields_of() {
  static const Fields<UnfitScan> fields{
      field("file", &UnfitScan::file),
      field("caution", &UnfitScan::caution, left_out),
  };
  return fields;
}

template <>
const Fields<Finding>& fields_of() {
  static const Fields<Finding> fields{
      {"code",
       [](Finding& finding, FieldWalker& walker) {
         walker.enter("code", required, true);
         // What can't be told claims least.
         if (!walk_code(walker, finding.cause)) {
           finding.cause = Cause::unfit_scan;
         }
         walker.leave();
       }},
      field("confidence", &Finding::confidence, required, probability),
      repeat<Finding>("message", [](const Finding& finding) { return finding_message(finding); }),
      field("message_facts", &Finding::statements),
      repeat<Finding>("evidence",
                      [](const Finding& finding) { return evidence_sentences(finding); }),
      field("evidence_facts", &Finding::evidence),
      field("unfit_scans", &Finding::unfit_scans, left_out),
      measurement_code(&Finding::would_tell_most),
  };
  return fields;
}

template <>
const Fields<Aim>& fields_of() {
  static const Fields<Aim> fields{
      field("contrast_index", &Aim::contrast_index, required),
      field("tolerance", &Aim::tolerance, required, not_negative),
      repeat<Aim>("source", [](const Aim& aim) { return aim_source_words(aim); }),
      {"source_code",
       [](Aim& aim, FieldWalker& walker) {
         if (walker.enter("source_code", kept, true)) {
           walk_code(walker, aim.source);
           walker.leave();
         }
       }},
      field("unknown_like", &Aim::unknown_like, left_out),
  };
  return fields;
}

template <>
const Fields<CauseProbabilities>& fields_of() {
  static const Fields<CauseProbabilities> fields{
      field("normal", &CauseProbabilities::normal, required, probability),
      field("under-exposed", &CauseProbabilities::under_exposed, required, probability),
      field("over-exposed", &CauseProbabilities::over_exposed, required, probability),
      field("under-developed", &CauseProbabilities::under_developed, required, probability),
      field("over-developed", &CauseProbabilities::over_developed, required, probability),
  };
  return fields;
}

template <>
const Fields<LightOrTime>& fields_of() {
  static const Fields<LightOrTime> fields{
      repeat<LightOrTime>("judged", [](const LightOrTime& weighed) { return weighed.judged(); }),
      field("probabilities", &LightOrTime::causes),
      {"exposure_stops",
       [](LightOrTime& weighed, FieldWalker& walker) {
         walk_known(walker, "exposure_stops", weighed.exposure_stops,
                    told_or_silent(light_reason_sentence(weighed.exposure_stops.why())));
       }},
      field("latitude_stops", &LightOrTime::latitude_stops, kept, not_negative),
      field("contrast_index", &LightOrTime::contrast_index),
      repeat<LightOrTime>(
          "evidence",
          [](const LightOrTime& weighed) { return evidence_sentences(weighed.evidence); }),
      field("evidence_facts", &LightOrTime::evidence),
      repeat<LightOrTime>("would_tell_most",
                          [](const LightOrTime& weighed) {
                            return std::string(weighed.would_tell_most
                                                   ? measurement_sentence(*weighed.would_tell_most)
                                                   : std::string_view());
                          }),
      measurement_code(&LightOrTime::would_tell_most),
  };
  return fields;
}

template <>
const Fields<CurveJudgement>& fields_of() {
  static const Fields<CurveJudgement> fields{
      field("zones", &CurveJudgement::zones),
      {"development", walk_development_kind},
      field("diffusion_log_range", &CurveJudgement::diffusion_range),
      {"diffusion_iso_range",
       [](CurveJudgement& judgement, FieldWalker& walker) {
         walk_iso_range(walker, "diffusion_iso_range", judgement.diffusion_range);
       }},
      field("condenser_log_range", &CurveJudgement::condenser_range),
      {"condenser_iso_range",
       [](CurveJudgement& judgement, FieldWalker& walker) {
         walk_iso_range(walker, "condenser_iso_range", judgement.condenser_range);
       }},
      field("zone_ix_net_density", &CurveJudgement::densest),
      field("suits_scanning", &CurveJudgement::suits_scanning),
  };
  return fields;
}

}  // namespace fogline
