#include "tint_limit.h"

#include "simulator/random.h"
#include "simulator/roll_sampling.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace bench {

namespace {

using Colour = std::array<double, 2>;

struct Sample {
  TintFamily family = TintFamily::clean;
  double amount = 0.0;
  Colour veil{};  // of the tint alone
  Colour seen{};  // with the base's own colour
};

/// Blue against red, green against both: where the noise of the channels is alike, that of these
/// two is too.
Colour colour_of(const filmsim::Rgb& rgb) {
  return {(rgb[2] - rgb[0]) / std::sqrt(2.0), (2.0 * rgb[1] - rgb[0] - rgb[2]) / std::sqrt(6.0)};
}

Sample sampled(bool tinted, std::uint64_t seed) {
  filmsim::Random random(seed, 5);
  filmsim::FilmStock stock = filmsim::sample_stock(filmsim::FilmFormat::k135, random);
  Sample sample;
  filmsim::FilmStock veil;
  if (tinted) {
    filmsim::add_random_tint(veil, random);
  }
  filmsim::Rgb sum{};
  filmsim::Rgb all{};
  for (std::size_t c = 0; c < sum.size(); ++c) {
    sum[c] = veil.dye_left[c] + veil.yellow_stain[c] + veil.haze[c];
    all[c] = sum[c] + stock.base[c];
  }
  sample.amount = *std::max_element(sum.begin(), sum.end());
  sample.veil = colour_of(sum);
  sample.seen = colour_of(all);
  if (veil.dye_left[0] > veil.dye_left[1]) {
    sample.family = TintFamily::blue_dye;
  } else if (veil.dye_left[1] > 0.0) {
    sample.family = TintFamily::pink_dye;
  } else if (veil.yellow_stain[2] > 0.0) {
    sample.family = TintFamily::yellow;
  } else if (veil.haze[2] > 0.0) {
    sample.family = TintFamily::haze;
  }
  return sample;
}

/// Likelihood of a colour with tint over that without: the base's spread is normal.
double likelihood_ratio(const Colour& seen, const std::vector<Sample>& tints) {
  constexpr double base_sd = 0.007;
  const auto density = [&](const Colour& veil) {
    const double x = (seen[0] - veil[0]) / base_sd;
    const double y = (seen[1] - veil[1]) / base_sd;
    return std::exp(-0.5 * (x * x + y * y));
  };
  double sum = 0.0;
  for (const Sample& tint : tints) {
    sum += density(tint.veil);
  }
  return sum / static_cast<double>(tints.size()) / std::max(1e-300, density({0.0, 0.0}));
}

}  // namespace

int band_of(double amount) {
  return static_cast<int>(
      std::count_if(band_ends.begin(), band_ends.end(), [&](double end) { return amount > end; }));
}

std::array<std::array<double, bands>, tint_families> seen_at_best() {
  constexpr std::uint64_t model = 3000;
  constexpr std::uint64_t drawn = 4000;
  constexpr double false_alarms = 0.01;
  std::vector<Sample> tints;
  for (std::uint64_t seed = 1; seed <= model; ++seed) {
    const Sample tint = sampled(true, seed);
    if (tint.family != TintFamily::clean) {  // image stain doesn't show in clear film
      tints.push_back(tint);
    }
  }
  std::vector<double> clean;
  for (std::uint64_t seed = 1; seed <= drawn; ++seed) {
    clean.push_back(likelihood_ratio(sampled(false, model + seed).seen, tints));
  }
  std::sort(clean.begin(), clean.end());
  const double threshold = clean[static_cast<std::size_t>((1.0 - false_alarms) * drawn)];
  std::array<std::array<double, bands>, tint_families> seen{};
  std::array<std::array<double, bands>, tint_families> count{};
  for (std::uint64_t seed = 1; seed <= drawn; ++seed) {
    const Sample tint = sampled(true, model + drawn + seed);
    const auto family = static_cast<std::size_t>(tint.family);
    const auto band = static_cast<std::size_t>(band_of(tint.amount));
    count[family][band] += 1.0;
    seen[family][band] += likelihood_ratio(tint.seen, tints) > threshold ? 1.0 : 0.0;
  }
  for (std::size_t f = 0; f < seen.size(); ++f) {
    for (std::size_t b = 0; b < seen[f].size(); ++b) {
      seen[f][b] = count[f][b] > 0.0 ? seen[f][b] / count[f][b] : NAN;
    }
  }
  return seen;
}

}  // namespace bench
