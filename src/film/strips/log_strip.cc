#include "film/strips/log_strip.h"

#include <fogline/base/quantity.h>

#include <algorithm>
#include <cmath>

namespace fogline {

cv::Mat1f log_light_of(const StraightStrip& strip, double reference_light) {
  // Log light is held at this end: beyond it lies noise, not film.
  constexpr float darkest = 4.0F;
  const int channels = strip.light.channels();
  cv::Mat1f result(strip.light.height(), strip.light.width());
  for (int y = 0; y < result.rows; ++y) {
    const float* light = strip.light.row(y);
    for (int x = 0; x < result.cols; ++x, light += channels) {
      PerChannel<float> value{};
      std::copy(light, light + channels, value.begin());
      const float visual = visual_from_channels(value, channels);
      const float floor = static_cast<float>(reference_light) * 1e-4F;
      result(y, x) = std::isnan(visual)
                         ? NAN
                         : std::min(darkest, -std::log10(std::max(visual, floor) /
                                                         static_cast<float>(reference_light)));
    }
  }
  return result;
}

}  // namespace fogline
