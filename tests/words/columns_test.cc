#include "words/columns.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(Columns, AreCountedByCodePoints) {
  EXPECT_EQ(columns(""), 0U);
  EXPECT_EQ(columns("0.28 ± 0.03"), 11U);
  EXPECT_EQ(columns("−1.0"), 4U);
}

TEST(Columns, AreFilledToAWidthAndNeverCut) {
  EXPECT_EQ(padded("±", 3), "±  ");
  EXPECT_EQ(padded("abc", 3), "abc");
  EXPECT_EQ(padded("abcd", 3), "abcd");
}

TEST(Columns, AFileNameCommandsNoTerminal) {
  EXPECT_EQ(printable("a\x1b[2Jb\nc\x7f"), "a?[2Jb?c?");
  EXPECT_EQ(printable("a\xc2\x9b"
                      "1m"),
            "a?1m");
  EXPECT_EQ(printable("für ± 1 °C"), "für ± 1 °C");
  EXPECT_EQ(printable("cut\xc2"), "cut\xc2");
}

}  // namespace
}  // namespace fogline
