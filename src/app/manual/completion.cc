#include "app/manual/completion.h"

#include "app/manual/help_text.h"

#include <set>

namespace fogline {
namespace {

constexpr std::string_view script_head =
    R"(# bash completion of fogline, made from its table of commands

# Adds the words given that begin with the first.
_fogline_words() {
  local begun=$1 word
  shift
  for word in "$@"; do
    [[ $word == "$begun"* ]] && COMPREPLY+=("$word")
  done
}

# Adds folders, and files that end in one of the endings given; all files where none does.
_fogline_files() {
  local begun=$1 endings=" ${*:2} " name ending
  local -a all=() fitting=()
  compopt -o filenames 2>/dev/null
  mapfile -t all < <(compgen -f -- "$begun")
  for name in "${all[@]}"; do
    ending=${name##*.}
    if [[ -d ${name/#\~/$HOME} || $endings == *" ${ending,,} "* ]]; then
      fitting+=("$name")
    fi
  done
  ((${#fitting[@]})) || fitting=("${all[@]}")
  COMPREPLY+=("${fitting[@]}")
}

_fogline() {
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}
  local command=${COMP_WORDS[1]}
  COMPREPLY=()
  # "--units=stops" comes as three words.
  if [[ $word == "=" ]]; then
    word=
  elif [[ $before == "=" ]]; then
    before=${COMP_WORDS[COMP_CWORD - 2]}
  fi
)";

std::string quoted_words(const std::vector<std::string_view>& words) {
  std::string text;
  for (const std::string_view word : words) {
    text += " " + std::string(word);
  }
  return text;
}

std::string offer_words(const std::vector<std::string_view>& words) {
  return words.empty() ? "" : "_fogline_words \"$word\"" + quoted_words(words) + "; ";
}

std::string offer_files(const std::vector<std::string_view>& endings) {
  return "_fogline_files \"$word\"" + quoted_words(endings) + "; ";
}

// The first words of commands, and the second ones of each group.
std::string command_words(const Manual& manual) {
  std::vector<std::string_view> firsts;
  std::set<std::string_view> seen;
  for (const CommandSpec& command : manual.commands) {
    const std::string_view first = command.name.substr(0, command.name.find(' '));
    if (seen.insert(first).second) {
      firsts.push_back(first);
    }
  }
  firsts.insert(firsts.end(), {"--help", "--version"});
  std::string text =
      "  if ((COMP_CWORD == 1)); then\n    " + offer_words(firsts) + "return\n  fi\n";
  for (const std::string_view first : firsts) {
    std::vector<std::string_view> seconds;
    for (const CommandSpec& command : manual.commands) {
      if (command.name.starts_with(std::string(first) + " ")) {
        seconds.push_back(command.name.substr(first.size() + 1));
      }
    }
    if (!seconds.empty()) {
      text += "  if [[ $command == " + std::string(first) + " ]]; then\n" +
              "    if ((COMP_CWORD == 2)); then\n      " + offer_words(seconds) +
              "return\n    fi\n    command+=\" ${COMP_WORDS[2]}\"\n  fi\n";
    }
  }
  return text;
}

std::string option_values(const CommandSpec& command) {
  std::string text;
  for (const OptionSpec& option : command.options) {
    if (option.takes == Takes::nothing) {
      continue;
    }
    text += "    \"" + std::string(command.name) + " --" + std::string(option.name) + "\") " +
            offer_words(option.words) +
            (option.takes == Takes::file ? offer_files(option.endings) : std::string()) +
            "return ;;\n";
  }
  return text;
}

std::vector<std::string_view> single_words(std::vector<std::string_view> names) {
  std::erase_if(names,
                [](std::string_view name) { return name.find(' ') != std::string_view::npos; });
  return names;
}

std::string operands_and_options(const Manual& manual, const CommandSpec& command) {
  std::string options;
  for (const OptionSpec& option : command.options) {
    options += " --" + std::string(option.name);
  }
  std::string operands;
  if (command.operands.takes == Takes::file) {
    operands = offer_files(command.operands.endings);
  } else if (command.operands.takes == Takes::topic) {
    operands = offer_words(single_words(help_topics(manual)));
  }
  return "    \"" + std::string(command.name) + "\")\n      if [[ $word == -* ]]; then " +
         "_fogline_words \"$word\"" + options + "; else " + (operands.empty() ? ":; " : operands) +
         "fi ;;\n";
}

}  // namespace

std::string bash_completion(const Manual& manual) {
  std::string text(script_head);
  text += command_words(manual) + "  case \"$command $before\" in\n";
  for (const CommandSpec& command : manual.commands) {
    text += option_values(command);
  }
  text += "  esac\n  case \"$command\" in\n";
  for (const CommandSpec& command : manual.commands) {
    text += operands_and_options(manual, command);
  }
  return text + "  esac\n}\n\ncomplete -F _fogline fogline\n";
}

}  // namespace fogline
