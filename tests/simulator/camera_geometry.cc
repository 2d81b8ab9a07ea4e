#include "simulator/camera_geometry.h"

namespace filmsim {

CameraGeometry::CameraGeometry(int width_px, int height_px, double pixels_per_mm,
                               const CameraSettings& settings)
    : centre_{0.5 * width_px, 0.5 * height_px}, pixels_per_mm_(pixels_per_mm) {
  const double corner_mm = std::hypot(centre_.x, centre_.y) / pixels_per_mm;
  radial_ = settings.radial / (corner_mm * corner_mm);
  tilt_ = {settings.perspective_x * pixels_per_mm / centre_.x,
           settings.perspective_y * pixels_per_mm / centre_.y};
}

Point CameraGeometry::px_from_mm(Point mm) const {
  // The map is nearly a pure scale, so stepping by the remaining error closes in quickly.
  constexpr int kMostSteps = 60;
  constexpr double kGoodEnoughPx = 1e-7;
  Point px{centre_.x + mm.x * pixels_per_mm_, centre_.y + mm.y * pixels_per_mm_};
  for (int i = 0; i < kMostSteps; ++i) {
    const Point reached = mm_from_px(px);
    const Point step{(mm.x - reached.x) * pixels_per_mm_, (mm.y - reached.y) * pixels_per_mm_};
    px = {px.x + step.x, px.y + step.y};
    if (std::abs(step.x) + std::abs(step.y) < kGoodEnoughPx) break;
  }
  return px;
}

}  // namespace filmsim
