#include "record/field_walker.h"

#include "record/fact_fields.h"

#include <algorithm>
#include <utility>

namespace fogline {

// The reasons are an object too, whose own has none.
// NOLINTNEXTLINE(misc-no-recursion)
void FieldWalker::object(const std::function<void()>& body) {
  begin_object();
  open_objects_.emplace_back();
  body();
  std::vector<Reason> reasons = std::move(open_objects_.back());
  open_objects_.pop_back();
  if (!reasons.empty()) {
    walk_reasons(reasons);
  }
}

void FieldWalker::because(std::string_view field, const WhyUnknown& why, std::string sentence,
                          std::function<void(const WhyUnknown&)> told) {
  open_objects_.back().push_back({std::string(field), why, std::move(sentence), std::move(told)});
}

void FieldWalker::because(std::string_view field, std::string sentence) {
  open_objects_.back().push_back({std::string(field), {}, std::move(sentence), nullptr});
}

// NOLINTNEXTLINE(misc-no-recursion)
void FieldWalker::walk_reasons(std::vector<Reason>& reasons) {
  const bool any_sentence = std::any_of(reasons.begin(), reasons.end(), [](const Reason& reason) {
    return !reason.sentence.empty();
  });
  if (wants_repeats() && any_sentence && enter("reasons", Presence::kept, true)) {
    object([&] {
      for (Reason& reason : reasons) {
        if (reason.sentence.empty()) {
          continue;
        }
        enter(reason.field, Presence::kept, true);
        text(reason.sentence);
        leave();
      }
    });
    leave();
  }
  const bool any_fact = std::any_of(reasons.begin(), reasons.end(),
                                    [](const Reason& reason) { return reason.told != nullptr; });
  if (!any_fact || !enter("why", Presence::left_out, true)) {
    return;
  }
  object([&] {
    for (Reason& reason : reasons) {
      if (reason.told && enter(reason.field, Presence::left_out, true)) {
        walk_fact(*this, reason.why);
        reason.told(reason.why);
        leave();
      }
    }
  });
  leave();
}

}  // namespace fogline
