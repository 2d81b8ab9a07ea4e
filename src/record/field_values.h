#pragma once

#include "record/fact_fields.h"
#include "record/field_table.h"
#include "words/schema_words.h"

#include <fogline/base/raster.h>

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace fogline {

// How each type is written. What isn't listed here is a struct with a table.

inline void walk_value(FieldWalker& walker, double& value, NumberRange range) {
  walker.number(value, range);
}
inline void walk_value(FieldWalker& walker, int& value, NumberRange /*range*/) {
  walker.whole(value);
}
inline void walk_value(FieldWalker& walker, bool& value, NumberRange /*range*/) {
  walker.truth(value);
}
inline void walk_value(FieldWalker& walker, std::string& value, NumberRange /*range*/) {
  walker.text(value);
}
/// A place: [x, y].
void walk_value(FieldWalker& walker, PointPx& point, NumberRange range);
/// Four corners, clockwise from top left.
void walk_value(FieldWalker& walker, std::array<PointPx, 4>& corners, NumberRange range);

template <typename Kind>
void walk_value(FieldWalker& walker, Fact<Kind>& fact, NumberRange /*range*/) {
  walk_fact(walker, fact);
}

/// A word. One that this program doesn't know is read as the member that claims least.
template <typename Kind>
requires std::is_enum_v<Kind>
void walk_value(FieldWalker& walker, Kind& kind, NumberRange /*range*/) {
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
void walk_value(FieldWalker& walker, Struct& object, NumberRange /*range*/) {
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

/// An enumeration whose members are named by the codes of its facts. False, and `kind` as it was,
/// where the file has another code.
template <typename Kind>
bool walk_code(FieldWalker& walker, Kind& kind) {
  static const std::vector<std::string_view> codes = codes_of<Kind>();
  auto place = static_cast<std::size_t>(kind);
  const bool known = walker.word(place, codes);
  kind = static_cast<Kind>(place);
  return known;
}

}  // namespace fogline
