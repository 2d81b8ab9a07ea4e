#include "app/manual/man_page.h"

#include "app/manual/fill_text.h"
#include "app/manual/roff_text.h"

#include <algorithm>
#include <cctype>

// Only macros of man(7) that every formatter knows. What is said stands in the table of commands; a
// page adds nothing but headings.

namespace fogline {
namespace {

std::string head(const std::string& name, std::string_view summary) {
  std::string title = name;
  std::transform(title.begin(), title.end(), title.begin(),
                 [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return ".TH " + roff_literal(title) +
         " 1 \"\" \"fogline " FOGLINE_VERSION "\" \"fogline\"\n.SH NAME\n" + roff_literal(name) +
         " \\- " + roff_prose(summary) + "\n";
}

std::string paragraphs(const std::vector<std::string_view>& texts) {
  std::string all;
  for (const std::string_view text : texts) {
    all += (all.empty() ? "" : ".PP\n") + roff_prose(text) + "\n";
  }
  return all;
}

std::string item(const std::string& term, std::string_view sentence) {
  return ".TP\n" + term + "\n" + roff_prose(sentence) + "\n";
}

// Words as they are typed stand bold, what stands for something else italic.
std::string option_term(const OptionSpec& option) {
  std::string term = "\\fB" + roff_literal("--" + std::string(option.name)) + "\\fR";
  if (option.takes == Takes::nothing) {
    return term;
  }
  std::string values;
  for (const std::string& value : argument_parts(option)) {
    const bool literal = value != option.argument;
    values += (values.empty() ? "" : "|") + std::string(literal ? "\\fB" : "\\fI") +
              roff_literal(value) + "\\fR";
  }
  return term + " " + values;
}

std::string option_items(const CommandSpec& command) {
  std::string text = ".SH OPTIONS\n";
  for (const OptionSpec& option : command.options) {
    text += item(option_term(option), option_sentences(option));
  }
  return text;
}

std::string status_items(const CommandSpec& command) {
  std::string text = ".SH EXIT STATUS\n";
  for (const StatusSpec& status : command.statuses) {
    text +=
        item("\\fB" + std::to_string(static_cast<int>(status.status)) + "\\fR", status.sentence);
  }
  return command.status_note.empty() ? text
                                     : text + ".PP\n" + roff_prose(command.status_note) + "\n";
}

std::string example_items(const CommandSpec& command) {
  // A page is as wide as the reader's terminal, 80 columns say; an example is indented twice.
  constexpr int width = 66;
  std::string text = ".SH EXAMPLES\n";
  for (const ExampleSpec& example : command.examples) {
    text += (&example == &command.examples.front() ? "" : ".PP\n") + roff_prose(example.sentence) +
            "\n.PP\n.RS 4\n.nf\n" + roff_lines(typed_line(example.line, width, "")) + ".fi\n.RE\n";
  }
  return text;
}

bool is_command(const Manual& manual, std::string_view name) {
  return std::any_of(manual.commands.begin(), manual.commands.end(),
                     [&](const CommandSpec& command) { return command.name == name; });
}

std::string page_reference(std::string page) {
  std::replace(page.begin(), page.end(), ' ', '-');
  return "\\fB" + roff_literal(page) + "\\fR(1)";
}

std::string see_also(const Manual& manual, const CommandSpec& command) {
  std::string text = ".SH SEE ALSO\n" + page_reference("fogline");
  for (const std::string_view name : command.see_also) {
    text += ",\n" + (is_command(manual, name)
                         ? page_reference("fogline " + std::string(name))
                         : "\\fB" + roff_literal("fogline help " + std::string(name)) + "\\fR");
  }
  return text + "\n";
}

}  // namespace

std::string page_name(const CommandSpec& command) {
  std::string name = "fogline-" + std::string(command.name);
  std::replace(name.begin(), name.end(), ' ', '-');
  return name;
}

std::string man_page(const Manual& manual, const CommandSpec& command) {
  return head(page_name(command), command.summary) + ".SH SYNOPSIS\n\\fB" +
         roff_literal("fogline " + std::string(command.name)) + "\\fR " +
         roff_literal(command.synopsis) + "\n.SH DESCRIPTION\n" + paragraphs(command.description) +
         option_items(command) + status_items(command) + example_items(command) +
         see_also(manual, command);
}

std::string man_page(const Manual& manual) {
  std::string text = head("fogline", manual.summary) +
                     ".SH SYNOPSIS\n\\fBfogline\\fR \\fICOMMAND\\fR [options]\n.br\n"
                     "\\fBfogline\\fR \\fB\\-\\-help\\fR|\\fB\\-\\-version\\fR\n"
                     ".SH DESCRIPTION\n" +
                     paragraphs(manual.description) + ".SH COMMANDS\n";
  for (const CommandSpec& command : manual.commands) {
    text += item(page_reference(page_name(command)), sentence_of_summary(command.summary));
  }
  text += ".SH TOPICS\n";
  for (const TopicSpec& topic : manual.topics) {
    text += item("\\fB" + roff_literal("fogline help " + std::string(topic.name)) + "\\fR",
                 sentence_of_summary(topic.summary));
  }
  return text;
}

}  // namespace fogline
