// The one pass over a file: reduction, averages in linear light, clip bits, progress; and
// that a region read alone equals its part of the survey.

#include "pixels/exact_light.h"
#include "pixels/test_files.h"

#include <fogline/pixels/open_scan.h>

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using test::TempFolder;
using test::TiffSpec;

OpenOptions power_of_two() {
  return OpenOptions{Transfer{TransferKind::power, 2.0, TransferSource::option}};
}

std::uint16_t root_code(float light) {
  return static_cast<std::uint16_t>(std::lround(std::sqrt(light) * 65535.0F));
}

TEST(Survey, TakesTheSmallestReductionThatFits) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  test::write_tiff(path, TiffSpec{});
  const auto scan = open_scan(path, {});
  for (const std::int64_t most : {1, 2, 10, 100, 777, 2866, 2867, 100000}) {
    const ScanGrid grid = scan->survey({most}, {});
    const int r = grid.reduction;
    EXPECT_EQ(grid.light.width(), (61 + r - 1) / r);
    EXPECT_EQ(grid.light.height(), (47 + r - 1) / r);
    EXPECT_LE(static_cast<std::int64_t>(grid.light.width()) * grid.light.height(), most);
    if (r > 1) {
      const int less = r - 1;
      const std::int64_t larger =
          static_cast<std::int64_t>((61 + less - 1) / less) * ((47 + less - 1) / less);
      EXPECT_GT(larger, most);
    }
  }
  EXPECT_EQ(scan->survey({61 * 47}, {}).reduction, 1);
}

TEST(Survey, AveragesLinearLightAndCountsClips) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const int bits : {8, 16}) {
    TiffSpec spec;
    spec.bits = bits;
    test::write_tiff(path, spec);
    const ScanGrid grid = open_scan(path, power_of_two())->survey({200}, {});
    const int r = grid.reduction;
    ASSERT_GT(r, 2);
    const int top = bits == 8 ? 255 : 65535;
    for (int j = 0; j < grid.light.height(); ++j) {
      for (int i = 0; i < grid.light.width(); ++i) {
        for (int c = 0; c < 3; ++c) {
          double sum = 0.0;
          int pixels = 0;
          int clipped = 0;
          for (int y = j * r; y < std::min(47, (j + 1) * r); ++y) {
            for (int x = i * r; x < std::min(61, (i + 1) * r); ++x) {
              const int code = bits == 8 ? spec.code(x, y, c) >> 8 : spec.code(x, y, c);
              sum += std::pow(static_cast<double>(code) / top, 2.0);
              ++pixels;
              clipped += code >= (bits == 8 ? 255 : 65280) ? 1 : 0;
            }
          }
          // A step of the stored root is 1/65535.
          EXPECT_NEAR(std::sqrt(grid.light.light(i, j, c)), std::sqrt(sum / pixels), 1.1e-5);
          const int bits_of_cell = grid.clipped.at(i, j);
          EXPECT_EQ((bits_of_cell >> c) & 1, clipped > 0 ? 1 : 0);
          EXPECT_EQ((bits_of_cell >> (c + 4)) & 1, 2 * clipped > pixels ? 1 : 0);
        }
      }
    }
  }
}

TEST(Survey, MostlyClippedCellsCarryTheUpperBit) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  TiffSpec spec;
  spec.code = [](int x, int y, int c) {
    return static_cast<std::uint16_t>(c == 1 && x < 20 && y < 20 ? 65535 : 30000);
  };
  test::write_tiff(path, spec);
  const ScanGrid grid = open_scan(path, {})->survey({100}, {});
  ASSERT_LT(grid.reduction, 20);
  EXPECT_EQ(grid.clipped.at(0, 0), 0x22);
  EXPECT_EQ(grid.clipped.at(grid.clipped.width() - 1, grid.clipped.height() - 1), 0);
}

// Eight, twelve or fourteen bits stretched to sixteen end below the full code.
TEST(Survey, ATopBelowTheFullCodeIsClippedToo) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const int top : {65280, 65520, 65532, 65533}) {
    TiffSpec spec;
    spec.code = [top](int x, int y, int) {
      return static_cast<std::uint16_t>(x < 20 && y < 20 ? top : 65000);
    };
    test::write_tiff(path, spec);
    const ScanGrid grid = open_scan(path, {})->survey({100}, {});
    EXPECT_EQ(grid.clipped.at(0, 0), 0x77) << top;
    EXPECT_EQ(grid.clipped.at(grid.clipped.width() - 1, grid.clipped.height() - 1), 0) << top;
  }
}

TEST(Survey, ARegionReadAloneEqualsItsPartOfTheSurvey) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const int compression : {COMPRESSION_NONE, COMPRESSION_LZW}) {
    for (const int tile : {0, 16}) {
      for (const bool separate : {false, true}) {
        TiffSpec spec;
        spec.compression = compression;
        spec.tile = tile;
        spec.separate = separate;
        test::write_tiff(path, spec);
        const auto scan = open_scan(path, {});
        const ScanGrid grid = scan->survey({300}, {});
        const int r = grid.reduction;
        const RegionPx region{3 * r, 2 * r, 61 - 3 * r, 5 * r};
        const auto light = test::exact_light(path, {}, region, r);
        ASSERT_EQ(light.width(), grid.light.width() - 3);
        ASSERT_EQ(light.height(), 5);
        for (int j = 0; j < light.height(); ++j) {
          for (int i = 0; i < light.width(); ++i) {
            for (int c = 0; c < 3; ++c) {
              ASSERT_EQ(root_code(light.at(i, j, c)), grid.light.root_codes().at(i + 3, j + 2, c));
            }
          }
        }
      }
    }
  }
}

TEST(Survey, AllOddRegionsEqualTheWholePicture) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  TiffSpec spec;
  spec.tile = 16;
  spec.compression = COMPRESSION_ADOBE_DEFLATE;
  test::write_tiff(path, spec);
  const auto whole = test::exact_light(path, {}, RegionPx{0, 0, 61, 47});
  for (int i = 0; i < 40; ++i) {
    const int x = (i * 37) % 60;
    const int y = (i * 23) % 46;
    const RegionPx region{x, y, 1 + (i * 7) % (61 - x), 1 + (i * 11) % (47 - y)};
    const auto part = test::exact_light(path, {}, region);
    for (int v = 0; v < region.height; ++v) {
      for (int u = 0; u < region.width; ++u) {
        ASSERT_EQ(part.at(u, v, 2), whole.at(x + u, y + v, 2));
      }
    }
  }
}

TEST(Survey, ThreadsChangeNothing) {
  const TempFolder folder;
  // 1,500 rows in strips of one: many parts. The twin in a single strip is read by one thread.
  TiffSpec spec;
  spec.height = 1500;
  spec.rows_per_strip = 1;
  spec.compression = COMPRESSION_LZW;
  test::write_tiff(folder.file("strips.tif"), spec);
  spec.rows_per_strip = 1500;
  test::write_tiff(folder.file("single.tif"), spec);
  const ScanGrid many = open_scan(folder.file("strips.tif"), {})->survey({7001}, {});
  const ScanGrid one = open_scan(folder.file("single.tif"), {})->survey({7001}, {});
  EXPECT_EQ(many.light.root_codes().samples(), one.light.root_codes().samples());
  EXPECT_EQ(many.clipped.samples(), one.clipped.samples());
}

TEST(Survey, TellsProgressInRisingStepsToTheEnd) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  TiffSpec spec;
  spec.height = 600;
  test::write_tiff(path, spec);
  std::vector<double> told;
  open_scan(path, {})->survey({1000000}, [&](double share) { told.push_back(share); });
  ASSERT_FALSE(told.empty());
  EXPECT_LE(told.size(), 51U);
  EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
  EXPECT_DOUBLE_EQ(told.back(), 1.0);
}

TEST(Survey, AStoppingCallbackStopsTheReading) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  TiffSpec spec;
  spec.height = 600;
  test::write_tiff(path, spec);
  const auto scan = open_scan(path, {});
  EXPECT_THROW(scan->survey({1000000}, [](double) { throw std::runtime_error("stopped"); }),
               std::runtime_error);
  EXPECT_EQ(scan->survey({1000000}, {}).reduction, 1);
}

}  // namespace
}  // namespace fogline
