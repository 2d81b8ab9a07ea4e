#include "words/schema_words.h"

#include <set>
#include <string>
#include <string_view>

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// Words of one enumeration: each its own, fit for files and options, and read back as its member.
template <typename Kind>
class SchemaWordsOf : public testing::Test {};

using Enumerations =
    testing::Types<FilmFormat, TransferKind, TransferSource, ZeroSource, CalibrationMethod,
                   ScannerDevice, DoubtSource, Fitness, DensitiesAbove, BaseFogSource,
                   ContrastMethod, StepRole, OutlineKind, ShapeFamily, TriangleState, TonePart,
                   Severity, TintKind, MarkKind, DevelopmentKind, BathChange, FilmType, PrintWith,
                   FixKind, TargetKind>;
TYPED_TEST_SUITE(SchemaWordsOf, Enumerations);

TYPED_TEST(SchemaWordsOf, NameEachMemberBothWays) {
  std::set<std::string_view> words;
  for (const SchemaWord<TypeParam>& row : schema_words<TypeParam>().rows) {
    EXPECT_TRUE(words.insert(row.word).second) << row.word;
    EXPECT_EQ(row.word.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"),
              std::string_view::npos)
        << row.word;
    EXPECT_EQ(schema_word(row.kind), row.word);
    EXPECT_EQ(kind_from_word<TypeParam>(row.word), row.kind);
  }
  EXPECT_FALSE(words.empty());
}

TYPED_TEST(SchemaWordsOf, KnowNoOtherWord) {
  const std::string word(schema_words<TypeParam>().rows.front().word);
  for (const std::string& other :
       {std::string(), word + "s", " " + word, word.substr(1), std::string("splendid")}) {
    EXPECT_FALSE(kind_from_word<TypeParam>(other).has_value()) << other;
  }
}

/// What a newer program's word is read as claims least.
TEST(SchemaWordsUnknown, ClaimLeast) {
  EXPECT_EQ(schema_words<FilmFormat>().unknown, FilmFormat::unknown);
  EXPECT_EQ(schema_words<TransferSource>().unknown, TransferSource::assumed);
  EXPECT_EQ(schema_words<ZeroSource>().unknown, ZeroSource::none);
  EXPECT_EQ(schema_words<Fitness>().unknown, Fitness::unfit);
  EXPECT_EQ(schema_words<MarkKind>().unknown, MarkKind::unknown);
  EXPECT_EQ(schema_words<BathChange>().unknown, BathChange::unknown);
  EXPECT_EQ(schema_words<TriangleState>().unknown, TriangleState::cant_tell);
  EXPECT_EQ(schema_words<ContrastMethod>().unknown, ContrastMethod::none);
}

}  // namespace
}  // namespace fogline
