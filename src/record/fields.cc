#include "record/fields.h"

#include "words/unknown_words.h"

#include <cmath>

namespace fogline {

void walk_value(FieldWalker& walker, PointPx& point, NumberRange /*range*/) {
  walker.begin_fixed_list(2);
  walker.enter_item(0);
  walker.number(point.x, NumberRange::any);
  walker.leave();
  walker.enter_item(1);
  walker.number(point.y, NumberRange::any);
  walker.leave();
}

void walk_value(FieldWalker& walker, std::array<PointPx, 4>& corners, NumberRange range) {
  walker.begin_fixed_list(corners.size());
  for (std::size_t i = 0; i < corners.size(); ++i) {
    walker.enter_item(i);
    walk_value(walker, corners[i], range);
    walker.leave();
  }
}

bool can_be_told(double value) {
  return std::isfinite(value);
}

bool can_be_told(const Quantity& quantity) {
  return std::isfinite(quantity.value) && std::isfinite(quantity.u95);
}

void walk_flat(FieldWalker& walker, std::string_view name, Known<Quantity>& quantity) {
  if (!walker.enter(name, Presence::null, quantity && can_be_told(*quantity))) {
    walk_reason(walker, name, quantity);
    return;
  }
  Quantity walked = quantity.value_or(Quantity{});
  walker.number(walked.value, NumberRange::any);
  walker.leave();
  const std::string prefix = std::string(name) + "_";
  walk_field(walker, prefix + "u95", walked.u95, Presence::kept, NumberRange::not_negative);
  walk_field(walker, prefix + "u95_common", walked.u95_common, Presence::left_out,
             NumberRange::not_negative);
  walk_field(walker, prefix + "lower95", walked.lower95, Presence::left_out, NumberRange::any);
  walk_field(walker, prefix + "upper95", walked.upper95, Presence::left_out, NumberRange::any);
  walk_field(walker, prefix + "at_least", walked.at_least, Presence::left_out, NumberRange::any);
  quantity = walked;
}

void walk_remark(FieldWalker& walker, std::string_view name, std::optional<WhyUnknown>& why) {
  if (!why && walker.wants_repeats()) {
    return;
  }
  walker.because(name, why.value_or(WhyUnknown{}), why ? sentence_of_reason(*why) : std::string(),
                 [&why](const WhyUnknown& told) { why = told; });
}

std::string silent_sentence() {
  return unknown_sentence(fact_of(Unknown::scan_silent));
}

std::string sentence_of_reason(const WhyUnknown& why) {
  return is_told(why) ? unknown_sentence(why) : silent_sentence();
}

std::string told_or_silent(std::string reason) {
  return reason.empty() ? silent_sentence() : reason;
}

}  // namespace fogline
