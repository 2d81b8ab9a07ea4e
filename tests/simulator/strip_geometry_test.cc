#include "simulator/strip_geometry.h"

#include "simulator/camera_geometry.h"

#include <gtest/gtest.h>

namespace filmsim {
namespace {

StripGeometry straight_strip() {
  StripGeometrySettings settings;
  settings.length_mm = 152.0;
  return StripGeometry(settings);
}

// Figures of 135 film in pixels follow from the standard's millimetres (ISO 1007, value from
// memory) by arithmetic: pixels = mm * dpi / 25.4.
struct Resolution {
  double dpi, pitch_px, width_px, frame_pitch_px;
};

class At : public testing::TestWithParam<Resolution> {};

TEST_P(At, DimensionsAreTheStandards) {
  const Resolution& at = GetParam();
  const StripGeometry strip = straight_strip();
  const CameraGeometry camera(20000, 8000, at.dpi / 25.4, {});
  const auto px = [&](double u, double v) {
    return camera.px_from_mm(strip.glass_from_film({u, v}));
  };
  const std::vector<Point> holes = strip.hole_middles();
  const Point first = px(holes[0].x, holes[0].y);
  const Point next = px(holes[1].x, holes[1].y);
  EXPECT_NEAR(next.x - first.x, at.pitch_px, 0.01);
  EXPECT_NEAR(px(0.0, strip.width_mm()).y - px(0.0, 0.0).y, at.width_px, 0.05);
  EXPECT_NEAR(px(k135FramePitchMm, 0.0).x - px(0.0, 0.0).x, at.frame_pitch_px, 0.05);
}

INSTANTIATE_TEST_SUITE_P(Resolutions, At,
                         testing::Values(Resolution{2400, 448.82, 3304.7, 3590.6},
                                         Resolution{1200, 224.41, 1652.4, 1795.3},
                                         Resolution{3200, 598.43, 4406.3, 4787.4},
                                         Resolution{4800, 897.64, 6609.45, 7181.1}));

TEST(Holes, HaveTheirSizeAndPlace) {
  const StripGeometry strip = straight_strip();
  const Point hole = strip.hole_middles()[3];
  EXPECT_NEAR(strip.hole_distance(hole), -0.5 * k135HoleAlongMm, 1e-9);
  EXPECT_NEAR(strip.hole_distance({hole.x + 0.5 * k135HoleAlongMm, hole.y}), 0.0, 1e-9);
  EXPECT_NEAR(strip.hole_distance({hole.x, hole.y - 0.5 * k135HoleAcrossMm}), 0.0, 1e-9);
  // 2.01 mm of film outside each hole, 25.37 mm between the two rows.
  EXPECT_NEAR(hole.y - 0.5 * k135HoleAcrossMm, 2.01, 1e-9);
  const Point opposite = strip.hole_middles().back();
  EXPECT_NEAR(opposite.y - hole.y - k135HoleAcrossMm, 25.37, 0.01);
}

TEST(Holes, AreaIsThatOfARoundedOblong) {
  const StripGeometry strip = straight_strip();
  const Point hole = strip.hole_middles()[2];
  constexpr double kStepMm = 0.01;
  int inside = 0;
  for (double du = -1.5; du < 1.5; du += kStepMm) {
    for (double dv = -2.0; dv < 2.0; dv += kStepMm) {
      inside += strip.hole_distance({hole.x + du, hole.y + dv}) < 0.0 ? 1 : 0;
    }
  }
  const double corners = (4.0 - 3.14159265) * k135HoleCornerMm * k135HoleCornerMm;
  EXPECT_NEAR(inside * kStepMm * kStepMm, k135HoleAlongMm * k135HoleAcrossMm - corners, 0.04);
}

TEST(Strip, GlassAndFilmMapsAreInverse) {
  StripGeometrySettings settings;
  settings.axis = FilmAxis::kY;
  settings.middle_mm = {12.0, -7.0};
  settings.rotation_deg = 2.3;
  settings.shrinkage = 0.003;
  settings.bow_mm = 0.4;
  const StripGeometry strip(settings);
  for (const Point film : {Point{3.0, 1.0}, Point{60.0, 17.0}, Point{110.0, 33.0}}) {
    const Point back = strip.film_from_glass(strip.glass_from_film(film));
    EXPECT_NEAR(back.x, film.x, 1e-9);
    EXPECT_NEAR(back.y, film.y, 1e-9);
  }
}

TEST(Strip, TurnsClockwiseByItsRotation) {
  StripGeometrySettings settings;
  settings.rotation_deg = 1.0;
  const StripGeometry strip(settings);
  const Point left = strip.glass_from_film({0.0, 10.0});
  const Point right = strip.glass_from_film({100.0, 10.0});
  // y grows downwards, so clockwise means that the right end lies lower.
  EXPECT_NEAR((right.y - left.y) / (right.x - left.x), std::tan(3.14159265 / 180.0), 1e-6);
}

TEST(Strip, ShrinksByItsShrinkage) {
  StripGeometrySettings settings;
  settings.shrinkage = 0.005;
  const StripGeometry strip(settings);
  const Point a = strip.glass_from_film({0.0, 0.0});
  const Point b = strip.glass_from_film({100.0 * k135PitchMm, 0.0});
  EXPECT_NEAR(b.x - a.x, 475.0 * 0.995, 1e-6);
}

TEST(Strip, TongueIsCutAway) {
  StripGeometrySettings settings;
  settings.tongue_mm = 20.0;
  const StripGeometry strip(settings);
  EXPECT_LT(strip.outline_distance({10.0, 10.0}), 0.0);
  EXPECT_GT(strip.outline_distance({10.0, 30.0}), 0.0);
  EXPECT_LT(strip.outline_distance({25.0, 30.0}), 0.0);
}

TEST(Camera, PictureAndGlassMapsAreInverse) {
  const CameraGeometry camera(1200, 800, 16.0, {0.02, 0.03, -0.02});
  for (const Point px : {Point{0.0, 0.0}, Point{600.0, 400.0}, Point{1190.0, 20.0}}) {
    const Point back = camera.px_from_mm(camera.mm_from_px(px));
    EXPECT_NEAR(back.x, px.x, 1e-3);
    EXPECT_NEAR(back.y, px.y, 1e-3);
  }
}

TEST(Camera, DistortionMovesTheCornerByItsShare) {
  const CameraGeometry plain(1200, 800, 16.0, {});
  const CameraGeometry bent(1200, 800, 16.0, {0.02, 0.0, 0.0});
  EXPECT_NEAR(bent.mm_from_px({0.0, 0.0}).x / plain.mm_from_px({0.0, 0.0}).x, 1.02, 1e-9);
  EXPECT_NEAR(bent.mm_from_px({600.0, 400.0}).x, 0.0, 1e-12);
}

}  // namespace
}  // namespace filmsim
