#include "words/unknown_words.h"

#include "words/fact_words.h"

#include <array>

namespace fogline {

namespace {

using enum Unknown;

constexpr std::array<FactWords<Unknown>, 13> words{{
    {not_told, "What is known of this roll doesn't tell."},

    // process
    {no_density_scan, "No scan of this roll tells densities."},
    {no_clear_film,
     "The pictures' densities above clear film can't be read: no clear film is in sight."},
    {no_picture, "No picture is in sight to judge light and development by."},
    {unusual_roll,
     "Shadows and highlights fit no usual roll at all: flat subjects, fog within the pictures, or "
     "a tone curve that isn't what the scan says."},
    {nothing_metered, "Nothing on this roll was metered; only development was judged."},
    {no_curve_contrast, "The curve tells no contrast index."},
    {own_process,
     "This is chromogenic film: its picture is dye, and no rule known here gives its time. Keep to "
     "the time of its own process."},
    {film_not_developed,
     "The film wasn't developed at all, and no time can mend that: find out first whether the "
     "developer was dead or the baths were swapped."},
    {developer_weak,
     "The developer was weak: make it up fresh and keep your time. What a longer time would do in "
     "a dying developer can't be told."},
    {contrast_untold,
     "This roll's contrast couldn't be told, so nothing speaks against your time."},
    {film_not_exposed,
     "The film wasn't exposed: watch the rewind crank turn while winding on, and look through the "
     "open back at the shutter."},
    {exposure_untold, "This roll's exposure couldn't be told."},
}};
static_assert(rows_in_order(words));

}  // namespace

std::string reason_sentence(const WhyUnknown& why) {
  return why == WhyUnknown{} ? "" : sentence_of<Unknown>(why, words);
}

std::string_view untold_sentence() {
  return words.front().text;
}

}  // namespace fogline
