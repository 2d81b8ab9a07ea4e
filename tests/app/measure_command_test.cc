#include "app/commands/measure_command.h"

#include "app/requests.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using Words = std::vector<std::string>;

MeasureRequest measure(Words words) {
  words.insert(words.begin(), "a.tif");
  return request_of(measure_command(), words);
}

std::string refusal(Words words) {
  words.insert(words.begin(), "a.tif");
  return refusal_of(measure_command(), words);
}

TEST(MeasureCommand, AScanAloneLeavesEverythingToTheProgram) {
  const MeasureRequest request = measure({});
  EXPECT_THAT(request.scans, ElementsAre("a.tif"));
  EXPECT_FALSE(request.json || request.html || request.csv || request.card || request.blank);
  EXPECT_FALSE(request.scanner || request.wedge || request.aim_contrast_index);
  EXPECT_FALSE(request.full || request.budget);
  EXPECT_TRUE(request.areas.empty());
  EXPECT_EQ(request.units, DensityUnits::density);
  EXPECT_EQ(request.measure.clear, ClearReference::automatic);
  EXPECT_FALSE(request.measure.format || request.measure.frame_mm || request.open.transfer);
}

TEST(MeasureCommand, FilesAndFlagsArriveAsGiven) {
  const MeasureRequest request =
      measure({"--json", "r.json", "--html", "none", "--csv", "-", "--card", "c.toml", "--blank",
               "b.tif", "--scanner", "s.json", "--budget", "--full", "b.png"});
  EXPECT_THAT(request.scans, ElementsAre("a.tif", "b.png"));
  EXPECT_EQ(request.json, "r.json");
  EXPECT_EQ(request.html, "none");
  EXPECT_EQ(request.csv, "-");
  EXPECT_EQ(request.card, "c.toml");
  EXPECT_EQ(request.blank, "b.tif");
  EXPECT_EQ(request.scanner, "s.json");
  EXPECT_TRUE(request.budget && request.full);
  EXPECT_EQ(measure({"--wedge", "w.csv"}).wedge, "w.csv");
}

TEST(MeasureCommand, WordsMeanWhatTheySay) {
  EXPECT_EQ(measure({"--units", "density"}).units, DensityUnits::density);
  EXPECT_EQ(measure({"--units", "stops"}).units, DensityUnits::stops);
  EXPECT_EQ(measure({"--format", "auto"}).measure.format, std::nullopt);
  EXPECT_EQ(measure({"--format", "135"}).measure.format, FilmFormat::f135);
  EXPECT_EQ(measure({"--format", "120"}).measure.format, FilmFormat::f120);
  EXPECT_EQ(measure({"--format", "sheet"}).measure.format, FilmFormat::sheet);
  EXPECT_EQ(measure({}).measure.device, ScannerDevice::unknown);
  EXPECT_EQ(measure({"--device", "film-scanner"}).measure.device, ScannerDevice::film_scanner);
  EXPECT_EQ(measure({"--clear", "auto"}).measure.clear, ClearReference::automatic);
  EXPECT_EQ(measure({"--clear", "holes"}).measure.clear, ClearReference::holes);
  EXPECT_EQ(measure({"--clear", "gap"}).measure.clear, ClearReference::gap);
  EXPECT_EQ(measure({"--clear", "none"}).measure.clear, ClearReference::none);
}

TEST(MeasureCommand, ATransferIsTheUsersWord) {
  EXPECT_FALSE(measure({"--transfer", "auto"}).open.transfer);
  for (const auto& [word, kind] :
       {std::pair{"linear", TransferKind::linear}, std::pair{"srgb", TransferKind::srgb}}) {
    const auto transfer = measure({"--transfer", word}).open.transfer;
    ASSERT_TRUE(transfer) << word;
    EXPECT_EQ(transfer->kind, kind);
    EXPECT_EQ(transfer->source, TransferSource::option);
    EXPECT_FALSE(transfer->exponent);
  }
  for (const double power : {0.3, 2.2, 5.0}) {
    const auto transfer = measure({"--transfer", std::to_string(power)}).open.transfer;
    ASSERT_TRUE(transfer) << power;
    EXPECT_EQ(transfer->kind, TransferKind::power);
    EXPECT_DOUBLE_EQ(transfer->exponent.value_or(0.0), power);
  }
}

TEST(MeasureCommand, NumbersReachTheirBounds) {
  EXPECT_EQ(measure({"--frame-mm", "8"}).measure.frame_mm, 8.0);
  EXPECT_EQ(measure({"--frame-mm", "250"}).measure.frame_mm, 250.0);
  EXPECT_EQ(measure({"--aim-contrast-index", "0.2"}).aim_contrast_index, 0.2);
  EXPECT_EQ(measure({"--aim-contrast-index=1.5"}).aim_contrast_index, 1.5);
}

TEST(MeasureCommand, AreasAreBoxesAndStopsInTheirOrder) {
  const auto areas = measure({"--area", "0,1.5,80,90=-2", "--area", "5,6,7,8=+20"}).areas;
  ASSERT_EQ(areas.size(), 2U);
  EXPECT_EQ(areas[0].box_px.x, 0.0);
  EXPECT_EQ(areas[0].box_px.y, 1.5);
  EXPECT_EQ(areas[0].box_px.width, 80.0);
  EXPECT_EQ(areas[0].box_px.height, 90.0);
  EXPECT_EQ(areas[0].stops, -2.0);
  EXPECT_EQ(areas[1].stops, 20.0);
}

struct Refused {
  Words words;
  std::string sentence;
};

TEST(MeasureCommand, ValuesThatMeanNothingAreRefusedInOneSentence) {
  const std::vector<Refused> all{
      {{"--units", "inches"}, "--units is density or stops, not \"inches\""},
      {{"--units", ""}, "--units is density or stops, not \"\""},
      {{"--format", "136"}, "--format is auto, 135, 120 or sheet, not \"136\""},
      {{"--device", "fax"}, "--device is flatbed, film-scanner or camera, not \"fax\""},
      {{"--clear", "sky"}, "--clear is auto, holes, gap or none, not \"sky\""},
      {{"--transfer", "9"}, "--transfer is auto, linear, srgb or a power from 0.3 to 5, not \"9\""},
      {{"--transfer", "0.29"}, "not \"0.29\""},
      {{"--transfer", "2,2"}, "not \"2,2\""},
      {{"--transfer", "nan"}, "not \"nan\""},
      {{"--frame-mm", "7.9"}, "--frame-mm is a length from 8 to 250 millimetres, not \"7.9\""},
      {{"--frame-mm", "251"}, "not \"251\""},
      {{"--frame-mm", "36mm"}, "not \"36mm\""},
      {{"--frame-mm", "inf"}, "not \"inf\""},
      {{"--aim-contrast-index", "0.19"}, "contrast index from 0.2 to 1.5, not \"0.19\""},
      {{"--aim-contrast-index", "1.51"}, "not \"1.51\""},
      {{"--aim-contrast-index", "0,58"}, "not \"0,58\""},
  };
  for (const Refused& refused : all) {
    EXPECT_THAT(refusal(refused.words), HasSubstr(refused.sentence));
  }
}

TEST(MeasureCommand, AreasThatMeanNothingAreRefused) {
  for (const char* area : {"", "1,2,3=0", "1,2,3,4,5=0", "1,2,0,4=0", "1,2,3,0=0", "-1,2,3,4=0",
                           "1,2,3,4", "1,2,3,4=", "1,2,3,4=21", "1,2,3,4=-21", "1,2,3,4=++1",
                           "1,2,3,4=0=0", "1,x,3,4=0", "1,,3,4=0"}) {
    EXPECT_THAT(refusal({"--area", area}), HasSubstr("must be x,y,width,height=STOPS")) << area;
  }
}

TEST(MeasureCommand, WhatCannotBeMeantTogetherIsRefused) {
  const std::vector<Refused> all{
      {{"./a.tif"}, "./a.tif is given twice"},
      {{"-"}, "a scan is read from a file"},
      {{"--card", "-"}, "a roll card is read from a file"},
      {{"--card", ""}, "a roll card is read from a file"},
      {{"--scanner", "s", "--wedge", "w"}, "two calibrations"},
      {{"--scanner", "s", "--transfer", "2"}, "leave --transfer out"},
      {{"--wedge", "w", "--transfer", "linear"}, "leave --transfer out"},
      {{"b.tif", "--area", "1,2,3,4=0"}, "--area names pixels of one scan"},
      {{"--json", ""}, "--json needs the name of a file"},
      {{"--json", "./a.tif"}, "--json would overwrite the scan a.tif"},
      {{"--csv", "a.tif"}, "--csv would overwrite the scan a.tif"},
      {{"--html", "a.tif"}, "--html would overwrite the scan a.tif"},
      {{"--json", "c", "--card", "c"}, "--json would overwrite c"},
      {{"--csv", "b", "--blank", "b"}, "--csv would overwrite b"},
      {{"--html", "s", "--scanner", "s"}, "--html would overwrite s"},
      {{"--json", "w", "--wedge", "./w"}, "--json would overwrite ./w"},
      {{"--json", "-", "--html", "-"}, "--json and --html go to one place"},
      {{"--json", "x", "--csv", "./x"}, "--json and --csv go to one place"},
      {{"--csv", "-", "--html", "-"}, "--csv and --html go to one place"},
  };
  for (const Refused& refused : all) {
    EXPECT_THAT(refusal(refused.words), HasSubstr(refused.sentence));
  }
  EXPECT_THAT(refusal_of(measure_command(), {}), HasSubstr("name at least one scan"));
}

TEST(MeasureCommand, WhatOnlyLooksLikeItIsTaken) {
  EXPECT_EQ(refusal({"--json", "-", "--html", "none", "--csv", "c"}), "");
  EXPECT_EQ(refusal({"--scanner", "s", "--transfer", "auto"}), "");
  EXPECT_EQ(refusal({"none", "--html", "none"}), "");
}

}  // namespace
}  // namespace fogline
