#include "sensitometry/clear_silver.h"

#include "density/callier.h"
#include "tables/shipped_knowledge.h"

#include <gtest/gtest.h>

namespace fogline {
namespace {

ClearSilver silver_in(double base_fog, FilmFormat format) {
  return silver_in_clear_film(base_fog, format, shipped_knowledge().scan.films);
}

// Base plus fog of 135 film on grey base 0.20 to 0.35, of 120 film 0.05 to 0.20 (common practice,
// no source): nothing there says that there is more fog than usual.
TEST(ClearSilver, UsualFilmHasTheUsualFog) {
  for (const double base : {0.08, 0.20, 0.29, 0.35}) {
    EXPECT_EQ(silver_in(base, FilmFormat::f135).greatest, usual_fog) << base;
    EXPECT_EQ(silver_in(base, FilmFormat::unknown).likely, usual_fog) << base;
  }
  for (const double base : {0.05, 0.14, 0.20}) {
    EXPECT_EQ(silver_in(base, FilmFormat::f120).greatest, usual_fog) << base;
    EXPECT_EQ(silver_in(base, FilmFormat::sheet).likely, usual_fog) << base;
  }
}

TEST(ClearSilver, WhatIsFarAboveTheUsualIsFog) {
  const FilmKnowledge& films = shipped_knowledge().scan.films;
  for (const double fog : {0.4, 1.0, 2.0}) {
    const double base = films.grey_base.density + fog;
    const ClearSilver silver = silver_in(base, FilmFormat::f135);
    EXPECT_NEAR(silver.likely, usual_fog + fog, 1e-12);
    EXPECT_NEAR(silver.greatest, usual_fog + base - films.clear_base.density, 1e-12);
  }
}

// It rises by the whole excess within a few hundredths: some six times as fast as the density.
TEST(ClearSilver, GrowsWithoutAJump) {
  ClearSilver before = silver_in(0.0, FilmFormat::f135);
  for (double base = 0.0; base < 1.2; base += 0.005) {
    const ClearSilver silver = silver_in(base, FilmFormat::f135);
    EXPECT_GE(silver.greatest, silver.likely);
    EXPECT_GE(silver.greatest, before.greatest);
    EXPECT_LT(silver.greatest - before.greatest, 8.0 * 0.005) << base;
    before = silver;
  }
}

}  // namespace
}  // namespace fogline
