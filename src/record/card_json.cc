#include "record/card_json.h"

#include "words/schema_words.h"

#include <array>
#include <cmath>

#include <nlohmann/json.hpp>

namespace fogline {
namespace {

void put(Json& object, const char* name, const std::optional<std::string>& text) {
  if (text) {
    object[name] = *text;
  }
}

void put(Json& object, const char* name, const std::optional<double>& number) {
  if (number && std::isfinite(*number)) {
    object[name] = json_from_density(*number);
  }
}

void put(Json& object, const char* name, const std::optional<int>& count) {
  if (count) {
    object[name] = *count;
  }
}

template <typename Kind>
void put_word(Json& object, const char* name, const std::optional<Kind>& kind) {
  if (kind) {
    object[name] = schema_word(*kind);
  }
}

// A table of the card that holds nothing is left out like a missing key.
void put_table(Json& object, const char* name, Json table) {
  if (!table.empty()) {
    object[name] = std::move(table);
  }
}

Json json_from_development(const DevelopmentCard& card) {
  Json table = Json::object();
  put(table, "developer", card.developer);
  put(table, "dilution", card.dilution);
  put(table, "volume_ml", card.volume_ml);
  put(table, "time_s", card.time_s);
  put(table, "temperature_c", card.temperature_c);
  put(table, "end_temperature_c", card.end_temperature_c);
  put(table, "agitation", card.agitation);
  put(table, "presoak", card.presoak);
  put(table, "opened", card.opened);
  return table;
}

Json json_from_stop(const StopCard& card) {
  Json table = Json::object();
  put(table, "kind", card.kind);
  put(table, "time_s", card.time_s);
  return table;
}

Json json_from_fix(const FixCard& card) {
  Json table = Json::object();
  put_word(table, "kind", card.kind);
  put(table, "dilution", card.dilution);
  put(table, "time_s", card.time_s);
  put(table, "rolls_before", card.rolls_before);
  put(table, "clearing_time_s", card.clearing_time_s);
  put(table, "fresh_clearing_time_s", card.fresh_clearing_time_s);
  return table;
}

Json json_from_wash(const WashCard& card) {
  Json table = Json::object();
  put(table, "method", card.method);
  if (!card.fills.empty()) {
    table["fills"] = card.fills;
  }
  put(table, "time_s", card.time_s);
  return table;
}

Json json_from_target(const TargetCard& card) {
  Json table{{"kind", schema_word(card.kind)}};
  if (!card.stops.empty()) {
    Json stops = Json::array();
    for (const double stop : card.stops) {
      stops.push_back(json_from_density(stop));
    }
    table["stops"] = std::move(stops);
  }
  if (!card.times_s.empty()) {
    table["times_s"] = card.times_s;
  }
  put(table, "metered_time_s", card.metered_time_s);
  put(table, "first_frame", card.first_frame);
  put(table, "by", card.by);
  put(table, "doubt_stops", card.doubt_stops);
  put(table, "reference", card.reference);
  put(table, "h_at_zero_lux_s", card.h_at_zero_lux_s);
  return table;
}

}  // namespace

Json json_from_card(const RollCard& card) {
  Json object{{"name", card.name}};
  put(object, "film", card.film);
  put_word(object, "film_type", card.film_type);
  put(object, "exposure_index", card.exposure_index);
  put(object, "aim_contrast_index", card.aim_contrast_index);
  put(object, "aim_like", card.aim_like);
  put_word(object, "print_with", card.print_with);
  put(object, "batch", card.batch);
  put(object, "expiry", card.expiry);
  put(object, "exposed", card.exposed);
  put(object, "developed", card.developed);
  put(object, "camera", card.camera);
  put(object, "tank", card.tank);
  if (card.base_tint) {
    constexpr std::array<const char*, most_channels> names{"red", "green", "blue"};
    for (std::size_t c = 0; c < names.size(); ++c) {
      object["base_tint"][names[c]] = json_from_density((*card.base_tint)[c]);
    }
  }
  put_table(object, "development", json_from_development(card.development));
  put_table(object, "stop", json_from_stop(card.stop));
  put_table(object, "fix", json_from_fix(card.fix));
  put_table(object, "wash", json_from_wash(card.wash));
  if (card.target) {
    object["target"] = json_from_target(*card.target);
  }
  for (const MeteredTone& metered : card.metered) {
    object["metered"].push_back({{"frame", metered.frame},
                                 {"tone", schema_word(metered.part)},
                                 {"zone", json_from_density(metered.zone)},
                                 {"doubt_stops", json_from_density(metered.doubt_stops)}});
  }
  return object;
}

}  // namespace fogline
