#include "page/html.h"
#include "page/page_tree.h"
#include "page/small_picture.h"
#include "record/invented_reports.h"

#include <algorithm>
#include <cmath>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

// Where numbers are drawn: on the page itself, so that a mistake anywhere on the way shows.

namespace fogline {
namespace {

using page_tree::Node;
using page_tree::number_of;
using page_tree::parsed;

Node page_of(const RollRecord& record, HtmlOptions options = {}) {
  const std::vector<PagePicture> pictures(record.measurement.scans.size(), small_picture());
  return parsed(html_from_record(record, pictures, options));
}

/// A drawing with its own scale: the element that has this class.
const Node& one_of_class(const Node& page, std::string_view name) {
  const auto found = page.of_class(name);
  EXPECT_EQ(found.size(), 1U) << name;
  return *found.front();
}

std::vector<const Node*> texts_at(const Node& drawing, const std::string& words) {
  std::vector<const Node*> found;
  for (const Node* text : drawing.all("text")) {
    if (text->text == words) {
      found.push_back(text);
    }
  }
  return found;
}

struct Point {
  double x = 0.0;
  double y = 0.0;
};

std::vector<Point> points_of(const Node& path) {
  const std::regex place("[ML](-?[0-9.]+) (-?[0-9.]+)");
  const std::string data = path.attribute("d");
  std::vector<Point> points;
  for (std::sregex_iterator at(data.begin(), data.end(), place), end; at != end; ++at) {
    points.push_back({std::stod((*at)[1]), std::stod((*at)[2])});
  }
  return points;
}

/// On the scale of densities 3.0 is 100 %.
double scale_place(double density) {
  return 100.0 * density / 3.0;
}

TEST(DensityScale, DrawsEachFrameInItsRow) {
  const Node page = page_of(invented::short_record());
  const Node& scale = one_of_class(page, "scale");
  const auto middles = scale.of_class("mid");
  ASSERT_EQ(middles.size(), 3U);
  const std::vector<double> densities{0.71, 0.83, 0.62};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(number_of(*middles[i], "cx"), scale_place(densities[i]), 0.01);
    EXPECT_EQ(number_of(*middles[i], "cy"), 61.0 + 38.0 * static_cast<double>(i));
  }
  const auto spans = scale.of_class("span");
  ASSERT_EQ(spans.size(), 3U);
  EXPECT_NEAR(number_of(*spans[0], "x1"), scale_place(0.35), 0.01);
  EXPECT_NEAR(number_of(*spans[0], "x2"), scale_place(1.32), 0.01);
}

TEST(DensityScale, DrawsTheDoubtOfBothEnds) {
  const Node page = page_of(invented::short_record());
  const auto doubts = one_of_class(page, "scale").of_class("doubt");
  ASSERT_EQ(doubts.size(), 6U);
  EXPECT_NEAR(number_of(*doubts[0], "x"), scale_place(0.35 - 0.034), 0.01);
  EXPECT_NEAR(number_of(*doubts[0], "width"), scale_place(2.0 * 0.034), 0.02);
  EXPECT_NEAR(number_of(*doubts[1], "x"), scale_place(1.32 - 0.12), 0.01);
}

TEST(DensityScale, ASkewDoubtKeepsItsOwnEnds) {
  RollRecord record = invented::short_record();
  Quantity& shadow = *record.measurement.scans.front().frames.front().tone.shadow;
  shadow.lower95 = 0.30;
  shadow.upper95 = 0.60;
  const Node page = page_of(record);
  const auto doubts = one_of_class(page, "scale").of_class("doubt");
  EXPECT_NEAR(number_of(*doubts[0], "x"), scale_place(0.30), 0.01);
  EXPECT_NEAR(number_of(*doubts[0], "width"), scale_place(0.30), 0.01);
}

TEST(DensityScale, WhatIsOnlyABoundEndsInAnArrow) {
  RollRecord record = invented::short_record();
  Quantity& highlight = *record.measurement.scans.front().frames.front().tone.highlight;
  highlight.value = 2.4;
  highlight.at_least = true;
  const Node page = page_of(record);
  const Node& scale = one_of_class(page, "scale");
  EXPECT_EQ(scale.of_class("more").size(), 1U);
  EXPECT_EQ(scale.of_class("doubt").size(), 5U);
}

TEST(DensityScale, HasStopsBesideDensitiesInTheOrderAskedFor) {
  for (const auto units : {DensityUnits::density, DensityUnits::stops}) {
    const Node page = page_of(invented::short_record(), {units});
    const Node& scale = one_of_class(page, "scale");
    const auto density = texts_at(scale, "1.5");
    const auto stops = texts_at(scale, "5");
    ASSERT_EQ(density.size(), 1U);
    ASSERT_EQ(stops.size(), 1U);
    EXPECT_EQ(number_of(*density.front(), "x"), 50.0);
    EXPECT_EQ(number_of(*stops.front(), "x"), 50.0);
    EXPECT_EQ(number_of(*density.front(), "y") < number_of(*stops.front(), "y"),
              units == DensityUnits::density);
  }
}

TEST(DensityScale, TheBandsOfTheAimMoveWithIt) {
  RollRecord record = invented::short_record();
  record.judgement.aim.contrast_index = 0.29;  // half the usual
  const Node page = page_of(record);
  const auto bands = one_of_class(page, "scale").of_class("aim");
  ASSERT_EQ(bands.size(), 2U);
  EXPECT_NEAR(number_of(*bands[0], "x"), scale_place(0.284 + 0.10), 0.01);
  EXPECT_NEAR(number_of(*bands[1], "x"), scale_place(0.284 + 0.525), 0.01);
  EXPECT_NEAR(number_of(*bands[1], "width"), scale_place(0.15), 0.01);
}

TEST(DensityScale, CountsFromClearFilmWhereTheScanDoes) {
  RollRecord record = invented::short_record();
  record.measurement.scans.front().densities_above = DensitiesAbove::base;
  const Node page = page_of(record);
  const Node& scale = one_of_class(page, "scale");
  EXPECT_TRUE(scale.of_class("base").empty());
  EXPECT_NEAR(number_of(*scale.of_class("aim").front(), "x"), scale_place(0.20), 0.01);
}

TEST(DensityScale, EachRowShowsItsFrame) {
  const Node page = page_of(invented::short_record());
  const auto windows = one_of_class(page, "names").all("svg");
  ASSERT_EQ(windows.size(), 3U);
  // Frame 2 begins at (480, 55) of the scan, which is twice as large as the picture.
  EXPECT_EQ(windows[1]->attribute("viewBox"), "240 28 180 120");
  EXPECT_EQ(windows[1]->attribute("width"), "48");
  EXPECT_EQ(windows[1]->attribute("height"), "32");
}

TEST(LightLines, LayContrastAndLightBesideWhatIsRight) {
  const Node page = page_of(invented::short_record());
  const auto lines = page.of_class("line-of");
  ASSERT_EQ(lines.size(), 2U);
  const auto contrast_place = [](double index) { return 100.0 * (index - 0.2) / 0.8; };
  const Node& contrast = *lines[0];
  EXPECT_NEAR(number_of(one_of_class(contrast, "mid"), "cx"), contrast_place(0.42), 0.01);
  EXPECT_NEAR(number_of(one_of_class(contrast, "doubt"), "x"), contrast_place(0.34), 0.01);
  EXPECT_NEAR(number_of(one_of_class(contrast, "aim"), "x"), contrast_place(0.53), 0.01);
  EXPECT_NEAR(number_of(one_of_class(contrast, "aim"), "width"), 12.5, 0.01);
  const Node& light = *lines[1];
  EXPECT_NEAR(number_of(one_of_class(light, "mid"), "cx"), 100.0 * 2.8 / 6.0, 0.01);
  EXPECT_EQ(texts_at(light, "+3").size(), 1U);
  EXPECT_EQ(texts_at(light, "−3").size(), 1U);
  EXPECT_EQ(number_of(*texts_at(light, "0").front(), "x"), 50.0);
}

TEST(LightLines, HoldNumbersBeyondTheLineAtItsEnds) {
  RollRecord record = invented::short_record();
  record.judgement.light_or_time.contrast_index = invented::density(1.4, 0.1);
  record.judgement.light_or_time.exposure_stops = invented::density(-5.0, 1.0);
  const Node page = page_of(record);
  const auto lines = page.of_class("line-of");
  ASSERT_EQ(lines.size(), 2U);
  EXPECT_EQ(number_of(one_of_class(*lines[0], "mid"), "cx"), 100.0);
  EXPECT_EQ(number_of(one_of_class(*lines[1], "mid"), "cx"), 0.0);
}

TEST(LightLines, AreLeftOutWhereNothingIsBelieved) {
  RollRecord record = invented::short_record();
  record.judgement.light_or_time.exposure_stops = Unknown::nothing_metered;
  EXPECT_EQ(page_of(record).of_class("line-of").size(), 1U);
}

/// The frame of the invented curve: from its axis.
struct CurveFrame {
  explicit CurveFrame(const Node& plot) {
    for (const Node* text : plot.all("text")) {
      const bool is_log_h = text->attribute("dy") == "30";
      const bool is_density =
          text->attribute("text-anchor") == "end" && text->attribute("dx") == "-6";
      std::string number = text->text;
      if (number.starts_with("−")) {
        number = "-" + number.substr(std::string("−").size());
      }
      if (is_log_h) {
        log_h.push_back({std::stod(number), number_of(*text, "x")});
      } else if (is_density) {
        density.push_back({std::stod(number), number_of(*text, "y")});
      }
    }
  }
  static double place(const std::vector<Point>& axis, double number) {
    const Point& a = axis.front();
    const Point& b = axis.back();
    return a.y + (number - a.x) * (b.y - a.y) / (b.x - a.x);
  }
  [[nodiscard]] double x(double number) const { return place(log_h, number); }
  [[nodiscard]] double y(double number) const { return place(density, number); }

  std::vector<Point> log_h;
  std::vector<Point> density;
};

TEST(CurvePlot, DrawsExposuresWhereTheAxesSay) {
  const RollRecord record = invented::bracket_record();
  const Node page = page_of(record);
  const Node& plot = one_of_class(page, "curve");
  const CurveFrame frame(plot);
  const auto dots = plot.of_class("dot");
  const auto& steps = record.measurement.sensitometry->curve.steps;
  ASSERT_GT(dots.size(), 5U);
  for (const Node* dot : dots) {
    const bool is_step = std::any_of(steps.begin(), steps.end(), [&](const ExposedStep& step) {
      return std::abs(frame.x(step.log_h) - number_of(*dot, "cx")) < 0.1 &&
             std::abs(frame.y(step.density) - number_of(*dot, "cy")) < 0.1;
    });
    EXPECT_TRUE(is_step) << dot->attribute("cx") << " " << dot->attribute("cy");
  }
}

TEST(CurvePlot, TheCurveRunsThroughTheExposuresAndInsideItsBand) {
  const Node page = page_of(invented::bracket_record());
  const Node& plot = one_of_class(page, "curve");
  const auto curve = points_of(one_of_class(plot, "response"));
  ASSERT_GT(curve.size(), 50U);
  for (const Node* dot : plot.of_class("dot")) {
    const double x = number_of(*dot, "cx");
    const auto nearest = std::min_element(curve.begin(), curve.end(), [&](auto a, auto b) {
      return std::abs(a.x - x) < std::abs(b.x - x);
    });
    if (std::abs(nearest->x - x) < 0.5) {
      EXPECT_NEAR(nearest->y, number_of(*dot, "cy"), 1.0);
    }
  }
  const auto band = points_of(one_of_class(plot, "band"));
  ASSERT_EQ(band.size() % 2, 0U);
  for (std::size_t i = 0; i < band.size() / 2; ++i) {
    const Point& above = band[i];
    const Point& below = band[band.size() - 1 - i];
    EXPECT_EQ(above.x, below.x);
    EXPECT_LE(above.y, below.y);  // y grows downwards
  }
}

TEST(CurvePlot, TheTriangleIsThatOfIso6) {
  const Node page = page_of(invented::bracket_record());
  const Node& plot = one_of_class(page, "curve");
  const CurveFrame frame(plot);
  const auto corners = points_of(one_of_class(plot, "triangle"));
  ASSERT_EQ(corners.size(), 3U);
  EXPECT_NEAR(corners[0].y, frame.y(0.10), 0.1);
  EXPECT_NEAR(corners[1].x - corners[0].x, frame.x(1.30) - frame.x(0.0), 0.1);
  EXPECT_NEAR(corners[2].y, frame.y(0.90), 0.1);
}

TEST(CurvePlot, AnExposureThatWasLeftOutIsACross) {
  RollRecord record = invented::bracket_record();
  record.measurement.sensitometry->curve.steps[5].left_out = fact_of(Unknown::step_off_curve);
  const Node page = page_of(record);
  const Node& plot = one_of_class(page, "curve");
  const auto crosses = plot.of_class("out");
  ASSERT_EQ(crosses.size(), 1U);
  EXPECT_EQ(crosses.front()->text, "×");
  EXPECT_NEAR(number_of(*crosses.front(), "x"), CurveFrame(plot).x(0.0), 0.1);
}

TEST(CurvePlot, ZonesStandAStopApart) {
  const Node page = page_of(invented::bracket_record());
  const Node& plot = one_of_class(page, "curve");
  const CurveFrame frame(plot);
  const auto zones = plot.of_class("zone");
  ASSERT_GT(zones.size(), 4U);
  for (std::size_t i = 1; i < zones.size(); ++i) {
    EXPECT_NEAR(number_of(*zones[i], "x") - number_of(*zones[i - 1], "x"),
                frame.x(0.30103) - frame.x(0.0), 0.1);
  }
}

TEST(StripPicture, NumbersStandAtTheMiddleOfTheirFrames) {
  const Node page = page_of(invented::short_record());
  const Node& whole = one_of_class(page, "whole");
  const auto numbers = whole.all("b");
  ASSERT_EQ(numbers.size(), 3U);
  // Frame 1: (100 + 180, 55 + 120) of 1300 by 350.
  EXPECT_EQ(numbers[0]->attribute("style"), "left:21.54%;top:50.00%");
}

TEST(StripPicture, ALongStripIsShownOnceMoreInPieces) {
  const Node page = page_of(invented::short_record());
  const Node& pieces = one_of_class(page, "pieces");
  const auto strips = pieces.of_class("strip");
  ASSERT_EQ(strips.size(), 2U);
  EXPECT_EQ(strips[1]->all("svg").front()->attribute("viewBox"), "325.0 0.0 325.0 175.0");
  EXPECT_EQ(page.all("image").size(), 1U);  // the picture itself is carried once
}

TEST(StripPicture, TheKeyNamesWhatIsDrawnAndNothingElse) {
  const Node page = page_of(invented::short_record());
  const auto entries = one_of_class(page, "key").all("li");
  ASSERT_EQ(entries.size(), 3U);
  EXPECT_THAT(entries[0]->text, testing::EndsWith("edge of the film"));
  EXPECT_THAT(entries[1]->text, testing::HasSubstr("frame, numbered"));
  EXPECT_THAT(entries[2]->text, testing::EndsWith("mark, numbered beside the strip"));
}

TEST(StripPicture, WithoutOutlinesSaysSo) {
  RollRecord record = invented::short_record();
  record.measurement.scans.front().outlines.clear();
  record.measurement.scans.front().marks.clear();
  const Node page = page_of(record);
  EXPECT_TRUE(page.of_class("key").empty());
  EXPECT_THAT(page.text, testing::HasSubstr("strip.tif: nothing was found to outline."));
}

TEST(Cutouts, HoldTheirMarkInTheMiddle) {
  const Node page = page_of(invented::short_record());
  const auto windows = one_of_class(page, "cuts").all("svg");
  ASSERT_EQ(windows.size(), 5U);
  // Marks lie along the film: the ring at (140, 90), 22 by 20, comes first; half of that in the
  // picture.
  double x = 0.0;
  double y = 0.0;
  double side = 0.0;
  std::istringstream(windows[0]->attribute("viewBox")) >> x >> y >> side;
  EXPECT_NEAR(x + side / 2.0, 151.0 / 2.0, 0.02);
  EXPECT_NEAR(y + side / 2.0, 100.0 / 2.0, 0.02);
}

TEST(Swatches, ShowClearFilmBesideANeutral) {
  const Node page = page_of(invented::short_record());
  const auto colors = one_of_class(page, "swatches").all("i");
  ASSERT_EQ(colors.size(), 2U);
  // Density 0.284: 52.0 % of the light is 0.752 of the code of IEC 61966-2-1.
  EXPECT_EQ(colors[1]->attribute("style"), "background:rgb(191,191,191)");
  EXPECT_NE(colors[0]->attribute("style"), colors[1]->attribute("style"));
}

}  // namespace
}  // namespace fogline
