// Reproducible random numbers: the same seed gives the same film on every machine, which the
// distributions of the standard library don't promise.
#pragma once

#include <cstdint>

namespace filmsim {

class Random {
 public:
  /// Different streams of one seed are independent, so adding a draw in one place doesn't shift
  /// every draw after it elsewhere.
  explicit Random(std::uint64_t seed, std::uint64_t stream = 0);

  std::uint64_t next();
  double uniform();                         ///< in [0, 1)
  double uniform(double low, double high);  ///< in [low, high)
  int integer(int low, int high);           ///< low and high included
  bool chance(double probability);
  double normal(double mean, double sd);  ///< Box-Muller, exact
  double log_uniform(double low, double high);

  /// Nearly normal (sum of four 16-bit uniforms, tails end at 3.5 sd), for noise by the megapixel.
  float quick_normal();

 private:
  std::uint64_t state_;
};

/// A seed for a part (strip, frame, plane) of something that has a seed.
std::uint64_t derived_seed(std::uint64_t seed, std::uint64_t part);

}  // namespace filmsim
