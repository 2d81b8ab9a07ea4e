#include "words/cause_words.h"

#include "one_of_each.h"

#include <set>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string stated(const Fact<CauseStatement>& statement) {
  Finding finding = finding_of(Cause::normal, 0.6);
  finding.statements = {statement};
  return finding_message(finding);
}

TEST(CauseStatements, AreEachAnother) {
  std::set<std::string> sentences;
  for (const Fact<CauseStatement>& statement : one_of_each<CauseStatement>()) {
    EXPECT_TRUE(sentences.insert(stated(statement)).second) << stated(statement);
  }
}

// A doubtful statement says that it is one, a sure one doesn't.
TEST(CauseStatements, DoubtWhatIsDoubtful) {
  for (const Fact<CauseStatement>& statement : one_of_each<CauseStatement>()) {
    const std::string_view code = fact_row(statement.kind).code;
    const std::string said = stated(statement);
    const bool doubts =
        said.find("erhaps") != std::string::npos || said.find(" may ") != std::string::npos;
    EXPECT_EQ(doubts, code.find("perhaps") != std::string_view::npos) << code << ": " << said;
  }
}

TEST(CauseStatements, SayWhichWayLightAndTimeWent) {
  const auto said = [](CauseStatement kind) { return stated(fact_of(kind, {1.24, 0.46, 0.58})); };
  EXPECT_THAT(said(CauseStatement::light_short), HasSubstr("Light was short by about 1.2 ± 0.5"));
  EXPECT_THAT(said(CauseStatement::light_plentiful), HasSubstr("Light was plenty"));
  EXPECT_THAT(said(CauseStatement::development_short),
              HasSubstr("short: contrast index about 1.24"));
  EXPECT_THAT(said(CauseStatement::development_long), HasSubstr("long: contrast index about 1.24"));
  for (const CauseStatement development :
       {CauseStatement::development_short, CauseStatement::development_long,
        CauseStatement::development_right, CauseStatement::light_and_development_right}) {
    EXPECT_THAT(said(development), HasSubstr("0.58 is the aim"));
  }
}

TEST(CauseStatements, CallNoStainingDeveloperAFault) {
  EXPECT_THAT(stated(fact_of(CauseStatement::stained_with_silver)), HasSubstr("no fault"));
  EXPECT_THAT(stated(fact_of(CauseStatement::stained_yellow)), Not(HasSubstr("no fault")));
}

TEST(FindingMessage, KeepsWhatAnotherReportTold) {
  Finding finding = finding_of(Cause::drift, 0.999);
  finding.statements = {{CauseStatement::told, {}, {}, "The rolls drift."}};
  EXPECT_EQ(finding_sentence(finding), "The rolls drift. (over 99 %)");
}

// The verdict names what isn't of the five causes that it weighs, each by words of its own.
TEST(Causes, HaveShortWordsWhereTheVerdictDoesNotTellThem) {
  std::set<std::string_view> words;
  for (const FactRow<Cause>& row : fact_rows<Cause>()) {
    const std::string_view said = cause_words(row.kind);
    const FindingPlace place = place_of(row.kind);
    if (place == FindingPlace::clear_film || place == FindingPlace::marks) {
      EXPECT_FALSE(said.empty()) << row.code;
    }
    if (place == FindingPlace::scan) {
      EXPECT_TRUE(said.empty()) << row.code;
    }
    EXPECT_TRUE(said.empty() || words.insert(said).second) << row.code;
  }
  for (const Cause weighed :
       {Cause::normal, Cause::under_exposed, Cause::over_exposed, Cause::under_developed,
        Cause::over_developed, Cause::not_exposed, Cause::not_developed}) {
    EXPECT_EQ(cause_words(weighed), "");
    EXPECT_EQ(place_of(weighed), FindingPlace::light_or_time);
  }
}

}  // namespace
}  // namespace fogline
