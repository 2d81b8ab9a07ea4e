#pragma once

#include "record/fields.h"

#include <fogline/base/quantity.h>

#include <array>
#include <optional>
#include <string_view>

namespace fogline {

inline constexpr std::array<std::string_view, most_channels> colour_names{"red", "green", "blue"};

/// One value a channel as the fields red, green and blue of the present object.
template <typename Value>
void walk_colours(FieldWalker& walker, PerChannel<Value>& values) {
  for (std::size_t c = 0; c < values.size(); ++c) {
    walk_field(walker, colour_names[c], values[c], Presence::kept, NumberRange::any);
  }
}

/// The same, left out where absent, and where one of them can't be told.
template <typename Value>
void walk_colours(FieldWalker& walker, std::optional<PerChannel<Value>>& values) {
  bool there = values.has_value();
  for (std::size_t c = 0; there && c < most_channels; ++c) {
    there = can_be_told((*values)[c]);
  }
  if (!walker.enter(colour_names[0], Presence::left_out, there)) {
    return;
  }
  PerChannel<Value> walked = values.value_or(PerChannel<Value>{});
  walk_value(walker, walked[0], NumberRange::any);
  walker.leave();
  for (std::size_t c = 1; c < walked.size(); ++c) {
    walk_field(walker, colour_names[c], walked[c], Presence::kept, NumberRange::any);
  }
  values = walked;
}

}  // namespace fogline
