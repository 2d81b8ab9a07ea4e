#include "statistics.h"
#include "tables.h"

#include <cmath>
#include <cstdio>
#include <map>

namespace bench {

namespace {

constexpr double base_goal_density = 0.02;
/// For tone, edge print, leader, contrast: no goal, a third of a stop of paper is 0.1.
constexpr double near_density = 0.1;

using Spreads = std::map<std::string, Spread>;

std::string class_of(const ScanCase& scan) {
  return scan.fitness + ", " + std::to_string(scan.bits) + " bits, " + scan.device;
}

/// Class by what is true of the scan, which the measurement can't choose for itself.
std::string true_class_of(const ScanCase& scan) {
  return std::to_string(scan.bits) + " bits, " +
         (scan.holes_seen ? "holes seen" : "no clear holes") + ", " + scan.device;
}

std::string band_of(double density) {
  return density < 0.5 ? "0.0-0.5" : density < 1.0 ? "0.5-1.0" : density < 1.5 ? "1.0-1.5" : "1.5+";
}

bool print_spreads(const Spreads& spreads, double within) {
  bool enough = true;
  for (const auto& [name, spread] : spreads) {
    print_spread(name, spread, within);
    enough = enough && covers_enough(spread);
  }
  return enough;
}

/// How near one comes who knows where the holes are, with the scan's stray light and without.
void print_base_fog_limit(const std::vector<ScanCase>& cases) {
  std::vector<double> own;
  std::vector<double> between_holes;
  std::vector<double> limit;
  for (const ScanCase& scan : cases) {
    if (!scan.base_fog || !scan.base_fog_between_holes || !scan.base_fog_limit) {
      continue;
    }
    own.push_back(std::abs(scan.base_fog->error()));
    between_holes.push_back(std::abs(*scan.base_fog_between_holes));
    limit.push_back(std::abs(*scan.base_fog_limit));
  }
  std::printf("  beside the limit, over the same %zu scans\n", own.size());
  const auto line = [](const char* name, const std::vector<double>& errors) {
    std::printf("    %-62s |err|50 %.4f, |err|95 %.4f\n", name, percentile(errors, 0.5),
                percentile(errors, 0.95));
  };
  line("fogline", own);
  line("read between the true holes, stray light left", between_holes);
  line("limit: the same, from a scan without stray light", limit);
}

void print_base_fog_goal(const std::vector<ScanCase>& cases) {
  int near = 0;
  int count = 0;
  int silent = 0;
  for (const ScanCase& scan : cases) {
    constexpr int deep = 16;
    if (scan.bits < deep || !scan.holes_seen) {
      continue;
    }
    ++count;
    silent += scan.base_fog ? 0 : 1;
    near += scan.base_fog && std::abs(scan.base_fog->error()) <= base_goal_density ? 1 : 0;
  }
  std::printf("  within 0.02, 16 bits and holes seen (untold among them, %d without a value): %s\n",
              silent, share_text(near, count).c_str());
  print_goal("base plus fog, 16 bits, holes seen: error <= 0.02 for 95 %", near >= 0.95 * count);
}

}  // namespace

void print_base_fog(const std::vector<ScanCase>& cases) {
  constexpr const char* channel_names[] = {"red", "green", "blue"};
  Spreads by_kind;
  Spreads by_class;
  Spreads by_true_class;
  Spreads by_channel;
  for (const ScanCase& scan : cases) {
    if (!scan.base_fog) {
      continue;
    }
    by_kind[scan.name.kind].add(*scan.base_fog);
    by_class[class_of(scan)].add(*scan.base_fog);
    by_true_class[true_class_of(scan)].add(*scan.base_fog);
    by_channel["all, visual"].add(*scan.base_fog);
    for (std::size_t c = 0; c < scan.base_fog_channels.size(); ++c) {
      if (scan.base_fog_channels[c]) {
        by_channel[std::string("all, ") + channel_names[c]].add(*scan.base_fog_channels[c]);
      }
    }
  }
  print_spread_head("base plus fog", base_goal_density);
  bool enough = true;
  for (const Spreads* spreads : {&by_kind, &by_class, &by_true_class, &by_channel}) {
    enough = print_spreads(*spreads, base_goal_density) && enough;
  }
  print_base_fog_goal(cases);
  print_base_fog_limit(cases);
  print_goal("u95 covers at least 93 % in every class of 100 and more", enough);
}

void print_tone(const std::vector<ScanCase>& cases) {
  Spreads by_part;
  Spreads by_class;
  Spreads by_band;
  int possible = 0;
  int told = 0;
  for (const ScanCase& scan : cases) {
    const bool accepted = scan.expected_fitness != "unfit";
    possible += accepted && scan.tone_possible ? 1 : 0;
    told += accepted && scan.tone_possible && scan.tone[0] ? 1 : 0;
    for (std::size_t part = 0; part < scan.tone.size(); ++part) {
      if (scan.tone[part]) {
        by_part[tone_names[part]].add(*scan.tone[part]);
        by_class[class_of(scan) + ", " + tone_names[part]].add(*scan.tone[part]);
      }
    }
    // One number a scan here too: shadow, middle and highlight share their errors.
    const std::optional<Compared>& one = scan.tone[scan.name.seed % 3];
    if (one) {
      by_band["density " + band_of(one->truth)].add(*one);
    }
  }
  print_spread_head("frames, one a scan", near_density);
  bool enough = true;
  for (const Spreads* spreads : {&by_part, &by_band, &by_class}) {
    enough = print_spreads(*spreads, near_density) && enough;
  }
  std::printf("tone told for %s of the scans with a whole frame whose border shows\n",
              share_text(told, possible).c_str());
  print_goal("u95 covers at least 93 % in every class of 100 and more", enough);
}

void print_other_numbers(const std::vector<ScanCase>& cases) {
  Spreads spreads;
  int possible = 0;
  int told = 0;
  for (const ScanCase& scan : cases) {
    const bool asked = scan.expected_fitness != "unfit" && scan.contrast_possible;
    possible += asked ? 1 : 0;
    told += asked && scan.contrast ? 1 : 0;
    if (scan.edge_print) {
      spreads["edge print"].add(*scan.edge_print);
    }
    if (scan.leader) {
      spreads["leader"].add(*scan.leader);
    }
    if (scan.contrast) {
      spreads["contrast index, scene estimate"].add(*scan.contrast);
    }
  }
  print_spread_head("other numbers", near_density);
  const bool enough = print_spreads(spreads, near_density);
  std::printf("contrast told for %s of the scans with two whole frames whose border shows\n",
              share_text(told, possible).c_str());
  print_goal("u95 covers at least 93 % of each, from 100 on", enough);
}

}  // namespace bench
