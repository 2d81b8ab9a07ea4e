#include "tables/written_file.h"

#include <fogline/base/error.h>
#include <fogline/tables/wedge_reference_file.h>

#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

WedgeReference read(const std::string& text) {
  const WrittenFile file("reference.csv", text);
  return read_wedge_reference(file.path());
}

std::string refusal(const std::string& text) {
  try {
    read(text);
  } catch (const FileError& error) {
    return error.what();
  }
  return "";
}

TEST(WedgeReferenceFile, CommaSemicolonOrTabWithHeadingAndNotes) {
  const WedgeReference comma =
      read("step,density\n# an invented wedge\n1,0.05\n2,0.20\n3,0.36\n4,0.50\n5,0.66\n");
  ASSERT_EQ(comma.steps.size(), 5U);
  EXPECT_EQ(comma.steps[2].density, 0.36);
  EXPECT_EQ(comma.steps[2].label, "3");
  EXPECT_FALSE(comma.steps[2].u95.has_value());
  EXPECT_FALSE(comma.nominal);
  const WedgeReference doubted =
      read("a;0.05;0.01\nb;0.2;0.01\r\nc;0.36;0.02\nd;0.5;0.02\ne;0.66;");
  EXPECT_EQ(doubted.steps[2].u95, 0.02);
  EXPECT_FALSE(doubted.steps[4].u95.has_value());
  EXPECT_EQ(read("1\t.05\n2\t.20\n3\t.36\n4\t.50\n5\t.66\n").steps[0].density, 0.05);
}

TEST(WedgeReferenceFile, ListedFromTheDarkEndItIsTurnedRound) {
  const WedgeReference reference = read("5,1.0\n4,0.8\n3,0.6\n2,0.4\n1,0.2\n");
  EXPECT_EQ(reference.steps.front().label, "1");
  EXPECT_EQ(reference.steps.back().density, 1.0);
}

// The layout is that of ISO 28178:2009 (CGATS.17); the data are invented.
const std::string cgats_head =
    "CGATS.17\nORIGINATOR \"an example\"\nNUMBER_OF_FIELDS 3\nBEGIN_DATA_FORMAT\n"
    "SAMPLE_ID D_VIS D_RED\nEND_DATA_FORMAT\n";

TEST(WedgeReferenceFile, TextOfIso28178) {
  const WedgeReference reference =
      read(cgats_head +
           "NUMBER_OF_SETS 5\nBEGIN_DATA\n\"step 1\" 0.05 0.05\n2 0.20 0.21\n"
           "3 0.35 0.36\n4 0.50 0.5\n5 0.66 0.6\nEND_DATA\n");
  ASSERT_EQ(reference.steps.size(), 5U);
  EXPECT_EQ(reference.steps[0].label, "step 1");
  EXPECT_EQ(reference.steps[1].density, 0.20);
}

TEST(WedgeReferenceFile, TheFirstTableWithVisualDensitiesCounts) {
  const WedgeReference reference = read(
      "CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID XYZ_X\nEND_DATA_FORMAT\nBEGIN_DATA\n1 3\nEND_DATA\n"
      "BEGIN_DATA_FORMAT\nSAMPLE_ID D_VIS\nEND_DATA_FORMAT\nBEGIN_DATA\n1 .1\n2 .2\n3 .3\n4 .4\n5 "
      ".5\nEND_DATA\n");
  EXPECT_EQ(reference.steps.size(), 5U);
}

TEST(WedgeReferenceFile, RefusesWithTheReason) {
  EXPECT_NE(refusal("1,0.05\n2,0.2\n3,0.3\n").find("lists 3 steps"), std::string::npos);
  EXPECT_NE(
      refusal("1,0.05\n2,0.2\n3,0.18\n4,0.5\n5,0.6\n").find("step \"3\" (0.180) is out of order"),
      std::string::npos);
  EXPECT_NE(refusal("1,0.05\n2,0,2\n3,0.3\n4,0.5\n5,0.6\n").find("out of order"),
            std::string::npos);
  EXPECT_NE(refusal("1,0.05\n2,zero\n3,0.3\n4,0.5\n5,0.6\n").find("\"zero\" in line 2"),
            std::string::npos);
  EXPECT_NE(refusal("1,0.05\n1,0.2\n3,0.3\n4,0.5\n5,0.6\n").find("\"1\" twice"), std::string::npos);
  EXPECT_NE(refusal("0.05\n0.2\n0.3\n0.5\n0.6\n").find("step,density (line 1)"), std::string::npos);
  EXPECT_NE(refusal("1,0.05\n2,-0.2\n3,0.3\n4,0.5\n5,7\n").find("line 2"), std::string::npos);
  EXPECT_NE(refusal(std::string(2 << 20, 'x')).find("too large"), std::string::npos);
  EXPECT_NE(refusal("").find("empty"), std::string::npos);
}

TEST(WedgeReferenceFile, RefusesDamagedIso28178Text) {
  EXPECT_NE(refusal(cgats_head + "BEGIN_DATA\n1 .1 .1\n2 .2 .2\n").find("END_DATA is missing"),
            std::string::npos);
  EXPECT_NE(refusal(cgats_head + "NUMBER_OF_SETS 3\nBEGIN_DATA\n1 .1 .1\n2 .2 .2\nEND_DATA\n")
                .find("NUMBER_OF_SETS 3 but holds 2"),
            std::string::npos);
  EXPECT_NE(refusal(cgats_head + "BEGIN_DATA\n1 .1\nEND_DATA\n").find("2 values in line 8"),
            std::string::npos);
  EXPECT_NE(refusal("CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID\n").find("END_DATA_FORMAT"),
            std::string::npos);
  EXPECT_NE(refusal("CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID D_RED\nEND_DATA_FORMAT\nBEGIN_DATA\n1 "
                    "2\nEND_DATA\n")
                .find("no table with SAMPLE_ID and D_VIS"),
            std::string::npos);
}

}  // namespace
}  // namespace fogline
