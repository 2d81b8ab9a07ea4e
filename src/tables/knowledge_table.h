#pragma once

#include <fogline/base/refusal.h>

#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <toml++/toml.h>

namespace fogline {

/// Text of a file of `calibration/`, by its name.
using CalibrationText = std::function<std::string_view(std::string_view)>;

/// Where a number may lie.
struct NumberRange {
  double least = 0.0;
  double most = 0.0;
};

inline constexpr NumberRange any_share{0.0, 1.0};
inline constexpr NumberRange any_density{0.0, 5.0};
inline constexpr NumberRange any_stops{0.0, 10.0};
inline constexpr NumberRange any_factor{0.1, 10.0};
inline constexpr NumberRange any_callier{1.0, 2.0};
inline constexpr NumberRange any_mm{0.001, 200.0};
inline constexpr NumberRange any_time_s{1.0, 86400.0};
inline constexpr NumberRange any_log_h{0.0, 5.0};
inline constexpr NumberRange any_weight{-1000.0, 1000.0};

class KnowledgeFile;

/// One table of such a file, read key by key. Every read throws FileError with file, line and key
/// where the key is missing, of another type or out of range.
class KnowledgeTable {
 public:
  KnowledgeTable(KnowledgeFile& file, const toml::table& table, std::string name)
      : file_(&file), table_(&table), name_(std::move(name)) {}

  [[nodiscard]] KnowledgeTable table(std::string_view key) const;
  [[nodiscard]] double number(std::string_view key, NumberRange range) const;
  /// A whole number from 0 to 1000.
  [[nodiscard]] int count(std::string_view key) const;
  [[nodiscard]] std::vector<int> counts(std::string_view key) const;
  /// At least one number; `size` of them where that isn't 0.
  [[nodiscard]] std::vector<double> numbers(std::string_view key, NumberRange range,
                                            std::size_t size = 0) const;
  /// At least one list of `size` numbers.
  [[nodiscard]] std::vector<std::vector<double>> lists(std::string_view key, NumberRange range,
                                                       std::size_t size) const;

 private:
  [[nodiscard]] const toml::node& take(std::string_view key) const;
  [[nodiscard]] double number_of(const toml::node& node, std::string_view key,
                                 NumberRange range) const;
  [[nodiscard]] const toml::array& list_of(const toml::node& node, std::string_view key,
                                           std::size_t size) const;
  [[nodiscard]] std::string full_name(std::string_view key) const;
  [[noreturn]] void refuse(const toml::node& node, std::string_view key, Refusal why,
                           const std::vector<double>& numbers = {}) const;

  KnowledgeFile* file_;
  const toml::table* table_;
  std::string name_;
};

/// One file of `calibration/`. Throws FileError where it is no TOML.
class KnowledgeFile {
 public:
  KnowledgeFile(const CalibrationText& text_of, std::string name);

  [[nodiscard]] KnowledgeTable top() { return {*this, whole_, ""}; }
  /// Throws FileError for the first key that no read asked for, and for the first table with values
  /// that doesn't name their source beside them (`source`, a text).
  void refuse_rest() const;

 private:
  friend class KnowledgeTable;
  void refuse_rest_of(const toml::table& table, const std::string& name) const;
  [[noreturn]] void refuse(const toml::source_region& at, const std::string& key, Refusal why,
                           const std::vector<double>& numbers = {}) const;

  std::string name_;
  toml::table whole_;
  std::set<const toml::node*> asked_;
};

}  // namespace fogline
