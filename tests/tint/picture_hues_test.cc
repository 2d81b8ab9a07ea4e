#include "tint/picture_hues.h"

#include "tables/shipped_knowledge.h"
#include "tint/strip_of_colour.h"

#include <cmath>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using colour::patches;
using colour::strip_of;

const std::vector<FilmExtent> two_pictures{{1.0, 29.0, 5.0, 15.0}, {31.0, 59.0, 5.0, 15.0}};

/// A picture's density: no smooth course of place.
double picture(double along, double across) {
  return 0.7 + 0.3 * std::sin(1.3 * along) * std::cos(0.9 * across) + 0.1 * std::sin(0.2 * along);
}

bool is_picture(double across) {
  return across > 4.5 && across < 15.5;
}

bool told(const DensityStrip& strip) {
  return shows_colour_film(strip, patches(), two_pictures,
                           shipped_knowledge().scan.tints.colour_film_hues_density);
}

// Silver, with everything that colours it evenly: lamp, a veil, a stain that grows with it.
TEST(PictureHues, SilverStaysOnOneLine) {
  const DensityStrip plain =
      strip_of([](double along, double across) { return colour::grey(picture(along, across)); });
  const DensityStrip stained = strip_of([](double along, double across) {
    const double silver = picture(along, across);
    const double lamp = 0.02 * across / 20.0;
    return PerChannel<double>{silver, 1.1 * silver + 0.08, 1.4 * silver + 0.1 + lamp};
  });
  const DensityStrip noisy = strip_of(
      [](double along, double across) { return colour::grey(picture(along, across)); }, 0.4);
  for (const DensityStrip& strip : {plain, stained}) {
    const auto hues = read_picture_hues(strip, two_pictures, 0.3);
    ASSERT_TRUE(hues.has_value());
    EXPECT_EQ(hues->pictures, 2);
    EXPECT_LT(hues->scatter_density, 0.005);
    EXPECT_FALSE(told(strip));
  }
  EXPECT_FALSE(told(noisy));
}

// Each layer of colour film has a picture of its own.
TEST(PictureHues, DyesStray) {
  const DensityStrip strip = strip_of([](double along, double across) {
    if (!is_picture(across)) {
      return PerChannel<double>{0.25, 0.6, 0.9};
    }
    const double hue = 0.2 * std::sin(along / 2.0 + across);
    return PerChannel<double>{picture(along, across), 0.35 + picture(along, across) + hue,
                              0.65 + picture(along, across) - hue};
  });
  const auto hues = read_picture_hues(strip, two_pictures, 0.25);
  ASSERT_TRUE(hues.has_value());
  EXPECT_GT(hues->scatter_density, 0.05);
  EXPECT_TRUE(told(strip));
}

// A patchy veil colours clear film as well as pictures: it is no sign of dyes.
TEST(PictureHues, APatchyVeilIsNoPicture) {
  const DensityStrip strip = strip_of([](double along, double across) {
    const double veil = 0.2 * std::sin(along / 2.0 + across);
    const double silver = is_picture(across) ? picture(along, across) : 0.3;
    return PerChannel<double>{silver, silver + 0.2 + 0.4 * veil, silver + 0.4 + veil};
  });
  EXPECT_FALSE(told(strip));
}

TEST(PictureHues, NeedColourAndPictures) {
  const auto silver = [](double along, double across) {
    return colour::grey(picture(along, across));
  };
  EXPECT_FALSE(read_picture_hues(strip_of(silver, 0.004, 0.03, 1), two_pictures, 0.3));
  EXPECT_FALSE(read_picture_hues(strip_of(silver), {}, 0.3));
  EXPECT_FALSE(read_picture_hues(strip_of(silver), {{1.0, 6.0, 1.0, 6.0}}, 0.3));
}

}  // namespace
}  // namespace fogline
