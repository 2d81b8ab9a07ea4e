#include "page/html.h"

#include "page/small_picture.h"
#include "record/invented_judgement.h"

#include <regex>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::HasSubstr;
using testing::Not;

std::string page_of(const RollRecord& record, HtmlOptions options = {}) {
  const std::vector<PagePicture> pictures(record.measurement.scans.size(), small_picture());
  return html_from_record(record, pictures, options);
}

std::string page_of(RollMeasurement roll, HtmlOptions options = {}) {
  return page_of(invented::record(std::move(roll)), options);
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
  const std::string page = page_of(invented::short_record());
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
  roll.unread.push_back({"<i>.tif", {Refusal::undecodable, {}, {"<u>"}, {}}});
  const std::string page = page_of(roll);
  EXPECT_THAT(page, HasSubstr("&lt;b&gt;&amp;&quot;&#39;.tif"));
  EXPECT_THAT(page, Not(HasSubstr("<b>&")));
  EXPECT_THAT(page, HasSubstr("&lt;i&gt;.tif is damaged or breaks off (&lt;u&gt;)"));
  EXPECT_THAT(page, Not(HasSubstr("<i>.tif")));
}

TEST(Html, EscapesSentencesFromElsewhere) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().cautions.push_back(
      {Severity::note, {CautionKind::grey_scan, {}, {}, "a < b & c > d"}});
  roll.scans.front().veiling_glare = WhyUnknown{Unknown::not_told, {}, {}, "<u>"};
  const std::string page = page_of(roll);
  EXPECT_THAT(page, HasSubstr("a &lt; b &amp; c &gt; d"));
  EXPECT_THAT(page, Not(HasSubstr("<u>")));
}

TEST(Html, OpensAndClosesEveryElement) {
  for (const RollRecord& record :
       {invented::short_record(), invented::normal_record(), invented::undecided_record(),
        invented::record(invented::unfit_roll())}) {
    const std::string page = page_of(record);
    for (const std::string name :
         {"section", "figure", "table", "tr", "td", "th",  "ul",    "ol",   "li",
          "p",       "div",    "dl",    "dt", "dd", "svg", "g",     "text", "span",
          "h1",      "h2",     "h3",    "b",  "i",  "a",   "header"}) {
      const std::regex opening("<" + name + "(>| [^>]*[^/]>)");
      const auto begin = std::sregex_iterator(page.begin(), page.end(), opening);
      EXPECT_EQ(static_cast<std::size_t>(std::distance(begin, std::sregex_iterator())),
                count_of(page, "</" + name + ">"))
          << name;
    }
  }
}

TEST(Html, PutsVerdictTonightAndNextRollBeforeTheStrip) {
  const std::string page = page_of(invented::short_record());
  const std::size_t strip = page.find("<h2>The strip");
  ASSERT_NE(strip, std::string::npos);
  std::size_t last = 0;
  for (const char* part : {"<h1>Development was short", "Also seen: dye left", "<h2>Do tonight",
                           "3 minutes in fresh fixer", "<h2>Next roll", "10:00 at 20&nbsp;°C",
                           "1/3 stop more light", "make it up fresh", "5, 10, 20, 30 inversions"}) {
    const std::size_t at = page.find(part);
    EXPECT_LT(at, strip) << part;
    EXPECT_GT(at, last) << part;
    last = at;
  }
}

TEST(Html, PutsScanningBetterFirstWhereAScanTellsNothing) {
  const std::string unfit = page_of(invented::unfit_roll());
  EXPECT_LT(unfit.find("<h2>How to scan better"), unfit.find("<h2>The strip"));
  const std::string fit = page_of(invented::short_record());
  EXPECT_GT(fit.find("<h2>How to scan better"), fit.find("<h2>Marks"));
}

TEST(Html, TellsEveryStepInFullBelow) {
  const std::string page = page_of(invented::short_record());
  EXPECT_THAT(page, HasSubstr("<section id=\"tonight\">"));
  EXPECT_THAT(page, HasSubstr("2 minutes in sodium sulfite"));
  EXPECT_THAT(page_of(invented::normal_record()), Not(HasSubstr("#tonight")));
}

TEST(Html, DrawsTheFiveProbabilitiesWithTheirNumbers) {
  const std::string page = page_of(invented::short_record());
  EXPECT_THAT(page, HasSubstr("development short</th><td class=\"bar\"><svg "
                              "aria-hidden=\"true\"><rect class=\"odd\" width=\"79.00%\""));
  EXPECT_EQ(count_of(page, "class=\"odd\""), 5U);
  EXPECT_THAT(page, HasSubstr("79&nbsp;%</td>"));
}

TEST(Html, DrawsNoProbabilityWhereNothingWasJudged) {
  RollRecord record = invented::short_record();
  record.judgement.light_or_time = LightOrTime{};
  record.judgement.light_or_time.causes = Unknown::no_picture;
  const std::string page = page_of(record);
  EXPECT_EQ(count_of(page, "class=\"odd\""), 0U);
  EXPECT_THAT(page, HasSubstr("<h1>Light and development can&#39;t be told: no picture is"));
}

TEST(Html, PutsTheAimBesideTheRollsDensities) {
  RollMeasurement roll = invented::roll();
  roll.scans.front().base_fog->visual = invented::density(0.30, 0.02);
  const std::string page = page_of(roll);
  // Shadow 0.20 to 0.40 above a base of 0.30, on a scale to 3.0.
  EXPECT_THAT(page, HasSubstr("class=\"aim\" x=\"16.67%\" width=\"6.67%\""));
  EXPECT_THAT(page, HasSubstr(">shadow aim</text>"));
  roll.scans.front().base_fog = Unknown::no_zero_for_base;
  EXPECT_THAT(page_of(roll), Not(HasSubstr("shadow aim")));
}

TEST(Html, OutlinesMarksWithoutTouchingThem) {
  const std::string page = page_of(invented::short_record());
  // The ring's box begins at (140, 90) of the scan, half of that in the picture, 3 pixels off.
  EXPECT_THAT(page, HasSubstr("class=\"line k-mark\" d=\"M67.0 42.0h17.0v16.0h-17.0Z"));
  EXPECT_EQ(count_of(page, "denser by 0.12</td>"), 1U);
}

TEST(Html, CutsMarksOutAtOneScale) {
  const std::string page = page_of(invented::short_record());
  const std::regex window("<div><svg viewBox=\"[-0-9.]+ [-0-9.]+ ([0-9.]+) ([0-9.]+)\">");
  std::size_t count = 0;
  std::string side;
  for (auto at = std::sregex_iterator(page.begin(), page.end(), window);
       at != std::sregex_iterator(); ++at, ++count) {
    side = side.empty() ? (*at)[1].str() : side;
    EXPECT_EQ((*at)[1], side);
    EXPECT_EQ((*at)[2], side);
  }
  EXPECT_EQ(count, invented::marks().size());
  EXPECT_THAT(page, HasSubstr("the line is 1 mm of film"));
}

TEST(Html, NamesBathsOnlyBesideACaution) {
  const std::string page = page_of(invented::short_record());
  // Beside the recipe, tonight's steps in full and the reasons; each leads to all of them.
  EXPECT_EQ(count_of(page, "href=\"#cautions\""), 3U);
  EXPECT_EQ(count_of(page, "id=\"cautions\""), 1U);
}

TEST(Html, EscapesWhatTheCardSays) {
  RollRecord record = invented::short_record();
  record.card->name = "<b>12";
  record.card->film = "\"a&b\"";
  record.judgement.advice->this_roll = {{RescueStep::scan_again, {}, {}, "<u>wash</u>"}};
  const std::string page = page_of(record);
  EXPECT_THAT(page, HasSubstr("&lt;b&gt;12 · &quot;a&amp;b&quot;"));
  EXPECT_THAT(page, Not(HasSubstr("<u>")));
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
  const std::string page = html_from_record(invented::short_record(), {}, {});
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
    PagePicture named = small_picture();
    named.bytes.assign(plain.begin(), plain.end());
    EXPECT_THAT(html_from_record(invented::record(invented::roll()), {named}, {}),
                HasSubstr("base64," + coded + "\""));
  }
}

}  // namespace
}  // namespace fogline
