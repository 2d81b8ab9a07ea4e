#include "record/fact_fields.h"

#include <algorithm>

namespace fogline {

namespace {

// Walks the values of a fact under the names of its row, all of them; a fact that is told by its
// sentence may have none.
template <typename Value, typename Walk>
void walk_named(FieldWalker& walker, std::string_view field, bool is_told,
                std::span<const std::string_view> names, std::vector<Value>& values,
                const Walk& walk) {
  const Presence presence = is_told ? Presence::left_out : Presence::required;
  if (names.empty() || !walker.enter(field, presence, !is_told || !values.empty())) {
    return;
  }
  values.resize(std::max(values.size(), names.size()));
  walker.object([&] {
    for (std::size_t i = 0; i < names.size(); ++i) {
      walker.enter(names[i], Presence::required, true);
      walk(values[i]);
      walker.leave();
    }
  });
  walker.leave();
}

// Steps of a wedge that a fact lists: as many as there are, beyond those that its row names.
void walk_listed(FieldWalker& walker, std::size_t named, std::vector<double>& numbers) {
  if (!walker.enter("listed", Presence::left_out, numbers.size() > named)) {
    return;
  }
  const std::size_t listed = walker.begin_list(numbers.size() - std::min(named, numbers.size()));
  numbers.resize(named + listed);
  for (std::size_t i = 0; i < listed; ++i) {
    walker.enter_item(i);
    walker.number(numbers[named + i], NumberRange::any);
    walker.leave();
  }
  walker.leave();
}

}  // namespace

void walk_fact_parts(FieldWalker& walker, FactParts& parts) {
  walker.object([&] {
    walker.enter("code", Presence::required, true);
    const bool known = walker.word(parts.place, parts.codes);
    walker.leave();
    if (!known) {
      const auto told = std::find(parts.codes.begin(), parts.codes.end(), told_code);
      parts.place =
          told == parts.codes.end() ? 0 : static_cast<std::size_t>(told - parts.codes.begin());
      parts.told = walker.sentence_beside();
    }
    if (walker.enter("told", Presence::left_out, !parts.told.empty())) {
      walker.text(parts.told);
      walker.leave();
    }
    const bool is_told = !parts.told.empty();
    const auto number_names = parts.number_names(parts.place);
    walk_named(walker, "numbers", is_told, number_names, parts.numbers,
               [&](double& value) { walker.number(value, NumberRange::any); });
    walk_listed(walker, number_names.size(), parts.numbers);
    walk_named(walker, "names", is_told, parts.name_names(parts.place), parts.names,
               [&](std::string& value) { walker.text(value); });
  });
}

}  // namespace fogline
