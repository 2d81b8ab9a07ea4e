#include "app/manual/fill_text.h"

#include "app/manual/roff_text.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(FillText, BreaksAtWordsAndKeepsLongOnesWhole) {
  EXPECT_EQ(filled("one two three", 9, "- ", "  "), "- one two\n  three\n");
  EXPECT_EQ(filled("incomprehensible", 6, "", ""), "incomprehensible\n");
  // A sign of several bytes takes one column.
  EXPECT_EQ(filled("±±± ±±±", 7, "", ""), "±±± ±±±\n");
}

TEST(FillText, TypedLineKeepsAnOptionWithItsValue) {
  EXPECT_EQ(typed_line("fogline measure a.tif --full --card c.toml", 38, "  "),
            "  fogline measure a.tif --full \\\n      --card c.toml\n");
}

TEST(FillText, ArgumentSaysWhatIsUsualFirst) {
  EXPECT_EQ(
      argument_text({.name = "html", .takes = Takes::file, .argument = "FILE", .words = {"none"}}),
      "FILE|none");
  EXPECT_EQ(argument_text({.name = "transfer",
                           .takes = Takes::text,
                           .argument = "POWER",
                           .words = {"auto", "srgb"}}),
            "auto|srgb|POWER");
  EXPECT_EQ(argument_text({.name = "full"}), "");
}

TEST(FillText, OptionSaysWhatHoldsWithoutIt) {
  EXPECT_EQ(option_sentences({.name = "date", .sentence = "The day.", .otherwise = "today"}),
            "The day. Default: today.");
}

TEST(RoffText, OnlyHyphensOfOptionsAreTypedInProse) {
  EXPECT_EQ(roff_prose("black-and-white (--card), - is output"),
            "black-and-white (\\-\\-card), \\- is output");
  EXPECT_EQ(roff_literal("a-b"), "a\\-b");
}

TEST(RoffText, NothingIsTakenForMarkup) {
  EXPECT_EQ(roff_prose(".TH isn't ^a `b` ~c \\d"),
            "\\&.TH isn\\(aqt \\(haa \\(gab\\(ga \\(tic \\ed");
  EXPECT_EQ(roff_lines("'a\n.b\n"), "\\(aqa\n\\&.b\n");
}

TEST(RoffText, SignsBeyondAsciiStandByTheirCodePoints) {
  EXPECT_EQ(roff_prose("± − 🎞"), "\\[u00B1] \\[u2212] \\[u1F39E]");
}

}  // namespace
}  // namespace fogline
