#pragma once

#include "record/fact_fields.h"
#include "record/field_walker.h"
#include "words/schema_words.h"

#include <fogline/base/geometry.h>
#include <fogline/base/known.h>
#include <fogline/base/quantity.h>

#include <array>
#include <concepts>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

namespace fogline {

/// One field of a struct: its name in files, and how a walker comes to it. A field that lies in the
/// struct's own object piece by piece (`inlined`) has no name.
template <typename Struct>
struct Field {
  std::string_view name;
  std::function<void(Struct&, FieldWalker&)> walk;
};

/// The fields of a struct in the order in which they are written.
template <typename Struct>
using Fields = std::vector<Field<Struct>>;

/// The table of a struct: specialised once, in the file of its stage (`*_fields.cc`). Writer,
/// reader, the tests' random records and the check against the schema all walk it.
template <typename Struct>
const Fields<Struct>& fields_of();

template <typename Struct>
void walk_fields(FieldWalker& walker, Struct& object) {
  for (const Field<Struct>& field : fields_of<Struct>()) {
    field.walk(object, walker);
  }
}

// How each type is written. What isn't listed here is a struct with a table.

inline void walk_value(FieldWalker& walker, double& value, NumberRange range) {
  walker.number(value, range);
}
inline void walk_value(FieldWalker& walker, int& value, NumberRange) {
  walker.whole(value);
}
inline void walk_value(FieldWalker& walker, bool& value, NumberRange) {
  walker.truth(value);
}
inline void walk_value(FieldWalker& walker, std::string& value, NumberRange) {
  walker.text(value);
}
/// A place: [x, y].
void walk_value(FieldWalker& walker, PointPx& point, NumberRange range);
/// Four corners, clockwise from top left.
void walk_value(FieldWalker& walker, std::array<PointPx, 4>& corners, NumberRange range);

template <typename Kind>
void walk_value(FieldWalker& walker, Fact<Kind>& fact, NumberRange) {
  walk_fact(walker, fact);
}

/// A word. One that this program doesn't know is read as the member that claims least.
template <typename Kind>
requires std::is_enum_v<Kind>
void walk_value(FieldWalker& walker, Kind& kind, NumberRange) {
  static const std::vector<std::string_view> words = [] {
    std::vector<std::string_view> all;
    for (const auto& row : schema_words<Kind>().rows) {
      all.push_back(row.word);
    }
    return all;
  }();
  auto place = static_cast<std::size_t>(kind);
  kind = walker.word(place, words) ? static_cast<Kind>(place) : schema_words<Kind>().unknown;
}

template <typename Struct>
requires std::is_class_v<Struct>
void walk_value(FieldWalker& walker, Struct& object, NumberRange) {
  walker.object([&] { walk_fields(walker, object); });
}

template <typename Value>
void walk_value(FieldWalker& walker, std::vector<Value>& values, NumberRange range) {
  values.resize(walker.begin_list(values.size()));
  for (std::size_t i = 0; i < values.size(); ++i) {
    walker.enter_item(i);
    walk_value(walker, values[i], range);
    walker.leave();
  }
}

/// Whether a value can be told: numbers that aren't finite are absent.
bool can_be_told(double value);
bool can_be_told(const Quantity& quantity);
template <typename Value>
bool can_be_told(const Value&) {
  return true;
}

/// The sentence for a null field of which nobody said why.
std::string silent_sentence();
/// Why a value is absent, in English.
std::string sentence_of_reason(const WhyUnknown& why);

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
void walk_field(FieldWalker& walker, std::string_view name, Known<Value>& value, Presence,
                NumberRange range) {
  walk_known(walker, name, value, sentence_of_reason(value.why()), range);
}

/// A field by its member; `presence` of a value that may be absent is null unless it is left out.
template <typename Struct, typename Value>
Field<Struct> field(std::string_view name, Value Struct::*member,
                    Presence presence = Presence::kept, NumberRange range = NumberRange::any) {
  return {name, [=](Struct& object, FieldWalker& walker) {
            walk_field(walker, name, object.*member, presence, range);
          }};
}

/// The fields of a member as fields of the struct that holds it.
template <typename Struct, typename Member>
Field<Struct> inlined(Member Struct::*member) {
  return {{}, [=](Struct& object, FieldWalker& walker) { walk_fields(walker, object.*member); }};
}

/// A quantity laid flat: `name` is its value or null, `name`_u95 and the rest stand beside it.
void walk_flat(FieldWalker& walker, std::string_view name, Known<Quantity>& quantity);
template <typename Struct>
Field<Struct> flat(std::string_view name, Known<Quantity> Struct::*member) {
  return {name,
          [=](Struct& object, FieldWalker& walker) { walk_flat(walker, name, object.*member); }};
}

/// Something that only repeats other fields in another form: written, never read.
template <typename Value>
void walk_repeat(FieldWalker& walker, std::string_view name, Value value) {
  if (walker.wants_repeats()) {
    walk_field(walker, name, value, Presence::kept, NumberRange::any);
  }
}
/// `make` makes it from the struct.
template <typename Struct, typename Make>
Field<Struct> repeat(std::string_view name, Make make) {
  return {name, [=](Struct& object, FieldWalker& walker) {
            if (walker.wants_repeats()) {
              walk_repeat(walker, name, make(object));
            }
          }};
}

/// A reason why `name` is as it is, whether it is null or not.
void walk_remark(FieldWalker& walker, std::string_view name, std::optional<WhyUnknown>& why);
template <typename Struct>
Field<Struct> remark(std::string_view name, std::optional<WhyUnknown> Struct::*member) {
  return {{},
          [=](Struct& object, FieldWalker& walker) { walk_remark(walker, name, object.*member); }};
}

/// An enumeration whose members are named by the codes of its facts.
template <typename Kind>
void walk_code(FieldWalker& walker, Kind& kind) {
  static const std::vector<std::string_view> codes = codes_of<Kind>();
  auto place = static_cast<std::size_t>(kind);
  walker.word(place, codes);
  kind = static_cast<Kind>(place);
}

}  // namespace fogline
