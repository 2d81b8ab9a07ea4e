#include "film/strips/film_windows.h"

#include "film/drawn_finding.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

namespace fogline {
namespace {

constexpr int width = 400;
constexpr int height = 300;
constexpr float holder = 3.0F;
constexpr float film = 0.4F;

/// Outlines are taken through the middles of the outermost pixels: a pixel is lost each way.
constexpr double outline_px = 1.5;

/// Paints a rectangle that lies askew, by its middle.
void paint_askew(FindingImage& image, PointPx middle, double length, double across, double turn_deg,
                 float level) {
  const double turn = turn_deg * std::numbers::pi / 180.0;
  for (int y = 0; y < image.log_light.rows; ++y) {
    for (int x = 0; x < image.log_light.cols; ++x) {
      const double dx = x + 0.5 - middle.x;
      const double dy = y + 0.5 - middle.y;
      const double s = dx * std::cos(turn) + dy * std::sin(turn);
      const double t = -dx * std::sin(turn) + dy * std::cos(turn);
      if (std::abs(s) < 0.5 * length && std::abs(t) < 0.5 * across) {
        image.log_light(y, x) = level;
      }
    }
  }
}

void expect_window(const FilmWindow& window, PointPx middle, double length, double across) {
  EXPECT_NEAR(window.x, middle.x, 1.0);
  EXPECT_NEAR(window.y, middle.y, 1.0);
  EXPECT_NEAR(window.length_px, length, outline_px);
  EXPECT_NEAR(window.width_px, across, outline_px);
}

TEST(FilmWindows, AHoldersWindow) {
  for (const double turn : {-2.0, 0.0, 2.0, 88.0, 90.0}) {
    FindingImage image = drawn::even_finding(width, height, holder);
    paint_askew(image, {200.0, 150.0}, 210.0, 80.0, turn, film);
    const std::vector<FilmWindow> windows = film_windows(image);
    SCOPED_TRACE(turn);
    ASSERT_EQ(windows.size(), 1U);
    expect_window(windows[0], {200.0, 150.0}, 210.0, 80.0);
    EXPECT_NEAR(windows[0].direction_deg, turn, 0.5);
    EXPECT_EQ(windows[0].surround, Surround::opaque);
  }
}

TEST(FilmWindows, APieceOnBareLight) {
  for (const double density : {0.06, 0.4, 1.5}) {
    FindingImage image = drawn::even_finding(width, height, 0.0F);
    paint_askew(image, {180.0, 140.0}, 200.0, 90.0, 1.0, static_cast<float>(density));
    const std::vector<FilmWindow> windows = film_windows(image);
    SCOPED_TRACE(density);
    ASSERT_EQ(windows.size(), 1U);
    expect_window(windows[0], {180.0, 140.0}, 200.0, 90.0);
    EXPECT_NEAR(windows[0].direction_deg, 1.0, 0.5);
    EXPECT_EQ(windows[0].surround, Surround::bare_light);
  }
}

// A glass whose lamp falls off by 0.15 towards one corner: more than clear film absorbs.
TEST(FilmWindows, TheLampsCourseIsNoFilm) {
  const auto glass = [](bool with_film) {
    FindingImage image = drawn::even_finding(width, height, 0.0F);
    if (with_film) {
      drawn::paint(image, {100, 100, 200, 90}, 0.1F);
    }
    for (int y = 0; y < height; ++y) {
      for (int x = 0; x < width; ++x) {
        image.log_light(y, x) += 0.15F * static_cast<float>(x * y) / (width * height);
      }
    }
    return film_windows(image);
  };
  EXPECT_TRUE(glass(false).empty());
  ASSERT_EQ(glass(true).size(), 1U);
  expect_window(glass(true)[0], {200.0, 145.0}, 200.0, 90.0);
}

TEST(FilmWindows, FilmThatFillsTheScanIsOneWindow) {
  const std::vector<FilmWindow> windows = film_windows(drawn::even_finding(width, height, film));
  ASSERT_EQ(windows.size(), 1U);
  EXPECT_EQ(windows[0].surround, Surround::image_border);
  EXPECT_EQ(windows[0].x, 200.0);
  EXPECT_EQ(windows[0].y, 150.0);
  EXPECT_EQ(windows[0].length_px, 400.0);
  EXPECT_EQ(windows[0].width_px, 300.0);
  EXPECT_EQ(windows[0].direction_deg, 0.0);
}

TEST(FilmWindows, BareLightAndNoLightHaveNone) {
  EXPECT_TRUE(film_windows(drawn::even_finding(width, height, 0.0F)).empty());
  EXPECT_TRUE(film_windows(drawn::even_finding(width, height, 4.0F)).empty());
}

TEST(FilmWindows, InOrderFromTopToBottomOrLeftToRight) {
  FindingImage image = drawn::even_finding(width, height, holder);
  for (const int y : {210, 20, 115}) {
    drawn::paint(image, {50, y, 250, 60}, film);
  }
  const std::vector<FilmWindow> lying = film_windows(image);
  ASSERT_EQ(lying.size(), 3U);
  EXPECT_NEAR(lying[0].y, 50.0, 1.0);
  EXPECT_NEAR(lying[1].y, 145.0, 1.0);
  EXPECT_NEAR(lying[2].y, 240.0, 1.0);
  const std::vector<FilmWindow> standing = film_windows(drawn::turned(image, drawn::Turn::quarter));
  ASSERT_EQ(standing.size(), 3U);
  // A quarter clockwise: what lay lowest now lies leftmost.
  EXPECT_NEAR(standing[0].x, height - 240.0, 1.0);
  EXPECT_NEAR(standing[1].x, height - 145.0, 1.0);
  EXPECT_NEAR(standing[2].x, height - 50.0, 1.0);
}

// The gaps between pictures on film as clear as air part no strip on bare light; a holder's bars do
// part its windows.
TEST(FilmWindows, ClearGapsDontPartAStripOnBareLight) {
  FindingImage glass = drawn::even_finding(width, height, 0.0F);
  FindingImage mask = drawn::even_finding(width, height, holder);
  for (const int x : {40, 150, 260}) {
    drawn::paint(glass, {x, 100, 100, 80}, film);
    drawn::paint(mask, {x, 100, 100, 80}, film);
  }
  const std::vector<FilmWindow> mended = film_windows(glass);
  ASSERT_EQ(mended.size(), 1U);
  expect_window(mended[0], {200.0, 140.0}, 320.0, 80.0);
  EXPECT_EQ(film_windows(mask).size(), 3U);
}

// Two pieces far apart, or out of line, are two films.
TEST(FilmWindows, PiecesApartStayApart) {
  FindingImage far = drawn::even_finding(width, height, 0.0F);
  drawn::paint(far, {20, 100, 120, 80}, film);
  drawn::paint(far, {220, 100, 120, 80}, film);
  EXPECT_EQ(film_windows(far).size(), 2U);
  FindingImage aside = drawn::even_finding(width, height, 0.0F);
  drawn::paint(aside, {20, 60, 120, 80}, film);
  drawn::paint(aside, {150, 110, 120, 80}, film);
  EXPECT_EQ(film_windows(aside).size(), 2U);
}

// Dust is small, and a hand's shadow or a triangle no rectangle.
TEST(FilmWindows, AreRectanglesOfSomeSize) {
  FindingImage image = drawn::even_finding(width, height, 0.0F);
  drawn::paint(image, {200, 200, 12, 12}, film);
  for (int y = 40; y < 160; ++y) {
    drawn::paint(image, {40, y, y - 40, 1}, film);
  }
  EXPECT_TRUE(film_windows(image).empty());
}

// Film as long as a hundred times its width, or a few pixels wide, is none.
TEST(FilmWindows, ThreadsAreNoFilm) {
  FindingImage thread = drawn::even_finding(width, 2, film);
  EXPECT_TRUE(film_windows(thread).empty());
  FindingImage narrow = drawn::even_finding(2000, 20, film);
  EXPECT_TRUE(film_windows(narrow).empty());
  FindingImage picture = drawn::even_finding(width, height, film);
  EXPECT_EQ(film_windows(picture).size(), 1U);
}

}  // namespace
}  // namespace fogline
