#include <fogline/base/error.h>
#include <fogline/tables/roll_card_file.h>

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

  /// What is said of a card, without the folder of the file.
  std::string complaint(const std::string& text) {
    try {
      read(text);
    } catch (const FileError& error) {
      EXPECT_EQ(error.file(), path_);
      const std::string message = error.what();
      EXPECT_EQ(message.find('\n'), std::string::npos) << message;
      EXPECT_EQ(message.find(path_), 0U) << message;
      return message.substr(path_.size());
    }
    return "nothing";
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
  const char* complaint;
};

class RollCardMistakes : public RollCardFile, public testing::WithParamInterface<Mistake> {};

TEST_P(RollCardMistakes, AreNamedWithTheirLine) {
  EXPECT_EQ(complaint(GetParam().text), GetParam().complaint);
}

constexpr const char* time_expected =
    ":3: development.time must be minutes and seconds such as \"9:30\"";

INSTANTIATE_TEST_SUITE_P(
    Each, RollCardMistakes,
    testing::Values(
        Mistake{"NoName", "film = \"x\"\n",
                ": name is missing: it must be the roll's name in quotes"},
        Mistake{"EmptyName", "name = \"\"\n", ":1: name must be a text in quotes"},
        Mistake{"UnknownKey", "name = \"a\"\nfilmtype = \"cubic\"\n",
                ":2: filmtype is no key of a roll card: correct or remove it"},
        Mistake{"UnknownInTable", "name = \"a\"\n[fix]\nminutes = 5\n",
                ":3: fix.minutes is no key of a roll card: correct or remove it"},
        Mistake{"UnknownTable", "name = \"a\"\n[dev]\ntime = \"9:30\"\n",
                ":2: dev is no key of a roll card: correct or remove it"},
        Mistake{"TableIsText", "name = \"a\"\nfix = \"rapid\"\n",
                ":2: fix must be a table of its own, headed [fix]"},
        Mistake{"TimeAsNumber", "name = \"a\"\n[development]\ntime = 9.5\n", time_expected},
        Mistake{"TimeOfDay", "name = \"a\"\n[development]\ntime = 09:30:00\n", time_expected},
        Mistake{"SixtySeconds", "name = \"a\"\n[development]\ntime = \"9:60\"\n", time_expected},
        Mistake{"OneDigit", "name = \"a\"\n[development]\ntime = \"9:3\"\n", time_expected},
        Mistake{"NegativeTime", "name = \"a\"\n[development]\ntime = \"-9:30\"\n", time_expected},
        Mistake{"NoTime", "name = \"a\"\n[development]\ntime = \"0:00\"\n", time_expected},
        Mistake{"Fahrenheit", "name = \"a\"\n[development]\ntemperature_c = 68\n",
                ":3: development.temperature_c must be degrees Celsius, 10 to 40"},
        Mistake{"TemperatureAsText", "name = \"a\"\n[development]\ntemperature_c = \"20\"\n",
                ":3: development.temperature_c must be degrees Celsius, 10 to 40"},
        Mistake{"NotANumber", "name = \"a\"\nexposure_index = nan\n",
                ":2: exposure_index must be an exposure index, more than 0"},
        Mistake{"ZeroIndex", "name = \"a\"\nexposure_index = 0\n",
                ":2: exposure_index must be an exposure index, more than 0"},
        Mistake{"FilmType", "name = \"a\"\nfilm_type = \"flat\"\n",
                ":2: film_type must be one of \"cubic\", \"tabular\", \"chromogenic\""},
        Mistake{"PrintWith", "name = \"a\"\nprint_with = 1\n",
                ":2: print_with must be one of \"diffusion\", \"condenser\", \"scan\""},
        Mistake{"FixKind", "name = \"a\"\n[fix]\nkind = \"slow\"\n",
                ":3: fix.kind must be one of \"rapid\", \"plain\", \"hardening\""},
        Mistake{"NoSuchDay", "name = \"a\"\ndeveloped = \"2026-02-30\"\n",
                ":2: developed must be a date such as 2026-05-31"},
        Mistake{"DayFirst", "name = \"a\"\nexpiry = \"31.5.2026\"\n",
                ":2: expiry must be a date such as 2026-05-31"},
        Mistake{"TwoTints", "name = \"a\"\nbase_tint = [0.2, 0.3]\n",
                ":2: base_tint must be three densities, red, green and blue, 0 to 1 each"},
        Mistake{"FourTints", "name = \"a\"\nbase_tint = [0.2, 0.3, 0.2, 0.1]\n",
                ":2: base_tint must be three densities, red, green and blue, 0 to 1 each"},
        Mistake{"DenseTint", "name = \"a\"\nbase_tint = [\n0.2,\n1.3, 0.2]\n",
                ":4: base_tint must be three densities, red, green and blue, 0 to 1 each"},
        Mistake{"HalfFill", "name = \"a\"\n[wash]\nfills = [5, 10.5]\n",
                ":3: wash.fills must be a list of whole numbers, inversions of each fill, such as "
                "[5, 10, 20]"},
        Mistake{"NegativeRolls", "name = \"a\"\n[fix]\nrolls_before = -1\n",
                ":3: fix.rolls_before must be a whole number, 0 or more"},
        Mistake{"TwoAims", "name = \"a\"\naim_contrast_index = 0.6\naim_like = \"b\"\n",
                ":3: aim_like and aim_contrast_index exclude each other: keep one"},
        Mistake{"StopsAndTimes",
                "name = \"a\"\n[target]\nkind = \"bracket\"\nstops = [0, 1]\n"
                "times = [\"1/60\", \"1/30\"]\n",
                ":5: target.times and stops exclude each other: keep one"},
        Mistake{"MeteredTimeOfStops",
                "name = \"a\"\n[target]\nkind = \"bracket\"\nstops = [0, 1]\n"
                "metered_time = \"1/60\"\n",
                ":5: target.metered_time belongs to times: remove it, or tell times instead of "
                "stops"},
        Mistake{"NoShutterTime",
                "name = \"a\"\n[target]\nkind = \"bracket\"\ntimes = [\"1/60\", \"soon\"]\n",
                ":4: target.times must be a list of two or more times, such as [\"1/60\", "
                "\"1/8\", \"2\"]"},
        Mistake{"NoMeteredTone", "name = \"a\"\n[[metered]]\nframe = 4\nzone = 3\n",
                ":2: metered.tone is missing: it must be one of \"shadow\", \"middle\", "
                "\"highlight\""},
        Mistake{"MeteredIsNoList", "name = \"a\"\nmetered = 3\n",
                ":2: metered must be tables of their own, headed [[metered]]"},
        Mistake{"NoTargetKind", "name = \"a\"\n[target]\nstops = [-5, 0]\n",
                ":2: target.kind is missing: it must be one of \"bracket\", \"exposed-wedge\""},
        Mistake{"NoStops", "name = \"a\"\n[target]\nkind = \"bracket\"\n",
                ":2: target.stops is missing: it must be a list of two or more stops, such as "
                "[-5, 0]"},
        Mistake{"OneStop", "name = \"a\"\n[target]\nkind = \"bracket\"\nstops = [1]\n",
                ":4: target.stops must be a list of two or more stops, such as [-5, 0]"},
        Mistake{"WedgeWithStops",
                "name = \"a\"\n[target]\nkind = \"exposed-wedge\"\nreference = \"w.csv\"\n"
                "stops = [1, 2]\n",
                ":5: target.stops belongs to kind = \"bracket\": remove it here"},
        Mistake{"NoReference", "name = \"a\"\n[target]\nkind = \"exposed-wedge\"\n",
                ":2: target.reference is missing: it must be the name of the wedge's table, such "
                "as \"wedge.csv\""}),
    [](const auto& test) { return test.param.title; });

TEST_F(RollCardFile, SyntaxErrorsGiveTheLine) {
  const std::string message = complaint("name = \"a\"\n[development]\ntime = 9:30\n");
  EXPECT_THAT(message, testing::StartsWith(":3: this isn't TOML ("));
  EXPECT_THAT(message, testing::EndsWith("texts and times in quotes"));
}

TEST_F(RollCardFile, ForeignFilesAreRefused) {
  EXPECT_THAT(complaint(std::string(300000, 'x')), testing::HasSubstr("larger than 256 kB"));
  EXPECT_THAT(complaint(std::string("\x89PNG\r\n\x1a\n\0\0", 10)),
              testing::HasSubstr("this isn't TOML"));
  EXPECT_THAT(complaint(""), testing::HasSubstr("name is missing"));
}

TEST(RollCardFileAbsent, SaysSo) {
  const std::string path = testing::TempDir() + "no-such-card.toml";
  EXPECT_THAT([&] { return read_roll_card(path); },
              testing::ThrowsMessage<FileError>(testing::HasSubstr("can't be read")));
  EXPECT_THAT([&] { return read_roll_card(testing::TempDir()); },
              testing::ThrowsMessage<FileError>(testing::HasSubstr("can't be read")));
}

}  // namespace
}  // namespace fogline
