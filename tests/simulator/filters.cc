#include "simulator/filters.h"

#include "simulator/random.h"

#include <array>
#include <cmath>

namespace filmsim {
namespace {

constexpr double kIgnoredSigmaPx = 0.2;

std::vector<float> gaussian_kernel(double sigma) {
  const int radius = static_cast<int>(std::ceil(3.5 * sigma));
  std::vector<float> kernel(static_cast<std::size_t>(2 * radius + 1));
  double sum = 0.0;
  for (int i = -radius; i <= radius; ++i) {
    // Integrated over the pixel, so that narrow kernels keep their variance.
    const double scale = sigma * std::sqrt(2.0);
    const double weight = 0.5 * (std::erf((i + 0.5) / scale) - std::erf((i - 0.5) / scale));
    kernel[static_cast<std::size_t>(i + radius)] = static_cast<float>(weight);
    sum += weight;
  }
  for (float& weight : kernel) weight = static_cast<float>(weight / sum);
  return kernel;
}

void blur_rows(Plane& plane, const std::vector<float>& kernel) {
  const int radius = static_cast<int>(kernel.size() / 2);
  std::vector<float> padded(static_cast<std::size_t>(plane.width + 2 * radius));
  for (int y = 0; y < plane.height; ++y) {
    float* row = plane.row(y);
    std::fill_n(padded.begin(), radius, row[0]);
    std::copy_n(row, plane.width, padded.begin() + radius);
    std::fill_n(padded.begin() + radius + plane.width, radius, row[plane.width - 1]);
    std::fill_n(row, plane.width, 0.0F);
    for (std::size_t k = 0; k < kernel.size(); ++k) {
      const float weight = kernel[k];
      const float* source = padded.data() + k;
      for (int x = 0; x < plane.width; ++x) row[x] += weight * source[x];
    }
  }
}

// Down the columns in blocks of whole rows: a ring of the rows still needed keeps it in cache.
void blur_columns(Plane& plane, const std::vector<float>& kernel) {
  const int radius = static_cast<int>(kernel.size() / 2);
  const Plane source = plane;
  for (int y = 0; y < plane.height; ++y) {
    float* row = plane.row(y);
    std::fill_n(row, plane.width, 0.0F);
    for (int k = -radius; k <= radius; ++k) {
      const float weight = kernel[static_cast<std::size_t>(k + radius)];
      const float* from = source.row(std::clamp(y + k, 0, plane.height - 1));
      for (int x = 0; x < plane.width; ++x) row[x] += weight * from[x];
    }
  }
}

void box_line(std::vector<double>& line, int radius) {
  if (radius == 0) return;
  const int n = static_cast<int>(line.size());
  const std::vector<double> from = line;
  const auto at = [&](int i) { return from[static_cast<std::size_t>(std::clamp(i, 0, n - 1))]; };
  double sum = 0.0;
  for (int i = -radius; i <= radius; ++i) sum += at(i);
  for (int i = 0; i < n; ++i) {
    line[static_cast<std::size_t>(i)] = sum / (2 * radius + 1);
    sum += at(i + radius + 1) - at(i - radius);
  }
}

constexpr int kPasses = 3;

// Radii of the boxes whose variances, (width^2 - 1) / 12 each, add up best to sigma^2: some of one
// size, the rest one larger.
std::array<int, kPasses> box_radii(double sigma) {
  const auto variance = [](int radius) { return radius * (radius + 1) / 3.0; };
  const int small = static_cast<int>((std::sqrt(1.0 + 4.0 * sigma * sigma) - 1.0) / 2.0);
  const double missing = sigma * sigma - kPasses * variance(small);
  const auto larger = std::lround(missing / (variance(small + 1) - variance(small)));
  std::array<int, kPasses> radii{};
  for (int pass = 0; pass < kPasses; ++pass) {
    radii[static_cast<std::size_t>(pass)] = small + (pass < larger ? 1 : 0);
  }
  return radii;
}

}  // namespace

void gaussian_blur(Plane& plane, double sigma_x_px, double sigma_y_px) {
  if (sigma_x_px > kIgnoredSigmaPx) blur_rows(plane, gaussian_kernel(sigma_x_px));
  if (sigma_y_px > kIgnoredSigmaPx) blur_columns(plane, gaussian_kernel(sigma_y_px));
}

void wide_blur(Plane& plane, double sigma_x_px, double sigma_y_px) {
  const std::array<int, kPasses> radii_x = box_radii(sigma_x_px);
  const std::array<int, kPasses> radii_y = box_radii(sigma_y_px);
  std::vector<double> line;
  for (int y = 0; y < plane.height; ++y) {
    line.assign(plane.row(y), plane.row(y) + plane.width);
    for (const int radius : radii_x) box_line(line, radius);
    for (int x = 0; x < plane.width; ++x) {
      plane.at(x, y) = static_cast<float>(line[static_cast<std::size_t>(x)]);
    }
  }
  line.resize(static_cast<std::size_t>(plane.height));
  for (int x = 0; x < plane.width; ++x) {
    for (int y = 0; y < plane.height; ++y) line[static_cast<std::size_t>(y)] = plane.at(x, y);
    for (const int radius : radii_y) box_line(line, radius);
    for (int y = 0; y < plane.height; ++y) {
      plane.at(x, y) = static_cast<float>(line[static_cast<std::size_t>(y)]);
    }
  }
}

Plane correlated_noise(int width, int height, double sigma_px, std::uint64_t seed) {
  Plane noise(width, height);
  Random random(seed);
  for (float& value : noise.values) value = random.quick_normal();
  gaussian_blur(noise, sigma_px, sigma_px);
  return noise;
}

}  // namespace filmsim
