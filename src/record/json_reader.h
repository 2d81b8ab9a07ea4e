#pragma once

#include "record/field_walker.h"

#include <stdexcept>
#include <string>
#include <vector>

#include <nlohmann/json_fwd.hpp>

namespace fogline {

/// A place in a report that doesn't hold what it should: `scans[0].frames[2].shadow`.
class UnfitField : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// Fills what it walks from JSON. Keys that no table knows are passed over; a field that is absent,
/// or null, leaves what the record has by default. Throws UnfitField at the first place that is of
/// another type, or lacks a field that every version has.
class JsonReader : public FieldWalker {
 public:
  using Json = nlohmann::ordered_json;

  /// Reads from `root`, which must outlive the reader.
  explicit JsonReader(const Json& root) : places_{{&root, {}, 0}} {}

  bool enter(std::string_view name, Presence presence, bool there) override;
  void leave() override { places_.pop_back(); }
  std::size_t begin_list(std::size_t size) override;
  void begin_fixed_list(std::size_t size) override;
  void enter_item(std::size_t index) override;
  void number(double& value, NumberRange range) override;
  void whole(int& value) override;
  void truth(bool& value) override;
  void text(std::string& value) override;
  bool word(std::size_t& place, std::span<const std::string_view> words) override;
  [[nodiscard]] bool wants_repeats() const override { return false; }
  [[nodiscard]] std::string sentence_beside() const override;

 protected:
  void begin_object() override;

 private:
  /// A value, and the name or index by which it was come to.
  struct Place {
    const Json* value;
    std::string name;
    std::size_t index;
  };

  [[nodiscard]] const Json& here() const { return *places_.back().value; }
  [[noreturn]] void refuse() const;

  std::vector<Place> places_;
};

}  // namespace fogline
