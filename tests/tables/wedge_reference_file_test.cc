#include "base/refusal_of.h"
#include "tables/written_file.h"

#include <fogline/tables/read_tables.h>

#include <optional>
#include <string>

#include <gtest/gtest.h>

namespace fogline {
namespace {

WedgeReference read(const std::string& text) {
  const WrittenFile file("reference.csv", text);
  return read_wedge_reference(file.path());
}

std::optional<Refusal> refusal(const std::string& text) {
  return test::kind_of_refusal([&] { read(text); });
}

/// Numbers and names of a refusal, which there must be.
Fact<Refusal> fact_of(const std::string& text) {
  return test::refusal_of([&] { read(text); }).value().why();
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
  EXPECT_EQ(fact_of("1,0.05\n2,0.2\n3,0.3\n"),
            (Fact<Refusal>{Refusal::reference_step_count, {3.0}, {}, {}}));
  EXPECT_EQ(fact_of("1,0.05\n2,0.2\n3,0.18\n4,0.5\n5,0.6\n"),
            (Fact<Refusal>{Refusal::reference_out_of_order, {0.18}, {"3"}, {}}));
  EXPECT_EQ(refusal("1,0.05\n2,0,2\n3,0.3\n4,0.5\n5,0.6\n"), Refusal::reference_out_of_order);
  EXPECT_EQ(fact_of("1,0.05\n2,zero\n3,0.3\n4,0.5\n5,0.6\n"),
            (Fact<Refusal>{Refusal::reference_no_density, {2.0}, {"zero"}, {}}));
  EXPECT_EQ(fact_of("1,0.05\n1,0.2\n3,0.3\n4,0.5\n5,0.6\n"),
            (Fact<Refusal>{Refusal::reference_step_twice, {}, {"1"}, {}}));
  EXPECT_EQ(fact_of("0.05\n0.2\n0.3\n0.5\n0.6\n"),
            (Fact<Refusal>{Refusal::reference_line_unknown, {1.0}, {}, {}}));
  EXPECT_EQ(fact_of("1,0.05\n2,-0.2\n3,0.3\n4,0.5\n5,7\n"),
            (Fact<Refusal>{Refusal::reference_no_density, {2.0}, {"-0.2"}, {}}));
  EXPECT_EQ(refusal(std::string(2 << 20, 'x')), Refusal::reference_too_large);
  EXPECT_EQ(refusal(""), Refusal::is_empty);
}

TEST(WedgeReferenceFile, RefusesDamagedIso28178Text) {
  EXPECT_EQ(refusal(cgats_head + "BEGIN_DATA\n1 .1 .1\n2 .2 .2\n"),
            Refusal::reference_data_break_off);
  EXPECT_EQ(fact_of(cgats_head + "NUMBER_OF_SETS 3\nBEGIN_DATA\n1 .1 .1\n2 .2 .2\nEND_DATA\n"),
            (Fact<Refusal>{Refusal::reference_sets_unfit, {2.0}, {"3"}, {}}));
  EXPECT_EQ(fact_of(cgats_head + "BEGIN_DATA\n1 .1\nEND_DATA\n"),
            (Fact<Refusal>{Refusal::reference_row_unfit, {2.0, 8.0, 3.0}, {}, {}}));
  EXPECT_EQ(refusal("CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID\n"),
            Refusal::reference_format_breaks_off);
  EXPECT_EQ(refusal("CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID D_RED\nEND_DATA_FORMAT\nBEGIN_DATA\n1 "
                    "2\nEND_DATA\n"),
            Refusal::reference_no_densities);
}

}  // namespace
}  // namespace fogline
