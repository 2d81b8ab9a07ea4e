#include "base/refusal_of.h"

#include <fogline/tables/read_tables.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fogline {
namespace {

class RollCardFile : public testing::Test {
 protected:
  std::string write(const std::string& text) {
    const testing::TestInfo* info = testing::UnitTest::GetInstance()->current_test_info();
    std::string name = info->name();
    std::replace(name.begin(), name.end(), '/', '-');
    path_ = testing::TempDir() + "card-" + name + ".toml";
    std::ofstream(path_, std::ios::binary) << text;
    return path_;
  }
  void TearDown() override { std::filesystem::remove(path_); }

  RollCard read(const std::string& text) { return read_roll_card(write(text)); }

  /// Why a card is refused, which it must be.
  Fact<Refusal> refusal(const std::string& text) {
    const auto refused = test::refusal_of([&] { read(text); });
    EXPECT_TRUE(refused);
    EXPECT_EQ(refused.value().file(), path_);
    return refused.value().why();
  }

 private:
  std::string path_;
};

constexpr const char* full_card = R"(name = "harbour"
film = "iso 400, cubic"
film_type = "cubic"
exposure_index = 320
aim_contrast_index = 0.55
print_with = "condenser"
batch = "1234"
expiry = 2027-08-31
exposed = "2026-05-01"
developed = 2026-05-03
camera = "folding camera"
tank = "sunday"
device = "flatbed"
base_tint = [0.24, 0.25, 0.27]

[development]
developer = "liquid developer"
dilution = "1+4"
volume_ml = 300
time = "9:30"
temperature_c = 20.5
end_temperature_c = 20
agitation = "5 s each minute"
presoak = "1 minute"
opened = 2026-04-01

[stop]
kind = "acid"
time = "0:30"

[fix]
kind = "rapid"
dilution = "1+4"
time = "5:00"
rolls_before = 7
clearing_time = "0:45"
fresh_clearing_time = "0:40"

[wash]
method = "fills"
fills = [5, 10, 20]
time = "6:00"

[target]
kind = "bracket"
stops = [-5, 0, 2.5]
by = "shutter"
doubt_stops = 0.2
)";

TEST_F(RollCardFile, ReadsTheRoll) {
  const RollCard card = read(full_card);
  EXPECT_EQ(card.name, "harbour");
  EXPECT_EQ(card.film, "iso 400, cubic");
  EXPECT_EQ(card.film_type, FilmType::cubic);
  EXPECT_EQ(card.exposure_index, 320.0);
  EXPECT_EQ(card.aim_contrast_index, 0.55);
  EXPECT_EQ(card.print_with, PrintWith::condenser);
  EXPECT_EQ(card.batch, "1234");
  EXPECT_EQ(card.expiry, "2027-08-31");
  EXPECT_EQ(card.exposed, "2026-05-01");
  EXPECT_EQ(card.developed, "2026-05-03");
  EXPECT_EQ(card.camera, "folding camera");
  EXPECT_EQ(card.tank, "sunday");
  EXPECT_EQ(card.device, ScannerDevice::flatbed);
  ASSERT_TRUE(card.base_tint);
  EXPECT_THAT(*card.base_tint, testing::ElementsAre(0.24, 0.25, 0.27));
}

TEST_F(RollCardFile, ReadsTheBaths) {
  const RollCard card = read(full_card);
  EXPECT_EQ(card.development.developer, "liquid developer");
  EXPECT_EQ(card.development.dilution, "1+4");
  EXPECT_EQ(card.development.volume_ml, 300.0);
  EXPECT_EQ(card.development.time_s, 570.0);
  EXPECT_EQ(card.development.temperature_c, 20.5);
  EXPECT_EQ(card.development.end_temperature_c, 20.0);
  EXPECT_EQ(card.development.agitation, "5 s each minute");
  EXPECT_EQ(card.development.presoak, "1 minute");
  EXPECT_EQ(card.development.opened, "2026-04-01");
  EXPECT_EQ(card.stop.kind, "acid");
  EXPECT_EQ(card.stop.time_s, 30.0);
  EXPECT_EQ(card.fix.kind, FixKind::rapid);
  EXPECT_EQ(card.fix.dilution, "1+4");
  EXPECT_EQ(card.fix.time_s, 300.0);
  EXPECT_EQ(card.fix.rolls_before, 7);
  EXPECT_EQ(card.fix.clearing_time_s, 45.0);
  EXPECT_EQ(card.fix.fresh_clearing_time_s, 40.0);
  EXPECT_EQ(card.wash.method, "fills");
  EXPECT_THAT(card.wash.fills, testing::ElementsAre(5, 10, 20));
  EXPECT_EQ(card.wash.time_s, 360.0);
}

TEST_F(RollCardFile, ReadsBothTargets) {
  const RollCard bracket = read(full_card);
  ASSERT_TRUE(bracket.target);
  EXPECT_EQ(bracket.target->kind, TargetKind::bracket);
  EXPECT_THAT(bracket.target->stops, testing::ElementsAre(-5.0, 0.0, 2.5));
  EXPECT_EQ(bracket.target->by, "shutter");
  EXPECT_EQ(bracket.target->doubt_stops, 0.2);
  const RollCard wedge = read(
      "name = \"a\"\n[target]\nkind = \"exposed-wedge\"\nreference = \"w.csv\"\n"
      "h_at_zero_lux_s = 1.5\n");
  ASSERT_TRUE(wedge.target);
  EXPECT_EQ(wedge.target->kind, TargetKind::exposed_wedge);
  EXPECT_EQ(wedge.target->reference, "w.csv");
  EXPECT_EQ(wedge.target->h_at_zero_lux_s, 1.5);
}

TEST_F(RollCardFile, NeedsNoMoreThanAName) {
  const RollCard card = read("name = \"a\"\n");
  EXPECT_EQ(card.name, "a");
  EXPECT_FALSE(card.film || card.development.time_s || card.fix.kind || card.target);
  EXPECT_TRUE(card.wash.fills.empty());
}

TEST_F(RollCardFile, ReadsShutterTimesAndMeteredTones) {
  const RollCard card = read(
      "name = \"a\"\n[target]\nkind = \"bracket\"\ntimes = [\"1/60\", \"1/8\", \"2\", 4]\n"
      "metered_time = \"1/8\"\nfirst_frame = 3\n[[metered]]\nframe = 4\ntone = \"shadow\"\n"
      "zone = 3\n[[metered]]\nframe = 5\ntone = \"highlight\"\nzone = 7.5\ndoubt_stops = 0.3\n");
  ASSERT_TRUE(card.target);
  EXPECT_THAT(card.target->times_s, testing::ElementsAre(1.0 / 60.0, 1.0 / 8.0, 2.0, 4.0));
  EXPECT_EQ(card.target->metered_time_s, 1.0 / 8.0);
  EXPECT_EQ(card.target->first_frame, 3);
  ASSERT_EQ(card.metered.size(), 2U);
  EXPECT_EQ(card.metered[0].frame, 4);
  EXPECT_EQ(card.metered[0].part, TonePart::shadow);
  EXPECT_EQ(card.metered[0].zone, 3.0);
  EXPECT_EQ(card.metered[1].part, TonePart::highlight);
  EXPECT_EQ(card.metered[1].doubt_stops, 0.3);
}

struct Mistake {
  const char* title;
  const char* text;
  Refusal kind;
  double line;
  std::vector<std::string> names;
};

class RollCardMistakes : public RollCardFile, public testing::WithParamInterface<Mistake> {};

TEST_P(RollCardMistakes, AreNamedWithTheirLine) {
  const Mistake& mistake = GetParam();
  const Fact<Refusal> why = refusal(mistake.text);
  EXPECT_EQ(why.kind, mistake.kind);
  EXPECT_THAT(why.numbers, testing::ElementsAre(mistake.line));
  EXPECT_EQ(why.names, mistake.names);
}

INSTANTIATE_TEST_SUITE_P(
    Each, RollCardMistakes,
    testing::Values(
        Mistake{"EmptyName", "name = \"\"\n", Refusal::card_wants_text, 1.0, {"name"}},
        Mistake{"UnknownKey",
                "name = \"a\"\nfilmtype = \"cubic\"\n",
                Refusal::card_key_unknown,
                2.0,
                {"filmtype"}},
        Mistake{"UnknownInTable",
                "name = \"a\"\n[fix]\nminutes = 5\n",
                Refusal::card_key_unknown,
                3.0,
                {"fix.minutes"}},
        Mistake{"UnknownTable",
                "name = \"a\"\n[dev]\ntime = \"9:30\"\n",
                Refusal::card_key_unknown,
                2.0,
                {"dev"}},
        Mistake{"TableIsText",
                "name = \"a\"\nfix = \"rapid\"\n",
                Refusal::card_wants_table,
                2.0,
                {"fix"}},
        Mistake{"TimeAsNumber",
                "name = \"a\"\n[development]\ntime = 9.5\n",
                Refusal::card_wants_minutes,
                3.0,
                {"development.time"}},
        Mistake{"TimeOfDay",
                "name = \"a\"\n[development]\ntime = 09:30:00\n",
                Refusal::card_wants_minutes,
                3.0,
                {"development.time"}},
        Mistake{"SixtySeconds",
                "name = \"a\"\n[development]\ntime = \"9:60\"\n",
                Refusal::card_wants_minutes,
                3.0,
                {"development.time"}},
        Mistake{"OneDigit",
                "name = \"a\"\n[development]\ntime = \"9:3\"\n",
                Refusal::card_wants_minutes,
                3.0,
                {"development.time"}},
        Mistake{"NegativeTime",
                "name = \"a\"\n[development]\ntime = \"-9:30\"\n",
                Refusal::card_wants_minutes,
                3.0,
                {"development.time"}},
        Mistake{"NoTime",
                "name = \"a\"\n[development]\ntime = \"0:00\"\n",
                Refusal::card_wants_minutes,
                3.0,
                {"development.time"}},
        Mistake{"Fahrenheit",
                "name = \"a\"\n[development]\ntemperature_c = 68\n",
                Refusal::card_wants_temperature,
                3.0,
                {"development.temperature_c"}},
        Mistake{"TemperatureAsText",
                "name = \"a\"\n[development]\ntemperature_c = \"20\"\n",
                Refusal::card_wants_temperature,
                3.0,
                {"development.temperature_c"}},
        Mistake{"NotANumber",
                "name = \"a\"\nexposure_index = nan\n",
                Refusal::card_wants_exposure_index,
                2.0,
                {"exposure_index"}},
        Mistake{"ZeroIndex",
                "name = \"a\"\nexposure_index = 0\n",
                Refusal::card_wants_exposure_index,
                2.0,
                {"exposure_index"}},
        Mistake{"FilmType",
                "name = \"a\"\nfilm_type = \"flat\"\n",
                Refusal::card_wants_word,
                2.0,
                {"film_type", "\"cubic\", \"tabular\", \"chromogenic\""}},
        Mistake{"PrintWith",
                "name = \"a\"\nprint_with = 1\n",
                Refusal::card_wants_word,
                2.0,
                {"print_with", "\"diffusion\", \"condenser\", \"scan\""}},
        Mistake{"FixKind",
                "name = \"a\"\n[fix]\nkind = \"slow\"\n",
                Refusal::card_wants_word,
                3.0,
                {"fix.kind", "\"rapid\", \"plain\", \"hardening\""}},
        Mistake{"NoSuchDay",
                "name = \"a\"\ndeveloped = \"2026-02-30\"\n",
                Refusal::card_wants_date,
                2.0,
                {"developed"}},
        Mistake{"DayFirst",
                "name = \"a\"\nexpiry = \"31.5.2026\"\n",
                Refusal::card_wants_date,
                2.0,
                {"expiry"}},
        Mistake{"TwoTints",
                "name = \"a\"\nbase_tint = [0.2, 0.3]\n",
                Refusal::card_wants_base_tint,
                2.0,
                {"base_tint"}},
        Mistake{"FourTints",
                "name = \"a\"\nbase_tint = [0.2, 0.3, 0.2, 0.1]\n",
                Refusal::card_wants_base_tint,
                2.0,
                {"base_tint"}},
        Mistake{"DenseTint",
                "name = \"a\"\nbase_tint = [\n0.2,\n1.3, 0.2]\n",
                Refusal::card_wants_base_tint,
                4.0,
                {"base_tint"}},
        Mistake{"HalfFill",
                "name = \"a\"\n[wash]\nfills = [5, 10.5]\n",
                Refusal::card_wants_fills,
                3.0,
                {"wash.fills"}},
        Mistake{"NegativeRolls",
                "name = \"a\"\n[fix]\nrolls_before = -1\n",
                Refusal::card_wants_count,
                3.0,
                {"fix.rolls_before"}},
        Mistake{"TwoAims",
                "name = \"a\"\naim_contrast_index = 0.6\naim_like = \"b\"\n",
                Refusal::card_keys_exclude,
                3.0,
                {"aim_like", "aim_contrast_index"}},
        Mistake{"StopsAndTimes",
                "name = \"a\"\n[target]\nkind = \"bracket\"\nstops = [0, 1]\ntimes = [\"1/60\", "
                "\"1/30\"]\n",
                Refusal::card_keys_exclude,
                5.0,
                {"target.times", "stops"}},
        Mistake{
            "MeteredTimeOfStops",
            "name = \"a\"\n[target]\nkind = \"bracket\"\nstops = [0, 1]\nmetered_time = \"1/60\"\n",
            Refusal::card_metered_time_alone,
            5.0,
            {"target.metered_time"}},
        Mistake{"NoShutterTime",
                "name = \"a\"\n[target]\nkind = \"bracket\"\ntimes = [\"1/60\", \"soon\"]\n",
                Refusal::card_wants_shutter_times,
                4.0,
                {"target.times"}},
        Mistake{"NoMeteredTone",
                "name = \"a\"\n[[metered]]\nframe = 4\nzone = 3\n",
                Refusal::card_lacks_word,
                2.0,
                {"metered.tone", "\"shadow\", \"middle\", \"highlight\""}},
        Mistake{"MeteredIsNoList",
                "name = \"a\"\nmetered = 3\n",
                Refusal::card_wants_tables,
                2.0,
                {"metered"}},
        Mistake{"NoTargetKind",
                "name = \"a\"\n[target]\nstops = [-5, 0]\n",
                Refusal::card_lacks_word,
                2.0,
                {"target.kind", "\"bracket\", \"exposed-wedge\""}},
        Mistake{"NoStops",
                "name = \"a\"\n[target]\nkind = \"bracket\"\n",
                Refusal::card_lacks_stops,
                2.0,
                {"target.stops"}},
        Mistake{"OneStop",
                "name = \"a\"\n[target]\nkind = \"bracket\"\nstops = [1]\n",
                Refusal::card_wants_stops,
                4.0,
                {"target.stops"}},
        Mistake{"WedgeWithStops",
                "name = \"a\"\n[target]\nkind = \"exposed-wedge\"\nreference = \"w.csv\"\nstops = "
                "[1, 2]\n",
                Refusal::card_key_of_other_kind,
                5.0,
                {"target.stops", "bracket"}},
        Mistake{"NoReference",
                "name = \"a\"\n[target]\nkind = \"exposed-wedge\"\n",
                Refusal::card_lacks_reference,
                2.0,
                {"target.reference"}}),
    [](const auto& test) { return test.param.title; });

TEST_F(RollCardFile, SyntaxErrorsGiveTheLine) {
  const Fact<Refusal> why = refusal("name = \"a\"\n[development]\ntime = 9:30\n");
  EXPECT_EQ(why.kind, Refusal::card_no_toml);
  EXPECT_THAT(why.numbers, testing::ElementsAre(3.0));
  ASSERT_EQ(why.names.size(), 1U);
  EXPECT_EQ(why.names.front().find('\n'), std::string::npos);
}

TEST_F(RollCardFile, ForeignFilesAreRefused) {
  EXPECT_EQ(refusal(std::string(300000, 'x')).kind, Refusal::card_too_large);
  EXPECT_EQ(refusal(std::string("\x89PNG\r\n\x1a\n\0\0", 10)).kind, Refusal::card_no_toml);
  EXPECT_EQ(refusal("").kind, Refusal::card_lacks_name);
}

TEST_F(RollCardFile, ANameMustBeThere) {
  EXPECT_EQ(refusal("film = \"x\"\n"), (Fact<Refusal>{Refusal::card_lacks_name, {}, {}, {}}));
}

TEST(RollCardFileAbsent, SaysSo) {
  const std::string path = testing::TempDir() + "no-such-card.toml";
  EXPECT_EQ(test::kind_of_refusal([&] { read_roll_card(path); }), Refusal::card_unreadable);
  EXPECT_EQ(test::kind_of_refusal([] { read_roll_card(testing::TempDir()); }),
            Refusal::card_unreadable);
}

}  // namespace
}  // namespace fogline
