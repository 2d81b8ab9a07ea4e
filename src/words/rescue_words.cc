#include "words/rescue_words.h"

#include "words/bath_words.h"
#include "words/paper_words.h"

#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace fogline {

namespace {

using enum RescueStep;

/// A step without numbers: what is done, and how the sentence goes on to its end with what explains
/// it. What is done and a full stop is the short form.
struct RescueWords {
  RescueStep kind;
  std::string_view what;
  std::string_view rest;
};

constexpr std::array<RescueWords, 19> words{{
    {scan_again,
     "Nothing can be said of this film before it is scanned again; do nothing to it on the word of "
     "this scan",
     "."},
    {nothing_chromogenic,
     "Nothing needs doing to this film: the colour of its base is its own, and its picture is dye",
     "."},
    {look_for_haze, "Look first: hold the clear film over black and let light fall on it",
     ". Milky or creamy patches are silver salt that isn't fixed out; an even, see-through tint is "
     "not."},
    {doubt_tint,
     "The tint may be this film's own: compare earlier rolls of it, and if the next wash doesn't "
     "lighten it, leave it be",
     "."},
    {fix_milky,
     "If it is milky: 3 to 5 minutes in fresh fixer at about 20 °C, moved all the time (plain "
     "thiosulfate 10 minutes), then the full wash",
     ". Room light does no harm now."},
    {fix_for_dye, "3 minutes in fresh fixer at about 20 °C, then the full wash",
     ": left dye harms nothing by itself, but it also points to short or tired fixing."},
    {wash_out_dye, "For the dye: three more fills of water at 20 to 24 °C, standing 5 minutes each",
     ". If colour is left, 2 minutes in sodium sulfite, 20 g to the litre, then 5 minutes of "
     "wash."},
    {clear_stain,
     "For an even yellow stain: rinse well in three fills of water, then 2 minutes in citric acid, "
     "20 g to the litre, in a vessel of its own, then wash",
     ". Acid never goes into fixer or sulfite, nor film from sulfite into acid unrinsed: it gives "
     "off sulfur dioxide."},
    {blow_off_dust,
     "Dust: blow it off the dry film with a rubber bulb; what sticks comes off in a wash",
     ". Never wipe wet emulsion."},
    {wipe_drying_marks,
     "Drying marks: on the dry film, breathe on the shiny side only and wipe it with a lint-free "
     "cloth",
     ". Never wipe wet emulsion."},
    {soak_out_rings,
     "Rings that stay are in the emulsion: soak the film once for 20 to 30 minutes in water at 20 "
     "°C, add wetting agent at the end, and dry it evenly without hot air",
     ". Often that improves them, not always."},
    {fade_dye,
     "Last of all, and only once a residual-silver test has shown that fixing is complete",
     ": one to three days of window light fade what dye is left."},
    {handle_with_care, bath_caution.substr(0, bath_caution.size() - 1), "."},
    {nothing_needed, "Nothing needs doing to this film", "."},
    {not_developed, "No picture can be brought back, and no bath helps", "."},
    {not_exposed, "There is no picture on it to bring back", "."},
    {retouch, "Retouch the print or the scan where scratches, air bells or uneven places show",
     ": they are in the film, and no bath mends them."},
    {keep_stain_of_silver, "The stain that grows with silver belongs to staining developers",
     ": leave it, and try no bath against it."},
    {leave_silver,
     "Too much or too little silver: leave the film as it is and adjust the print or scan", "."},
}};
static_assert(rows_in_order(words));

/// Steps whose words are no row: told by an older report, or named by a number.
std::optional<std::string> own_sentence(const Fact<RescueStep>& step) {
  if (!step.told.empty()) {
    return step.told;
  }
  if (step.kind == told) {
    return "It was told by another report.";
  }
  if (step.kind == print_on) {
    return printing_sentence(step.numbers.at(0), "");
  }
  if (step.kind == print_on_by_condenser) {
    return printing_sentence(step.numbers.at(0), ", counted for condenser light");
  }
  return std::nullopt;
}

}  // namespace

std::string step_sentence(const Fact<RescueStep>& step) {
  if (auto sentence = own_sentence(step)) {
    return *std::move(sentence);
  }
  const RescueWords& said = words.at(static_cast<std::size_t>(step.kind));
  return std::string(said.what).append(said.rest);
}

std::string short_step_sentence(const Fact<RescueStep>& step) {
  if (auto sentence = own_sentence(step)) {
    return *std::move(sentence);
  }
  return std::string(words.at(static_cast<std::size_t>(step.kind)).what) + ".";
}

}  // namespace fogline
