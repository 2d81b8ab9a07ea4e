// Simulates scans of film with known marks and of clean film, searches them as the program does,
// and prints for each kind how many are found and how many told are right, whether confidence
// holds, and false alarms on clean film. A report, not a test: it exits 0 whatever it finds.
#include "marks_case.h"
#include "statistics.h"

#include <algorithm>
#include <array>
#include <atomic>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace {

using bench::MarksCase;
using bench::MarksScan;
using bench::ToldMark;
using bench::TrueMark;
using fogline::MarkKind;

struct Options {
  int fine = 60;
  int coarse = 40;
  int medium = 40;
  int clean = 20;
  unsigned long long seed = 1;
  unsigned jobs = 2;
  bool list = false;
  std::string file;
  std::string keep;
};

constexpr const char* usage =
    "marks_bench [--fine N] [--coarse N] [--medium N] [--clean N] [--seed FIRST] [--jobs N]\n"
    "            [--list] [--keep FOLDER] [--file SCAN]\n"
    "  --fine N       one-frame scans at 1200 pixels an inch (60)\n"
    "  --coarse N     two-frame scans at 10 to 18 pixels a millimetre (40)\n"
    "  --medium N     two-frame scans of 120 film, as coarse (40)\n"
    "  --clean N      scans without marks, of each of the three (20)\n"
    "  --seed FIRST   first seed (1)\n"
    "  --jobs N       scans at a time (2)\n"
    "  --list         list every mark told, and every one missed\n"
    "  --keep FOLDER  write the scans there and leave them\n"
    "  --file SCAN    only list the marks told on this scan\n";

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    if (word == "--list") {
      options.list = true;
      continue;
    }
    const std::string value = i + 1 < argc ? argv[++i] : "0";
    if (word == "--fine") {
      options.fine = std::atoi(value.c_str());
    } else if (word == "--coarse") {
      options.coarse = std::atoi(value.c_str());
    } else if (word == "--medium") {
      options.medium = std::atoi(value.c_str());
    } else if (word == "--clean") {
      options.clean = std::atoi(value.c_str());
    } else if (word == "--seed") {
      options.seed = std::strtoull(value.c_str(), nullptr, 10);
    } else if (word == "--jobs") {
      options.jobs = static_cast<unsigned>(std::max(1, std::atoi(value.c_str())));
    } else if (word == "--keep") {
      options.keep = value;
    } else if (word == "--file") {
      options.file = value;
    } else {
      return false;
    }
  }
  return true;
}

std::vector<MarksCase> run(const Options& options, const std::string& folder) {
  std::vector<MarksCase> cases;
  const auto plan = [&](MarksScan scan, int count) {
    for (int i = 0; i < count; ++i) {
      MarksCase item;
      item.scan = scan;
      item.seed = options.seed + static_cast<std::uint64_t>(i);
      cases.push_back(item);
    }
  };
  plan(MarksScan::fine, options.fine);
  plan(MarksScan::coarse, options.coarse);
  plan(MarksScan::medium, options.medium);
  plan(MarksScan::fine_clean, options.clean);
  plan(MarksScan::coarse_clean, options.clean);
  plan(MarksScan::medium_clean, options.clean);
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < cases.size(); i = next++) {
      cases[i] = bench::run_marks_case(cases[i].seed, cases[i].scan, folder, !options.keep.empty());
    }
  };
  std::vector<std::thread> threads;
  for (unsigned j = 1; j < options.jobs; ++j) {
    threads.emplace_back(work);
  }
  work();
  for (std::thread& thread : threads) {
    thread.join();
  }
  return cases;
}

constexpr std::array kinds{MarkKind::drying_mark, MarkKind::air_bell, MarkKind::dust,
                           MarkKind::fibre,       MarkKind::scratch,  MarkKind::pinhole};

void print_kinds(const char* title, const std::vector<MarksCase>& cases, MarksScan scan) {
  std::printf("\n%s\n%-12s %-32s %-32s %s\n", title, "kind", "precision", "recall", "F1");
  for (const MarkKind kind : kinds) {
    int told = 0;
    int right = 0;
    int asked = 0;
    int hits = 0;
    for (const MarksCase& item : cases) {
      if (item.scan != scan) {
        continue;
      }
      for (const ToldMark& mark : item.told) {
        told += mark.kind == kind ? 1 : 0;
        right += mark.kind == kind && mark.right ? 1 : 0;
      }
      for (const TrueMark& mark : item.truth) {
        asked += mark.kind == kind && mark.asked ? 1 : 0;
        hits += mark.kind == kind && mark.asked && mark.found ? 1 : 0;
      }
    }
    const double precision = told > 0 ? static_cast<double>(right) / told : 0.0;
    const double recall = asked > 0 ? static_cast<double>(hits) / asked : 0.0;
    const double sum = precision + recall;
    std::printf("%-12s %-32s %-32s %.3f\n", bench::mark_name(kind),
                bench::share_text(right, told).c_str(), bench::share_text(hits, asked).c_str(),
                sum > 0.0 ? 2.0 * precision * recall / sum : 0.0);
  }
}

void print_confidence(const std::vector<MarksCase>& cases) {
  std::printf("\nconfidence: said, true (marks of scans with marks)\n");
  constexpr std::array ends{0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1.01};
  for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
    int count = 0;
    int right = 0;
    double said = 0.0;
    for (const MarksCase& item : cases) {
      for (const ToldMark& mark : item.told) {
        if (mark.confidence >= ends[i] && mark.confidence < ends[i + 1]) {
          ++count;
          right += mark.right ? 1 : 0;
          said += mark.confidence;
        }
      }
    }
    if (count > 0) {
      std::printf("  %.2f to %.2f  said %5.1f %%  true %s\n", ends[i], std::min(1.0, ends[i + 1]),
                  100.0 * said / count, bench::share_text(right, count).c_str());
    }
  }
}

void print_clean(const std::vector<MarksCase>& cases) {
  for (const MarksScan scan :
       {MarksScan::fine_clean, MarksScan::coarse_clean, MarksScan::medium_clean}) {
    double area = 0.0;
    int alarms = 0;
    std::array<int, kinds.size()> of_kind{};
    for (const MarksCase& item : cases) {
      if (item.scan != scan) {
        continue;
      }
      area += item.film_cm2;
      alarms += static_cast<int>(item.told.size());
      for (const ToldMark& mark : item.told) {
        for (std::size_t k = 0; k < kinds.size(); ++k) {
          of_kind[k] += mark.kind == kinds[k] ? 1 : 0;
        }
      }
    }
    std::printf("\nclean film, %s: %d false marks on %.0f cm2, %.2f a 100 cm2 (",
                bench::scan_name(scan), alarms, area, area > 0.0 ? 100.0 * alarms / area : 0.0);
    for (std::size_t k = 0; k < kinds.size(); ++k) {
      std::printf("%s%s %d", k > 0 ? ", " : "", bench::mark_name(kinds[k]), of_kind[k]);
    }
    std::printf(")\n");
  }
}

void print_list(const std::vector<MarksCase>& cases) {
  for (const MarksCase& item : cases) {
    std::printf("scan %d seed %llu  %.2f s  %s%s\n", static_cast<int>(item.scan),
                static_cast<unsigned long long>(item.seed), item.search_s, item.limits.c_str(),
                item.trouble.c_str());
    for (const ToldMark& mark : item.told) {
      std::printf("  told %-12s %.2f  %.2f mm  %+.2f  at %.0f,%.0f  %s\n",
                  bench::mark_name(mark.kind), mark.confidence, mark.size_mm, mark.contrast,
                  mark.x_px, mark.y_px,
                  mark.right ? "right" : (mark.something_there ? "other" : "FALSE"));
    }
    for (const TrueMark& mark : item.truth) {
      if (mark.asked && !mark.found) {
        std::printf("  missed %-12s %.2f mm  %+.2f  %.0f sigma\n", bench::mark_name(mark.kind),
                    mark.size_mm, mark.contrast, mark.sigmas);
      }
    }
  }
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  if (!parse(argc, argv, options)) {
    std::fputs(usage, stderr);
    return 2;
  }
  if (!options.file.empty()) {
    bench::list_marks_of_file(options.file);
    return 0;
  }
  const std::filesystem::path folder =
      options.keep.empty()
          ? std::filesystem::temp_directory_path() / ("marks-bench-" + std::to_string(getpid()))
          : std::filesystem::path(options.keep);
  std::filesystem::create_directories(folder);
  const std::vector<MarksCase> cases = run(options, folder);
  if (options.keep.empty()) {
    std::filesystem::remove_all(folder);
  }
  if (options.list) {
    print_list(cases);
  }
  print_kinds("FINE, 47 px/mm", cases, MarksScan::fine);
  print_kinds("COARSE, 10 to 18 px/mm", cases, MarksScan::coarse);
  print_kinds("120 FILM, 10 to 18 px/mm", cases, MarksScan::medium);
  print_confidence(cases);
  print_clean(cases);
  return 0;
}
