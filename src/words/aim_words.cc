#include "words/aim_words.h"

#include "words/fact_words.h"

#include <array>

namespace fogline {

namespace {

constexpr std::array<FactWords<AimSource>, 5> words{{
    {AimSource::diffusion, "the usual aim for diffusion light"},
    {AimSource::condenser, "the usual aim for condenser light"},
    {AimSource::scanning, "the usual aim for scanning"},
    {AimSource::card, "the aim on your roll card"},
    {AimSource::option, "the aim you gave"},
}};
static_assert(rows_in_order(words));

}  // namespace

std::string aim_source_words(const Aim& aim) {
  std::string text = sentence_of<AimSource>(fact_of(aim.source), words);
  if (aim.unknown_like) {
    text += ", because the contrast of \"" + *aim.unknown_like + "\" isn't known here";
  }
  return text;
}

}  // namespace fogline
