#include "words/paper_words.h"

#include "process/paper_grade.h"

#include <fogline/process/light_and_development.h>

namespace fogline {

namespace {

std::string_view grade_word(PaperGrade grade) {
  switch (grade) {
    case PaperGrade::very_soft:
      return "very soft";
    case PaperGrade::soft:
      return "soft";
    case PaperGrade::normal:
      return "normal";
    case PaperGrade::hard:
      return "hard";
    case PaperGrade::very_hard:
      break;
  }
  return "very hard";
}

}  // namespace

std::string printing_sentence(double log_exposure_range, std::string_view light) {
  std::string text("Print on ");
  text.append(grade_word(paper_grade(log_exposure_range)))
      .append(" paper, ISO range about R ")
      .append(std::to_string(iso_range(log_exposure_range)))
      .append(light);
  return text + ".";
}

}  // namespace fogline
