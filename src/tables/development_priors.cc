#include "tables/development_priors.h"

namespace fogline {
namespace {

constexpr NumberRange any_rate_per_min{0.001, 1.0};
constexpr NumberRange any_time_min{0.1, 120.0};
constexpr NumberRange any_start_min{0.0, 10.0};
constexpr NumberRange any_units{0.1, 1000.0};

PriorRange range_from(const KnowledgeTable& table, NumberRange range) {
  return {table.number("low", range), table.number("high", range)};
}

ByFilmType by_film_type(const KnowledgeTable& table, NumberRange range) {
  return {table.number("cubic", range), table.number("tabular", range)};
}

FilmKinetics kinetics_from(const KnowledgeTable& top, std::string_view type) {
  return {range_from(top.table("contrast_limit").table(type), any_factor),
          range_from(top.table("rate_per_min").table(type), any_rate_per_min)};
}

}  // namespace

DevelopmentPriors development_from(const KnowledgeTable& top) {
  DevelopmentPriors priors;
  priors.cubic = kinetics_from(top, "cubic");
  priors.tabular = kinetics_from(top, "tabular");
  priors.unknown = kinetics_from(top, "unknown");
  priors.latest_start_min = top.table("start_min").number("latest", any_start_min);
  priors.q10 = range_from(top.table("q10"), any_factor);
  priors.time_min = range_from(top.table("time_min"), any_time_min);
  priors.roll_scatter_share = top.table("roll_scatter_share").number("sd", any_share);
  priors.habit_sd_share = top.table("habit_sd_share").number("sd", any_share);
  priors.exposure_scatter_stops = top.table("exposure_scatter_stops").number("sd", any_stops);
  priors.exposure_habit_sd_stops = top.table("exposure_habit_sd_stops").number("sd", any_stops);
  return priors;
}

BathPriors baths_from(const KnowledgeTable& top) {
  BathPriors priors;
  priors.stop_s = top.table("stop").number("seconds", any_time_s);
  priors.stop_longest_s = top.table("stop_longest").number("seconds", any_time_s);
  priors.fix_rapid_s = by_film_type(top.table("fix_rapid"), any_time_s);
  priors.fix_plain_s = by_film_type(top.table("fix_plain"), any_time_s);
  priors.fix_over_clearing = by_film_type(top.table("fix_over_clearing"), any_factor);
  priors.fix_rapid_longest_s = top.table("fix_rapid_longest").number("seconds", any_time_s);
  priors.clearing_when_spent = top.table("clearing_when_spent").number("factor", any_factor);
  priors.film_units_per_litre = top.table("film_units_per_litre").number("units", any_units);
  priors.units_per_roll = by_film_type(top.table("units_per_roll"), any_factor);
  priors.wash_fills = top.table("wash_fills").counts("inversions");
  priors.wash_extra_fill = top.table("wash_extra_fill").count("inversions");
  priors.wash_rest_s = top.table("wash_rest").number("seconds", any_time_s);
  priors.wash_running_s = top.table("wash_running").number("seconds", any_time_s);
  return priors;
}

}  // namespace fogline
