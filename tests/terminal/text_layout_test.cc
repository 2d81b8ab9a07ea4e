#include "terminal/text_layout.h"

#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

TextLayout narrow() {
  return {40, false};
}

TEST(TextLayout, AHeadingStandsOnlyBeforeSomething) {
  TextLayout layout = narrow();
  layout.heading("Empty");
  layout.heading("Full");
  layout.paragraph("Words.");
  layout.heading("Last");
  EXPECT_EQ(layout.text(), "Full\n  Words.\n");
}

TEST(TextLayout, ABlankLineDividesSections) {
  TextLayout layout = narrow();
  layout.heading("One");
  layout.line("a");
  layout.heading("Two");
  layout.line("b");
  EXPECT_EQ(layout.text(), "One\n  a\n\nTwo\n  b\n");
}

TEST(TextLayout, BreaksAtWordsAndHangsItems) {
  TextLayout layout = narrow();
  layout.item('-', "Words that are too many for one line of forty.");
  EXPECT_EQ(layout.text(), "  - Words that are too many for one line\n    of forty.\n");
}

TEST(TextLayout, KeepsAValueWithItsDoubtAndUnit) {
  TextLayout layout = narrow();
  layout.paragraph("This line would end within its value 0.28 ± 0.03 %.");
  EXPECT_EQ(layout.text(), "  This line would end within its value\n  0.28 ± 0.03 %.\n");
}

TEST(TextLayout, AWordLongerThanALineStandsAlone) {
  TextLayout layout = narrow();
  const std::string path(60, 'x');
  layout.paragraph("At " + path + " now.");
  EXPECT_EQ(layout.text(), "  At\n  " + path + "\n  now.\n");
}

TEST(TextLayout, TellsOnceWhateverTheSizeOfLetters) {
  TextLayout layout = narrow();
  layout.paragraph("Can't be told: no film is there.");
  layout.paragraph_once("No film is there.");
  layout.item_once('!', "No film was there.");
  layout.item_once('!', "");
  EXPECT_EQ(layout.text(), "  Can't be told: no film is there.\n  ! No film was there.\n");
  EXPECT_TRUE(layout.has_told("CAN'T be told"));
  EXPECT_FALSE(layout.has_told(""));
}

TEST(TextLayout, ARowBreaksIntoItsOwnColumn) {
  TextLayout layout = narrow();
  layout.row("name   ", "so many words that they need two lines");
  EXPECT_EQ(layout.text(), "  name   so many words that they need\n         two lines\n");
}

TEST(TextLayout, ARowWithoutRoomBecomesAnItem) {
  TextLayout layout = narrow();
  layout.row("a name that is long, 0.28    ", "and what explains it at length");
  EXPECT_EQ(layout.text(), "  - a name that is long, 0.28, and what\n    explains it at length\n");
}

TEST(TextLayout, ARowOfANameAloneHasNoBlanksAtItsEnd) {
  TextLayout layout = narrow();
  layout.row("name   ", "");
  EXPECT_EQ(layout.text(), "  name\n");
}

TEST(TextLayout, ColumnsAreAsWideAsTheirWidestCell) {
  TextLayout layout = narrow();
  put_columns(layout, {{"a", "b", "c"}, {"1 ± 2", "", "3"}, {"4"}});
  EXPECT_EQ(layout.text(), "  a      b  c\n  1 ± 2     3\n  4\n");
}

TEST(TextLayout, ColorsHeadingsAndHeadsOnlyWhereAsked) {
  TextLayout layout(40, true);
  layout.heading("Title");
  layout.line("head", true);
  layout.line("plain");
  EXPECT_EQ(layout.text(), "\x1b[1mTitle\x1b[0m\n  \x1b[2mhead\x1b[0m\n  plain\n");
}

}  // namespace
}  // namespace fogline
