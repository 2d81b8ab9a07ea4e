#include "record/invented_roll.h"

#include <fogline/report/html.h>

#include <regex>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;

PagePicture picture() {
  PagePicture picture;
  picture.media_type = "image/jpeg";
  picture.bytes = {0xFF, 0xD8, 0xFF};
  picture.width = 650;
  picture.height = 175;
  picture.scan_px_per_pixel = 2.0;
  return picture;
}

std::string page_of(RollMeasurement roll, HtmlOptions options = {}) {
  const std::vector<PagePicture> pictures(roll.scans.size(), picture());
  return html_from_record(record_from_measurement(std::move(roll), "0.1.0"), pictures, options);
}

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
}

TEST(Html, CarriesTheMarkerByWhichFoglineKnowsItsPages) {
  EXPECT_LT(page_of(invented::roll()).find(page_marker), 1000U);
}

TEST(Html, NeedsNoScriptAndNoNetwork) {
  const std::string page = page_of(invented::roll());
  for (const char* part : {"<script", "http:", "https:", "src=", "url(", "@import", "<link",
                           "<iframe", "javascript:"}) {
    EXPECT_THAT(page, Not(HasSubstr(part)));
  }
  EXPECT_FALSE(std::regex_search(page, std::regex("<[^>]* on[a-z]+=")));
  const std::regex reference("href=\"(?!#|data:image/jpeg;base64,)");
  EXPECT_FALSE(std::regex_search(page, reference));
}

TEST(Html, EscapesNamesOfFiles) {
  RollMeasurement roll = invented::roll("<b>&\"'.tif");
  roll.unread.push_back({"<i>.tif", "<i>.tif isn't there."});
  const std::string page = page_of(roll);
  EXPECT_THAT(page, HasSubstr("&lt;b&gt;&amp;&quot;&#39;.tif"));
  EXPECT_THAT(page, Not(HasSubstr("<b>&")));
  EXPECT_THAT(page, Not(HasSubstr("<i>.tif")));
}

TEST(Html, EscapesSentencesFromElsewhere) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().cautions.push_back({"x", Severity::note, "a < b & c > d"});
  roll.scans.front().reasons["zero"] = "<u>";
  const std::string page = page_of(roll);
  EXPECT_THAT(page, HasSubstr("a &lt; b &amp; c &gt; d"));
  EXPECT_THAT(page, Not(HasSubstr("<u>")));
}

TEST(Html, OpensAndClosesEveryElement) {
  const std::string page = page_of(invented::roll());
  for (const std::string name : {"section", "figure", "table", "tr", "td", "th", "ul", "li", "p",
                                 "div", "svg", "g", "text", "span", "h2", "h3", "b"}) {
    const std::regex opening("<" + name + "(>| [^>]*[^/]>)");
    const auto begin = std::sregex_iterator(page.begin(), page.end(), opening);
    EXPECT_EQ(static_cast<std::size_t>(std::distance(begin, std::sregex_iterator())),
              count_of(page, "</" + name + ">"))
        << name;
  }
}

TEST(Html, DrawsWhatWasMeasuredInPixelsOfThePicture) {
  const std::string page = page_of(invented::roll());
  // Frame 1 begins at (100, 55) of the scan; the picture is half its size.
  EXPECT_THAT(page, HasSubstr("class=\"line k-frame\" d=\"M50.0 27.5L230.0 27.5L230.0 147.5"));
  EXPECT_THAT(page, HasSubstr("data:image/jpeg;base64,/9j/"));
}

TEST(Html, NumbersEveryFrameOnTheStripAndInTheTable) {
  const std::string page = page_of(invented::roll());
  for (const char* number : {"1", "2", "3"}) {
    EXPECT_THAT(page, HasSubstr(std::string(">") + number + "</b>"));
    EXPECT_THAT(page, HasSubstr(std::string("<th scope=\"row\">") + number + "</th>"));
  }
}

TEST(Html, PutsDensitiesOnOneScale) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().frames.front().tone.middle = invented::density(1.5, 0.1);
  const std::string page = page_of(roll);
  EXPECT_THAT(page, HasSubstr("r=\"3.5\" cx=\"50.00%\""));  // 1.5 of 3.0
  EXPECT_THAT(page, HasSubstr("base plus fog 0.28 ± 0.03</text>"));
}

TEST(Html, LeavesTheDrawingOutWithoutAPicture) {
  const std::string page =
      html_from_record(record_from_measurement(invented::roll(), "0.1.0"), {}, {});
  EXPECT_THAT(page, Not(HasSubstr("<image")));
  EXPECT_THAT(page, Not(HasSubstr("<use")));
  EXPECT_THAT(page, HasSubstr("Shadow and highlight"));
}

TEST(Html, AlwaysCarriesTheCautions) {
  for (const RollMeasurement& roll :
       {invented::roll(), invented::unfit_roll(), RollMeasurement{}}) {
    const std::string page = page_of(roll);
    for (const char* part :
         {"gloves", "fresh air", "never goes back to food", "belong in the drain",
          "licensed collection", "safety sheet", "rules of the place"}) {
      EXPECT_THAT(page, HasSubstr(part));
    }
    EXPECT_EQ(count_of(page, "5 mg/L"), 1U);
  }
}

TEST(Html, CarriesPicturesInBase64) {
  // Test vectors of RFC 4648, section 10.
  const std::vector<std::pair<std::string, std::string>> vectors{
      {"f", "Zg=="},        {"fo", "Zm8="},        {"foo", "Zm9v"},
      {"foob", "Zm9vYg=="}, {"fooba", "Zm9vYmE="}, {"foobar", "Zm9vYmFy"}};
  for (const auto& [plain, coded] : vectors) {
    PagePicture named = picture();
    named.bytes.assign(plain.begin(), plain.end());
    EXPECT_THAT(html_from_record(record_from_measurement(invented::roll(), "0.1.0"), {named}, {}),
                HasSubstr("base64," + coded + "\""));
  }
}

}  // namespace
}  // namespace fogline
