// A tone curve can be changed without reading the file again.

#include "pixels/counting_source.h"
#include "pixels/test_files.h"

#include <fogline/pixels/open_scan.h>

#include <algorithm>
#include <numeric>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using test::CountedScan;
using test::TempFolder;
using test::TiffSpec;

const Transfer cube{TransferKind::power, 3.0, TransferSource::option};
const Transfer display{TransferKind::srgb, {}, TransferSource::option};
constexpr std::int64_t few_pixels = 300;

void expect_same(const ScanGrid& one, const ScanGrid& other) {
  EXPECT_EQ(one.reduction, other.reduction);
  EXPECT_EQ(one.light.root_codes().samples(), other.light.root_codes().samples());
  EXPECT_EQ(one.clipped.samples(), other.clipped.samples());
}

ScanGrid read_afresh(const std::string& path, const Transfer& transfer, std::int64_t most_pixels) {
  const auto scan = open_scan(path, {});
  scan->set_transfer(transfer);
  return scan->survey({most_pixels}, {});
}

/// Pictures of each type of sample, each way of lying in the file.
std::vector<TiffSpec> layouts() {
  std::vector<TiffSpec> specs;
  for (const int bits : {8, 16, 32}) {
    for (const int tile : {0, 16}) {
      for (const bool separate : {false, true}) {
        for (const int extra : {0, 1}) {
          TiffSpec spec;
          spec.bits = bits;
          spec.tile = tile;
          spec.separate = separate;
          spec.extra = extra;
          spec.compression = COMPRESSION_LZW;
          specs.push_back(spec);
        }
      }
    }
  }
  return specs;
}

TEST(KeptCodes, GiveTheGridOfAnyCurveAndSizeWithoutReadingAgain) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const TiffSpec& spec : layouts()) {
    test::write_tiff(path, spec);
    CountedScan scan(path);
    scan.source().survey({few_pixels, {}, true}, {});
    for (const Transfer& transfer : {cube, display}) {
      scan.source().set_transfer(transfer);
      expect_same(scan.source().survey({few_pixels, {}, true}, {}),
                  read_afresh(path, transfer, few_pixels));
    }
    expect_same(scan.source().survey({2 * few_pixels}, {}),
                read_afresh(path, display, 2 * few_pixels));
    EXPECT_DOUBLE_EQ(scan.passes(), 1.0);
  }
}

TEST(KeptGrids, ComeFromThePassThatForesawThem) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  for (const TiffSpec& spec : layouts()) {
    test::write_tiff(path, spec);
    CountedScan scan(path);
    expect_same(scan.source().survey({few_pixels, {cube, display}}, {}),
                open_scan(path, {})->survey({few_pixels}, {}));
    scan.source().set_transfer(display);
    expect_same(scan.source().survey({few_pixels}, {}), read_afresh(path, display, few_pixels));
    EXPECT_DOUBLE_EQ(scan.passes(), 1.0);
    // What was foreseen and not asked is given up.
    scan.source().set_transfer(cube);
    expect_same(scan.source().survey({few_pixels}, {}), read_afresh(path, cube, few_pixels));
    EXPECT_DOUBLE_EQ(scan.passes(), 2.0);
  }
}

TEST(KeptGrids, AreOfTheSizeForeseen) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  test::write_tiff(path, TiffSpec{});
  CountedScan scan(path);
  scan.source().survey({few_pixels, {cube}}, {});
  scan.source().set_transfer(cube);
  expect_same(scan.source().survey({4 * few_pixels}, {}), read_afresh(path, cube, 4 * few_pixels));
  EXPECT_DOUBLE_EQ(scan.passes(), 2.0);
}

TEST(KeptGrids, RefuseCurvesThatCannotBe) {
  const TempFolder folder;
  const std::string path = folder.file("scan.tif");
  test::write_tiff(path, TiffSpec{});
  const auto scan = open_scan(path, {});
  const Transfer no_power{TransferKind::power, {}, TransferSource::option};
  EXPECT_THROW(scan->survey({few_pixels, {no_power}}, {}), std::invalid_argument);
}

/// A picture without a file: code 257 (x mod 199) + y mod 50. An odd period: every n-th column has
/// all of its codes.
class Stripes final : public BlockSource {
 public:
  Stripes(int width, int height) : width_(width), height_(height) {}

  static std::uint16_t code(int x, int y) {
    return static_cast<std::uint16_t>(257 * (x % 199) + y % 50);
  }
  void read_blocks(const RegionPx& region, const BlockSink& sink) override {
    std::vector<std::uint16_t> row(static_cast<std::size_t>(region.width) * 3);
    for (int y = region.y; y < region.y + region.height; ++y) {
      for (int x = 0; x < region.width; ++x) {
        std::fill_n(row.begin() + 3 * static_cast<std::ptrdiff_t>(x), 3, code(region.x + x, y));
      }
      sink({RegionPx{region.x, y, region.width, 1}, SampleType::u16, 0, 3, row.data(), 3, 0});
    }
  }
  [[nodiscard]] int rows_together() const override { return 1; }
  [[nodiscard]] int columns_together() const override { return width_; }
  [[nodiscard]] bool random_access() const override { return true; }
  [[nodiscard]] std::size_t working_bytes() const override { return 0; }
  [[nodiscard]] std::unique_ptr<BlockSource> fork() const override {
    return std::make_unique<Stripes>(width_, height_);
  }

 private:
  int width_;
  int height_;
};

ScanInfo info_of(int width, int height) {
  ScanInfo info;
  info.width_px = width;
  info.height_px = height;
  info.bits = 16;
  info.channels = 3;
  return info;
}

TEST(KeptCodes, AreThinnedToTheirRoom) {
  Stripes stripes(301, 203);
  constexpr std::size_t bytes = 301UL * 203UL * 6UL;
  for (const auto& [room, step] :
       {std::pair(bytes, 1), std::pair(bytes - 1, 2), std::pair(bytes / 9, 4)}) {
    KeptCodes kept(info_of(301, 203), SampleType::u16, room);
    ASSERT_EQ(kept.step(), step);
    EXPECT_LE(kept.bytes(), room);
    // In blocks whose corners lie anywhere between kept pixels.
    for (const int x : {0, 101, 250}) {
      for (const int y : {0, 63}) {
        stripes.read_blocks({x, y,
                             (x == 250   ? 301
                              : x == 101 ? 250
                                         : 101) -
                                 x,
                             (y > 0 ? 203 : 63) - y},
                            [&](const Block& block) { kept.keep(block); });
      }
    }
    kept.read_blocks({0, 0, kept.width(), kept.height()}, [&](const Block& block) {
      const auto* codes = static_cast<const std::uint16_t*>(block.samples);
      for (int y = 0; y < kept.height(); ++y) {
        for (int x = 0; x < kept.width(); ++x) {
          ASSERT_EQ(codes[y * block.row_stride + x * block.pixel_stride + 1],
                    Stripes::code(x * step, y * step));
        }
      }
    });
  }
}

TEST(KeptCodes, ScansTooLargeAreLearnedFromThinnedAndReadTwice) {
  constexpr int width = 6000;
  constexpr int height = 3600;
  OpenedPicture picture;
  picture.info = info_of(width, height);
  picture.sample_type = SampleType::u16;
  picture.top_code = 65535;
  picture.blocks = std::make_unique<Stripes>(width, height);
  ASSERT_GT(static_cast<std::size_t>(width) * height * 6, most_kept_bytes);
  CountedScan scan(std::move(picture));
  const auto mean_light = [](const ScanGrid& grid) {
    const auto& roots = grid.light.root_codes().samples();
    const double squares = std::accumulate(
        roots.begin(), roots.end(), 0.0,
        [](double sum, std::uint16_t root) { return sum + static_cast<double>(root) * root; });
    return squares / static_cast<double>(roots.size());
  };
  scan.source().survey({40'000, {}, true}, {});
  scan.source().set_transfer(cube);
  const ScanGrid thinned = scan.source().survey({40'000, {}, true}, {});
  EXPECT_DOUBLE_EQ(scan.passes(), 1.0);
  const ScanGrid whole = scan.source().survey({40'000}, {});
  EXPECT_DOUBLE_EQ(scan.passes(), 2.0);
  EXPECT_NEAR(mean_light(thinned), mean_light(whole), 0.002 * mean_light(whole));
  EXPECT_LE(thinned.light.width() * thinned.light.height(), 40'000);
}

}  // namespace
}  // namespace fogline
