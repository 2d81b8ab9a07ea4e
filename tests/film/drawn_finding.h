// Drawn film as the small picture on which film is found, without the way through codes.
#pragma once

#include "film/drawn_scan.h"
#include "film/strips/finding_image.h"

#include <algorithm>

namespace fogline::drawn {

/// One pixel of it is one of the scan's; bare light is 0.
inline FindingImage finding_of(const Scan& scan) {
  const Raster<float> light = light_of(scan);
  FindingImage image;
  image.log_light = cv::Mat1f(light.height(), light.width());
  for (int y = 0; y < light.height(); ++y) {
    for (int x = 0; x < light.width(); ++x) {
      image.log_light(y, x) = static_cast<float>(
          density_from_transmittance(static_cast<double>(light.at(x, y)) / scan.bare_light));
    }
  }
  return image;
}

/// A picture of one level.
inline FindingImage even_finding(int width, int height, float level) {
  FindingImage image;
  image.log_light = cv::Mat1f(height, width, level);
  return image;
}

/// Paints an upright box, whole pixels, as far as it lies in the picture.
inline void paint(FindingImage& image, const RegionPx& box, float level) {
  const cv::Rect whole(0, 0, image.log_light.cols, image.log_light.rows);
  image.log_light(cv::Rect(box.x, box.y, box.width, box.height) & whole) = level;
}

/// The same picture seen in a mirror or turned by a quarter: places change, sizes don't.
enum class Turn { none, left_right, upside_down, quarter };

inline FindingImage turned(const FindingImage& image, Turn turn) {
  FindingImage result;
  result.scan_px = image.scan_px;
  switch (turn) {
    case Turn::none:
      result.log_light = image.log_light.clone();
      break;
    case Turn::left_right:
      cv::flip(image.log_light, result.log_light, 1);
      break;
    case Turn::upside_down:
      cv::flip(image.log_light, result.log_light, 0);
      break;
    case Turn::quarter:
      cv::rotate(image.log_light, result.log_light, cv::ROTATE_90_CLOCKWISE);
      break;
  }
  return result;
}

/// Where a place of a picture of that size lies in the turned one.
inline PointPx turned(PointPx at, Turn turn, int width, int height) {
  switch (turn) {
    case Turn::left_right:
      return {width - at.x, at.y};
    case Turn::upside_down:
      return {at.x, height - at.y};
    case Turn::quarter:
      return {height - at.y, at.x};
    case Turn::none:
      break;
  }
  return at;
}

}  // namespace fogline::drawn
