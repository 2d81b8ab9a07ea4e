#include "tables.h"

#include <cmath>
#include <cstdio>

namespace bench {

namespace {

/// What was judged or seen wrongly of the film.
std::string film_misses(const ScanCase& scan) {
  std::string what;
  if (scan.frames_found < scan.frames_to_find) {
    what += " frames " + std::to_string(scan.frames_found) + " of " +
            std::to_string(scan.frames_to_find) + ";";
  }
  if (scan.frames_invented > 0) {
    what += " invented " + std::to_string(scan.frames_invented) + ";";
  }
  if (scan.frames_doubled > 0) {
    what += " told twice " + std::to_string(scan.frames_doubled) + ";";
  }
  what += scan.blanks_wrong > 0 ? " blank frame inferred wrongly;" : "";
  what += scan.strips_right ? "" : " strips miscounted;";
  what += scan.format_right ? "" : " wrong format;";
  constexpr int worth_telling = 2;  // one hole at a border may be called either way
  if (scan.holes_missed + scan.holes_surplus >= worth_telling) {
    what += " holes -" + std::to_string(scan.holes_missed) + " +" +
            std::to_string(scan.holes_surplus) + " of " + std::to_string(scan.holes_whole) + ";";
  }
  return what;
}

std::string miss(const char* name, const std::optional<Compared>& compared) {
  if (!compared || compared->covers()) {
    return "";
  }
  char text[96];
  std::snprintf(text, sizeof text, " %s %.3f +- %.3f is %.3f;", name, compared->value,
                compared->u95, compared->truth);
  return text;
}

std::string number_misses(const ScanCase& scan) {
  std::string what = scan.tone_verdict == ToneVerdict::wrong ? " tone curve told wrongly;" : "";
  constexpr double goal_error = 0.02;
  if (scan.base_fog && scan.base_fog->covers() && std::abs(scan.base_fog->error()) > goal_error) {
    what += " base plus fog off by " + std::to_string(scan.base_fog->error()) + ";";
  }
  what += miss("base plus fog", scan.base_fog);
  for (std::size_t part = 0; part < scan.tone.size(); ++part) {
    what += miss(tone_names[part], scan.tone[part]);
  }
  return what + miss("edge print", scan.edge_print) + miss("leader", scan.leader) +
         miss("contrast", scan.contrast);
}

}  // namespace

void print_misses(const std::vector<ScanCase>& cases) {
  std::printf("\ncases to look at\n");
  for (const ScanCase& scan : cases) {
    std::string what = scan.read ? "" : " unread: " + scan.trouble;
    if (scan.read && !judged_as_expected(scan)) {
      what += " expected " + scan.expected_fitness + ", is " + scan.fitness + ";";
    }
    if (scan.read && scan.expected_fitness != "unfit") {
      what += film_misses(scan) + number_misses(scan);
    }
    if (!what.empty()) {
      std::printf("%s %llu:%s\n", scan.name.kind.c_str(),
                  static_cast<unsigned long long>(scan.name.seed), what.c_str());
    }
  }
}

}  // namespace bench
