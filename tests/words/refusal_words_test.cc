// Every refusal has its words: one sentence that names the file, with every brace filled.

#include "base/refusal_of.h"
#include "words/refusal_tables.h"

#include <fogline/words/refusal_words.h>

#include <algorithm>
#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;

constexpr const char* file = "rolls/a strip.tif";

/// A fact of each kind that has all its row's numbers and names.
Fact<Refusal> whole(const FactRow<Refusal>& row) {
  Fact<Refusal> fact{row.kind, {}, {}, {}};
  for (const std::string_view number : row.numbers) {
    if (!number.empty()) {
      fact.numbers.push_back(21.0 + static_cast<double>(fact.numbers.size()));
    }
  }
  for (const std::string_view name : row.names) {
    if (!name.empty()) {
      fact.names.push_back("<" + std::string(name) + ">");
    }
  }
  return fact;
}

TEST(RefusalWords, StandInTheOrderOfTheMembers) {
  const auto rows = fact_rows<Refusal>();
  const auto words = refusal_words();
  ASSERT_EQ(words.size(), rows.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    EXPECT_EQ(words[i].kind, rows[i].kind);
  }
}

TEST(RefusalWords, CodesAreLowerCaseJoinedByHyphensAndUnlikeEachOther) {
  std::set<std::string_view> codes;
  for (const FactRow<Refusal>& row : fact_rows<Refusal>()) {
    EXPECT_TRUE(codes.insert(row.code).second) << row.code;
    EXPECT_EQ(row.code.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"), std::string_view::npos)
        << row.code;
  }
}

TEST(RefusalWords, AreWholeSentencesThatNameTheFile) {
  for (const FactRow<Refusal>& row : fact_rows<Refusal>()) {
    const std::string sentence = sentence_of_refusal(file, whole(row));
    EXPECT_THAT(sentence, HasSubstr(file)) << row.code;
    EXPECT_THAT(sentence, Not(HasSubstr("{"))) << row.code;
    EXPECT_THAT(sentence, Not(HasSubstr("}"))) << row.code;
    EXPECT_THAT(sentence, Not(HasSubstr("  "))) << row.code;
    const char end = row.kind == Refusal::output_stopped ? '?' : '.';
    EXPECT_EQ(sentence.back(), end) << sentence;
  }
}

// A number or name that no sentence says is one that nobody needs.
TEST(RefusalWords, SayEveryNumberAndName) {
  for (const FactRow<Refusal>& row : fact_rows<Refusal>()) {
    const std::string_view text = refusal_words()[static_cast<std::size_t>(row.kind)].text;
    const auto says = [&](std::string_view name) {
      const std::string brace = "{" + std::string(name);
      return name.empty() || text.find(brace + "}") != std::string_view::npos ||
             text.find(brace + ":") != std::string_view::npos;
    };
    EXPECT_TRUE(std::all_of(row.numbers.begin(), row.numbers.end(), says)) << row.code;
    EXPECT_TRUE(std::all_of(row.names.begin(), row.names.end(), says)) << row.code;
  }
}

TEST(RefusalWords, OfACardGiveTheLineAsCompilersDo) {
  const FileError error("card.toml", Refusal::card_wants_word, {3.0},
                        {"fix.kind", "\"rapid\", \"plain\""});
  EXPECT_EQ(sentence_of(error), "card.toml:3: fix.kind must be one of \"rapid\", \"plain\".");
  EXPECT_EQ(sentence_of(FileError("card.toml", Refusal::card_lacks_name)),
            "card.toml: name is missing: it must be the roll's name in quotes.");
}

TEST(RefusalWords, KeepSignAndDigitsOfStops) {
  const auto said = [](double stops) {
    return sentence_of(FileError("a.tif", Refusal::area_off_film, {stops}));
  };
  EXPECT_THAT(said(1.0 / 3.0), HasSubstr("marked for +0.33 stops doesn't"));
  EXPECT_THAT(said(-3.0), HasSubstr("marked for -3 stops doesn't"));
}

TEST(RefusalWords, LargeCountsKeepEveryDigit) {
  EXPECT_EQ(sentence_of(FileError("a.tif", Refusal::too_many_pixels, {4294967295.0, 1.0})),
            "a.tif claims 4294967295 by 1 pixels, more than any scan has; scan fewer strips at a "
            "time.");
}

TEST(RefusalWords, ToldByAnOlderReportStayAsTheyWere) {
  EXPECT_EQ(sentence_of_refusal("a.tif", {Refusal::damaged, {}, {}, "a.tif is gone."}),
            "a.tif is gone.");
}

TEST(FileErrors, SayFileAndCodeWithoutWords) {
  const FileError error("a.tif", Refusal::is_empty);
  EXPECT_STREQ(error.what(), "a.tif: is-empty");
  EXPECT_EQ(error.file(), "a.tif");
  EXPECT_EQ(error.why().kind, Refusal::is_empty);
}

}  // namespace
}  // namespace fogline
