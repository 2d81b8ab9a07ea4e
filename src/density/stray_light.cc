#include <fogline/density/stray_light.h>
#include <fogline/numerics/non_negative.h>
#include <fogline/numerics/robust.h>

#include <algorithm>
#include <array>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Widths of the glare's Gaussians (standard deviations along x and y, mm): near, middle, far,
/// and drawn out along either axis.
constexpr double widths_mm[][2] = {{2.5, 2.5},   {6.0, 3.0},   {3.0, 6.0},  {12.0, 12.0},
                                   {40.0, 12.0}, {12.0, 40.0}, {40.0, 40.0}};
constexpr std::size_t width_count = std::size(widths_mm);
/// Glare is computed on cells of this size: half its narrowest width.
constexpr double cell_mm = 1.25;
constexpr int largest_side_cells = 400;
/// Light below this share of the lamp is opaque if it stays so for two cells around.
constexpr double opaque_share = 0.03;
/// An opaque area lies within a factor of this of the darkest light in sight.
constexpr double opaque_spread = 4.0;
/// So many opaque cells tell glare from offset.
constexpr std::size_t fewest_opaque_cells = 40;
/// Glare of unknown scanners: share and its standard uncertainty (0.3 to 3 % are met), width of
/// the blur in mm.
constexpr double usual_share = 0.010;
constexpr double usual_share_doubt = 0.007;
constexpr double usual_width_mm = 20.0;
/// Doubt of glare told from opaque areas: they don't lie where the film lies.
constexpr double told_doubt_share = 0.25;

cv::Mat cell_light(const ScanGrid& grid, double cell_grid_px) {
  const int channels = grid.light.channels();
  const int width = std::max(1, static_cast<int>(std::ceil(grid.light.width() / cell_grid_px)));
  const int height = std::max(1, static_cast<int>(std::ceil(grid.light.height() / cell_grid_px)));
  cv::Mat sums = cv::Mat::zeros(height, width, CV_32FC(channels));
  cv::Mat1f counts(height, width, 0.0F);
  for (int y = 0; y < grid.light.height(); ++y) {
    const int j = std::min(height - 1, static_cast<int>(y / cell_grid_px));
    for (int x = 0; x < grid.light.width(); ++x) {
      const int i = std::min(width - 1, static_cast<int>(x / cell_grid_px));
      auto* sum = sums.ptr<float>(j) + static_cast<std::ptrdiff_t>(i) * channels;
      for (int c = 0; c < channels; ++c) {
        sum[c] += grid.light.light(x, y, c);
      }
      counts(j, i) += 1.0F;
    }
  }
  for (int j = 0; j < height; ++j) {
    for (int i = 0; i < width; ++i) {
      auto* sum = sums.ptr<float>(j) + static_cast<std::ptrdiff_t>(i) * channels;
      for (int c = 0; c < channels; ++c) {
        sum[c] /= std::max(1.0F, counts(j, i));
      }
    }
  }
  return sums;
}

cv::Mat1f visual_of(const cv::Mat& light) {
  cv::Mat1f visual(light.rows, light.cols);
  const int channels = light.channels();
  for (int y = 0; y < light.rows; ++y) {
    for (int x = 0; x < light.cols; ++x) {
      PerChannel<float> value{};
      const auto* cell = light.ptr<float>(y) + static_cast<std::ptrdiff_t>(x) * channels;
      std::copy(cell, cell + channels, value.begin());
      visual(y, x) = visual_from_channels(value, channels);
    }
  }
  return visual;
}

cv::Mat blurred(const cv::Mat& light, double sd_x_cells, double sd_y_cells) {
  cv::Mat result;
  cv::GaussianBlur(light, result, {0, 0}, std::max(0.5, sd_x_cells), std::max(0.5, sd_y_cells),
                   cv::BORDER_REPLICATE);
  return result;
}

/// Cells that are opaque all around: darker than any film, and even.
std::vector<cv::Point> opaque_cells(const cv::Mat1f& visual) {
  double lamp = 0.0;
  cv::minMaxLoc(visual, nullptr, &lamp);
  cv::Mat1f around;
  cv::dilate(visual, around, cv::getStructuringElement(cv::MORPH_RECT, {3, 3}));
  std::vector<double> dark;
  for (const float value : around) {
    if (static_cast<double>(value) < opaque_share * lamp) {
      dark.push_back(static_cast<double>(value));
    }
  }
  std::vector<cv::Point> cells;
  if (dark.size() < fewest_opaque_cells) {
    return cells;
  }
  constexpr double darkest_share = 0.2;
  const double limit =
      std::min(opaque_share * lamp, opaque_spread * percentile(dark, darkest_share));
  for (int y = 0; y < around.rows; ++y) {
    for (int x = 0; x < around.cols; ++x) {
      if (static_cast<double>(around(y, x)) < limit) {
        cells.emplace_back(x, y);
      }
    }
  }
  return cells;
}

}  // namespace

StrayLight StrayLight::estimated(const ScanGrid& grid, double pixels_per_mm) {
  StrayLight stray;
  const double grid_px_per_mm = pixels_per_mm / grid.reduction;
  const double longest = std::max(grid.light.width(), grid.light.height());
  const double cell_grid_px = std::max(cell_mm * grid_px_per_mm, longest / largest_side_cells);
  const double cells_per_mm = grid_px_per_mm / cell_grid_px;
  stray.cell_px_ = cell_grid_px * grid.reduction;
  const cv::Mat light = cell_light(grid, cell_grid_px);
  const cv::Mat1f visual = visual_of(light);
  const std::vector<cv::Point> cells = opaque_cells(visual);

  cv::Mat glare = cv::Mat::zeros(light.size(), light.type());
  if (cells.size() >= fewest_opaque_cells) {
    std::array<cv::Mat1f, width_count> blurs;
    for (std::size_t k = 0; k < width_count; ++k) {
      blurs[k] = blurred(visual, widths_mm[k][0] * cells_per_mm, widths_mm[k][1] * cells_per_mm);
    }
    LinearProblem problem;
    problem.coefficients = static_cast<int>(width_count) + 1;
    for (const cv::Point& cell : cells) {
      std::array<double, width_count + 1> row{};
      for (std::size_t k = 0; k < width_count; ++k) {
        row[k] = static_cast<double>(blurs[k](cell));
      }
      row[width_count] = 1.0;
      problem.add(row, static_cast<double>(visual(cell)));
    }
    const LinearFit fit = fit_non_negative(problem);
    stray.measured_ = fit.solved;
    stray.residual_ = fit.residual_sd;
    for (std::size_t k = 0; k < width_count && fit.solved; ++k) {
      stray.share_ += fit.coefficients[k];
      if (fit.coefficients[k] > 0.0) {
        glare += fit.coefficients[k] *
                 blurred(light, widths_mm[k][0] * cells_per_mm, widths_mm[k][1] * cells_per_mm);
      }
    }
    stray.offset_ = fit.solved ? fit.coefficients[width_count] : 0.0;
    stray.share_doubt_ = told_doubt_share * stray.share_;
  }
  if (!stray.measured_) {
    stray.share_ = usual_share;
    stray.share_doubt_ = usual_share_doubt;
    const double sd = usual_width_mm * cells_per_mm;
    glare = usual_share * blurred(light, sd, sd);
  }
  stray.glare_ = Raster<float>(light.cols, light.rows, light.channels());
  std::copy(glare.ptr<float>(0),
            glare.ptr<float>(0) + glare.total() * static_cast<std::size_t>(glare.channels()),
            stray.glare_.samples().begin());
  return stray;
}

float StrayLight::at(double x_px, double y_px, int channel) const {
  const double x = std::clamp(x_px / cell_px_ - 0.5, 0.0, glare_.width() - 1.0);
  const double y = std::clamp(y_px / cell_px_ - 0.5, 0.0, glare_.height() - 1.0);
  const int x0 = static_cast<int>(x);
  const int y0 = static_cast<int>(y);
  const int x1 = std::min(x0 + 1, glare_.width() - 1);
  const int y1 = std::min(y0 + 1, glare_.height() - 1);
  const auto fx = static_cast<float>(x - x0);
  const auto fy = static_cast<float>(y - y0);
  const float top = glare_.at(x0, y0, channel) * (1.0F - fx) + glare_.at(x1, y0, channel) * fx;
  const float low = glare_.at(x0, y1, channel) * (1.0F - fx) + glare_.at(x1, y1, channel) * fx;
  return top * (1.0F - fy) + low * fy + static_cast<float>(offset_);
}

double StrayLight::doubt(double x_px, double y_px) const {
  PerChannel<double> glare{};
  for (int c = 0; c < glare_.channels(); ++c) {
    glare[static_cast<std::size_t>(c)] = static_cast<double>(at(x_px, y_px, c)) - offset_;
  }
  const double visual = visual_from_channels(glare, glare_.channels());
  const double relative = share_ > 0.0 ? share_doubt_ / share_ : 0.0;
  return std::hypot(relative * visual, residual_);
}

}  // namespace fogline
