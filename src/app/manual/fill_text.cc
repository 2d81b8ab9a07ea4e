#include "app/manual/fill_text.h"

#include "words/columns.h"

#include <algorithm>
#include <cctype>

namespace fogline {
namespace {

// Words joined to lines of `width` columns; each line but the last ends with `mark`.
std::string broken(std::string_view text, int width, std::string_view first_indent,
                   std::string_view indent, std::string_view mark) {
  const std::size_t room = static_cast<std::size_t>(width) - columns(mark);
  std::string all;
  std::string line(first_indent);
  bool is_empty = true;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = std::min(text.find(' ', from), text.size());
    const std::string_view word = text.substr(from, to - from);
    if (!is_empty && columns(line) + 1 + columns(word) > room) {
      all += line + std::string(mark) + "\n";
      line = indent;
      is_empty = true;
    }
    line += is_empty ? "" : " ";
    line += word;
    is_empty = false;
    from = to + 1;
  }
  return all + line + "\n";
}

}  // namespace

std::string filled(std::string_view text, int width, std::string_view first_indent,
                   std::string_view indent) {
  return broken(text, width, first_indent, indent, "");
}

std::string typed_line(std::string_view line, int width, std::string_view indent) {
  // A stand-in for the blank between an option and its value, which stay on one line.
  constexpr char tie = '\x1f';
  std::string tied(line);
  for (std::size_t at = tied.find(" --"); at != std::string::npos; at = tied.find(" --", at + 1)) {
    const std::size_t end = tied.find(' ', at + 1);
    if (end != std::string::npos && tied.compare(end, 3, " --") != 0) {
      tied[end] = tie;
    }
  }
  std::string text = broken(tied, width, indent, std::string(indent) + "    ", " \\");
  std::replace(text.begin(), text.end(), tie, ' ');
  return text;
}

std::vector<std::string> argument_parts(const OptionSpec& option) {
  // What is usual goes first: the name of a file, else one of the words.
  std::vector<std::string> parts(option.words.begin(), option.words.end());
  if (!option.argument.empty()) {
    parts.emplace(option.takes == Takes::file ? parts.begin() : parts.end(), option.argument);
  }
  return parts;
}

std::string argument_text(const OptionSpec& option) {
  std::string text;
  for (const std::string& part : argument_parts(option)) {
    text += (text.empty() ? "" : "|") + part;
  }
  return text;
}

std::string option_sentences(const OptionSpec& option) {
  std::string text(option.sentence);
  if (!option.otherwise.empty()) {
    text += " Default: " + std::string(option.otherwise) + ".";
  }
  return text;
}

std::string sentence_of_summary(std::string_view summary) {
  std::string sentence = std::string(summary) + ".";
  sentence.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(sentence.front())));
  return sentence;
}

}  // namespace fogline
