#include "process/belief/cause_regions.h"

#include "process/invented_reading.h"
#include "tables/shipped_knowledge.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

/// As good as known.
constexpr double sure = 1e-3;

CauseRegions regions() {
  return {invented::usual_aim(), shipped_knowledge().population};
}

TEST(CauseRegions, WithinToleranceAndLatitudeIsNormal) {
  EXPECT_NEAR(regions().causes(0.62, 0.5, sure).normal, 1.0, 1e-9);
  EXPECT_NEAR(regions().causes(0.54, -0.6, sure).normal, 1.0, 1e-9);
}

TEST(CauseRegions, TheLargerEffectLeads) {
  // 20 % of contrast weigh as much as 0.8 stop.
  const double low = 0.8 * 0.58;
  EXPECT_NEAR(regions().causes(low, -0.75, sure).under_developed, 1.0, 1e-9);
  EXPECT_NEAR(regions().causes(low, -0.85, sure).under_exposed, 1.0, 1e-9);
  EXPECT_NEAR(regions().causes(low, 0.85, sure).over_exposed, 1.0, 1e-9);
  EXPECT_NEAR(regions().causes(1.2 * 0.58, 0.3, sure).over_developed, 1.0, 1e-9);
}

TEST(CauseRegions, ExposureWithinLatitudeNeverLeads) {
  EXPECT_NEAR(regions().causes(0.52, -0.6, sure).under_developed, 1.0, 1e-9);
}

TEST(CauseRegions, DoubtSharesOut) {
  const CauseProbabilities causes = regions().causes(0.58, -0.667, 0.5);
  EXPECT_NEAR(causes.under_exposed, 0.5, 1e-6);
  EXPECT_NEAR(causes.normal + causes.under_exposed + causes.over_exposed, 1.0, 1e-9);
}

}  // namespace
}  // namespace fogline
