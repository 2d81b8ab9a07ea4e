#include "words/cause_words.h"

#include "words/fact_words.h"
#include "words/judgement_words.h"

#include <array>

namespace fogline {

namespace {

struct CauseWords {
  Cause kind;
  FindingPlace place;
  /// Short, for the verdict; empty: not said there.
  std::string_view words;
};

constexpr std::array<CauseWords, 20> causes{{
    {Cause::normal, FindingPlace::light_or_time, ""},
    {Cause::under_exposed, FindingPlace::light_or_time, ""},
    {Cause::over_exposed, FindingPlace::light_or_time, ""},
    {Cause::under_developed, FindingPlace::light_or_time, ""},
    {Cause::over_developed, FindingPlace::light_or_time, ""},
    {Cause::fogged, FindingPlace::clear_film, "fog all over"},
    {Cause::dye_left, FindingPlace::clear_film, "dye left in the film"},
    {Cause::fixing_incomplete, FindingPlace::clear_film, "milky film, perhaps not fixed out"},
    {Cause::stained, FindingPlace::clear_film, "a stain"},
    {Cause::drying_marks, FindingPlace::marks, "drying marks"},
    {Cause::air_bells, FindingPlace::marks, "air bells"},
    {Cause::uneven_development, FindingPlace::marks, "uneven development"},
    {Cause::dirty, FindingPlace::marks, "dust and fibres"},
    {Cause::scratched, FindingPlace::marks, "scratches"},
    {Cause::light_struck, FindingPlace::marks, "stray light"},
    {Cause::not_exposed, FindingPlace::light_or_time, ""},
    {Cause::not_developed, FindingPlace::light_or_time, ""},
    {Cause::weak_developer, FindingPlace::light_or_time, "a weak developer"},
    {Cause::drift, FindingPlace::light_or_time, "a drift from roll to roll"},
    {Cause::unfit_scan, FindingPlace::scan, ""},
}};
static_assert(rows_in_order(causes));

using enum CauseStatement;

constexpr std::array<FactWords<CauseStatement>, 33> statements{{
    {light_and_development_right,
     "Light and development were right: contrast index about {contrast_index:2} ± "
     "{contrast_index_u95:2}, where {aim:2} is the aim."},
    {development_right,
     "Development was right: contrast index about {contrast_index:2} ± {contrast_index_u95:2}, "
     "where {aim:2} is the aim."},
    {light_short, "Light was short by about {stops:1} ± {stops_u95:1} stops."},
    {light_plentiful, "Light was plenty by about {stops:1} ± {stops_u95:1} stops."},
    {development_short,
     "Development was short: contrast index about {contrast_index:2} ± {contrast_index_u95:2}, "
     "where {aim:2} is the aim."},
    {development_long,
     "Development was long: contrast index about {contrast_index:2} ± {contrast_index_u95:2}, "
     "where {aim:2} is the aim."},
    {perhaps_right,
     "Can't tell for sure: perhaps light and development were right, {probability:percent}."},
    {perhaps_too_little_light,
     "Can't tell for sure: perhaps too little light, {probability:percent}."},
    {perhaps_too_much_light, "Can't tell for sure: perhaps too much light, {probability:percent}."},
    {perhaps_too_little_development,
     "Can't tell for sure: perhaps too little development, {probability:percent}."},
    {perhaps_too_much_development,
     "Can't tell for sure: perhaps too much development, {probability:percent}."},
    {developer_weak, "The developer was weak or exhausted: even the leader stayed grey."},
    {perhaps_developer_weak, "The developer may have been weak: the leader is grey."},
    {not_exposed, "The film was developed, but no picture was exposed on it."},
    {perhaps_not_exposed, "Perhaps no picture was exposed on this film."},
    {not_developed,
     "The film was not developed: nothing at all has turned black, not even the factory's edge "
     "print."},
    {perhaps_not_developed, "Perhaps the film was not developed."},
    {fogged,
     "The film is fogged all over: clear film is about {excess_density:2} denser than usual."},
    {perhaps_fogged,
     "The film may be fogged, or its base is a dense one; another roll of this film would tell."},
    {dye_left, "Dye is left in the film."},
    {looks_milky,
     "The film looks milky, as where fixing is incomplete: look at it by reflected light on "
     "black."},
    {stained_yellow, "The clear film is stained yellow."},
    {stained_with_silver,
     "A stain grows with the silver: a staining developer leaves it, and it is no fault."},
    {perhaps_stocks_own, "It may be the stock's own colour: its clean base isn't known yet."},
    {drops_dried, "Drops dried on the film."},
    {air_bells_clung, "Air bells clung to the film in the developer."},
    {dirt_lies, "Dust and fibres lie on the film, or on the scanner's glass."},
    {scratched, "The film is scratched."},
    {light_struck, "Stray light reached the film in camera, cassette or tank."},
    {developed_unevenly, "Development was uneven: the developer flowed too much or too little."},
    {no_scan_tells_density, "No density can be read from this roll's scans: scan again."},
    {some_scans_tell_none,
     "No density can be read from some of this roll's scans: scan those again."},
    {told, "It was told by another report."},
}};
static_assert(rows_in_order(statements));

}  // namespace

FindingPlace place_of(Cause cause) {
  return causes[static_cast<std::size_t>(cause)].place;
}

std::string_view cause_words(Cause cause) {
  return causes[static_cast<std::size_t>(cause)].words;
}

std::string finding_message(const Finding& finding) {
  std::string message;
  for (const Fact<CauseStatement>& statement : finding.statements) {
    message += message.empty() ? "" : " ";
    message += sentence_of<CauseStatement>(statement, statements);
  }
  return message;
}

std::string finding_sentence(const Finding& finding) {
  return finding_message(finding) + " (" + chance_text(finding.confidence) + ")";
}

}  // namespace fogline
