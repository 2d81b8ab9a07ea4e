#include "density/stray_light.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr double pixels_per_mm = 4.0;
constexpr double bare_light = 0.8;

Raster<double> blurred_along_x(const Raster<double>& light, double sd_px) {
  const int reach = static_cast<int>(4.0 * sd_px);
  std::vector<double> kernel;
  double sum = 0.0;
  for (int i = -reach; i <= reach; ++i) {
    kernel.push_back(std::exp(-0.5 * (i / sd_px) * (i / sd_px)));
    sum += kernel.back();
  }
  Raster<double> result(light.width(), light.height());
  for (int y = 0; y < light.height(); ++y) {
    for (int x = 0; x < light.width(); ++x) {
      double value = 0.0;
      for (int i = -reach; i <= reach; ++i) {
        value += kernel[static_cast<std::size_t>(i + reach)] *
                 light.at(std::clamp(x + i, 0, light.width() - 1), y);
      }
      result.at(x, y) = value / sum;
    }
  }
  return result;
}

Raster<double> turned(const Raster<double>& light) {
  Raster<double> result(light.height(), light.width());
  for (int y = 0; y < light.height(); ++y) {
    for (int x = 0; x < light.width(); ++x) {
      result.at(y, x) = light.at(x, y);
    }
  }
  return result;
}

/// A bright field with an opaque corner and a row of small dense spots far from it.
struct Field {
  Raster<double> transmittance{440, 280, 1, 1.0};
  /// The same under a blur of 12 mm.
  Raster<double> blur;
  std::vector<double> densities;
  std::vector<PointPx> spots;
  FilmStrip strip;
};

Field field_of(const std::vector<double>& densities) {
  Field field;
  field.densities = densities;
  for (int y = 180; y < 280; ++y) {
    for (int x = 0; x < 100; ++x) {
      field.transmittance.at(x, y) = 1e-5;
    }
  }
  // Spots of 0.75 mm take nearly nothing from the light around them.
  for (std::size_t i = 0; i < densities.size(); ++i) {
    const int x = 290 + 30 * static_cast<int>(i);
    for (int k = 0; k < 9; ++k) {
      field.transmittance.at(x - 1 + k % 3, 99 + k / 3) = std::pow(10.0, -densities[i]);
    }
    field.spots.push_back({x + 0.5, 100.5});
  }
  field.strip.map = FilmMap::straight({280.0, 100.0}, 0.0, pixels_per_mm);
  field.strip.along_end_mm = 36.0;
  field.strip.across_begin_mm = -3.0;
  field.strip.across_end_mm = 3.0;
  constexpr double sd_px = 12.0 * pixels_per_mm;
  field.blur = turned(blurred_along_x(turned(blurred_along_x(field.transmittance, sd_px)), sd_px));
  return field;
}

/// All densities of the table below; blurred once.
const Field& table_field() {
  static const Field field = field_of({1.0, 1.5, 2.0, 2.5, 3.0});
  return field;
}

/// What a scanner with glare sees: transmittance and a share of its broad blur, and black offset.
Raster<double> seen_with(const Field& field, double share, double offset) {
  Raster<double> seen(field.transmittance.width(), field.transmittance.height());
  for (std::size_t i = 0; i < seen.samples().size(); ++i) {
    seen.samples()[i] =
        bare_light * (field.transmittance.samples()[i] + share * field.blur.samples()[i] + offset);
  }
  return seen;
}

ScanGrid grid_of(const Raster<double>& seen) {
  ScanGrid grid;
  grid.light = LightRaster(seen.width(), seen.height(), 1);
  grid.clipped = Raster<std::uint8_t>(seen.width(), seen.height());
  for (int y = 0; y < seen.height(); ++y) {
    for (int x = 0; x < seen.width(); ++x) {
      grid.light.set_light(x, y, 0, static_cast<float>(seen.at(x, y)));
    }
  }
  return grid;
}

double seen_density(const Raster<double>& seen, PointPx spot) {
  return std::log10(seen.at(280, 60) / seen.at(static_cast<int>(spot.x), static_cast<int>(spot.y)));
}

double corrected_density(const Raster<double>& seen, const StrayLight& stray, PointPx spot) {
  const double bare = seen.at(280, 60) - static_cast<double>(stray.at(280.5, 60.5, 0));
  const double dark = seen.at(static_cast<int>(spot.x), static_cast<int>(spot.y)) -
                      static_cast<double>(stray.at(spot.x, spot.y, 0));
  return std::log10(bare / dark);
}

struct FlareRow {
  double share;
  double density;
  double seen;
};

// D' = -log10((10^-D + f) / (1 + f)): the density that is left of D under an even flare f
// (arithmetic).
constexpr FlareRow flare_table[] = {{0.005, 1.0, 0.981}, {0.005, 1.5, 1.438}, {0.005, 2.0, 1.826},
                                    {0.005, 2.5, 2.090}, {0.005, 3.0, 2.224}, {0.001, 2.0, 1.959},
                                    {0.001, 3.0, 2.699}, {0.02, 1.0, 0.929},  {0.02, 2.0, 1.531}};

void expect_flare_taken_away(double share, double offset) {
  const double told = share + offset;
  const Field& field = table_field();
  const Raster<double> seen = seen_with(field, share, offset);
  const StrayLight stray = StrayLight::estimated(grid_of(seen), {field.strip}, pixels_per_mm);
  ASSERT_TRUE(stray.measured());
  for (const FlareRow& row : flare_table) {
    const auto at = std::find(field.densities.begin(), field.densities.end(), row.density);
    if (row.share != told || at == field.densities.end()) {
      continue;
    }
    const PointPx spot = field.spots[static_cast<std::size_t>(at - field.densities.begin())];
    // The table first: it is the formula rounded, and the drawn scan shows what the formula says.
    const double formula = std::log10((1.0 + told) / (std::pow(10.0, -row.density) + told));
    EXPECT_NEAR(formula, row.seen, 0.001) << told << " " << row.density;
    EXPECT_NEAR(seen_density(seen, spot), formula, 0.001) << told << " " << row.density;
    if (row.density <= 2.0) {
      EXPECT_NEAR(corrected_density(seen, stray, spot), row.density, 0.002)
          << told << " " << row.density;
    }
  }
}

TEST(StrayLight, TakesABlackOffsetAway) {
  for (const double offset : {0.001, 0.005, 0.02}) {
    expect_flare_taken_away(0.0, offset);
  }
}

TEST(StrayLight, TakesGlareAway) {
  for (const double share : {0.001, 0.005, 0.02}) {
    expect_flare_taken_away(share, 0.0);
  }
}

// The truth lies within the doubt (95 %) that is told with the share.
TEST(StrayLight, TellsItsShareWithinItsDoubt) {
  for (const double share : {0.002, 0.01, 0.03}) {
    const Field& field = table_field();
    const StrayLight stray =
        StrayLight::estimated(grid_of(seen_with(field, share, 0.0)), {field.strip}, 4.0);
    EXPECT_NEAR(stray.share(), share, 1.96 * stray.share_doubt());
    EXPECT_GT(stray.doubt(300.0, 100.0), 0.0);
    EXPECT_TRUE(stray.opaque_light().has_value());
  }
}

// Where nothing opaque is in sight a usual share is taken, most of which stays as doubt.
TEST(StrayLight, WithoutOpaqueAreasTakesTheUsualShare) {
  Field field = table_field();
  for (int y = 180; y < 280; ++y) {
    for (int x = 0; x < 100; ++x) {
      field.transmittance.at(x, y) = 1.0;
    }
  }
  const StrayLight stray =
      StrayLight::estimated(grid_of(seen_with(field, 0.0, 0.0)), {field.strip}, 4.0);
  EXPECT_FALSE(stray.measured());
  EXPECT_FALSE(stray.opaque_light().has_value());
  EXPECT_NEAR(stray.at(200.0, 100.0, 0), stray.share() * bare_light, 0.001);
  EXPECT_GT(stray.share_doubt(), 0.5 * stray.share());
  EXPECT_LT(stray.share(), 0.05);
}

// Dense film is not opaque surround, however dense.
TEST(StrayLight, FilmIsNeverTakenForOpaque) {
  Field field = table_field();
  field.strip.map = FilmMap::straight({0.0, 230.0}, 0.0, pixels_per_mm);
  field.strip.along_end_mm = 30.0;
  field.strip.across_begin_mm = -16.0;
  field.strip.across_end_mm = 16.0;
  const StrayLight stray =
      StrayLight::estimated(grid_of(seen_with(field, 0.01, 0.0)), {field.strip}, 4.0);
  EXPECT_FALSE(stray.measured());
}

}  // namespace
}  // namespace fogline
