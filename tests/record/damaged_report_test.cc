#include "record/invented_curve.h"
#include "record/invented_judgement.h"
#include "record/report_files.h"

#include <fogline/base/refusal.h>
#include <fogline/record/record_json.h>
#include <fogline/words/refusal_words.h>

#include <algorithm>
#include <optional>
#include <string>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace fogline {
namespace {

using nlohmann::json;
using testing::EndsWith;
using testing::HasSubstr;
using testing::StartsWith;

/// The sentence with which a text is refused; nothing where it is read.
std::optional<std::string> refusal_of(const std::string& text) {
  try {
    record_from_json(text, "old.json");
  } catch (const FileError& error) {
    return sentence_of(error);
  }
  return std::nullopt;
}

void expect_one_sentence(const std::optional<std::string>& refusal, const std::string& of) {
  ASSERT_TRUE(refusal) << of;
  EXPECT_THAT(*refusal, StartsWith("old.json ")) << of;
  EXPECT_THAT(*refusal, EndsWith(".")) << of;
  EXPECT_EQ(std::count(refusal->begin(), refusal->end(), '\n'), 0) << of;
}

json report() {
  return json::parse(json_from_record(invented::short_record()));
}

TEST(DamagedReport, TruncatedAtAnyLength) {
  const std::string text = json_from_record(invented::short_record());
  constexpr std::size_t stride = 41;
  for (std::size_t length = 0; length + 2 < text.size(); length += stride) {
    expect_one_sentence(refusal_of(text.substr(0, length)), std::to_string(length) + " bytes");
  }
}

TEST(DamagedReport, NoReportAtAll) {
  for (const char* text : {"", "null", "[]", "17", "{}", "{\"format\": \"fogline scanner\"}",
                           "{\"format\": 1, \"version\": 1}"}) {
    expect_one_sentence(refusal_of(text), text);
  }
}

TEST(DamagedReport, OfAnotherVersion) {
  json other = report();
  other["version"] = 2;
  EXPECT_THAT(refusal_of(other.dump()).value_or(""), HasSubstr("version 2"));
  other["version"] = "1";
  expect_one_sentence(refusal_of(other.dump()), "a version that is text");
  other.erase("version");
  expect_one_sentence(refusal_of(other.dump()), "no version");
}

TEST(DamagedReport, NestedWithoutEnd) {
  constexpr std::size_t deep = 1000000;
  expect_one_sentence(refusal_of(std::string(deep, '[')), "lists");
  expect_one_sentence(refusal_of(R"({"format": "fogline report", "version": 1, "scans": )" +
                                 std::string(deep, '[')),
                      "scans");
}

TEST(DamagedReport, NamesThePlaceThatIsUnfit) {
  json wrong = report();
  wrong["scans"][0]["frames"][2]["box_px"]["x"] = "left";
  EXPECT_THAT(refusal_of(wrong.dump()).value_or(""), HasSubstr("scans[0].frames[2].box_px.x"));
}

// Every value of a report in turn becomes one of another type: it is refused in one sentence, or it
// is a repeat that nobody reads.
void spoil_each(json& whole, json& value, const std::string& path, std::size_t& refused) {
  if (value.is_structured()) {
    for (auto& [key, inner] : value.items()) {
      spoil_each(whole, inner, path + "/" + key, refused);
    }
  }
  const json kept = value;
  const json spoilt = kept.is_string() ? json(17) : json("spoilt");
  value = spoilt;
  const auto refusal = refusal_of(whole.dump());
  if (refusal) {
    expect_one_sentence(refusal, path);
    ++refused;
  }
  value = kept;
}

TEST(DamagedReport, AnyValueOfAnotherType) {
  json whole = report();
  std::size_t refused = 0;
  spoil_each(whole, whole, "", refused);
  constexpr std::size_t at_least = 300;
  EXPECT_GT(refused, at_least);
}

TEST(DamagedReport, NumbersBeyondTheirKind) {
  json wrong = report();
  for (const json& width :
       {json(1e300), json(4294967296), json(1.5), json(18446744073709551615U)}) {
    wrong["scans"][0]["width_px"] = width;
    expect_one_sentence(refusal_of(wrong.dump()), width.dump());
  }
  wrong = report();
  wrong["findings"][0]["confidence"] = 1.5;
  expect_one_sentence(refusal_of(wrong.dump()), "a probability above 1");
}

TEST(LaterReport, UnknownKeysArePassedOver) {
  json later = report();
  later["revision"] = 9;
  later["weather"] = {{"sun", true}};
  later["scans"][0]["frames"][0]["smell"] = "vinegar";
  EXPECT_EQ(record_from_json(later.dump(), "later.json"), invented::short_record());
}

TEST(LaterReport, UnknownWordsClaimLeast) {
  json later = report();
  later["scans"][0]["fitness"] = "splendid";
  later["scans"][0]["marks"][0]["kind"] = "tooth-mark";
  const RollRecord record = record_from_json(later.dump(), "later.json");
  EXPECT_EQ(record.measurement.scans[0].fitness, Fitness::unfit);
  EXPECT_EQ(record.measurement.scans[0].marks[0].kind, MarkKind::unknown);
}

TEST(LaterReport, UnknownFactsAreToldByTheirSentence) {
  json later = report();
  later["scans"][0]["why"]["leader"] = {{"code", "eaten-by-a-cat"}};
  later["scans"][0]["reasons"]["leader"] = "The cat ate the leader.";
  const RollRecord record = record_from_json(later.dump(), "later.json");
  EXPECT_EQ(record.measurement.scans[0].leader.why().told, "The cat ate the leader.");
  EXPECT_EQ(json::parse(json_from_record(record))["scans"][0]["reasons"]["leader"],
            "The cat ate the leader.");
}

}  // namespace
}  // namespace fogline
