#include "record/advice_fields.h"

#include "record/judgement_tables.h"
#include "words/advice_words.h"
#include "words/bath_words.h"
#include "words/record_words.h"
#include "words/rescue_words.h"

#include <algorithm>

namespace fogline {

using enum Presence;
using enum NumberRange;

namespace {

// In advice `reasons` is a list of sentences, so a null has no entry of its own there.

template <typename Value>
void walk_plain(FieldWalker& walker, std::string_view name, std::optional<Value>& value) {
  if (walker.enter(name, null, value && can_be_told(*value))) {
    Value walked = value.value_or(Value{});
    walk_value(walker, walked, any);
    value = walked;
    walker.leave();
  }
}

/// The contract wants a sentence where a number is null.
void walk_reasons_list(FieldWalker& walker, std::vector<std::string> reasons, bool any_null) {
  if (reasons.empty() && any_null) {
    reasons.push_back(silent_roll_sentence());
  }
  walk_repeat(walker, "reasons", std::move(reasons));
}

void walk_development(FieldWalker& walker, DevelopmentAdvice& advice, const Aim& aim) {
  walk_plain(walker, "time_s", advice.time_s);
  walk_field(walker, "time_u95_s", advice.time_u95_s, left_out, any);
  walk_plain(walker, "temperature_c", advice.temperature_c);
  walk_plain(walker, "change_percent", advice.change_percent);
  walk_known(walker, "predicted_contrast_index", advice.predicted_contrast_index, "");
  const bool any_null = !advice.time_s || !advice.temperature_c || !advice.change_percent ||
                        !advice.predicted_contrast_index;
  if (walker.wants_repeats()) {
    walk_reasons_list(walker, development_sentences(advice, aim), any_null);
  }
  walk_field(walker, "facts", advice.reasons, kept, any);
  walk_measurement_code(walker, advice.would_tell_most);
}

void walk_exposure(FieldWalker& walker, ExposureAdvice& advice) {
  walk_known(walker, "change_stops", advice.change_stops, "");
  walk_plain(walker, "exposure_index", advice.exposure_index);
  if (walker.wants_repeats()) {
    walk_reasons_list(walker, exposure_sentences(advice),
                      !advice.change_stops || !advice.exposure_index);
  }
  walk_field(walker, "facts", advice.reasons, kept, any);
}

void walk_bath(FieldWalker& walker, BathAdvice& advice) {
  walk_plain(walker, "time_s", advice.time_s);
  walk_field(walker, "change", advice.change, required, any);
  walk_field(walker, "fills", advice.fills, left_out, any);
  if (walker.wants_repeats()) {
    walk_reasons_list(walker, bath_sentences(advice), !advice.time_s);
  }
  walk_field(walker, "facts", advice.reasons, kept, any);
}

std::vector<std::string> step_sentences(const std::vector<Fact<RescueStep>>& steps) {
  std::vector<std::string> sentences;
  std::transform(steps.begin(), steps.end(), std::back_inserter(sentences), step_sentence);
  return sentences;
}

template <typename Walk>
void walk_part(FieldWalker& walker, std::string_view name, const Walk& walk) {
  walker.enter(name, required, true);
  walker.object(walk);
  walker.leave();
}

}  // namespace

void walk_measurement_code(FieldWalker& walker, std::optional<FurtherMeasurement>& measurement) {
  if (walker.enter("would_tell_most_code", left_out, measurement.has_value())) {
    FurtherMeasurement walked = measurement.value_or(FurtherMeasurement{});
    measurement = walk_code(walker, walked) ? std::optional(walked) : std::nullopt;
    walker.leave();
  }
}

void walk_advice(FieldWalker& walker, Advice& advice, const Aim& aim) {
  walker.object([&] {
    walk_part(walker, "development", [&] { walk_development(walker, advice.development, aim); });
    walk_part(walker, "exposure", [&] { walk_exposure(walker, advice.exposure); });
    walk_part(walker, "stop", [&] { walk_bath(walker, advice.stop); });
    walk_part(walker, "fix", [&] { walk_bath(walker, advice.fix); });
    walk_part(walker, "wash", [&] { walk_bath(walker, advice.wash); });
    if (walker.wants_repeats()) {
      walk_repeat(walker, "this_roll", step_sentences(advice.this_roll));
    }
    walk_field(walker, "this_roll_facts", advice.this_roll, kept, any);
  });
}

}  // namespace fogline
