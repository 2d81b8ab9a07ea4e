#pragma once

#include "record/field_walker.h"

#include <vector>

#include <nlohmann/json_fwd.hpp>

namespace fogline {

/// Writes what it walks as JSON, fields in the order of the tables. Numbers that aren't finite are
/// written as 0 where the contract has no null; negative ones, and probabilities beyond 1, are held
/// at the ends of what the contract allows.
class JsonWriter : public FieldWalker {
 public:
  using Json = nlohmann::ordered_json;

  /// Writes into `root`, which must outlive the writer.
  explicit JsonWriter(Json& root) : places_{&root} {}

  bool enter(std::string_view name, Presence presence, bool there) override;
  void leave() override { places_.pop_back(); }
  std::size_t begin_list(std::size_t size) override;
  void begin_fixed_list(std::size_t size) override { begin_list(size); }
  void enter_item(std::size_t index) override;
  void number(double& value, NumberRange range) override;
  void whole(int& value) override;
  void truth(bool& value) override;
  void text(std::string& value) override;
  bool word(std::size_t& place, std::span<const std::string_view> words) override;
  [[nodiscard]] bool wants_repeats() const override { return true; }

 protected:
  void begin_object() override;

 private:
  /// The value being written, and those that hold it.
  std::vector<Json*> places_;
};

}  // namespace fogline
