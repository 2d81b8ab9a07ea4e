#include "words/refusal_tables.h"

#include <array>

namespace fogline {

namespace {

using enum Refusal;

constexpr std::array<FactWords<Refusal>, 32> words{{
    {card_unreadable, "{file}: this roll card can't be read: check the name and the rights."},
    {card_too_large, "{file}: this is no roll card, it is larger than 256 kB."},
    {card_no_toml,
     "{file}:{line:0}: this isn't TOML ({parser}): write each line as key = value, texts and times "
     "in quotes."},
    {card_key_unknown, "{file}:{line:0}: {key} is no key of a roll card: correct or remove it."},
    {card_key_of_other_kind,
     "{file}:{line:0}: {key} belongs to kind = \"{kind}\": remove it here."},
    {card_keys_exclude, "{file}:{line:0}: {key} and {other} exclude each other: keep one."},
    {card_metered_time_alone,
     "{file}:{line:0}: {key} belongs to times: remove it, or tell times instead of stops."},
    {card_lacks_name, "{file}: name is missing: it must be the roll's name in quotes."},
    {card_lacks_word, "{file}:{line:0}: {key} is missing: it must be one of {words}."},
    {card_lacks_stops,
     "{file}:{line:0}: {key} is missing: it must be a list of two or more stops, such as [-5, 0]."},
    {card_lacks_reference,
     "{file}:{line:0}: {key} is missing: it must be the name of the wedge's table, such as "
     "\"wedge.csv\"."},
    {card_lacks_frame,
     "{file}:{line:0}: {key} is missing: it must be the number of a frame of the roll."},
    {card_lacks_zone, "{file}:{line:0}: {key} is missing: it must be a zone, 0 to 10."},
    {card_wants_table, "{file}:{line:0}: {key} must be a table of its own, headed [{key}]."},
    {card_wants_tables, "{file}:{line:0}: {key} must be tables of their own, headed [[{key}]]."},
    {card_wants_text, "{file}:{line:0}: {key} must be a text in quotes."},
    {card_wants_word, "{file}:{line:0}: {key} must be one of {words}."},
    {card_wants_date, "{file}:{line:0}: {key} must be a date such as 2026-05-31."},
    {card_wants_minutes, "{file}:{line:0}: {key} must be minutes and seconds such as \"9:30\"."},
    {card_wants_count, "{file}:{line:0}: {key} must be a whole number, 0 or more."},
    {card_wants_shutter_time, "{file}:{line:0}: {key} must be a time such as \"1/60\" or \"2\"."},
    {card_wants_shutter_times,
     "{file}:{line:0}: {key} must be a list of two or more times, such as [\"1/60\", \"1/8\", "
     "\"2\"]."},
    {card_wants_temperature, "{file}:{line:0}: {key} must be degrees Celsius, 10 to 40."},
    {card_wants_volume, "{file}:{line:0}: {key} must be millilitres, more than 0."},
    {card_wants_fills,
     "{file}:{line:0}: {key} must be a list of whole numbers, inversions of each fill, such as [5, "
     "10, 20]."},
    {card_wants_stops,
     "{file}:{line:0}: {key} must be a list of two or more stops, such as [-5, 0]."},
    {card_wants_doubt, "{file}:{line:0}: {key} must be stops, 0 or more."},
    {card_wants_lux_seconds, "{file}:{line:0}: {key} must be lux seconds, more than 0."},
    {card_wants_zone, "{file}:{line:0}: {key} must be a zone, 0 to 10."},
    {card_wants_contrast_index, "{file}:{line:0}: {key} must be a contrast index, 0.2 to 2."},
    {card_wants_exposure_index, "{file}:{line:0}: {key} must be an exposure index, more than 0."},
    {card_wants_base_tint,
     "{file}:{line:0}: {key} must be three densities, red, green and blue, 0 to 1 each."},
}};

}  // namespace

std::span<const FactWords<Refusal>> refusals_of_cards() {
  return words;
}

}  // namespace fogline
