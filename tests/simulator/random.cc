#include "simulator/random.h"

#include <cmath>
#include <numbers>

namespace filmsim {
namespace {

// SplitMix64 (Steele, Lea, Flood 2014): one multiply-xor chain, passes the usual batteries, and
// its whole state is one word.
constexpr std::uint64_t kGolden = 0x9e3779b97f4a7c15ULL;

std::uint64_t mixed(std::uint64_t z) {
  z = (z ^ (z >> 30U)) * 0xbf58476d1ce4e5b9ULL;
  z = (z ^ (z >> 27U)) * 0x94d049bb133111ebULL;
  return z ^ (z >> 31U);
}

}  // namespace

Random::Random(std::uint64_t seed, std::uint64_t stream) : state_(derived_seed(seed, stream)) {}

std::uint64_t Random::next() {
  state_ += kGolden;
  return mixed(state_);
}

double Random::uniform() {
  return static_cast<double>(next() >> 11U) * 0x1.0p-53;
}

double Random::uniform(double low, double high) {
  return low + (high - low) * uniform();
}

int Random::integer(int low, int high) {
  return low + static_cast<int>(uniform() * static_cast<double>(high - low + 1));
}

bool Random::chance(double probability) {
  return uniform() < probability;
}

double Random::normal(double mean, double sd) {
  const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
  return mean + sd * radius * std::cos(2.0 * std::numbers::pi * uniform());
}

double Random::log_uniform(double low, double high) {
  return low * std::pow(high / low, uniform());
}

float Random::quick_normal() {
  const std::uint64_t word = next();
  const std::uint64_t sum =
      (word & 0xffffU) + ((word >> 16U) & 0xffffU) + ((word >> 32U) & 0xffffU) + (word >> 48U);
  // Four uniforms on 0..65535: mean 131070, variance 4 * 65536^2 / 12.
  constexpr float kScale = 1.7320508F / 65536.0F;
  return (static_cast<float>(sum) - 131070.0F) * kScale;
}

std::uint64_t derived_seed(std::uint64_t seed, std::uint64_t part) {
  return mixed(mixed(seed + kGolden) + (part + 1) * kGolden);
}

}  // namespace filmsim
