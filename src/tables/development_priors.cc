#include "tables/development_priors.h"

#include "tables/calibration_text.h"

#include <fogline/base/error.h>

#include <string>
#include <string_view>

#include <toml++/toml.h>

namespace fogline {
namespace {

/// One file of `calibration/`, in which every row must state its source.
class Table {
 public:
  explicit Table(const std::string& name)
      : name_(name), rows_(toml::parse(calibration_text(name))) {}

  /// A number of a row; `row` may be a path such as `q10` or `contrast_limit.cubic`.
  [[nodiscard]] double number(std::string_view row, std::string_view key) const {
    const auto found = at(row, key).value<double>();
    if (!found) {
      refuse(row, key);
    }
    return *found;
  }

  [[nodiscard]] std::vector<int> whole_numbers(std::string_view row, std::string_view key) const {
    std::vector<int> numbers;
    if (const toml::array* array = at(row, key).as_array()) {
      for (const toml::node& node : *array) {
        numbers.push_back(node.value_or(0));
      }
    }
    if (numbers.empty()) {
      refuse(row, key);
    }
    return numbers;
  }

  [[nodiscard]] PriorRange range(std::string_view row) const {
    return {number(row, "low"), number(row, "high")};
  }

  [[nodiscard]] ByFilmType by_film_type(std::string_view row) const {
    return {number(row, "cubic"), number(row, "tabular")};
  }

 private:
  [[nodiscard]] toml::node_view<const toml::node> at(std::string_view row,
                                                     std::string_view key) const {
    const auto found = rows_.at_path(row);
    if (found["source"].value_or(std::string_view()).empty()) {
      refuse(row, "source");
    }
    return found[key];
  }

  [[noreturn]] void refuse(std::string_view row, std::string_view key) const {
    throw FileError(name_, Refusal::shipped_row_missing, {}, {std::string(key), std::string(row)});
  }

  std::string name_;
  toml::table rows_;
};

FilmKinetics film_kinetics(const Table& table, const std::string& type) {
  return {table.range("contrast_limit." + type), table.range("rate_per_min." + type)};
}

DevelopmentPriors read_development() {
  const Table table("development.toml");
  DevelopmentPriors priors;
  priors.cubic = film_kinetics(table, "cubic");
  priors.tabular = film_kinetics(table, "tabular");
  priors.unknown = film_kinetics(table, "unknown");
  priors.latest_start_min = table.number("start_min", "latest");
  priors.q10 = table.range("q10");
  priors.time_min = table.range("time_min");
  priors.roll_scatter_share = table.number("roll_scatter_share", "sd");
  priors.habit_sd_share = table.number("habit_sd_share", "sd");
  priors.exposure_scatter_stops = table.number("exposure_scatter_stops", "sd");
  priors.exposure_habit_sd_stops = table.number("exposure_habit_sd_stops", "sd");
  return priors;
}

BathPriors read_baths() {
  const Table table("baths.toml");
  BathPriors priors;
  priors.stop_s = table.number("stop", "seconds");
  priors.stop_longest_s = table.number("stop_longest", "seconds");
  priors.fix_rapid_s = table.by_film_type("fix_rapid");
  priors.fix_plain_s = table.by_film_type("fix_plain");
  priors.fix_over_clearing = table.by_film_type("fix_over_clearing");
  priors.fix_rapid_longest_s = table.number("fix_rapid_longest", "seconds");
  priors.clearing_when_spent = table.number("clearing_when_spent", "factor");
  priors.film_units_per_litre = table.number("film_units_per_litre", "units");
  priors.units_per_roll = table.by_film_type("units_per_roll");
  priors.wash_fills = table.whole_numbers("wash_fills", "inversions");
  priors.wash_extra_fill = static_cast<int>(table.number("wash_extra_fill", "inversions"));
  priors.wash_rest_s = table.number("wash_rest", "seconds");
  priors.wash_running_s = table.number("wash_running", "seconds");
  return priors;
}

}  // namespace

ProcessPriors process_priors_from_calibration() {
  return {read_development(), read_baths()};
}

}  // namespace fogline
