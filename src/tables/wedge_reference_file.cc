#include "files/input_file.h"
#include "files/small_text_file.h"
#include "film/wedges/find_wedges.h"
#include "tables/cgats_table.h"

#include <fogline/tables/read_tables.h>

#include <algorithm>
#include <set>
#include <sstream>

namespace fogline {

namespace {

constexpr std::size_t most_bytes = 1 << 20;

std::string trimmed(std::string text) {
  const auto is_blank = [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '"'; };
  while (!text.empty() && is_blank(text.back())) {
    text.pop_back();
  }
  const auto first = std::find_if_not(text.begin(), text.end(), is_blank);
  return {first, text.end()};
}

std::vector<std::string> cells_of(const std::string& line) {
  char separator = '\t';
  for (const char candidate : {';', ','}) {
    if (line.find(candidate) != std::string::npos) {
      separator = candidate;
      break;
    }
  }
  std::vector<std::string> cells;
  std::istringstream stream(line);
  std::string cell;
  while (std::getline(stream, cell, separator)) {
    cells.push_back(trimmed(cell));
  }
  return cells;
}

bool begins_with_digit(const std::string& text) {
  return !text.empty() && ((text.front() >= '0' && text.front() <= '9') || text.front() == '.');
}

std::vector<ReferenceStep> steps_from_csv(const std::string& text, const std::string& file) {
  std::vector<ReferenceStep> steps;
  std::istringstream stream(text);
  std::string line;
  int number = 0;
  bool heading_possible = true;
  while (std::getline(stream, line)) {
    ++number;
    if (trimmed(line).empty() || trimmed(line).front() == '#') {
      continue;
    }
    const std::vector<std::string> cells = cells_of(line);
    if (heading_possible && cells.size() > 1 && !begins_with_digit(cells[1])) {
      heading_possible = false;
      continue;
    }
    heading_possible = false;
    constexpr std::size_t with_doubt = 3;
    if (cells.size() < 2 || cells.size() > with_doubt) {
      refuse(file, Refusal::reference_line_unknown, {static_cast<double>(number)});
    }
    ReferenceStep step{cells[0], density_from_text(cells[1], file, number), {}};
    if (cells.size() == with_doubt && !cells[2].empty()) {
      step.u95 = density_from_text(cells[2], file, number);
    }
    steps.push_back(step);
  }
  return steps;
}

void check(const std::vector<ReferenceStep>& steps, const std::string& file) {
  const auto count = static_cast<int>(steps.size());
  if (count < fewest_wedge_steps || count > most_wedge_steps) {
    refuse(file, Refusal::reference_step_count, {static_cast<double>(count)});
  }
  std::set<std::string> labels;
  for (const ReferenceStep& step : steps) {
    if (!labels.insert(step.label).second) {
      refuse(file, Refusal::reference_step_twice, {}, {step.label});
    }
  }
  for (std::size_t i = 1; i < steps.size(); ++i) {
    if (!(steps[i].density > steps[i - 1].density)) {
      refuse(file, Refusal::reference_out_of_order, {steps[i].density}, {steps[i].label});
    }
  }
}

}  // namespace

WedgeReference read_wedge_reference(const std::string& file) {
  const std::string text = read_small_text(file, most_bytes, Refusal::reference_too_large);
  WedgeReference reference;
  reference.name = file;
  reference.steps = is_cgats(text) ? steps_from_cgats(text, file) : steps_from_csv(text, file);
  if (reference.steps.size() > 1 &&
      reference.steps.front().density > reference.steps.back().density) {
    std::reverse(reference.steps.begin(), reference.steps.end());
  }
  check(reference.steps, file);
  return reference;
}

}  // namespace fogline
