#pragma once

#include "record/field_table.h"
#include "record/field_walks.h"

#include <optional>
#include <string_view>

// What a table's rows are made of.

namespace fogline {

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

/// A quantity laid flat.
template <typename Struct>
Field<Struct> flat(std::string_view name, Known<Quantity> Struct::*member) {
  return {name,
          [=](Struct& object, FieldWalker& walker) { walk_flat(walker, name, object.*member); }};
}

/// A repeat, which `make` makes from the struct.
template <typename Struct, typename Make>
Field<Struct> repeat(std::string_view name, Make make) {
  return {name, [=](Struct& object, FieldWalker& walker) {
            if (walker.wants_repeats()) {
              walk_repeat(walker, name, make(object));
            }
          }};
}

/// A reason why another field is as it is.
template <typename Struct>
Field<Struct> remark(std::string_view name, std::optional<WhyUnknown> Struct::*member) {
  return {{},
          [=](Struct& object, FieldWalker& walker) { walk_remark(walker, name, object.*member); }};
}

}  // namespace fogline
