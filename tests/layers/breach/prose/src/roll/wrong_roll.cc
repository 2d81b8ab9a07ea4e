#include "roll/a file with blanks.h"

void fine(int count) {
  const char quote = '"';
  use("unfit-scan", "two words", "measured.tif: ", " steps, ", "%d of %d", quote, 1'000'000);
  throw std::invalid_argument("a wedge needs five steps " + std::to_string(count));
  throw std::logic_error(std::string("no form of a number is called ") + name(count));
}

void wrong(int count) {
  caution("transfer-assumed", "The file doesn't tell.");  // breach
  caution("odd", "It is " + std::to_string(count) + " steps off.");
  caution("odd", "shows " + std::to_string(count) + " steps where there are fewer");  // breach
  caution("apostrophe", "it can't be told");  // breach
  caution("split", "It "  // breach
                   "lies "
                   "askew.");
  caution("quotes", "called \"odd\" by everyone who saw");  // breach
  caution("lines", "first\nthen three words\n");              // breach
  caution("raw", R"(not "quite" what was asked)");            // breach
  throw std::runtime_error("the picture is lost");            // breach
}
