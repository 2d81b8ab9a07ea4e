#include "tables/card_table.h"

#include <fogline/base/refusal.h>
#include <fogline/tables/read_tables.h>

#include <cmath>
#include <fstream>
#include <limits>
#include <sstream>

#include <toml++/toml.h>

namespace fogline {
namespace {

/// A card is written by hand; what is larger is some other file.
constexpr std::size_t most_bytes = 262144;

constexpr double coolest_c = 10.0;
constexpr double warmest_c = 40.0;
constexpr double most_stops = 20.0;
constexpr double most_inversions = 1000.0;
constexpr std::size_t channels = 3;
constexpr std::size_t fewest_bracket_frames = 2;
constexpr double smallest = std::numeric_limits<double>::min();
constexpr double largest = std::numeric_limits<double>::max();

std::string read_text(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::string text(most_bytes + 1, '\0');
  file.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (!file.eof() && file.gcount() == 0) {
    throw FileError(path, Refusal::card_unreadable);
  }
  text.resize(static_cast<std::size_t>(file.gcount()));
  if (text.size() > most_bytes) {
    throw FileError(path, Refusal::card_too_large);
  }
  return text;
}

toml::table parse(const std::string& path) {
  try {
    return toml::parse(read_text(path), path);
  } catch (const toml::parse_error& error) {
    throw FileError(path, Refusal::card_no_toml, {static_cast<double>(error.source().begin.line)},
                    {std::string(error.description())});
  }
}

std::optional<double> temperature(CardTable& table, std::string_view key) {
  return table.number(key, coolest_c, warmest_c, Refusal::card_wants_temperature);
}

DevelopmentCard read_development(CardTable table) {
  DevelopmentCard card;
  card.developer = table.text("developer");
  card.dilution = table.text("dilution");
  card.volume_ml = table.number("volume_ml", smallest, largest, Refusal::card_wants_volume);
  card.time_s = table.time_s("time");
  card.temperature_c = temperature(table, "temperature_c");
  card.end_temperature_c = temperature(table, "end_temperature_c");
  card.agitation = table.text("agitation");
  card.presoak = table.text("presoak");
  card.opened = table.date("opened");
  table.refuse_others();
  return card;
}

StopCard read_stop(CardTable table) {
  StopCard card;
  card.kind = table.text("kind");
  card.time_s = table.time_s("time");
  table.refuse_others();
  return card;
}

FixCard read_fix(CardTable table) {
  FixCard card;
  card.kind = table.kind<FixKind>("kind");
  card.dilution = table.text("dilution");
  card.time_s = table.time_s("time");
  card.rolls_before = table.count("rolls_before");
  card.clearing_time_s = table.time_s("clearing_time");
  card.fresh_clearing_time_s = table.time_s("fresh_clearing_time");
  table.refuse_others();
  return card;
}

WashCard read_wash(CardTable table) {
  WashCard card;
  card.method = table.text("method");
  for (const double fill :
       table.numbers("fills", 1.0, most_inversions, 1, Refusal::card_wants_fills)) {
    if (fill != std::floor(fill)) {
      table.complain("fills", Refusal::card_wants_fills);
    }
    card.fills.push_back(static_cast<int>(fill));
  }
  card.time_s = table.time_s("time");
  table.refuse_others();
  return card;
}

/// Refuses what belongs to the other kind of target.
void refuse_key_of(TargetKind kind, std::initializer_list<std::string_view> keys,
                   const CardTable& table) {
  for (const std::string_view key : keys) {
    if (table.has(key)) {
      table.complain(key, Refusal::card_key_of_other_kind, std::string(schema_word(kind)));
    }
  }
}

TargetCard read_target(CardTable table) {
  TargetCard card;
  const auto kind = table.kind<TargetKind>("kind");
  if (!kind) {
    table.refuse_missing("kind", Refusal::card_lacks_word, CardTable::kinds_listed<TargetKind>());
  }
  card.kind = *kind;
  card.stops = table.numbers("stops", -most_stops, most_stops, fewest_bracket_frames,
                             Refusal::card_wants_stops);
  card.times_s = table.shutter_times_s("times");
  card.metered_time_s = table.shutter_time_s("metered_time");
  card.first_frame = table.count("first_frame");
  card.by = table.word<std::string>(
      "by", {{"shutter", "shutter"}, {"aperture", "aperture"}, {"filter", "filter"}});
  card.doubt_stops = table.number("doubt_stops", 0.0, most_stops, Refusal::card_wants_doubt);
  card.reference = table.text("reference");
  card.h_at_zero_lux_s =
      table.number("h_at_zero_lux_s", smallest, largest, Refusal::card_wants_lux_seconds);
  table.refuse_others();
  if (card.kind == TargetKind::bracket) {
    refuse_key_of(TargetKind::exposed_wedge, {"reference", "h_at_zero_lux_s"}, table);
    if (card.stops.empty() && card.times_s.empty()) {
      table.refuse_missing("stops", Refusal::card_lacks_stops);
    }
    if (card.metered_time_s && card.times_s.empty()) {
      table.complain("metered_time", Refusal::card_metered_time_alone);
    }
    if (!card.stops.empty() && !card.times_s.empty()) {
      table.complain("times", Refusal::card_keys_exclude, "stops");
    }
  } else {
    refuse_key_of(TargetKind::bracket,
                  {"stops", "times", "metered_time", "first_frame", "by", "doubt_stops"}, table);
    if (!card.reference) {
      table.refuse_missing("reference", Refusal::card_lacks_reference);
    }
  }
  return card;
}

MeteredTone read_metered(CardTable table) {
  constexpr double brightest_zone = 10.0;
  MeteredTone metered;
  const auto frame = table.count("frame");
  if (!frame) {
    table.refuse_missing("frame", Refusal::card_lacks_frame);
  }
  metered.frame = *frame;
  const auto part = table.kind<TonePart>("tone");
  if (!part) {
    table.refuse_missing("tone", Refusal::card_lacks_word, CardTable::kinds_listed<TonePart>());
  }
  metered.part = *part;
  const auto zone = table.number("zone", 0.0, brightest_zone, Refusal::card_wants_zone);
  if (!zone) {
    table.refuse_missing("zone", Refusal::card_lacks_zone);
  }
  metered.zone = *zone;
  metered.doubt_stops = table.number("doubt_stops", 0.0, most_stops, Refusal::card_wants_doubt)
                            .value_or(metered.doubt_stops);
  table.refuse_others();
  return metered;
}

void read_aim(CardTable& top, RollCard& card) {
  constexpr double least_index = 0.2;
  constexpr double greatest_index = 2.0;
  card.aim_contrast_index = top.number("aim_contrast_index", least_index, greatest_index,
                                       Refusal::card_wants_contrast_index);
  card.aim_like = top.text("aim_like");
  if (card.aim_contrast_index && card.aim_like) {
    top.complain("aim_like", Refusal::card_keys_exclude, "aim_contrast_index");
  }
  card.print_with = top.kind<PrintWith>("print_with");
}

void read_base_tint(CardTable& top, RollCard& card) {
  const std::vector<double> tint =
      top.numbers("base_tint", 0.0, 1.0, channels, Refusal::card_wants_base_tint);
  if (tint.empty()) {
    return;
  }
  if (tint.size() != channels) {
    top.complain("base_tint", Refusal::card_wants_base_tint);
  }
  card.base_tint = PerChannel<double>{tint[0], tint[1], tint[2]};
}

}  // namespace

RollCard read_roll_card(const std::string& path) {
  const toml::table root = parse(path);
  CardTable top(root, path, "");
  RollCard card;
  const auto name = top.text("name");
  if (!name) {
    throw FileError(path, Refusal::card_lacks_name);
  }
  card.name = *name;
  card.film = top.text("film");
  card.film_type = top.kind<FilmType>("film_type");
  card.exposure_index =
      top.number("exposure_index", smallest, largest, Refusal::card_wants_exposure_index);
  read_aim(top, card);
  card.batch = top.text("batch");
  card.expiry = top.date("expiry");
  card.exposed = top.date("exposed");
  card.developed = top.date("developed");
  card.camera = top.text("camera");
  card.tank = top.text("tank");
  card.device = top.kind<ScannerDevice>("device");
  read_base_tint(top, card);
  card.development = read_development(top.table("development"));
  card.stop = read_stop(top.table("stop"));
  card.fix = read_fix(top.table("fix"));
  card.wash = read_wash(top.table("wash"));
  if (top.has("target")) {
    card.target = read_target(top.table("target"));
  }
  for (CardTable& table : top.tables("metered")) {
    card.metered.push_back(read_metered(std::move(table)));
  }
  top.refuse_others();
  return card;
}

}  // namespace fogline
