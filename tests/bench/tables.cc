#include "tables.h"

#include "statistics.h"

#include <cmath>
#include <cstdio>
#include <map>

namespace bench {

namespace {

constexpr const char* tone_names[] = {"shadow", "middle", "highlight", "range"};

bool is_camera(const ScanCase& scan) {
  return scan.name.kind.starts_with("camera");
}

std::string class_of(const ScanCase& scan) {
  return scan.fitness + ", " + std::to_string(scan.bits) + " bits, " +
         (is_camera(scan) ? "camera" : "scanner");
}

std::string band_of(double density) {
  return density < 0.5 ? "0.0-0.5" : density < 1.0 ? "0.5-1.0" : density < 1.5 ? "1.0-1.5" : "1.5+";
}

}  // namespace

void print_base_fog(const std::vector<ScanCase>& cases) {
  std::map<std::string, Spread> by_kind;
  std::map<std::string, Spread> by_class;
  Spread all;
  Spread channels;
  int near = 0;
  int count = 0;
  for (const ScanCase& scan : cases) {
    if (!scan.base_fog) {
      continue;
    }
    by_kind[scan.name.kind].add(*scan.base_fog);
    by_class[class_of(scan)].add(*scan.base_fog);
    all.add(*scan.base_fog);
    for (const Compared& channel : scan.base_fog_channels) {
      channels.add(channel);
    }
    if (scan.fitness == "comparable") {
      constexpr double goal_error = 0.02;
      ++count;
      near += std::abs(scan.base_fog->error()) <= goal_error ? 1 : 0;
    }
  }
  print_spread_head("base plus fog");
  for (const auto& [kind, spread] : by_kind) {
    print_spread(kind, spread);
  }
  for (const auto& [name, spread] : by_class) {
    print_spread(name, spread);
  }
  print_spread("all", all);
  print_spread("all, each channel", channels);
  std::printf("  within 0.02, 16 bits and bare light seen: %s\n", share_text(near, count).c_str());
  print_goal("base plus fog, 16 bits, holes seen: error <= 0.02 for 95 %", near >= 0.95 * count);
}

void print_frames(const std::vector<ScanCase>& cases) {
  std::map<std::string, std::pair<int, int>> by_kind;
  int to_find = 0;
  int found = 0;
  int invented = 0;
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
  std::printf("invented %d in %d scans; blank frames inferred rightly %d, wrongly %d\n", invented,
              scans, right, wrong);
  print_goal("frames found >= 99 %", found >= 0.99 * to_find);
  print_goal("no frame invented", invented == 0);
}

void print_tone(const std::vector<ScanCase>& cases) {
  std::map<std::string, Spread> by_part;
  std::map<std::string, Spread> by_class;
  std::map<std::string, Spread> by_band;
  for (const ScanCase& scan : cases) {
    for (std::size_t part = 0; part < scan.tone.size(); ++part) {
      if (!scan.tone[part]) {
        continue;
      }
      by_part[tone_names[part]].add(*scan.tone[part]);
      by_class[class_of(scan) + ", " + tone_names[part]].add(*scan.tone[part]);
      if (part < 3) {
        by_band["density " + band_of(scan.tone[part]->truth)].add(*scan.tone[part]);
      }
    }
  }
  print_spread_head("frames, one a scan");
  bool covers = true;
  for (const auto* table : {&by_part, &by_band, &by_class}) {
    for (const auto& [name, spread] : *table) {
      print_spread(name, spread);
      constexpr int enough = 100;
      covers = covers && (spread.count < enough || spread.covered >= 0.93 * spread.count);
    }
  }
  print_goal("u95 covers at least 93 % in every class of 100 and more", covers);
}

void print_other_numbers(const std::vector<ScanCase>& cases) {
  Spread print;
  Spread leader;
  Spread contrast;
  int possible = 0;
  for (const ScanCase& scan : cases) {
    if (scan.edge_print) {
      print.add(*scan.edge_print);
    }
    if (scan.leader) {
      leader.add(*scan.leader);
    }
    possible += scan.contrast_possible ? 1 : 0;
    if (scan.contrast) {
      contrast.add(*scan.contrast);
    }
  }
  print_spread_head("other numbers");
  print_spread("edge print", print);
  print_spread("leader", leader);
  print_spread("contrast index, scene estimate", contrast);
  std::printf("contrast told for %s of the scans with two whole frames and more\n",
              share_text(contrast.count, possible).c_str());
}

void print_fitness(const std::vector<ScanCase>& cases) {
  std::map<std::string, std::map<std::string, int>> table;
  int unfit = 0;
  int refused = 0;
  int fit = 0;
  int accepted = 0;
  int untold = 0;
  int told_right = 0;
  int told_wrong = 0;
  for (const ScanCase& scan : cases) {
    const std::string fitness = scan.read ? scan.fitness : "unread";
    table[scan.expected_fitness][fitness] += 1;
    const bool no_densities = fitness == "unfit" || fitness == "marks-only" || !scan.read;
    if (scan.expected_fitness == "unfit") {
      ++unfit;
      refused += no_densities ? 1 : 0;
      continue;
    }
    if (!scan.transfer_told && scan.bits == 16) {
      ++untold;
      told_right += !no_densities && scan.transfer_right ? 1 : 0;
      told_wrong += !no_densities && !scan.transfer_right ? 1 : 0;
    } else {
      ++fit;
      accepted += no_densities ? 0 : 1;
    }
  }
  std::printf("\nfitness\n");
  for (const auto& [expected, found] : table) {
    std::printf("%-12s", expected.c_str());
    for (const auto& [fitness, count] : found) {
      std::printf("  %s %d", fitness.c_str(), count);
    }
    std::printf("\n");
  }
  std::printf("unfit scans refused    %s\n", share_text(refused, unfit).c_str());
  std::printf("fit scans accepted     %s\n", share_text(accepted, fit).c_str());
  std::printf("16 bits, curve untold: told rightly %s, wrongly %d, can't tell %d\n",
              share_text(told_right, untold).c_str(), told_wrong, untold - told_right - told_wrong);
}

void print_film(const std::vector<ScanCase>& cases) {
  int count = 0;
  int format = 0;
  int strips = 0;
  std::vector<double> scale;
  std::vector<double> rotation;
  std::vector<double> holes;
  for (const ScanCase& scan : cases) {
    if (scan.expected_fitness == "unfit" || !scan.read) {
      continue;
    }
    ++count;
    format += scan.format_right ? 1 : 0;
    strips += scan.strips_right ? 1 : 0;
    if (scan.scale_error) {
      scale.push_back(std::abs(*scan.scale_error));
    }
    if (scan.rotation_error) {
      rotation.push_back(*scan.rotation_error);
    }
    if (scan.holes_share) {
      holes.push_back(*scan.holes_share);
    }
  }
  std::printf("\nfilm\nformat right   %s\nstrips counted %s\n", share_text(format, count).c_str(),
              share_text(strips, count).c_str());
  std::printf("scale error    median %.3f %%, 95th percentile %.3f %%\n",
              100.0 * percentile(scale, 0.5), 100.0 * percentile(scale, 0.95));
  std::printf("turn error     median %.2f deg, 95th percentile %.2f deg\n",
              percentile(rotation, 0.5), percentile(rotation, 0.95));
  std::printf("holes seen over whole ones in sight: 5th percentile %.2f, median %.2f\n",
              percentile(holes, 0.05), percentile(holes, 0.5));
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
  std::printf("full scans above: median %.2f s, 95th percentile %.2f s each\n",
              percentile(seconds, 0.5), percentile(seconds, 0.95));
}

void print_misses(const std::vector<ScanCase>& cases) {
  std::printf("\ncases to look at\n");
  for (const ScanCase& scan : cases) {
    std::string what = scan.trouble;
    const bool unfit = scan.fitness == "unfit" || scan.fitness == "marks-only";
    if (scan.read && unfit != (scan.expected_fitness == "unfit")) {
      what += " expected " + scan.expected_fitness + ", is " + scan.fitness + ";";
    }
    if (scan.frames_found < scan.frames_to_find) {
      what += " frames " + std::to_string(scan.frames_found) + " of " +
              std::to_string(scan.frames_to_find) + ";";
    }
    if (scan.frames_invented > 0) {
      what += " invented " + std::to_string(scan.frames_invented) + ";";
    }
    if (scan.base_fog && !scan.base_fog->covers()) {
      what += " base plus fog off by " + std::to_string(scan.base_fog->error()) + ";";
    }
    for (std::size_t part = 0; part < scan.tone.size(); ++part) {
      if (scan.tone[part] && !scan.tone[part]->covers()) {
        what += std::string(" ") + tone_names[part] + " off by " +
                std::to_string(scan.tone[part]->error()) + ";";
      }
    }
    if (!what.empty()) {
      std::printf("%s %llu:%s\n", scan.name.kind.c_str(),
                  static_cast<unsigned long long>(scan.name.seed), what.c_str());
    }
  }
}

}  // namespace bench
