#pragma once

#include <fogline/base/known.h>

#include <cstddef>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace fogline {

/// What the absence of a field looks like in a file.
enum class Presence {
  required,  ///< a file without it is damaged: the contract has asked for it since version 1
  kept,      ///< always written; a file that lacks it is older, and the default stays
  null,      ///< null, and the object's `reasons` says why
  left_out   ///< not written
};

/// What numbers the contract allows in a field.
enum class NumberRange { any, not_negative, probability };

/// Somebody who walks over a record, field by field, in the order of its tables: the writer, the
/// reader, the maker of random records. All see the same few shapes (object, list, number, whole
/// number, truth, text, word), so a table that is written once serves them all. A walker may fill
/// what it is shown (the reader) or only look at it (the writer).
class FieldWalker {
 public:
  FieldWalker() = default;
  FieldWalker(const FieldWalker&) = delete;
  FieldWalker& operator=(const FieldWalker&) = delete;
  FieldWalker(FieldWalker&&) = delete;
  FieldWalker& operator=(FieldWalker&&) = delete;
  virtual ~FieldWalker() = default;

  /// Comes to a field of the present object; `there`: the record has a value for it. True where a
  /// value is to be walked, after which `leave()` follows.
  virtual bool enter(std::string_view name, Presence presence, bool there) = 0;
  virtual void leave() = 0;
  /// Begins a list that has `size` items in the record, and says how many are to be walked.
  virtual std::size_t begin_list(std::size_t size) = 0;
  /// Begins a list whose length can't be another.
  virtual void begin_fixed_list(std::size_t size) = 0;
  /// Comes to an item of the present list; `leave()` follows.
  virtual void enter_item(std::size_t index) = 0;

  virtual void number(double& value, NumberRange range) = 0;
  virtual void whole(int& value) = 0;
  virtual void truth(bool& value) = 0;
  virtual void text(std::string& value) = 0;
  /// One of several words, by its place among them. False where the file has another word; then
  /// `place` is left as it was.
  virtual bool word(std::size_t& place, std::span<const std::string_view> words) = 0;

  /// True for a walker that also wants what only repeats other fields in another form: sentences,
  /// sampled curves. They are written and never read.
  [[nodiscard]] virtual bool wants_repeats() const = 0;
  /// The sentence that a file has beside the fact being walked; empty where it has none.
  [[nodiscard]] virtual std::string sentence_beside() const { return {}; }

  /// Walks an object: `body` comes to its fields, then follow the reasons that were left with
  /// `because()` meanwhile.
  void object(const std::function<void()>& body);

  /// Leaves a reason for the present object: why `field` is null, or is as it is. `why` is what the
  /// record has, `sentence` the same in English; `told` gets the reason that a file has.
  void because(std::string_view field, const WhyUnknown& why, std::string sentence,
               std::function<void(const WhyUnknown&)> told);
  /// The same for a null field that has no reason of its own in the record.
  void because(std::string_view field, std::string sentence);

 protected:
  virtual void begin_object() = 0;

 private:
  struct Reason {
    std::string field;
    WhyUnknown why;
    std::string sentence;
    std::function<void(const WhyUnknown&)> told;
  };

  void walk_reasons(std::vector<Reason>& reasons);

  /// One list of reasons for each object that is open.
  std::vector<std::vector<Reason>> open_objects_;
};

}  // namespace fogline
