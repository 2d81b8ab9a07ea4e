#include "film/frames/frame_profile.h"

#include "film/frames/even_gaps.h"

#include <algorithm>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// A spot is picture when it exceeds clear film by this log light at least, and by so many
/// standard deviations of clear film.
constexpr float least_excess = 0.045F;
constexpr double excess_deviations = 2.5;
/// Shares of a column's spots that are picture: below the first only dust is in sight, above the
/// second no gap is so dirty.
constexpr double clear_share = 0.02;
constexpr double picture_share = 0.12;
/// Log likelihood ratio at the second share: one gap column in a hundred is as dirty as a picture.
constexpr double picture_ratio = 2.0;
/// A border is looked for between two stretches of this length, mm: longer than blur, shorter
/// than the narrowest gap.
constexpr double border_reach_mm = 0.4;
/// The picture's height is judged in pieces of this length, mm.
constexpr double piece_mm = 1.0;
/// Steps beyond this count no more, log light.
constexpr double greatest_step = 0.4;

double ratio_from_share(double share) {
  const double t = std::clamp((share - clear_share) / (picture_share - clear_share), 0.0, 1.0);
  return FrameProfile::clear_ratio + t * (picture_ratio - FrameProfile::clear_ratio);
}

cv::Mat not_a_number(const cv::Mat1f& image) {
  cv::Mat1b mask(image.size());
  std::transform(image.begin(), image.end(), mask.begin(), [](float value) {
    return static_cast<std::uint8_t>(std::isnan(value) ? 255 : 0);
  });
  return mask;
}

/// Looks for borders at each column: how the mean light of every piece of the height steps between
/// the stretch before and the stretch after. `sums` is the integral image of the pieces.
void add_border_evidence(FrameProfile& profile, const cv::Mat1d& sums, int reach,
                         double threshold) {
  const int pieces = sums.rows - 1;
  const int columns = sums.cols - 1;
  for (int x = reach; x + reach <= columns; ++x) {
    const auto i = static_cast<std::size_t>(x);
    const auto window_length = static_cast<std::ptrdiff_t>(2) * reach;
    const auto window = profile.film.begin() + static_cast<std::ptrdiff_t>(x - reach);
    if (std::find(window, window + window_length, false) != window + window_length) {
      continue;
    }
    int rising = 0;
    int falling = 0;
    double steps = 0.0;
    for (int p = 0; p < pieces; ++p) {
      const auto mean = [&](int from, int to) {
        return (sums(p + 1, to) - sums(p, to) - sums(p + 1, from) + sums(p, from)) / (to - from);
      };
      const double step = mean(x, x + reach) - mean(x - reach, x);
      steps += std::clamp(step, -greatest_step, greatest_step);
      rising += step > threshold ? 1 : 0;
      falling += step < -threshold ? 1 : 0;
    }
    profile.step[i] = steps / pieces;
    profile.rises[i] = static_cast<double>(rising) / pieces;
    profile.falls[i] = static_cast<double>(falling) / pieces;
  }
}

}  // namespace

int ExcessImage::column(double along_mm) const {
  const double x = std::floor((along_mm - along_begin_mm) * pixels_per_mm);
  return static_cast<int>(std::clamp(x, 0.0, static_cast<double>(excess.cols - 1)));
}

int ExcessImage::row(double across_mm) const {
  const double y = std::floor((across_mm - across_begin_mm) * pixels_per_mm);
  return static_cast<int>(std::clamp(y, 0.0, static_cast<double>(excess.rows - 1)));
}

FrameProfile frame_profile(const ExcessImage& image, double across_begin_mm, double across_end_mm,
                           double noise) {
  const int begin = image.row(across_begin_mm);
  const int end = std::max(begin + 1, image.row(across_end_mm));
  const cv::Mat1f band = image.excess.rowRange(begin, end).clone();
  const cv::Mat unknown = not_a_number(band);
  cv::Mat1f filled = band.clone();
  cv::patchNaNs(filled, 0.0);
  cv::Mat1f smooth;
  cv::blur(filled, smooth, {3, 3}, {-1, -1}, cv::BORDER_REPLICATE);
  // Averaging over 3 x 3 spots leaves about half of grain noise that is correlated over a spot.
  const auto threshold =
      std::max(least_excess, static_cast<float>(0.5 * excess_deviations * noise));

  const int columns = band.cols;
  const int reach =
      std::max(2, static_cast<int>(std::lround(border_reach_mm * image.pixels_per_mm)));
  const int piece = std::max(2, static_cast<int>(std::lround(piece_mm * image.pixels_per_mm)));
  const int pieces = std::max(1, band.rows / piece);
  cv::Mat1f coarse;
  cv::resize(filled.rowRange(0, std::min(band.rows, pieces * piece)), coarse, {columns, pieces}, 0,
             0, cv::INTER_AREA);
  cv::Mat1d sums;
  cv::integral(coarse, sums, CV_64F);

  FrameProfile profile;
  profile.pixels_per_mm = image.pixels_per_mm;
  profile.along_begin_mm = image.along_begin_mm;
  const auto size = static_cast<std::size_t>(columns);
  profile.picture.assign(size, 0.0);
  profile.rises.assign(size, 0.0);
  profile.falls.assign(size, 0.0);
  profile.step.assign(size, 0.0);
  profile.film.assign(size, false);
  for (int x = 0; x < columns; ++x) {
    const auto i = static_cast<std::size_t>(x);
    const int known = band.rows - cv::countNonZero(unknown.col(x));
    profile.film[i] = known > band.rows / 2;
    if (!profile.film[i]) {
      continue;
    }
    const int dense = cv::countNonZero(smooth.col(x) > threshold);
    profile.picture[i] = ratio_from_share(static_cast<double>(dense) / known);
  }
  add_border_evidence(profile, sums, reach, static_cast<double>(threshold));
  take_even_stripes_for_gaps(profile, coarse);
  return profile;
}

}  // namespace fogline
