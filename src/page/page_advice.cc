#include "page/page_parts.h"
#include "words/recipe.h"

// The longer half of the advice: every step of tonight, and why the next roll's recipe is as it is.

namespace fogline {

std::string tonight_part(const RollRecord& record) {
  if (!record.judgement.advice || !tonight_goes_on(*record.judgement.advice)) {
    return "";
  }
  std::string html = "<ol>\n";
  for (const TonightStep& step : tonight_steps(*record.judgement.advice)) {
    html += "<li>" + sentence_html(step.full) + "</li>\n";
  }
  return html + "</ol>\n" + cautions_link();
}

std::string baths_part(const RollRecord& record) {
  if (!record.judgement.advice) {
    return "";
  }
  std::string html;
  for (const RecipeReasons& part : recipe_reasons(record.judgement)) {
    html += "<h3>" + std::string(part.name) + "</h3>\n" + list_html(part.sentences);
  }
  return html.empty() ? html : html + cautions_link();
}

}  // namespace fogline
