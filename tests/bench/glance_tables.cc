#include "statistics.h"
#include "tables.h"

#include <algorithm>
#include <cstdio>
#include <functional>
#include <map>

namespace bench {

namespace {

constexpr int name_width = 40;
constexpr int column_width = 34;

struct Share {
  int hits = 0;
  int count = 0;
};

using Cases = std::vector<ScanCase>;
using Counting = std::function<Share(const ScanCase&)>;

bool readable(const ScanCase& scan) {
  return scan.expected_fitness != "unfit";
}

bool was_read(const ScanCase& scan) {
  return scan.read && scan.fitness != "unfit" && scan.fitness != "marks-only";
}

Share one(bool counts, bool hit) {
  return {counts && hit ? 1 : 0, counts ? 1 : 0};
}

std::vector<std::pair<const char*, Counting>> share_rows() {
  return {
      {"readable scans read", [](const ScanCase& s) { return one(readable(s), was_read(s)); }},
      {"fit scans read from the light path",
       [](const ScanCase& s) {
         return one(s.expected_fitness == "fit", was_read(s) && s.fitness != "relative");
       }},
      {"unfit scans refused", [](const ScanCase& s) { return one(!readable(s), !was_read(s)); }},
      {"film found", [](const ScanCase& s) { return one(readable(s), s.glance.film_found); }},
      {"whole perforations within 2",
       [](const ScanCase& s) {
         return one(readable(s) && s.glance.holes_whole > 0, s.glance.holes_right());
       }},
      {"whole frames at IoU >= 0.8",
       [](const ScanCase& s) {
         return readable(s) ? Share{s.glance.frames_found, s.frames_to_find} : Share{};
       }},
      {"base plus fog within u95",
       [](const ScanCase& s) {
         return one(readable(s) && s.base_fog, s.base_fog && s.base_fog->covers());
       }},
      {"scans without an invented frame",
       [](const ScanCase& s) { return one(true, s.glance.frames_invented == 0); }},
      {"scans without an impossible number",
       [](const ScanCase& s) { return one(true, s.glance.impossible.empty()); }},
      {"scans without a wrong tint for sure",
       [](const ScanCase& s) { return one(true, s.glance.wrong_tints.empty()); }},
  };
}

Share total(const Cases& cases, const Counting& counting) {
  Share sum;
  for (const ScanCase& scan : cases) {
    const Share share = counting(scan);
    sum.hits += share.hits;
    sum.count += share.count;
  }
  return sum;
}

double worst(const Cases& cases, double ScanCase::*member) {
  double most = 0.0;
  for (const ScanCase& scan : cases) {
    most = std::max(most, scan.*member);
  }
  return most;
}

void print_worst(const char* name, const std::vector<NamedCases>& columns,
                 double ScanCase::*member) {
  std::printf("%-*s", name_width, name);
  for (const NamedCases& column : columns) {
    char text[32];
    std::snprintf(text, sizeof text, "%.1f", worst(*column.cases, member));
    std::printf(" %-*s", column_width, text);
  }
  std::printf("\n");
}

/// What went wrong at a glance; empty where nothing did.
std::string glance_misses(const ScanCase& scan) {
  const Glance& glance = scan.glance;
  std::string what = scan.read ? "" : " unread: " + scan.trouble + ";";
  if (readable(scan) != was_read(scan)) {
    what += " expected " + scan.expected_fitness + ", is " + scan.fitness + ";";
  }
  if (readable(scan) && !glance.film_found) {
    what += " film not found;";
  }
  if (readable(scan) && !glance.holes_right()) {
    what += " holes " + std::to_string(glance.holes_told) + " of " +
            std::to_string(glance.holes_whole) + " and " + std::to_string(glance.holes_partly) +
            " in part;";
  }
  if (readable(scan) && glance.frames_found < scan.frames_to_find) {
    what += " frames " + std::to_string(glance.frames_found) + " of " +
            std::to_string(scan.frames_to_find) + ";";
  }
  if (glance.frames_invented > 0) {
    what += " invented " + std::to_string(glance.frames_invented) + ";";
  }
  if (scan.base_fog && !scan.base_fog->covers()) {
    char text[96];
    std::snprintf(text, sizeof text, " base plus fog %.3f +- %.3f is %.3f;", scan.base_fog->value,
                  scan.base_fog->u95, scan.base_fog->truth);
    what += text;
  }
  for (const std::string& number : glance.impossible) {
    what += " impossible: " + number + ";";
  }
  for (const std::string& tint : glance.wrong_tints) {
    what += " wrong tint: " + tint + ";";
  }
  return what;
}

}  // namespace

void print_glance(const std::vector<NamedCases>& columns) {
  std::printf("\n=== AT A GLANCE ===\n%-*s", name_width, "");
  for (const NamedCases& column : columns) {
    std::printf(" %-*s", column_width, column.name);
  }
  std::printf("\n");
  for (const auto& [name, counting] : share_rows()) {
    std::printf("%-*s", name_width, name);
    for (const NamedCases& column : columns) {
      const Share share = total(*column.cases, counting);
      std::printf(" %-*s", column_width, share_text(share.hits, share.count).c_str());
    }
    std::printf("\n");
  }
  print_worst("worst time, s", columns, &ScanCase::measure_s);
  print_worst("peak memory of a process, MB (0: unknown)", columns, &ScanCase::peak_mb);
}

void print_base_fog_by_class(const std::vector<ScanCase>& cases) {
  constexpr double base_goal_density = 0.02;
  std::map<std::string, Spread> classes;
  for (const ScanCase& scan : cases) {
    if (scan.base_fog) {
      classes[scan.name.kind].add(*scan.base_fog);
      classes[scan.fitness + (scan.finished ? ", finished picture" : ", scanner")].add(
          *scan.base_fog);
    }
  }
  print_spread_head("base plus fog, foreign", base_goal_density);
  for (const auto& [name, spread] : classes) {
    print_spread(name, spread, base_goal_density);
  }
}

void print_glance_misses(const std::vector<ScanCase>& cases) {
  std::printf("\nforeign cases to look at (simulate_scan --kind KIND --seed SEED)\n");
  for (const ScanCase& scan : cases) {
    const std::string what = glance_misses(scan);
    if (!what.empty()) {
      std::printf("%s %llu:%s\n", scan.name.kind.c_str(),
                  static_cast<unsigned long long>(scan.name.seed), what.c_str());
    }
  }
}

}  // namespace bench
