#include "words/recipe.h"

#include "words/advice_words.h"
#include "words/bath_words.h"
#include "words/number_forms.h"
#include "words/number_text.h"
#include "words/rescue_words.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace fogline {
namespace {

std::string percent_change(double percent) {
  const double rounded = std::round(percent);
  if (rounded == 0.0) {
    return "as long as before";
  }
  return text_from_number(std::abs(rounded), 0) + " % " + (rounded > 0.0 ? "longer" : "shorter");
}

RecipeLine develop_line(const DevelopmentAdvice& advice) {
  RecipeLine line{"develop", "", ""};
  if (advice.time_s) {
    line.setting = number_in_form(*advice.time_s, "clock");
    if (advice.temperature_c) {
      const bool whole = *advice.temperature_c == std::round(*advice.temperature_c);
      line.setting += " at " + text_from_number(*advice.temperature_c, whole ? 0 : 1) + " °C";
    }
    line.note = advice.change_percent ? percent_change(*advice.change_percent) : "";
    if (advice.time_u95_s) {
      line.note += line.note.empty() ? "± " : ", ± ";
      line.note += number_in_form(*advice.time_u95_s, "clock");
    }
  } else if (advice.change_percent) {
    line.setting = percent_change(*advice.change_percent);
    line.note = "at the same temperature";
  } else {
    line.setting = "as before";
    line.note = "this roll doesn't tell";
  }
  return line;
}

std::string stops_words(double stops) {
  constexpr std::array<std::string_view, 3> thirds{"", "1/3", "2/3"};
  constexpr double greatest = 1e6;  // nothing that is measured comes near, and thirds of it fit
  const auto count = static_cast<int>(std::lround(std::min(std::abs(stops), greatest) * 3.0));
  const int whole = count / 3;
  std::string text = whole > 0 ? std::to_string(whole) : "";
  const std::string_view rest = thirds[static_cast<std::size_t>(count % 3)];
  if (!rest.empty()) {
    text += text.empty() ? "" : " ";
    text += rest;
  }
  return text + (count > 3 ? " stops" : " stop") + (stops > 0.0 ? " more" : " less") + " light";
}

RecipeLine expose_line(const ExposureAdvice& advice) {
  constexpr double least_change_stops = 1.0 / 6.0;  // half of the smallest click
  RecipeLine line{"expose", "as before", ""};
  if (!advice.change_stops) {
    line.note = "this roll doesn't tell";
  } else if (std::abs(*advice.change_stops) >= least_change_stops) {
    line.setting = stops_words(*advice.change_stops);
  }
  if (advice.exposure_index) {
    line.note = "exposure index " + text_from_number(*advice.exposure_index, 0);
  }
  return line;
}

std::string_view change_words(BathChange change) {
  switch (change) {
    case BathChange::keep:
      return "as before";
    case BathChange::longer:
      return "longer";
    case BathChange::shorter:
      return "shorter";
    case BathChange::renew:
      return "make it up fresh";
    case BathChange::unknown:
      break;
  }
  return "";
}

RecipeLine bath_line(std::string_view name, const BathAdvice& advice) {
  RecipeLine line{name, "", std::string(change_words(advice.change))};
  if (!advice.fills.empty()) {
    line.setting = "fills of";
    for (std::size_t i = 0; i < advice.fills.size(); ++i) {
      line.setting += i == 0 ? " " : ", ";
      line.setting += std::to_string(advice.fills[i]);
    }
    line.setting += " inversions";
  } else if (advice.time_s) {
    line.setting = number_in_form(*advice.time_s, "clock");
  } else if (advice.change != BathChange::unknown) {
    // What to do is known, for how long isn't.
    line.setting = line.note;
    line.note = "for how long can't be told";
  } else {
    line.setting = "can't be told";
  }
  return line;
}

/// Why a bath is as it is, cautions left out.
std::vector<std::string> reasons_of(const BathAdvice& advice) {
  std::vector<std::string> sentences;
  for (const Fact<BathReason>& reason : advice.reasons) {
    if (!is_caution(reason.kind)) {
      sentences.push_back(bath_sentence(reason, advice));
    }
  }
  return sentences;
}

}  // namespace

std::vector<RecipeLine> recipe_lines(const Advice& advice) {
  return {develop_line(advice.development), expose_line(advice.exposure),
          bath_line("stop", advice.stop), bath_line("fix", advice.fix),
          bath_line("wash", advice.wash)};
}

std::vector<TonightStep> tonight_steps(const Advice& advice) {
  std::vector<TonightStep> steps;
  for (const Fact<RescueStep>& step : advice.this_roll) {
    if (!is_caution(step.kind)) {
      steps.push_back({step_sentence(step), short_step_sentence(step)});
    }
  }
  return steps;
}

std::vector<RecipeReasons> recipe_reasons(const Judgement& judgement) {
  const Advice& advice = *judgement.advice;
  std::vector<RecipeReasons> parts{
      {"Development", development_sentences(advice.development, judgement.aim)},
      {"Exposure", exposure_sentences(advice.exposure)},
      {"Stop", reasons_of(advice.stop)},
      {"Fixer", reasons_of(advice.fix)},
      {"Wash", reasons_of(advice.wash)}};
  std::vector<std::string> told;
  for (RecipeReasons& part : parts) {
    std::vector<std::string> fresh;
    for (const std::string& sentence : part.sentences) {
      if (std::find(told.begin(), told.end(), sentence) == told.end()) {
        told.push_back(sentence);
        fresh.push_back(sentence);
      }
    }
    part.sentences = std::move(fresh);
  }
  std::erase_if(parts, [](const RecipeReasons& part) { return part.sentences.empty(); });
  return parts;
}

}  // namespace fogline
