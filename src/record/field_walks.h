#pragma once

#include "record/field_values.h"

#include <fogline/base/known.h>
#include <fogline/base/quantity.h>

#include <optional>
#include <string>
#include <string_view>
#include <utility>

// How a value stands in its object: present, null with a reason, left out, laid flat, repeated.

namespace fogline {

/// Whether a value can be told: numbers that aren't finite are absent.
bool can_be_told(double value);
bool can_be_told(const Quantity& quantity);
template <typename Value>
bool can_be_told(const Value& /*value*/) {
  return true;
}

/// The sentence for a null field of which nobody said why.
std::string silent_sentence();
/// Why a value is absent, in English.
std::string sentence_of_reason(const WhyUnknown& why);
/// A reason, or, where there is none, that the scan doesn't tell.
std::string told_or_silent(std::string reason);

/// Of a value that is always there: null only where it can't be told, left out where it is the
/// type's own zero.
template <typename Value>
void walk_field(FieldWalker& walker, std::string_view name, Value& value, Presence presence,
                NumberRange range) {
  const bool there = presence == Presence::left_out
                         ? !(value == Value{})
                         : presence != Presence::null || can_be_told(value);
  if (walker.enter(name, presence, there)) {
    walk_value(walker, value, range);
    walker.leave();
  } else if (presence == Presence::null) {
    walker.because(name, silent_sentence());
  }
}

/// Null or left out where absent.
template <typename Value>
void walk_field(FieldWalker& walker, std::string_view name, std::optional<Value>& value,
                Presence presence, NumberRange range) {
  const Presence absence = presence == Presence::left_out ? presence : Presence::null;
  if (walker.enter(name, absence, value && can_be_told(*value))) {
    Value walked = value.value_or(Value{});
    walk_value(walker, walked, range);
    value = std::move(walked);
    walker.leave();
  } else if (absence == Presence::null) {
    walker.because(name, silent_sentence());
  }
}

/// Leaves the reason of a value that is absent, and its sentence.
template <typename Value>
void walk_reason(FieldWalker& walker, std::string_view name, Known<Value>& value,
                 std::string sentence) {
  walker.because(name, value.why(), std::move(sentence),
                 [&value](const WhyUnknown& why) { value = why; });
}
template <typename Value>
void walk_reason(FieldWalker& walker, std::string_view name, Known<Value>& value) {
  walk_reason(walker, name, value, sentence_of_reason(value.why()));
}

/// Null where absent, and why in a sentence; an empty one where the object has no place for it.
template <typename Value>
void walk_known(FieldWalker& walker, std::string_view name, Known<Value>& value,
                std::string sentence, NumberRange range = NumberRange::any) {
  if (walker.enter(name, Presence::null, value && can_be_told(*value))) {
    Value walked = value.value_or(Value{});
    walk_value(walker, walked, range);
    value = std::move(walked);
    walker.leave();
  } else {
    walk_reason(walker, name, value, std::move(sentence));
  }
}
template <typename Value>
void walk_field(FieldWalker& walker, std::string_view name, Known<Value>& value,
                Presence /*absence*/, NumberRange range) {
  walk_known(walker, name, value, sentence_of_reason(value.why()), range);
}

/// A quantity laid flat: `name` is its value or null, `name`_u95 and the rest stand beside it.
void walk_flat(FieldWalker& walker, std::string_view name, Known<Quantity>& quantity);

/// Something that only repeats other fields in another form: written, never read.
template <typename Value>
void walk_repeat(FieldWalker& walker, std::string_view name, Value value) {
  if (walker.wants_repeats()) {
    walk_field(walker, name, value, Presence::kept, NumberRange::any);
  }
}

/// A reason why `name` is as it is, whether it is null or not.
void walk_remark(FieldWalker& walker, std::string_view name, std::optional<WhyUnknown>& why);

}  // namespace fogline
