#include "app/commands/command_table.h"
#include "app/manual/command_list.h"
#include "app/manual/completion.h"
#include "app/manual/man_page.h"
#include "files/write_file.h"

#include <cstdio>
#include <exception>
#include <filesystem>

// Run by the build: writes the man pages, the completion and the list for the tests into the folder
// named.

namespace fogline {
namespace {

void write_manual(const std::filesystem::path& folder) {
  const Manual& all = manual();
  std::filesystem::create_directories(folder / "man1");
  write_file((folder / "man1" / "fogline.1").string(), man_page(all));
  for (const CommandSpec& command : all.commands) {
    write_file((folder / "man1" / (page_name(command) + ".1")).string(), man_page(all, command));
  }
  write_file((folder / "fogline.bash").string(), bash_completion(all));
  write_file((folder / "commands.tsv").string(), command_list(all));
}

}  // namespace
}  // namespace fogline

int main(int argument_count, char** arguments) {
  if (argument_count != 2) {
    std::fputs("Use: write_manual FOLDER\n", stderr);
    return 2;
  }
  try {
    fogline::write_manual(arguments[1]);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "write_manual: %s\n", error.what());
    return 1;
  }
  return 0;
}
