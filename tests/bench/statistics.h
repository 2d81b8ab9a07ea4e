// What the tables print: shares with their sampling error, percentiles.
#pragma once

#include "scan_case.h"

#include <string>
#include <vector>

namespace bench {

double percentile(std::vector<double> values, double share);

/// "97.3 % (95.9 to 98.2, n 1040)": a share and its Wilson 95 % interval (Wilson 1927).
std::string share_text(int hits, int count);

/// Error and coverage of one kind of number.
struct Spread {
  int count = 0;
  int covered = 0;
  int bounds = 0;  // told as "at least"
  std::vector<double> errors;
  std::vector<double> widths;

  void add(const Compared& compared);
};

/// Whether u95 covers often enough: at least 93 %, judged from a hundred scans on.
bool covers_enough(const Spread& spread);

/// One row: name, n, median and 95th percentile of |error|, mean u95, lower bounds, coverage, share
/// of errors within that of the head.
void print_spread(const std::string& name, const Spread& spread, double within);
void print_spread_head(const std::string& title, double within);

void print_goal(const std::string& goal, bool met);

}  // namespace bench
