#include "statistics.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bench {

double percentile(std::vector<double> values, double share) {
  if (values.empty()) {
    return NAN;
  }
  std::sort(values.begin(), values.end());
  const auto last = static_cast<double>(values.size() - 1);
  return values[static_cast<std::size_t>(std::lround(share * last))];
}

std::string share_text(int hits, int count) {
  if (count == 0) {
    return "no case";
  }
  constexpr double z = 1.96;
  const double n = count;
  const double p = hits / n;
  const double middle = (p + z * z / (2.0 * n)) / (1.0 + z * z / n);
  const double half = z / (1.0 + z * z / n) * std::sqrt(p * (1.0 - p) / n + z * z / (4.0 * n * n));
  char text[96];
  std::snprintf(text, sizeof text, "%5.1f %% (%.1f to %.1f, n %d)", 100.0 * p,
                100.0 * (middle - half), 100.0 * (middle + half), count);
  return text;
}

void Spread::add(const Compared& compared) {
  ++count;
  covered += compared.covers() ? 1 : 0;
  if (compared.at_least) {
    ++bounds;
    return;
  }
  errors.push_back(std::abs(compared.error()));
  widths.push_back(compared.u95);
}

bool covers_enough(const Spread& spread) {
  constexpr int judged_from = 100;
  constexpr double least_cover = 0.93;
  return spread.count < judged_from || spread.covered >= least_cover * spread.count;
}

void print_spread_head(const std::string& title, double within) {
  std::printf("\n%-43s %5s %8s %8s %8s %6s  %-32s  |err| <= %.2f\n", title.c_str(), "n", "|err|50",
              "|err|95", "mean u95", "bounds", "u95 covers", within);
}

void print_spread(const std::string& name, const Spread& spread, double within) {
  if (spread.count == 0) {
    return;
  }
  double width = 0.0;
  for (const double w : spread.widths) {
    width += w / static_cast<double>(spread.widths.size());
  }
  const auto near = std::count_if(spread.errors.begin(), spread.errors.end(),
                                  [&](double error) { return error <= within; });
  std::printf("%-43s %5d %8.4f %8.4f %8.4f %6d  %-32s  %s\n", name.c_str(), spread.count,
              percentile(spread.errors, 0.5), percentile(spread.errors, 0.95), width, spread.bounds,
              share_text(spread.covered, spread.count).c_str(),
              share_text(static_cast<int>(near), static_cast<int>(spread.errors.size())).c_str());
}

void print_goal(const std::string& goal, bool met) {
  std::printf("  goal: %-66s %s\n", goal.c_str(), met ? "goal met" : "goal MISSED");
}

}  // namespace bench
