#include "cause_scores.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bench {

namespace {

constexpr double told_from = 0.5;
/// Findings below this aren't said.
constexpr double said_from = 0.1;

std::size_t top_of(const CauseShares& shares) {
  return static_cast<std::size_t>(std::max_element(shares.begin(), shares.end()) - shares.begin());
}

double binomial_sd(double share, std::size_t count) {
  return count == 0 ? 0.0 : std::sqrt(share * (1.0 - share) / static_cast<double>(count));
}

}  // namespace

CauseShares shares_of(const fogline::CauseProbabilities& causes) {
  return {causes.normal, causes.under_exposed, causes.over_exposed, causes.under_developed,
          causes.over_developed};
}

std::size_t true_cause(const filmsim::RollFaults& faults) {
  constexpr double aim = 0.58;
  constexpr double tolerance = 0.05;
  constexpr double latitude_stops = 0.667;
  // Net density of the middle tone: 0.70; of a stop there: 0.30103 x 0.58.
  constexpr double middle = 0.70;
  constexpr double a_stop = 0.30103 * aim;
  const double light = faults.exposure_error_stops;
  const double contrast = faults.contrast_index - aim;
  const bool light_off = std::abs(light) > latitude_stops;
  const bool time_off = std::abs(contrast) > tolerance;
  if (!light_off && !time_off) {
    return 0;
  }
  const bool light_leads =
      light_off && (!time_off || std::abs(light) * a_stop > middle * std::abs(contrast) / aim);
  if (light_leads) {
    return light < 0.0 ? 1 : 2;
  }
  return contrast < 0.0 ? 3 : 4;
}

CauseScore score(const std::vector<CauseCase>& cases) {
  CauseScore sum;
  std::size_t told = 0;
  for (const CauseCase& each : cases) {
    const std::size_t top = top_of(each.said);
    const bool right = top == each.truth;
    sum.top_right += right ? 1.0 : 0.0;
    if (each.said[top] < told_from) {
      sum.cant_tell += 1.0;
    } else {
      ++told;
      sum.told_right += right ? 1.0 : 0.0;
    }
    for (std::size_t c = 0; c < cause_count; ++c) {
      const double off = each.said[c] - (c == each.truth ? 1.0 : 0.0);
      sum.brier += off * off;
    }
    constexpr double least = 1e-4;
    sum.log_score -= std::log(std::max(least, each.said[each.truth]));
  }
  const auto count = static_cast<double>(std::max<std::size_t>(1, cases.size()));
  sum.top_right /= count;
  sum.cant_tell /= count;
  sum.brier /= count;
  sum.log_score /= count;
  sum.told_right /= static_cast<double>(std::max<std::size_t>(1, told));
  sum.cases = cases.size();
  return sum;
}

void print_score(const char* name, const CauseScore& s) {
  std::printf(
      "  %-34s %6zu  top right %5.1f +- %3.1f %%  Brier %.3f  log %.3f  can't tell %4.1f %%"
      "  right where told %5.1f %%\n",
      name, s.cases, 100.0 * s.top_right, 100.0 * binomial_sd(s.top_right, s.cases), s.brier,
      s.log_score, 100.0 * s.cant_tell, 100.0 * s.told_right);
}

std::vector<Said> all_said(const std::vector<CauseCase>& cases) {
  std::vector<Said> said;
  for (const CauseCase& each : cases) {
    for (std::size_t c = 0; c < cause_count; ++c) {
      if (each.said[c] >= said_from) {
        said.push_back({each.said[c], c == each.truth});
      }
    }
  }
  return said;
}

void print_reliability(const char* name, const std::vector<Said>& said) {
  std::printf("  %s: said at, cases, mean said, so\n", name);
  for (int bin = 1; bin < 10; ++bin) {
    const double low = 0.1 * bin;
    const double high = bin == 9 ? 1.01 : low + 0.1;
    double sum = 0.0;
    double so = 0.0;
    std::size_t count = 0;
    for (const Said& each : said) {
      if (each.confidence >= low && each.confidence < high) {
        sum += each.confidence;
        so += each.so ? 1.0 : 0.0;
        ++count;
      }
    }
    if (count > 0) {
      const double share = so / static_cast<double>(count);
      std::printf("    %.1f-%.1f %6zu  %4.1f %%  %5.1f +- %3.1f %%\n", low, std::min(high, 1.0),
                  count, 100.0 * sum / static_cast<double>(count), 100.0 * share,
                  100.0 * binomial_sd(share, count));
    }
  }
}

void print_confusion(const std::vector<CauseCase>& cases) {
  std::array<std::array<int, cause_count>, cause_count> table{};
  for (const CauseCase& each : cases) {
    ++table[each.truth][top_of(each.said)];
  }
  std::printf("  true \\ said      ");
  for (const char* name : cause_names) {
    std::printf(" %15s", name);
  }
  std::printf("\n");
  for (std::size_t t = 0; t < cause_count; ++t) {
    std::printf("  %-16s ", cause_names[t]);
    for (const int count : table[t]) {
      std::printf(" %15d", count);
    }
    std::printf("\n");
  }
}

}  // namespace bench
