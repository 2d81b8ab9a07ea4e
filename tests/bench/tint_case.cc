#include "tint_case.h"

#include "compare.h"
#include "simulator/random.h"
#include "simulator/render.h"
#include "simulator/roll_sampling.h"
#include "simulator/scenario_sampling.h"
#include "tables/shipped_knowledge.h"

#include <fogline/pixels/open_scan.h>
#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <filesystem>

namespace bench {

namespace {

void take_tints_off(filmsim::FilmStock& stock) {
  stock.dye_left = stock.yellow_stain = stock.haze = stock.image_stain = {};
}

void tell_family(const filmsim::FilmStock& stock, TintCase& result) {
  const auto most = [](const filmsim::Rgb& rgb) {
    return *std::max_element(rgb.begin(), rgb.end());
  };
  if (most(stock.dye_left) > 0.0) {
    result.family =
        stock.dye_left[0] > stock.dye_left[1] ? TintFamily::blue_dye : TintFamily::pink_dye;
    result.amount = most(stock.dye_left);
  } else if (most(stock.yellow_stain) > 0.0) {
    result.family = TintFamily::yellow;
    result.amount = most(stock.yellow_stain);
  } else if (most(stock.haze) > 0.0) {
    result.family = TintFamily::haze;
    result.amount = most(stock.haze);
  } else if (most(stock.image_stain) > 0.0) {
    result.family = TintFamily::image_stain;
    result.amount = stock.image_stain[2];
  }
}

std::array<double, 2> colour_of(double red, double green, double blue) {
  return {blue - red, green - 0.5 * (red + blue)};
}

void compare_colour(const filmsim::Simulated& simulated, const fogline::ScanMeasurement& scan,
                    TintCase& result) {
  if (!scan.base_fog || !scan.base_fog->channels) {
    return;
  }
  const auto& read = *scan.base_fog->channels;
  const filmsim::ChannelDensities& truth = simulated.truth.strips.front().base_fog;
  const auto seen = colour_of(read[0].value, read[1].value, read[2].value);
  const auto is = colour_of(truth.red, truth.green, truth.blue);
  result.colour_error = {seen[0] - is[0], seen[1] - is[1]};
}

}  // namespace

const char* family_name(TintFamily family) {
  constexpr std::array<const char*, tint_families> names{
      "clean", "sensitising dye", "anti-halation dye", "yellow stain", "fixer haze", "image stain"};
  return names[static_cast<std::size_t>(family)];
}

fogline::TintKind kind_of(TintFamily family) {
  switch (family) {
    case TintFamily::pink_dye:
    case TintFamily::blue_dye:
      return fogline::TintKind::dye_left;
    case TintFamily::yellow:
      return fogline::TintKind::yellow_stain;
    case TintFamily::haze:
      return fogline::TintKind::fixer_haze;
    case TintFamily::image_stain:
      return fogline::TintKind::image_stain;
    case TintFamily::clean:
      break;
  }
  return fogline::TintKind::none;
}

TintCase run_tint_case(std::uint64_t seed, bool tinted, const std::string& folder) {
  constexpr std::uint64_t tint_part = 77;
  filmsim::Scenario scenario = filmsim::sample_scenario("tiny", seed);
  scenario.encoding.channels = 3;
  filmsim::FilmStock stock = scenario.strips.front().stock;
  take_tints_off(stock);
  if (tinted) {
    filmsim::Random random(seed, tint_part);
    filmsim::add_random_tint(stock, random);
  }
  for (filmsim::StripPlan& strip : scenario.strips) {
    strip.stock = stock;
  }
  const filmsim::Simulated simulated = filmsim::render(std::move(scenario));
  TintCase result;
  result.seed = seed;
  ScanCase described;
  describe(simulated, described);
  result.device = described.device;
  result.bits = described.bits;
  tell_family(stock, result);
  const std::string path = filmsim::write_scan(
      simulated, folder + "/tint-" + std::to_string(seed) + (tinted ? "-tinted" : "-clean"));
  try {
    for (std::size_t known = 0; known < result.measured.size(); ++known) {
      fogline::MeasureOptions options = fogline::shipped_options();
      if (known == 1) {
        options.base_tint =
            fogline::PerChannel<double>{stock.base[0], stock.base[1], stock.base[2]};
      }
      const auto source = fogline::open_scan(path, {});
      const fogline::ScanMeasurement scan =
          fogline::measure_roll(*source, options).measurement.scans.front();
      result.measured[known] = scan.tint;
      if (known == 0) {
        compare_colour(simulated, scan, result);
      }
    }
  } catch (const std::exception& error) {
    result.trouble = error.what();
  }
  std::filesystem::remove(path);
  std::filesystem::path truth(path);
  std::filesystem::remove(truth.replace_extension(".truth.json"));
  return result;
}

}  // namespace bench
