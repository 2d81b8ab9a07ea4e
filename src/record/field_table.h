#pragma once

#include "record/field_walker.h"

#include <functional>
#include <string_view>
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

}  // namespace fogline
