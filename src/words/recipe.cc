#include "words/recipe.h"

#include "words/number_text.h"
#include "words/safety.h"

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
    line.setting = minutes_text(*advice.time_s);
    if (advice.temperature_c) {
      const bool whole = *advice.temperature_c == std::round(*advice.temperature_c);
      line.setting += " at " + text_from_number(*advice.temperature_c, whole ? 0 : 1) + " °C";
    }
    line.note = advice.change_percent ? percent_change(*advice.change_percent) : "";
    if (advice.time_u95_s) {
      line.note += line.note.empty() ? "± " : ", ± ";
      line.note += minutes_text(*advice.time_u95_s);
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
  const auto count = static_cast<int>(std::lround(std::abs(stops) * 3.0));
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
    line.setting = minutes_text(*advice.time_s);
  } else {
    line.setting = "can't be told";
  }
  return line;
}

}  // namespace

std::string minutes_text(double seconds) {
  if (!std::isfinite(seconds) || seconds < 0.0) {
    return "unknown";
  }
  constexpr double longest_s = 360000.0;  // a hundred hours: no bath
  const auto whole = std::lround(std::min(seconds, longest_s));
  const auto rest = whole % 60;
  std::string text = std::to_string(whole / 60);
  text += rest < 10 ? ":0" : ":";
  return text + std::to_string(rest);
}

std::vector<RecipeLine> recipe_lines(const Advice& advice) {
  return {develop_line(advice.development), expose_line(advice.exposure),
          bath_line("stop", advice.stop), bath_line("fix", advice.fix),
          bath_line("wash", advice.wash)};
}

std::vector<std::string> tonight_steps(const Advice& advice) {
  std::vector<std::string> steps;
  for (const std::string& step : advice.this_roll) {
    if (!is_caution(step)) {
      steps.push_back(step);
    }
  }
  return steps;
}

std::string short_step(const std::string& step) {
  // A blank after the point: "1.5" goes on. What stands before a colon is whole if it is long; a
  // short piece only names what follows.
  constexpr std::size_t long_piece = 40;
  const std::size_t colon = step.find(": ", long_piece);
  const std::size_t end = step.find(". ");
  if (colon < end) {
    return step.substr(0, colon) + ".";
  }
  return end == std::string::npos ? step : step.substr(0, end + 1);
}

std::vector<RecipeReasons> recipe_reasons(const Advice& advice) {
  std::vector<RecipeReasons> parts{{"Development", advice.development.reasons},
                                   {"Exposure", advice.exposure.reasons},
                                   {"Stop", advice.stop.reasons},
                                   {"Fixer", advice.fix.reasons},
                                   {"Wash", advice.wash.reasons}};
  std::vector<std::string> told;
  for (RecipeReasons& part : parts) {
    std::vector<std::string> fresh;
    for (const std::string& sentence : part.sentences) {
      if (!is_caution(sentence) && std::find(told.begin(), told.end(), sentence) == told.end()) {
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
