#include "film/strips/film_windows.h"

#include "numerics/least_squares.h"
#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// A holder reads darker than this even through much stray light; its peak in the histogram ends
/// where the count has fallen to this share of the top.
constexpr double least_opaque = 1.2;
constexpr double foot_of_peak = 0.03;
/// Darker than any large area of film in a scan: in noise this dark the holder's peak has no foot.
constexpr double surely_opaque = 2.4;
/// Shares of the image's rim that tell what lies around the film.
constexpr double holder_rim_share = 0.3;
constexpr double bare_rim_share = 0.5;
/// Bare light on the glass: within this of the lamp's smooth course; film of any kind absorbs more.
constexpr float bare_slack = 0.025F;
/// The clearest films absorb little more than the lamp flickers: the slack follows the bare light's
/// own scatter down to this.
constexpr float least_bare_slack = 0.01F;
constexpr double bare_deviations = 4.0;
/// Pieces of one strip that fell apart at clear gaps: in line, equally wide, less than this share
/// of the width apart.
constexpr double mending_share = 0.35;
/// A lamp falls off by less than this towards the rim of a glass.
constexpr float greatest_fall_off = 0.2F;
/// Smallest piece of film, share of the image.
constexpr double least_area_share = 0.004;
/// A whole roll of 135 film is this many times longer than its image is wide; and film so narrow
/// shows nothing.
constexpr double most_lengths = 70.0;
constexpr double fewest_pixels_wide = 12.0;
/// No glass holds more pieces of film: the largest are kept.
constexpr std::size_t most_pieces = 24;
/// Filled outline over its rectangle.
constexpr double least_rectangularity = 0.85;

enum class RimKind { opaque, bare, film };

/// Log light that parts film from holder: the foot of the holder's peak in the histogram.
double opaque_level(const cv::Mat1f& image) {
  constexpr double bin = 0.02;
  constexpr double darkest = 4.0;
  constexpr auto bins = static_cast<std::size_t>(darkest / bin) + 1;
  std::array<double, bins> counts{};
  for (const float value : image) {
    const double place = std::clamp(static_cast<double>(value), 0.0, darkest) / bin;
    counts[static_cast<std::size_t>(place)] += 1.0;
  }
  constexpr auto first = static_cast<std::size_t>(least_opaque / bin);
  auto at = first;
  for (std::size_t i = first; i < bins; ++i) {
    at = counts[i] > counts[at] ? i : at;
  }
  const double foot = foot_of_peak * counts[at];
  while (at > first && counts[at] > foot) {
    --at;
  }
  return std::min(surely_opaque, static_cast<double>(at) * bin);
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

/// Takes the lamp's course out: a quadratic through the bright cells at the image's rim, where film
/// seldom lies; what film there is drops out as wild.
cv::Mat1f without_lamp(const cv::Mat1f& image) {
  constexpr int cells = 48;
  constexpr int rim_cells = 2;
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
      const bool rim = x < rim_cells * step_x || y < rim_cells * step_y ||
                       x + rim_cells * step_x >= image.cols || y + rim_cells * step_y >= image.rows;
      if (rim && bright < static_cast<double>(greatest_fall_off)) {
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
  auto direction = static_cast<double>(rectangle.angle);
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

bool may_be_film(const FilmWindow& window) {
  return window.width_px >= fewest_pixels_wide &&
         window.length_px <= most_lengths * window.width_px;
}

void keep_largest(std::vector<FilmWindow>& windows) {
  std::erase_if(windows, [](const FilmWindow& window) { return !may_be_film(window); });
  std::sort(windows.begin(), windows.end(), [](const FilmWindow& a, const FilmWindow& b) {
    return a.length_px * a.width_px > b.length_px * b.width_px;
  });
  windows.resize(std::min(windows.size(), most_pieces));
}

/// Slack between bare light and film, from the scatter of what is brighter than the bare level.
float slack_of(const cv::Mat1f& flat) {
  std::vector<double> above;
  for (const float value : flat) {
    if (value < 0.0F) {
      above.push_back(static_cast<double>(-value));
    }
  }
  const auto scatter = above.empty() ? 0.0 : mad_to_sd * median(above);
  return std::clamp(static_cast<float>(bare_deviations * scatter), least_bare_slack, bare_slack);
}

std::vector<cv::RotatedRect> each_alone(const std::vector<std::vector<cv::Point>>& pieces) {
  std::vector<cv::RotatedRect> result;
  for (const auto& piece : pieces) {
    result.push_back(cv::minAreaRect(piece));
  }
  return result;
}

/// Joins pieces of one strip that were parted at clear film nearly as bright as the lamp.
std::vector<cv::RotatedRect> mended(std::vector<std::vector<cv::Point>> pieces) {
  for (bool again = true; again;) {
    again = false;
    for (std::size_t i = 0; i < pieces.size() && !again; ++i) {
      for (std::size_t j = i + 1; j < pieces.size() && !again; ++j) {
        const cv::Rect a = cv::boundingRect(pieces[i]);
        const cv::Rect b = cv::boundingRect(pieces[j]);
        const cv::Rect both = a | b;
        const auto in_line = [](int a0, int a1, int b0, int b1) {
          const int overlap = std::min(a1, b1) - std::max(a0, b0);
          return overlap > 0.9 * std::max(a1 - a0, b1 - b0);
        };
        const bool beside = in_line(a.y, a.y + a.height, b.y, b.y + b.height) &&
                            both.width - a.width - b.width < mending_share * a.height;
        const bool below = in_line(a.x, a.x + a.width, b.x, b.x + b.width) &&
                           both.height - a.height - b.height < mending_share * a.width;
        if (beside || below) {
          pieces[i].insert(pieces[i].end(), pieces[j].begin(), pieces[j].end());
          pieces.erase(pieces.begin() + static_cast<std::ptrdiff_t>(j));
          again = true;
        }
      }
    }
  }
  return each_alone(pieces);
}

std::vector<FilmWindow> windows_in_mask(const cv::Mat& mask, Surround surround) {
  cv::Mat closed;
  const cv::Mat kernel = cv::getStructuringElement(cv::MORPH_RECT, {5, 5});
  cv::morphologyEx(mask, closed, cv::MORPH_OPEN, kernel);
  cv::morphologyEx(closed, closed, cv::MORPH_CLOSE, kernel);
  std::vector<std::vector<cv::Point>> outlines;
  cv::findContours(closed, outlines, cv::RETR_EXTERNAL, cv::CHAIN_APPROX_NONE);
  std::vector<std::vector<cv::Point>> pieces;
  for (const auto& outline : outlines) {
    const double area = cv::contourArea(outline);
    const cv::RotatedRect rectangle = cv::minAreaRect(outline);
    const double full =
        static_cast<double>(rectangle.size.width) * static_cast<double>(rectangle.size.height);
    if (area > least_area_share * static_cast<double>(mask.total()) &&
        area > least_rectangularity * full) {
      pieces.push_back(outline);
    }
  }
  std::vector<FilmWindow> windows;
  for (const cv::RotatedRect& rectangle :
       surround == Surround::bare_light ? mended(pieces) : each_alone(pieces)) {
    windows.push_back(window_from_rectangle(rectangle, surround));
  }
  keep_largest(windows);
  std::sort(windows.begin(), windows.end(), [](const FilmWindow& a, const FilmWindow& b) {
    const bool lying = std::abs(a.direction_deg) < 45.0;
    return lying ? a.y < b.y : a.x < b.x;
  });
  return windows;
}

std::vector<FilmWindow> open_glass_windows(const cv::Mat1f& log_light) {
  const cv::Mat1f flat = without_lamp(log_light);
  return windows_in_mask(flat > slack_of(flat), Surround::bare_light);
}

}  // namespace

std::vector<FilmWindow> film_windows(const FindingImage& image) {
  const double opaque = opaque_level(image.log_light);
  switch (rim_kind(image.log_light, opaque)) {
    case RimKind::opaque:
      return windows_in_mask(image.log_light < opaque, Surround::opaque);
    case RimKind::bare:
      return open_glass_windows(image.log_light);
    case RimKind::film:
      break;
  }
  const cv::RotatedRect whole(
      {static_cast<float>(image.log_light.cols) / 2.0F - 0.5F,
       static_cast<float>(image.log_light.rows) / 2.0F - 0.5F},
      {static_cast<float>(image.log_light.cols), static_cast<float>(image.log_light.rows)}, 0.0F);
  const FilmWindow window = window_from_rectangle(whole, Surround::image_border);
  return may_be_film(window) ? std::vector{window} : std::vector<FilmWindow>{};
}

}  // namespace fogline
