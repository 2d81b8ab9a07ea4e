// From pixels of the picture to millimetres on the glass, and back.
#pragma once

#include "simulator/geometry.h"

namespace filmsim {

struct CameraSettings {
  /// Radial distortion: relative shift of a point at the picture's corner, -0.02 to 0.02.
  double radial = 0.0;
  /// Relative change of scale from the middle to the right and lower border, each a few percent.
  double perspective_x = 0.0;
  double perspective_y = 0.0;
};

class CameraGeometry {
 public:
  /// The picture's middle looks at (0, 0) mm.
  CameraGeometry(int width_px, int height_px, double pixels_per_mm, const CameraSettings& settings);

  /// Picture position (pixel centres at half numbers: the first pixel spans 0 to 1) to mm.
  [[nodiscard]] Point mm_from_px(Point px) const {
    double x = (px.x - centre_.x) / pixels_per_mm_;
    double y = (px.y - centre_.y) / pixels_per_mm_;
    const double stretch = 1.0 + radial_ * (x * x + y * y);
    x *= stretch;
    y *= stretch;
    const double depth = 1.0 + tilt_.x * x + tilt_.y * y;
    return {x / depth, y / depth};
  }
  [[nodiscard]] Point px_from_mm(Point mm) const;
  [[nodiscard]] double pixels_per_mm() const { return pixels_per_mm_; }

 private:
  Point centre_;
  double pixels_per_mm_;
  double radial_;  // per mm^2
  Point tilt_;     // per mm
};

}  // namespace filmsim
