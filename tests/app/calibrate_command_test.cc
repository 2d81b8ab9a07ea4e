#include "app/commands/calibrate_command.h"

#include "app/requests.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using Words = std::vector<std::string>;

const Words output{"--output", "s.json"};

Words with_output(Words words) {
  words.insert(words.end(), output.begin(), output.end());
  return words;
}

CalibrateRequest calibrate(const Words& words) {
  return request_of(calibrate_command(), with_output(words));
}

std::string refusal(const Words& words) {
  return refusal_of(calibrate_command(), with_output(words));
}

TEST(CalibrateCommand, AWedgeAloneLeavesTheRestToTheProgram) {
  const CalibrateRequest request = calibrate({"w.tif", "--wedge", "w.csv"});
  EXPECT_THAT(request.scans, ElementsAre("w.tif"));
  EXPECT_EQ(request.output, "s.json");
  EXPECT_EQ(request.wedge, "w.csv");
  EXPECT_FALSE(request.html || request.steps || request.layers || request.bracket_s);
  EXPECT_EQ(request.device, ScannerDevice::unknown);
  EXPECT_EQ(request.bracket_doubt_stops, usual_shutter_doubt_stops);
  EXPECT_FALSE(request.date);
}

TEST(CalibrateCommand, ANominalWedgeHasItsSteps) {
  const auto steps = calibrate({"w.tif", "--steps", "21x0.15"}).steps;
  ASSERT_TRUE(steps);
  ASSERT_EQ(steps->steps.size(), 21U);
  EXPECT_NEAR(steps->steps.back().density, 0.05 + 20 * 0.15, 1e-12);
}

TEST(CalibrateCommand, ListsAreRead) {
  const CalibrateRequest layers =
      calibrate({"a", "b", "c", "--layers", "0,1,4", "--layer-density", "0.3"});
  EXPECT_EQ(layers.layers, (std::vector{0, 1, 4}));
  EXPECT_EQ(layers.layer_density, 0.3);
  const CalibrateRequest times =
      calibrate({"a", "b", "c", "--bracket", "1/125,0.5,2", "--bracket-doubt", "0.3"});
  ASSERT_TRUE(times.bracket_s);
  EXPECT_THAT(*times.bracket_s, ElementsAre(1.0 / 125.0, 0.5, 2.0));
  EXPECT_EQ(times.bracket_doubt_stops, 0.3);
}

TEST(CalibrateCommand, WordsMeanWhatTheySay) {
  const Words wedge{"w.tif", "--wedge", "w.csv", "--device"};
  for (const auto& [word, device] : {std::pair{"flatbed", ScannerDevice::flatbed},
                                     std::pair{"film-scanner", ScannerDevice::film_scanner},
                                     std::pair{"camera", ScannerDevice::camera}}) {
    Words words = wedge;
    words.emplace_back(word);
    EXPECT_EQ(calibrate(words).device, device);
  }
  EXPECT_EQ(calibrate({"w", "--wedge", "c", "--date", "2026-11-26"}).date, "2026-11-26");
  EXPECT_EQ(calibrate({"w", "--wedge", "c", "--html", "none"}).html, "none");
}

struct Refused {
  Words words;
  std::string sentence;
};

TEST(CalibrateCommand, ValuesThatMeanNothingAreRefusedInOneSentence) {
  const std::vector<Refused> all{
      {{"w", "--wedge", "c", "--first", "0"},
       "--first is the number of a step, 1 to 41, not \"0\""},
      {{"w", "--layers", "0,1", "--first", "2"}, "--first goes with --wedge or --steps"},
      {{"w", "--wedge", "c", "--device", "fax"},
       "--device is flatbed, film-scanner or camera, not \"fax\""},
      {{"w", "--wedge", "c", "--date", "today"}, "--date is a date such as 2026-11-26"},
      {{"w", "--wedge", "c", "--date", "26-11-2026"}, "not \"26-11-2026\""},
      {{"w", "--steps", "21"}, "such as 21x0.15, not \"21\""},
      {{"w", "--steps", "4x0.15"}, "not \"4x0.15\""},
      {{"w", "--steps", "42x0.15"}, "not \"42x0.15\""},
      {{"w", "--steps", "21x0.01"}, "not \"21x0.01\""},
      {{"w", "--steps", "21x1.1"}, "not \"21x1.1\""},
      {{"w", "--steps", "21x0.15x2"}, "not \"21x0.15x2\""},
      {{"w", "--steps", "21.5x0.15"}, "not \"21.5x0.15\""},
      {{"w", "--layers", "0,1,x"}, "such as 0,1,2,3,5, not \"0,1,x\""},
      {{"w", "--layers", "0,1,1"}, "not \"0,1,1\""},
      {{"w", "--layers", "0,,1"}, "not \"0,,1\""},
      {{"w", "--layers", "-1,2"}, "not \"-1,2\""},
      {{"w", "--layers", "0,61"}, "not \"0,61\""},
      {{"w", "--bracket", "1/0"}, "such as 1/125,1/60,0.5, not \"1/0\""},
      {{"w", "--bracket", "1/2/3"}, "not \"1/2/3\""},
      {{"w", "--bracket", "1/60,"}, "not \"1/60,\""},
      {{"w", "--bracket", "-1/-60"}, "not \"-1/-60\""},
      {{"w", "--bracket", "3601"}, "not \"3601\""},
      {{"w", "--layers", "0,1", "--layer-density", "0"}, "above 0 to 2, not \"0\""},
      {{"w", "--layers", "0,1", "--layer-density", "2.1"}, "above 0 to 2, not \"2.1\""},
      {{"w", "--bracket", "1", "--bracket-doubt", "1.1"}, "above 0 to 1, not \"1.1\""},
  };
  for (const Refused& refused : all) {
    EXPECT_THAT(refusal(refused.words), HasSubstr(refused.sentence));
  }
}

TEST(CalibrateCommand, WhatCannotBeMeantTogetherIsRefused) {
  const std::vector<Refused> all{
      {{}, "name a scan"},
      {{"w"}, "in one way"},
      {{"w", "--wedge", "c", "--steps", "21x0.15"}, "in one way"},
      {{"w", "./w", "--layers", "0,1"}, "./w is given twice"},
      {{"w", "v", "--wedge", "c"}, "a wedge is calibrated from one scan"},
      {{"w", "v", "--layers", "0,1,2"}, "3 numbers of layers for 2 scans"},
      {{"w", "v", "--bracket", "1,2,4"}, "3 times for 2 pictures"},
      {{"w", "--wedge", "c", "--layer-density", "0.3"}, "--layer-density goes with --layers"},
      {{"-", "--wedge", "c"}, "are read from files"},
      {{"s.json", "--wedge", "c"}, "would overwrite s.json"},
      {{"w", "--wedge", "./s.json"}, "would overwrite ./s.json"},
      {{"w", "--wedge", "c", "--html", "c"}, "would overwrite c"},
      {{"w", "--wedge", "c", "--html", "./s.json"}, "--output and --html go to one place"},
  };
  for (const Refused& refused : all) {
    EXPECT_THAT(refusal(refused.words), HasSubstr(refused.sentence));
  }
  EXPECT_THAT(refusal_of(calibrate_command(), {"w", "--wedge", "c"}), HasSubstr("--output"));
}

}  // namespace
}  // namespace fogline
