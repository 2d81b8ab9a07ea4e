#include "page/page_parts.h"
#include "words/recipe.h"

// The longer half of the advice: every step of tonight, and why the next roll's recipe is as it is.

namespace fogline {

Markup whole_tonight_part(const RollPage& page) {
  Element list("ol");
  for (const TonightStep& step : tonight_steps(*page.record.judgement.advice)) {
    list.add(Element("li").add(sentence_markup(step.full)));
  }
  return Markup().add(list).add(safety_paragraph());
}

Markup baths_part(const RollPage& page) {
  Markup markup;
  for (const RecipeReasons& part : recipe_reasons(page.record.judgement)) {
    markup.add(Element("h3").text(part.name)).add(list_markup(part.sentences));
  }
  return markup.add(safety_paragraph());
}

}  // namespace fogline
