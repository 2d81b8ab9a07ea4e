#include "film/film_windows.h"

#include <fogline/numerics/least_squares.h>
#include <fogline/numerics/robust.h>

#include <algorithm>
#include <array>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// The darkest hundredth of a scan with a holder is holder; with stray light it reads anything from
/// 1.5 up. Film seldom comes within this of it over large areas.
constexpr double below_darkest = 0.5;
constexpr double least_opaque = 1.2;
/// Shares of the image's rim that tell what lies around the film.
constexpr double holder_rim_share = 0.3;
constexpr double bare_rim_share = 0.5;
/// Bare light on the glass: within this of the lamp's smooth course; film of any kind absorbs more.
constexpr float bare_slack = 0.025F;
/// A lamp falls off by less than this towards the rim of a glass.
constexpr float greatest_fall_off = 0.2F;
/// Smallest piece of film, share of the image.
constexpr double least_area_share = 0.004;
/// Filled outline over its rectangle.
constexpr double least_rectangularity = 0.85;

enum class RimKind { opaque, bare, film };

double opaque_level(const cv::Mat1f& image) {
  const std::vector<double> values(image.begin(), image.end());
  constexpr double darkest_share = 0.99;
  return std::max(least_opaque, percentile(values, darkest_share) - below_darkest);
}

RimKind rim_kind(const cv::Mat1f& image, double opaque) {
  const int rim = std::max(2, std::min(image.cols, image.rows) / 80);
  int count = 0;
  int dark = 0;
  int bright = 0;
  for (int y = 0; y < image.rows; ++y) {
    const bool whole_row = y < rim || y >= image.rows - rim;
    for (int x = 0; x < image.cols; ++x) {
      if (whole_row || x < rim || x >= image.cols - rim) {
        ++count;
        dark += static_cast<double>(image(y, x)) > opaque ? 1 : 0;
        bright += image(y, x) < greatest_fall_off ? 1 : 0;
      }
    }
  }
  if (dark > holder_rim_share * count) {
    return RimKind::opaque;
  }
  return bright > bare_rim_share * count ? RimKind::bare : RimKind::film;
}

/// Takes the lamp's course out: a quadratic through the brightest, pieces of film dropped as
/// outliers.
cv::Mat1f without_lamp(const cv::Mat1f& image) {
  constexpr int cells = 24;
  const auto terms = [&](double x, double y) {
    const double u = x / image.cols - 0.5;
    const double v = y / image.rows - 0.5;
    return std::array{1.0, u, v, u * u, u * v, v * v};
  };
  LinearProblem problem;
  problem.coefficients = 6;
  const int step_x = std::max(1, image.cols / cells);
  const int step_y = std::max(1, image.rows / cells);
  for (int y = 0; y + step_y <= image.rows; y += step_y) {
    for (int x = 0; x + step_x <= image.cols; x += step_x) {
      const cv::Mat1f cell = image(cv::Rect(x, y, step_x, step_y)).clone();
      const std::vector<double> values(cell.begin(), cell.end());
      const double bright = median(values);
      if (bright < static_cast<double>(greatest_fall_off)) {
        problem.add(terms(x + 0.5 * step_x, y + 0.5 * step_y), bright);
      }
    }
  }
  constexpr double rounding = 0.004;
  const LinearFit lamp = fit_robust(problem, rounding);
  cv::Mat1f flat = image.clone();
  if (lamp.solved) {
    for (int y = 0; y < flat.rows; ++y) {
      for (int x = 0; x < flat.cols; ++x) {
        flat(y, x) -= static_cast<float>(lamp.predict(terms(x, y)));
      }
    }
  }
  return flat;
}

FilmWindow window_from_rectangle(const cv::RotatedRect& rectangle, Surround surround) {
  FilmWindow window;
  window.x = static_cast<double>(rectangle.center.x) + 0.5;
  window.y = static_cast<double>(rectangle.center.y) + 0.5;
  double direction = static_cast<double>(rectangle.angle);
  window.length_px = static_cast<double>(rectangle.size.width);
  window.width_px = static_cast<double>(rectangle.size.height);
  if (window.length_px < window.width_px) {
    std::swap(window.length_px, window.width_px);
    direction += 90.0;
  }
  // Along the film, x or y grows.
  while (direction > 135.0) {
    direction -= 180.0;
  }
  while (direction <= -45.0) {
    direction += 180.0;
  }
  window.direction_deg = direction;
  window.surround = surround;
  return window;
}

std::vector<FilmWindow> windows_in_mask(const cv::Mat& mask, Surround surround) {
  cv::Mat closed;
  const cv::Mat kernel = cv::getStructuringElement(cv::MORPH_RECT, {5, 5});
  cv::morphologyEx(mask, closed, cv::MORPH_OPEN, kernel);
  cv::morphologyEx(closed, closed, cv::MORPH_CLOSE, kernel);
  std::vector<std::vector<cv::Point>> outlines;
  cv::findContours(closed, outlines, cv::RETR_EXTERNAL, cv::CHAIN_APPROX_NONE);
  std::vector<FilmWindow> windows;
  for (const auto& outline : outlines) {
    const double area = cv::contourArea(outline);
    if (area < least_area_share * static_cast<double>(mask.total())) {
      continue;
    }
    const cv::RotatedRect rectangle = cv::minAreaRect(outline);
    const double full =
        static_cast<double>(rectangle.size.width) * static_cast<double>(rectangle.size.height);
    if (area / full > least_rectangularity) {
      windows.push_back(window_from_rectangle(rectangle, surround));
    }
  }
  std::sort(windows.begin(), windows.end(), [](const FilmWindow& a, const FilmWindow& b) {
    const bool lying = std::abs(a.direction_deg) < 45.0;
    return lying ? a.y < b.y : a.x < b.x;
  });
  return windows;
}

}  // namespace

std::vector<FilmWindow> film_windows(const FindingImage& image) {
  const double opaque = opaque_level(image.log_light);
  switch (rim_kind(image.log_light, opaque)) {
    case RimKind::opaque:
      return windows_in_mask(image.log_light < opaque, Surround::opaque);
    case RimKind::bare:
      return windows_in_mask(without_lamp(image.log_light) > bare_slack, Surround::bare_light);
    case RimKind::film:
      break;
  }
  const cv::RotatedRect whole(
      {static_cast<float>(image.log_light.cols) / 2.0F - 0.5F,
       static_cast<float>(image.log_light.rows) / 2.0F - 0.5F},
      {static_cast<float>(image.log_light.cols), static_cast<float>(image.log_light.rows)}, 0.0F);
  return {window_from_rectangle(whole, Surround::image_border)};
}

}  // namespace fogline
