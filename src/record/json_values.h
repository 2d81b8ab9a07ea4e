#pragma once

#include "words/unknown_words.h"

#include <fogline/base/caution.h>
#include <fogline/base/geometry.h>
#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/sensitometry/base_fog.h>

#include <map>
#include <optional>
#include <string>

#include <nlohmann/json_fwd.hpp>

namespace fogline {

/// Fields in the order they are written, as a person reads them.
using Json = nlohmann::ordered_json;

/// A density, rounded to four decimals; null where it isn't finite.
Json json_from_density(double density);
/// A probability, clamped to 0 ... 1 and rounded to four decimals; 0 where it isn't finite.
Json json_from_probability(double probability);
/// Lengths and places in pixels or degrees, rounded to two decimals; 0 where not finite, since the
/// schema has no null there.
Json json_from_place(double value);
Json json_from_box(const BoxPx& box);
/// Null where absent or not finite.
Json json_from_quantity(const std::optional<Quantity>& quantity);
Json json_from_quantity(const Known<Quantity>& quantity);
Json json_from_quantity(const Quantity& quantity);
Json json_from_known(const Known<double>& number);
Json json_from_base_fog(const Known<BaseFog>& base_fog);

/// Writes a quantity flat: `name` (a number or null) and, where known, `name`_u95 and
/// `name`_at_least.
void put_flat(Json& object, const std::string& name, const Known<Quantity>& quantity);

/// A fact's code, its numbers and its names by the names of its row. A list of numbers under one
/// name is an array.
template <typename Kind>
Json json_from_fact(const Fact<Kind>& fact);

/// Why fields of one object are null, by their names.
using Whys = std::map<std::string, WhyUnknown>;

/// Notes why a field is null, where somebody said so.
template <typename T>
void note_why(Whys& whys, const std::string& field, const Known<T>& known) {
  if (!known && is_told(known.why())) {
    whys.emplace(field, known.why());
  }
}

/// Adds `reasons` to an object: what `known` says of its null fields, and a plain sentence for a
/// null field of which nothing is said. Adds nothing where no field is null and nothing is said.
void put_reasons(Json& object, const std::map<std::string, std::string>& known);
/// The same in words of their own, and the facts as `why` beside them.
void put_reasons(Json& object, const Whys& whys,
                 std::map<std::string, std::string> said_otherwise = {});

}  // namespace fogline
