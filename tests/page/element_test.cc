#include "page/draw/element.h"

#include "page/draw/plot.h"
#include "page/page_tree.h"

#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

using page_tree::number_of;
using page_tree::parsed_piece;

TEST(Element, EscapesTextAndAttributes) {
  Element element("p");
  element.set("title", "a\"b<c>&'").text("<b>&\"'</b>");
  EXPECT_EQ(element.html(),
            "<p title=\"a&quot;b&lt;c&gt;&amp;&#39;\">&lt;b&gt;&amp;&quot;&#39;&lt;/b&gt;</p>\n");
}

TEST(Element, KeepsNoBreakSpacesVisible) {
  EXPECT_EQ(Element("b").text("1\u00A0%").html(), "<b>1&nbsp;%</b>");
}

TEST(Element, LeavesEmptyClassesOutAndOtherEmptyAttributesIn) {
  EXPECT_EQ(Element("b").set("class", "").set("id", "").set("title", "").html(),
            "<b title=\"\"></b>");
}

TEST(Element, ClosesShapesInTheirTagAndOtherElementsBehindTheirContent) {
  EXPECT_EQ(Element("line").set("x1", 3).html(), "<line x1=\"3\"/>\n");
  EXPECT_EQ(Element("i").html(), "<i></i>");
  EXPECT_EQ(Element("meta").set("charset", "utf-8").html(), "<meta charset=\"utf-8\">\n");
}

TEST(Element, HoldsChildrenInTheirOrder) {
  const Markup two = Markup().add(Element("i").text("1")).text(" & ").add(Element("b"));
  EXPECT_EQ(Element("em").add(two).add(Element("i")).html(),
            "<em><i>1</i> &amp; <b></b><i></i></em>");
}

TEST(Element, WritesNumbersForMachines) {
  EXPECT_EQ(Element("i").set("y", -1.25, 1).set("x", -0.001, 2).html(),
            "<i y=\"-1.2\" x=\"0.00\"></i>");
}

TEST(Shapes, ArePlacedInSharesOrPoints) {
  const auto tree = parsed_piece(
      line("grid", {percent(0.0), percent(12.345)}, {points(3.0), points(4.0)}).html());
  const auto& drawn = *tree.all("line").front();
  EXPECT_EQ(drawn.attribute("class"), "grid");
  EXPECT_EQ(drawn.attribute("x2"), "12.35%");
  EXPECT_EQ(drawn.attribute("y1"), "3");
}

TEST(Shapes, ABandThatEndsBeforeItBeginsHasNoWidth) {
  const auto tree = parsed_piece(
      band("doubt", {percent(40.0), percent(30.0)}, {points(1.0), points(9.0)}).html());
  EXPECT_EQ(tree.all("rect").front()->attribute("width"), "0.00%");
  EXPECT_EQ(tree.all("rect").front()->attribute("height"), "8");
}

TEST(Shapes, LabelsEscapeTheirWordsAndStandAtTheirAnchor) {
  const auto tree = parsed_piece(
      label("word", {percent(5.0), points(7.0), Anchor::end, -4.0, 0.0}, "<a> & b").html());
  const auto& drawn = *tree.all("text").front();
  EXPECT_EQ(drawn.text, "<a> & b");
  EXPECT_EQ(drawn.attribute("text-anchor"), "end");
  EXPECT_EQ(drawn.attribute("dx"), "-4");
  EXPECT_EQ(drawn.attribute("dy"), "");
}

TEST(Shapes, PathsBeginWhereTheyAreAndClose) {
  PathData data(1);
  data.add(1.0, 2.0).add(3.0, 4.25).close().box({5.0, 6.0, 7.0, 8.0});
  EXPECT_EQ(data.text(), "M1.0 2.0L3.0 4.2ZM5.0 6.0h7.0v8.0h-7.0Z");
  EXPECT_TRUE(PathData(1).empty());
}

TEST(Shapes, ACasedPathIsDrawnTwiceTheWhiteOneBelow) {
  PathData data(0);
  data.move_to(0.0, 0.0).line_to(1.0, 1.0);
  const auto tree = parsed_piece(cased_path("line k-frame", data).html());
  const auto paths = tree.all("path");
  ASSERT_EQ(paths.size(), 2U);
  EXPECT_EQ(paths[0]->attribute("class"), "casing");
  EXPECT_EQ(paths[0]->attribute("d"), paths[1]->attribute("d"));
}

TEST(Shapes, AWindowShowsAPartOfADrawing) {
  const auto tree = parsed_piece(window_on("#scan-1", {1.5, 2.0, 3.0, 4.0}, 1).html());
  EXPECT_EQ(tree.all("svg").front()->attribute("viewBox"), "1.5 2.0 3.0 4.0");
  EXPECT_EQ(tree.all("use").front()->attribute("href"), "#scan-1");
}

TEST(Scale, LaysNumbersOnASide) {
  const Scale scale{-1.0, 3.0};
  EXPECT_DOUBLE_EQ(scale.share(0.0), 25.0);
  EXPECT_DOUBLE_EQ(scale.share(5.0), 150.0);
  EXPECT_DOUBLE_EQ(scale.held_share(5.0), 100.0);
  EXPECT_DOUBLE_EQ(scale.held_share(-9.0), 0.0);
}

TEST(Axis, MarksEveryMultipleOnceWithItsNumber) {
  const AxisMarks marks{{-0.5, 1.0}, 0.3, 1, true};
  const auto tree = parsed_piece(
      axis_x(marks, {"grid", {percent(0.0), percent(100.0)}, points(60.0), 14.0}).html());
  const auto numbers = tree.all("text");
  const auto lines = tree.all("line");
  // -0.3, 0, 0.3, 0.6, 0.9
  ASSERT_EQ(numbers.size(), 5U);
  ASSERT_EQ(lines.size(), 5U);
  EXPECT_EQ(numbers[0]->text, "−0.3");
  EXPECT_EQ(numbers[1]->text, "0.0");
  EXPECT_EQ(numbers[4]->text, "+0.9");
  EXPECT_NEAR(number_of(*numbers[1], "x"), 100.0 * 0.5 / 1.5, 0.01);
  EXPECT_NEAR(number_of(*lines[4], "x1"), 100.0 * 1.4 / 1.5, 0.01);
  EXPECT_EQ(numbers[0]->attribute("dy"), "14");
}

TEST(Axis, KeepsAMarkThatRoundingPushesOverTheEnd) {
  const AxisMarks marks{{0.0, 0.3 * 10.0}, 0.3, 1};
  EXPECT_EQ(parsed_piece(axis_y(marks).html()).all("text").size(), 11U);
}

TEST(Axis, RunsUpwards) {
  const auto tree = parsed_piece(axis_y({{0.0, 2.0}, 1.0, 0}).html());
  const auto numbers = tree.all("text");
  ASSERT_EQ(numbers.size(), 3U);
  EXPECT_EQ(number_of(*numbers[0], "y"), 100.0);
  EXPECT_EQ(number_of(*numbers[2], "y"), 0.0);
}

TEST(Axis, NumbersAloneHaveNoLines) {
  const auto tree = parsed_piece(axis_x_numbers({{0.0, 2.0}, 1.0, 0}, {}).html());
  EXPECT_EQ(tree.all("text").size(), 3U);
  EXPECT_TRUE(tree.all("line").empty());
}

TEST(Plot, ABandGoesForthAboveAndBackBelow) {
  BandData band;
  band.add(0.0, 10.0, 20.0);
  band.add(50.0, 11.0, 21.0);
  const auto tree = parsed_piece(band.element().html());
  EXPECT_EQ(tree.all("path").front()->attribute("d"),
            "M0.00 10.00L50.00 11.00L50.00 21.00L0.00 20.00Z");
}

TEST(Plot, AFigureSpeaksAndHasItsSentence) {
  const auto tree = parsed_piece(
      plot_figure("spoken \"so\"", Markup().add(Element("line")), "below <it>", "curve").html());
  EXPECT_EQ(tree.all("figure").front()->attribute("class"), "plot curve");
  EXPECT_EQ(tree.all("svg").front()->attribute("aria-label"), "spoken \"so\"");
  EXPECT_EQ(tree.all("figcaption").front()->text, "below <it>");
}

// What makes the tests of pages worth their while.
TEST(PageTree, TakesNoPageThatIsntWellFormed) {
  for (const char* bad : {"<p>", "<p></b>", "<p a=b></p>", "<p a=\"1\" a=\"2\"></p>", "a & b",
                          "<p>a > b</p>", "<p a=\"<\"></p>", "&nothing;"}) {
    EXPECT_THROW(parsed_piece(bad), std::runtime_error) << bad;
  }
  EXPECT_NO_THROW(parsed_piece("<p a=\"&lt;\">a &amp; b<br></p>"));
}

}  // namespace
}  // namespace fogline
