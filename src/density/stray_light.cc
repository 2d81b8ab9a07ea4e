#include "density/stray_light.h"

#include "numerics/non_negative.h"
#include "numerics/robust.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Widths of the glare's Gaussians (standard deviations along x and y, mm): near, middle, far,
/// and drawn out along either axis.
constexpr std::array<std::array<double, 2>, 7> widths_mm{
    {{2.5, 2.5}, {6.0, 3.0}, {3.0, 6.0}, {12.0, 12.0}, {40.0, 12.0}, {12.0, 40.0}, {40.0, 40.0}}};
constexpr std::size_t width_count = widths_mm.size();
/// Glare is computed on cells of this size: half its narrowest width.
constexpr double cell_mm = 1.25;
constexpr int largest_side_cells = 400;
/// Light below this share of the lamp, off the film, is opaque if it stays so for so many cells
/// around: nearer to bright light the lens's own blur reaches.
constexpr double opaque_share = 0.06;
constexpr int clear_cells = 2;
/// An opaque area lies within a factor of this of the darkest light in sight.
constexpr double opaque_spread = 4.0;
/// So many opaque cells tell glare from offset.
constexpr std::size_t fewest_opaque_cells = 40;
/// Glare of unknown scanners: equal parts of these widths, near, middle and far, mm.
constexpr std::array<double, std::tuple_size_v<StrayField>> usual_widths_mm{2.5, 12.0, 40.0};
/// Below this share the glare's own shape isn't known, and the usual width stands in for it.
constexpr double least_shaped_share = 5e-4;
/// More than this is no scanner's glare.
constexpr double greatest_share = 0.05;
/// Unexplained light of opaque areas: this part of it is taken for stray light, the rest stays as
/// doubt.
constexpr double unexplained_part = 0.5;
/// The light that glares isn't seen but for its own glare: so many rounds of taking it off.
constexpr int passes = 3;
/// The far widths begin here.
constexpr std::size_t first_far_width = 3;
/// Doubt of glare told from opaque areas (they don't lie where the film lies, and near glare hides
/// in their rims): a share of it, and a part of the bare light.
constexpr double told_doubt_share = 0.25;
constexpr double told_doubt = 0.003;

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

/// Marks the cells on which film lies, a margin round it included.
cv::Mat1b film_cells(const std::vector<FilmStrip>& strips,
                     const std::vector<std::vector<PointPx>>& outlines, cv::Size size,
                     double cell_px) {
  cv::Mat1b mask(size, std::uint8_t{0});
  const auto cell_of = [&](PointPx at) {
    return cv::Point(static_cast<int>(std::floor(at.x / cell_px)),
                     static_cast<int>(std::floor(at.y / cell_px)));
  };
  for (const std::vector<PointPx>& film : outlines) {
    std::vector<cv::Point> outline;
    for (const PointPx& corner : film) {
      outline.push_back(cell_of(corner));
    }
    cv::fillPoly(mask, std::vector<std::vector<cv::Point>>{outline}, cv::Scalar(255));
  }
  for (const FilmStrip& strip : strips) {
    constexpr double margin_mm = 1.0;
    constexpr int sides = 24;
    std::vector<cv::Point> outline;
    const auto add = [&](double along, double across) {
      outline.push_back(cell_of(strip.map.scan_from_film({along, across})));
    };
    const double begin = strip.along_begin_mm - margin_mm;
    const double length = strip.along_end_mm - strip.along_begin_mm + 2.0 * margin_mm;
    for (int i = 0; i <= sides; ++i) {
      add(begin + length * i / sides, strip.across_begin_mm - margin_mm);
    }
    for (int i = sides; i >= 0; --i) {
      add(begin + length * i / sides, strip.across_end_mm + margin_mm);
    }
    cv::fillPoly(mask, std::vector<std::vector<cv::Point>>{outline}, cv::Scalar(255));
  }
  return mask;
}

/// Cells that are opaque all around: off the film, much darker than any film, and even.
std::vector<cv::Point> opaque_cells(const cv::Mat1f& visual, const cv::Mat1b& film) {
  double lamp = 0.0;
  cv::minMaxLoc(visual, nullptr, &lamp);
  cv::Mat1f around;
  cv::dilate(visual, around,
             cv::getStructuringElement(cv::MORPH_RECT, {2 * clear_cells + 1, 2 * clear_cells + 1}));
  std::vector<double> dark;
  const auto is_dark = [&](int y, int x) {
    return film(y, x) == 0 && static_cast<double>(around(y, x)) < opaque_share * lamp;
  };
  for (int y = 0; y < around.rows; ++y) {
    for (int x = 0; x < around.cols; ++x) {
      if (is_dark(y, x)) {
        dark.push_back(static_cast<double>(around(y, x)));
      }
    }
  }
  std::vector<cv::Point> cells;
  if (dark.size() < fewest_opaque_cells) {
    return cells;
  }
  constexpr double darkest_share = 0.2;
  const double limit = opaque_spread * percentile(dark, darkest_share);
  for (int y = 0; y < around.rows; ++y) {
    for (int x = 0; x < around.cols; ++x) {
      if (is_dark(y, x) && static_cast<double>(around(y, x)) < limit) {
        cells.emplace_back(x, y);
      }
    }
  }
  return cells;
}

/// Weights of the glare's widths from `first` on, and the black offset behind them. `lit` is the
/// light that glares: what is seen less its own stray light.
LinearFit fit_glare(const cv::Mat1f& visual, const cv::Mat& lit,
                    const std::vector<cv::Point>& cells, double cells_per_mm, std::size_t first) {
  std::vector<cv::Mat1f> blurs;
  blurs.reserve(width_count);
  for (std::size_t k = first; k < width_count; ++k) {
    blurs.emplace_back(
        blurred(lit, widths_mm[k][0] * cells_per_mm, widths_mm[k][1] * cells_per_mm));
  }
  LinearProblem problem;
  problem.coefficients = static_cast<int>(blurs.size()) + 1;
  std::vector<double> row(blurs.size() + 1, 1.0);
  for (const cv::Point& cell : cells) {
    for (std::size_t k = 0; k < blurs.size(); ++k) {
      row[k] = static_cast<double>(blurs[k](cell));
    }
    problem.add(row, static_cast<double>(visual(cell)));
  }
  return fit_non_negative(problem);
}

/// Glare as told by opaque areas.
struct GlareFit {
  std::array<double, width_count> weights{};
  double share = 0.0;
  double offset = 0.0;
  double residual = 0.0;
};

/// Glare of a lit field (one or three channels).
cv::Mat glare_of(const cv::Mat& lit, const GlareFit& fit, double cells_per_mm) {
  cv::Mat glare = cv::Mat::zeros(lit.size(), lit.type());
  for (std::size_t k = 0; k < width_count; ++k) {
    if (fit.weights[k] > 0.0) {
      glare += fit.weights[k] *
               blurred(lit, widths_mm[k][0] * cells_per_mm, widths_mm[k][1] * cells_per_mm);
    }
  }
  return glare;
}

/// What is seen less glare (of the field `lit`) and offset, never below zero.
cv::Mat without_stray(const cv::Mat& seen, const cv::Mat& lit, const GlareFit& fit,
                      double cells_per_mm) {
  cv::Mat less = seen - glare_of(lit, fit, cells_per_mm);
  less -= cv::Scalar::all(fit.offset);
  return cv::max(less, 0.0);
}

/// Near glare is told only by the rims of opaque areas, where the edge's own blur may pass for it:
/// an implausible share is asked again without the near widths. Nothing where that is implausible
/// too.
std::optional<GlareFit> plausible_glare(const cv::Mat1f& visual,
                                        const std::vector<cv::Point>& cells, double cells_per_mm) {
  for (const std::size_t first : {std::size_t{0}, first_far_width}) {
    GlareFit glare;
    cv::Mat lit = visual;
    bool solved = true;
    for (int pass = 0; pass < passes && solved; ++pass) {
      const LinearFit fit = fit_glare(visual, lit, cells, cells_per_mm, first);
      solved = fit.solved;
      glare = GlareFit{};
      for (std::size_t k = first; k < width_count && solved; ++k) {
        glare.weights[k] = fit.coefficients[k - first];
        glare.share += glare.weights[k];
      }
      glare.offset = solved ? fit.coefficients.back() : 0.0;
      glare.residual = fit.residual_sd;
      lit = without_stray(visual, lit, glare, cells_per_mm);
    }
    if (solved && glare.share <= greatest_share) {
      return glare;
    }
  }
  return std::nullopt;
}

/// The glare's light in a scan (of share `fit.share`), the glare's own light taken off the light
/// that glares.
cv::Mat settled_glare(const cv::Mat& light, const GlareFit& fit, double cells_per_mm) {
  cv::Mat glare;
  cv::Mat lit = light;
  for (int pass = 0; pass < passes; ++pass) {
    glare = glare_of(lit, fit, cells_per_mm);
    lit = without_stray(light, lit, fit, cells_per_mm);
  }
  return glare;
}

Raster<float> raster_of(const cv::Mat& cells) {
  Raster<float> raster(cells.cols, cells.rows, cells.channels());
  const std::size_t samples = cells.total() * static_cast<std::size_t>(cells.channels());
  std::copy(cells.ptr<float>(0), cells.ptr<float>(0) + samples, raster.samples().begin());
  return raster;
}

}  // namespace

StrayLight StrayLight::estimated(const ScanGrid& grid, const std::vector<FilmStrip>& strips,
                                 double pixels_per_mm, const StrayKnowledge& known) {
  StrayLight stray;
  const double grid_px_per_mm = pixels_per_mm / grid.reduction;
  const double longest = std::max(grid.light.width(), grid.light.height());
  const double cell_grid_px = std::max(cell_mm * grid_px_per_mm, longest / largest_side_cells);
  const double cells_per_mm = grid_px_per_mm / cell_grid_px;
  stray.cell_px_ = cell_grid_px * grid.reduction;
  const cv::Mat light = cell_light(grid, cell_grid_px);
  const cv::Mat1f visual = visual_of(light);
  const std::vector<cv::Point> cells =
      opaque_cells(visual, film_cells(strips, known.film_outlines, visual.size(), stray.cell_px_));
  cv::Mat field = cv::Mat::zeros(light.size(), light.type());
  for (std::size_t k = 0; k < usual_widths_mm.size(); ++k) {
    const double sd = usual_widths_mm[k] * cells_per_mm;
    const cv::Mat of_width = blurred(light, sd, sd);
    stray.fields_[k] = raster_of(of_width);
    field += of_width / static_cast<double>(usual_widths_mm.size());
  }
  cv::Mat glare = known.share * field;
  stray.share_ = known.share;
  stray.share_doubt_ = known.share_doubt;
  if (cells.size() >= fewest_opaque_cells) {
    std::vector<double> dark;
    dark.reserve(cells.size());
    for (const cv::Point& cell : cells) {
      dark.push_back(static_cast<double>(visual(cell)));
    }
    stray.measured_ = true;
    stray.opaque_light_ = median(dark);
    if (const std::optional<GlareFit> fit = plausible_glare(visual, cells, cells_per_mm)) {
      const double told_share_doubt = std::hypot(told_doubt_share * fit->share, told_doubt);
      stray.residual_ = fit->residual;
      stray.offset_ = fit->offset;
      glare = settled_glare(light, *fit, cells_per_mm);
      if (fit->share > least_shaped_share) {
        field = glare / fit->share;
        stray.fields_.fill(raster_of(field));
      }
      if (known.calibrated && known.share_doubt < told_share_doubt) {
        glare = known.share * field;
      } else {
        stray.share_ = fit->share;
        stray.share_doubt_ = told_share_doubt;
      }
    } else {
      // Something opaque is in sight, but no plausible glare explains its light (a holder lit from
      // the side, a display curve that crushes black): its median is the most that stray light is.
      const double level = unexplained_part * *stray.opaque_light_;
      double lamp = 0.0;
      cv::minMaxLoc(visual, nullptr, &lamp);
      stray.share_ = level / lamp;
      stray.share_doubt_ = stray.share_;
      glare.setTo(cv::Scalar::all(level));
    }
  }
  stray.glare_ = raster_of(glare);
  return stray;
}

float StrayLight::interpolated(const Raster<float>& cells, double x_px, double y_px,
                               int channel) const {
  const double x = std::clamp(x_px / cell_px_ - 0.5, 0.0, cells.width() - 1.0);
  const double y = std::clamp(y_px / cell_px_ - 0.5, 0.0, cells.height() - 1.0);
  const int x0 = static_cast<int>(x);
  const int y0 = static_cast<int>(y);
  const int x1 = std::min(x0 + 1, cells.width() - 1);
  const int y1 = std::min(y0 + 1, cells.height() - 1);
  const auto fx = static_cast<float>(x - x0);
  const auto fy = static_cast<float>(y - y0);
  const float top = cells.at(x0, y0, channel) * (1.0F - fx) + cells.at(x1, y0, channel) * fx;
  const float low = cells.at(x0, y1, channel) * (1.0F - fx) + cells.at(x1, y1, channel) * fx;
  return top * (1.0F - fy) + low * fy;
}

float StrayLight::at(double x_px, double y_px, int channel) const {
  return interpolated(glare_, x_px, y_px, channel) + static_cast<float>(offset_);
}

StrayField StrayLight::field(double x_px, double y_px, int channel, double bare_light) const {
  StrayField field{};
  for (std::size_t k = 0; k < field.size(); ++k) {
    field[k] = static_cast<double>(interpolated(fields_[k], x_px, y_px, channel)) / bare_light;
  }
  return field;
}

StrayField StrayLight::visual_field(double x_px, double y_px, double bare_light) const {
  StrayField visual{};
  for (std::size_t k = 0; k < visual.size(); ++k) {
    PerChannel<double> channels{};
    for (int c = 0; c < glare_.channels(); ++c) {
      channels[static_cast<std::size_t>(c)] = field(x_px, y_px, c, bare_light)[k];
    }
    visual[k] = visual_from_channels(channels, glare_.channels());
  }
  return visual;
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
