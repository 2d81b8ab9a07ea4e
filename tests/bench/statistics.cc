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

void print_spread_head(const std::string& title) {
  std::printf("\n%-34s %6s %8s %8s %8s %7s  %s\n", title.c_str(), "n", "|err|50", "|err|95",
              "mean u95", "bounds", "u95 covers");
}

void print_spread(const std::string& name, const Spread& spread) {
  if (spread.count == 0) {
    return;
  }
  double width = 0.0;
  for (const double w : spread.widths) {
    width += w / static_cast<double>(spread.widths.size());
  }
  std::printf("%-34s %6d %8.4f %8.4f %8.4f %7d  %s\n", name.c_str(), spread.count,
              percentile(spread.errors, 0.5), percentile(spread.errors, 0.95), width, spread.bounds,
              share_text(spread.covered, spread.count).c_str());
}

void print_goal(const std::string& goal, bool met) {
  std::printf("  goal: %-66s %s\n", goal.c_str(), met ? "met" : "MISSED");
}

}  // namespace bench
