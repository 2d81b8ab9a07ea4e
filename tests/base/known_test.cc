#include <fogline/base/caution.h>
#include <fogline/base/known.h>

#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

TEST(Known, HoldsAValueOrWhyThereIsNone) {
  const Known<double> there = 1.5;
  ASSERT_TRUE(there);
  EXPECT_EQ(*there, 1.5);
  EXPECT_EQ(there.optional(), 1.5);
  const Known<double> absent = fact_of(Unknown::first_frame_missing, {4.0});
  EXPECT_FALSE(absent);
  EXPECT_EQ(absent.why().numbers.front(), 4.0);
  EXPECT_EQ(absent.value_or(2.0), 2.0);
  EXPECT_EQ(Known<double>().why().kind, Unknown::not_told);
}

TEST(Known, ComparesReasonsOnlyWhereBothAreAbsent) {
  EXPECT_EQ(Known<int>(3), Known<int>(3));
  EXPECT_NE(Known<int>(3), Known<int>(Unknown::no_leader));
  EXPECT_NE(Known<int>(Unknown::no_edge_print), Known<int>(Unknown::no_leader));
  EXPECT_NE(Known<int>(fact_of(Unknown::first_frame_missing, {1.0})),
            Known<int>(fact_of(Unknown::first_frame_missing, {2.0})));
}

TEST(Known, TakesItsReasonOnlyWhereNothingIsThere) {
  EXPECT_EQ(known_or<std::string>("a", Unknown::no_leader), Known<std::string>("a"));
  EXPECT_EQ(known_or<std::string>(std::nullopt, Unknown::no_leader),
            Known<std::string>(Unknown::no_leader));
}

// By families advice finds its cautions: a kind added to one must be put here too.
TEST(Caution, BelongsToOneFamilyAtMost) {
  int clipping = 0;
  int glare = 0;
  for (const FactRow<CautionKind>& row : fact_rows<CautionKind>()) {
    const CautionFamily family = family_of(row.kind);
    const bool named_clipped = row.code.find("clip") != std::string_view::npos;
    EXPECT_EQ(family == CautionFamily::clipping, named_clipped) << row.code;
    clipping += family == CautionFamily::clipping ? 1 : 0;
    glare += family == CautionFamily::glare ? 1 : 0;
  }
  EXPECT_EQ(clipping, 5);
  EXPECT_EQ(glare, 3);
  EXPECT_EQ(family_of(CautionKind::inverted), CautionFamily::inversion);
  EXPECT_EQ(family_of(CautionKind::uneven_light), CautionFamily::unevenness);
  EXPECT_EQ(family_of(CautionKind::eight_bit), CautionFamily::none);
}

}  // namespace
}  // namespace fogline
