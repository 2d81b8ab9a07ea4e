#include "advice_limit.h"

#include <cmath>

namespace bench {
namespace {

double normal_below(double z) {
  return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

struct Alternative {
  double weight;
  Person person;
};

}  // namespace

double landing_chance(double contrast, double aim, double tolerance) {
  if (contrast <= 0.0) {
    return 0.0;
  }
  const double sd = true_scatter_share * contrast;
  return normal_below((aim + tolerance - contrast) / sd) -
         normal_below((aim - tolerance - contrast) / sd);
}

AdviceLimit::Best AdviceLimit::best(const Person& person, bool type_known, const ContrastRead& read,
                                    double aim, double tolerance) const {
  filmsim::Random random(4242);
  std::vector<Alternative> alternatives;
  double total = 0.0;
  Best found;
  for (int i = 0; i < people_; ++i) {
    // Who sets this time at this temperature has this published time: the chart is public.
    Person other = person;
    if (!type_known) {
      other.tabular = random.chance(0.35);
    }
    draw_habits(random, other);
    const double roll = other.contrast(person.time_min, person.temperature_c) *
                        std::exp(random.normal(0.0, true_scatter_share));
    const double off = std::log(read.reading / roll) / read.reading_sd_share;
    const double weight = std::exp(-0.5 * off * off);
    total += weight;
    found.contrast += weight * roll;
    if (weight > 1e-4) {
      alternatives.push_back({weight, other});
    }
  }
  found.contrast /= total;
  double greatest = -1.0;
  for (double share = 0.5; share <= 2.0; share += 0.025) {
    const double minutes = share * person.time_min;
    double chance = 0.0;
    for (const Alternative& other : alternatives) {
      chance += other.weight * landing_chance(other.person.contrast(minutes, person.temperature_c),
                                              aim, tolerance);
    }
    if (chance > greatest) {
      greatest = chance;
      found.minutes = minutes;
    }
  }
  return found;
}

}  // namespace bench
