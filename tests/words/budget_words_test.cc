#include "words/budget_words.h"

#include "record/invented_roll.h"

#include <cmath>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::MatchesRegex;

RollMeasurement with_budget(const DoubtBudget& budget) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().budgets = {budget};
  return roll;
}

std::vector<std::string> row_of(const DoubtBudget& budget,
                                DensityUnits units = DensityUnits::density) {
  return budget_rows(with_budget(budget), units).front();
}

TEST(BudgetRows, AreNoneWhereNothingWasTold) {
  EXPECT_THAT(budget_rows(invented::roll(), DensityUnits::density), IsEmpty());
  EXPECT_THAT(budget_rows(RollMeasurement{}, DensityUnits::density), IsEmpty());
}

// Every source has a column of its own: a doubt that none shows would be missing from the sum.
TEST(BudgetRows, ShowEverySource) {
  std::set<std::size_t> columns;
  for (std::size_t i = 0; i < budget_head().size() - 3; ++i) {
    const auto source = static_cast<DoubtSource>(i);
    const auto row = row_of({"base_fog", invented::density(0.3, 0.1), {{source, 0.01, false}}});
    ASSERT_EQ(row.size(), budget_head().size());
    for (std::size_t column = 2; column + 1 < row.size(); ++column) {
      if (row[column] == "0.020") {
        columns.insert(column);
      } else {
        EXPECT_EQ(row[column], "–");
      }
    }
  }
  EXPECT_EQ(columns.size(), static_cast<std::size_t>(DoubtSource::angle) + 1);
  for (std::size_t column = 2; column + 1 < budget_head().size(); ++column) {
    EXPECT_THAT(std::string(budget_explanation()), HasSubstr(budget_head()[column] + ": "));
  }
}

TEST(BudgetRows, GiveHalfWidthsThatCover95) {
  Quantity quantity = invented::density(0.2837, 0.031);
  quantity.u95_common = 0.0124;
  const auto row = row_of({"frame 3 highlight", quantity, {{DoubtSource::noise, 0.005, false}}});
  EXPECT_EQ(row[0], "frame 3 highlight");
  EXPECT_EQ(row[1], "0.28 ± 0.03");
  EXPECT_EQ(row[2], "0.010");
  EXPECT_EQ(row.back(), "0.012");
}

TEST(BudgetRows, CountStopsInEveryCell) {
  Quantity quantity = invented::density(0.30103, 0.030103);
  quantity.u95_common = 0.030103;
  const auto row = row_of({"base_fog", quantity, {{DoubtSource::zero, 0.030103 / 1.96, false}}},
                          DensityUnits::stops);
  EXPECT_EQ(row[1], "1.00 ± 0.10");
  EXPECT_EQ(row[3], "0.100");
  EXPECT_EQ(row.back(), "0.100");
}

TEST(BudgetRows, CallClearFilmByItsStrip) {
  EXPECT_EQ(row_of({"base_fog", {}, {}})[0], "base plus fog");
  EXPECT_EQ(row_of({"strips[0].base_fog", {}, {}})[0], "strip 1 base plus fog");
  EXPECT_EQ(row_of({"strips[11].base_fog", {}, {}})[0], "strip 12 base plus fog");
}

TEST(BudgetRows, DashWhatIsNoNumber) {
  Quantity quantity = invented::density(0.3, 0.1);
  quantity.u95_common = NAN;
  const auto row = row_of({"base_fog", quantity, {{DoubtSource::noise, INFINITY, false}}});
  EXPECT_EQ(row[2], "–");
  EXPECT_EQ(row.back(), "–");
}

}  // namespace
}  // namespace fogline
