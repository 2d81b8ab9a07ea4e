#include "statistics.h"
#include "tables.h"

#include <array>
#include <cmath>
#include <cstdio>
#include <map>

namespace bench {

void print_frames(const std::vector<ScanCase>& cases) {
  std::map<std::string, std::pair<int, int>> by_kind;
  int to_find = 0;
  int found = 0;
  int invented = 0;
  int doubled = 0;
  int blanks = 0;
  int right = 0;
  int wrong = 0;
  int scans = 0;
  for (const ScanCase& scan : cases) {
    if (scan.expected_fitness == "unfit") {
      continue;
    }
    ++scans;
    by_kind[scan.name.kind].first += scan.frames_found;
    by_kind[scan.name.kind].second += scan.frames_to_find;
    to_find += scan.frames_to_find;
    found += scan.frames_found;
    invented += scan.frames_invented;
    doubled += scan.frames_doubled;
    blanks += scan.blanks_true;
    right += scan.blanks_right;
    wrong += scan.blanks_wrong;
  }
  std::printf("\nframes whose border shows, found at IoU >= 0.9\n");
  for (const auto& [kind, counts] : by_kind) {
    if (counts.second > 0) {
      std::printf("%-34s %s\n", kind.c_str(), share_text(counts.first, counts.second).c_str());
    }
  }
  std::printf("%-34s %s\n", "all", share_text(found, to_find).c_str());
  std::printf(
      "invented %d, one frame told as two %d, in %d scans; frames inferred rightly %d (whole "
      "blank ones there are %d), wrongly %d\n",
      invented, doubled, scans, right, blanks, wrong);
  print_goal("frames found >= 99 %", found >= 0.99 * to_find);
  print_goal("no frame invented", invented == 0);
  print_goal("no frame told as two", doubled == 0);
}

namespace {

bool refused(const ScanCase& scan) {
  return !scan.read || scan.fitness == "unfit" || scan.fitness == "marks-only";
}

/// Rows: what the truth expects; columns: what was said.
void print_confusion(const std::vector<ScanCase>& cases) {
  constexpr std::array said{"measured",   "comparable", "indicative", "relative",
                            "marks-only", "unfit",      "unread"};
  std::map<std::string, std::map<std::string, int>> table;
  for (const ScanCase& scan : cases) {
    table[scan.expected_fitness][scan.read ? scan.fitness : "unread"] += 1;
  }
  std::printf("\nfitness   ");
  for (const char* fitness : said) {
    std::printf(" %10s", fitness);
  }
  std::printf("\n");
  for (auto& [expected, counts] : table) {
    std::printf("%-10s", expected.c_str());
    for (const char* fitness : said) {
      std::printf(" %10d", counts[fitness]);
    }
    std::printf("\n");
  }
}

}  // namespace

bool judged_as_expected(const ScanCase& scan) {
  if (scan.expected_fitness == "unfit") {
    return refused(scan);
  }
  const bool above_base = scan.fitness == "relative";
  return scan.expected_fitness == "relative" ? above_base : !refused(scan) && !above_base;
}

void print_fitness(const std::vector<ScanCase>& cases) {
  print_confusion(cases);
  std::map<std::string, int> count;
  std::map<std::string, int> hits;
  std::map<ToneVerdict, int> tone;
  int untold = 0;
  for (const ScanCase& scan : cases) {
    const std::string& expected = scan.expected_fitness;
    const bool open = scan.tone_verdict == ToneVerdict::left_open;
    if (scan.tone_verdict != ToneVerdict::told) {
      ++untold;
      tone[scan.tone_verdict] += 1;
    }
    // A curve that can't be told rightly ends without densities: no scan to be accepted.
    if (expected == "fit" && open) {
      continue;
    }
    ++count[expected];
    hits[expected] += judged_as_expected(scan) ? 1 : 0;
  }
  std::printf("unfit scans refused                %s\n",
              share_text(hits["unfit"], count["unfit"]).c_str());
  std::printf("fit scans read from the light path %s\n",
              share_text(hits["fit"], count["fit"]).c_str());
  std::printf("relative scans found relative      %s\n",
              share_text(hits["relative"], count["relative"]).c_str());
  std::printf("16 bits, curve untold: right %s, power read as sRGB %d, wrong %d, can't tell %d\n",
              share_text(tone[ToneVerdict::right], untold).c_str(), tone[ToneVerdict::near],
              tone[ToneVerdict::wrong], tone[ToneVerdict::left_open]);
}

void print_film(const std::vector<ScanCase>& cases) {
  int count = 0;
  int format = 0;
  int strips = 0;
  int with_holes = 0;
  int holes_right = 0;
  std::vector<double> scale;
  std::vector<double> rotation;
  std::vector<double> holes;
  for (const ScanCase& scan : cases) {
    if (scan.expected_fitness == "unfit") {
      continue;
    }
    ++count;
    format += scan.read && scan.format_right ? 1 : 0;
    strips += scan.read && scan.strips_right ? 1 : 0;
    if (scan.scale_error) {
      scale.push_back(std::abs(*scan.scale_error));
    }
    if (scan.rotation_error) {
      rotation.push_back(*scan.rotation_error);
    }
    if (scan.holes_whole > 0) {
      const int wrong = scan.holes_missed + scan.holes_surplus;
      ++with_holes;
      holes_right += wrong == 0 ? 1 : 0;
      holes.push_back(wrong);
    }
  }
  std::printf("\nfilm\nformat right       %s\nstrips counted     %s\n",
              share_text(format, count).c_str(), share_text(strips, count).c_str());
  std::printf("holes counted      %s; off by: 95th percentile %.0f, most %.0f\n",
              share_text(holes_right, with_holes).c_str(), percentile(holes, 0.95),
              percentile(holes, 1.0));
  std::printf("scale error        median %.3f %%, 95th percentile %.3f %%, most %.3f %%\n",
              100.0 * percentile(scale, 0.5), 100.0 * percentile(scale, 0.95),
              100.0 * percentile(scale, 1.0));
  std::printf("turn error         median %.2f deg, 95th percentile %.2f deg, most %.2f deg\n",
              percentile(rotation, 0.5), percentile(rotation, 0.95), percentile(rotation, 1.0));
}

void print_time(const std::vector<Timing>& timings, const std::vector<ScanCase>& cases) {
  std::printf(
      "\ntime of one measurement over libtiff's bare decode of the same file, page cache warm, "
      "best of three\n");
  for (const Timing& timing : timings) {
    std::printf("%-24s %5.0f MB  measure %6.2f s  bare decode %6.3f s  ratio %6.1f\n",
                timing.name.c_str(), timing.megabytes, timing.measure_s, timing.decode_s,
                timing.measure_s / timing.decode_s);
  }
  std::vector<double> seconds;
  for (const ScanCase& scan : cases) {
    if (scan.read) {
      seconds.push_back(scan.measure_s);
    }
  }
  if (!seconds.empty()) {
    std::printf("full scans above: median %.2f s, 95th percentile %.2f s each\n",
                percentile(seconds, 0.5), percentile(seconds, 0.95));
  }
}

}  // namespace bench
