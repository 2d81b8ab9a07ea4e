// Simulates small scans of clean and of tinted film, measures their tint as the program does, and
// prints how often it is seen, named and sized rightly, against the goals. A report, not a test: it
// exits 0 whatever it finds.
#include "statistics.h"
#include "tint_case.h"
#include "tint_limit.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <thread>
#include <vector>

#include <unistd.h>

namespace {

using bench::TintCase;
using bench::TintFamily;
using fogline::Tint;
using fogline::TintKind;

struct Options {
  int clean = 400;
  int tinted = 600;
  unsigned long long seed = 1;
  unsigned jobs = 2;
  std::string csv;
};

constexpr const char* usage =
    "tint_bench [--clean N] [--tinted N] [--seed FIRST] [--jobs N] [--csv FILE]\n"
    "  --clean N    scans of film without tint (400)\n"
    "  --tinted N   scans of film with one of five tints, 0.02 to 0.15 (600)\n"
    "  --seed FIRST first seed (1)\n"
    "  --jobs N     scans at a time (2)\n"
    "  --csv FILE   write one row a scan\n";

bool parse(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    const std::string value = i + 1 < argc ? argv[++i] : "0";
    if (word == "--clean") {
      options.clean = std::atoi(value.c_str());
    } else if (word == "--tinted") {
      options.tinted = std::atoi(value.c_str());
    } else if (word == "--seed") {
      options.seed = std::strtoull(value.c_str(), nullptr, 10);
    } else if (word == "--jobs") {
      options.jobs = static_cast<unsigned>(std::max(1, std::atoi(value.c_str())));
    } else if (word == "--csv") {
      options.csv = value;
    } else {
      return false;
    }
  }
  return true;
}

std::vector<TintCase> run(const Options& options, const std::string& folder) {
  const auto clean = static_cast<std::size_t>(options.clean);
  std::vector<TintCase> cases(clean + static_cast<std::size_t>(options.tinted));
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < cases.size(); i = next++) {
      const bool tinted = i >= clean;
      cases[i] = bench::run_tint_case(options.seed + (tinted ? i - clean : i), tinted, folder);
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

const char* kind_name(const fogline::Known<TintKind>& kind) {
  if (!kind) {
    return "unknown";
  }
  switch (*kind) {
    case TintKind::none:
      return "none";
    case TintKind::dye_left:
    case TintKind::sensitising_dye:
    case TintKind::antihalation_dye:
      return "dye";
    case TintKind::fixer_haze:
      return "haze";
    case TintKind::yellow_stain:
      return "yellow";
    case TintKind::image_stain:
      break;
  }
  return "image stain";
}

/// A tint was told, named or not.
bool seen(const Tint& tint) {
  return tint.kind != TintKind::none && tint.density.has_value();
}

bool named(const Tint& tint) {
  return tint.kind && *tint.kind != TintKind::none;
}

void print_false_alarms(const std::vector<TintCase>& cases, std::size_t known) {
  int clean = 0;
  int alarms = 0;
  int unknown = 0;
  for (const TintCase& item : cases) {
    if (item.family == TintFamily::clean) {
      ++clean;
      alarms += seen(item.measured[known]) ? 1 : 0;
      unknown += item.measured[known].kind ? 0 : 1;
    }
  }
  std::printf("clean film: tint told on %s; can't tell on %s\n",
              bench::share_text(alarms, clean).c_str(), bench::share_text(unknown, clean).c_str());
  bench::print_goal("false alarms <= 1 % of at least 300 clean scans",
                    alarms <= 0.01 * clean && clean >= 300);
}

/// Shares seen of one family, in each band of amount, beside what colour alone allows at best.
void print_seen(const std::vector<TintCase>& cases, std::size_t known) {
  const auto best = bench::seen_at_best();
  std::printf("\n%-20s %-34s %-34s %-34s\n", "seen", "0.02 to 0.04", "0.04 to 0.08", "above 0.08");
  for (int f = 1; f < bench::tint_families; ++f) {
    std::printf("%-20s", bench::family_name(static_cast<TintFamily>(f)));
    for (int band = 0; band < bench::bands; ++band) {
      int count = 0;
      int hits = 0;
      for (const TintCase& item : cases) {
        if (item.family == static_cast<TintFamily>(f) && bench::band_of(item.amount) == band) {
          ++count;
          hits += seen(item.measured[known]) ? 1 : 0;
        }
      }
      std::printf(" %-34s", bench::share_text(hits, count).c_str());
    }
    std::printf("\n");
    const auto& row = best[static_cast<std::size_t>(f)];
    if (known == 0 && !std::isnan(row[0])) {
      std::printf("%-20s %6.1f %% %27s%6.1f %% %27s%6.1f %%\n", "  best, colour alone",
                  100.0 * row[0], "", 100.0 * row[1], "", 100.0 * row[2]);
    }
  }
}

void print_families(const std::vector<TintCase>& cases, std::size_t known) {
  int told = 0;
  int right = 0;
  int unnamed = 0;
  std::array<std::array<int, 6>, bench::tint_families> table{};
  const std::array<const char*, 6> columns{"none",   "dye",         "haze",
                                           "yellow", "image stain", "unknown"};
  for (const TintCase& item : cases) {
    const Tint& tint = item.measured[known];
    const auto column = static_cast<std::size_t>(
        std::find_if(columns.begin(), columns.end(),
                     [&](const char* name) { return std::string(name) == kind_name(tint.kind); }) -
        columns.begin());
    ++table[static_cast<std::size_t>(item.family)][column];
    if (item.family != TintFamily::clean) {
      told += named(tint) ? 1 : 0;
      right += named(tint) && tint.kind == bench::kind_of(item.family) ? 1 : 0;
      unnamed += seen(tint) && !named(tint) ? 1 : 0;
    }
  }
  std::printf("\n%-20s", "truth \\ told");
  for (const char* name : columns) {
    std::printf(" %12s", name);
  }
  std::printf("\n");
  for (int f = 0; f < bench::tint_families; ++f) {
    std::printf("%-20s", bench::family_name(static_cast<TintFamily>(f)));
    for (const int count : table[static_cast<std::size_t>(f)]) {
      std::printf(" %12d", count);
    }
    std::printf("\n");
  }
  std::printf("right family of those named: %s; seen but not named: %d\n",
              bench::share_text(right, told).c_str(), unnamed);
  bench::print_goal("right family >= 95 %", right >= 0.95 * told);
}

void print_amounts(const std::vector<TintCase>& cases, std::size_t known) {
  bench::print_spread_head("amount of a tint named rightly", 0.02);
  for (int f = 1; f < bench::tint_families; ++f) {
    bench::Spread spread;
    for (const TintCase& item : cases) {
      const Tint& tint = item.measured[known];
      if (static_cast<int>(item.family) == f && tint.kind == bench::kind_of(item.family)) {
        spread.add({item.amount, tint.density->value, tint.density->u95, tint.density->lower95,
                    tint.density->upper95, false});
      }
    }
    bench::print_spread(bench::family_name(static_cast<TintFamily>(f)), spread, 0.02);
  }
}

/// Tinted and clean scans count as on the simulator's rolls at large, one in five of them tinted.
void print_confidence(const std::vector<TintCase>& cases, std::size_t known) {
  constexpr double tinted_rolls = 0.2;
  double clean = 0.0;
  for (const TintCase& item : cases) {
    clean += item.family == TintFamily::clean ? 1.0 : 0.0;
  }
  const double tinted = static_cast<double>(cases.size()) - clean;
  std::printf("\nconfidence: said, true (one roll in five tinted)\n");
  const std::array<double, 6> ends{0.5, 0.8, 0.9, 0.97, 0.99, 1.01};
  for (const bool none : {false, true}) {
    for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
      double weight = 0.0;
      double said = 0.0;
      double right = 0.0;
      int count = 0;
      for (const TintCase& item : cases) {
        const Tint& tint = item.measured[known];
        if (none != (tint.kind == TintKind::none) || (!none && !named(tint)) ||
            tint.confidence < ends[i] || tint.confidence >= ends[i + 1]) {
          continue;
        }
        const double w =
            item.family == TintFamily::clean ? (1.0 - tinted_rolls) / clean : tinted_rolls / tinted;
        const bool holds =
            none ? item.amount < *tint.detection_limit : tint.kind == bench::kind_of(item.family);
        weight += w;
        said += w * tint.confidence;
        right += holds ? w : 0.0;
        ++count;
      }
      if (count > 0) {
        std::printf("  %-6s %.2f to %.2f  n %4d  said %5.1f %%  true %5.1f %%\n",
                    none ? "none" : "tint", ends[i], std::min(1.0, ends[i + 1]), count,
                    100.0 * said / weight, 100.0 * right / weight);
      }
    }
  }
}

void print_limits(const std::vector<TintCase>& cases, std::size_t known) {
  std::printf(
      "\ndetection limit, and error of clear film's colour (blue - red, green - both; rms)\n");
  for (const char* device : {"flatbed", "camera", "film scanner"}) {
    std::vector<double> limits;
    double squares = 0.0;
    double green = 0.0;
    int colours = 0;
    for (const TintCase& item : cases) {
      if (item.device == device && item.measured[known].detection_limit) {
        limits.push_back(*item.measured[known].detection_limit);
        if (item.colour_error) {
          squares += (*item.colour_error)[0] * (*item.colour_error)[0];
          green += (*item.colour_error)[1] * (*item.colour_error)[1];
          ++colours;
        }
      }
    }
    std::printf("  %-13s n %4zu  median %.3f  90th percentile %.3f   %.4f  %.4f\n", device,
                limits.size(), bench::percentile(limits, 0.5), bench::percentile(limits, 0.9),
                std::sqrt(squares / std::max(1, colours)), std::sqrt(green / std::max(1, colours)));
  }
}

void write_rows(const std::string& path, const std::vector<TintCase>& cases) {
  std::FILE* file = std::fopen(path.c_str(), "w");
  if (file == nullptr) {
    return;
  }
  std::fputs(
      "seed,device,bits,family,amount,blue_red_error,green_error,known,kind,density,lower95,"
      "upper95,confidence,limit,reason\n",
      file);
  for (const TintCase& item : cases) {
    for (std::size_t known = 0; known < 2; ++known) {
      const Tint& tint = item.measured[known];
      const fogline::Quantity density = tint.density.value_or(fogline::Quantity{});
      const auto error = item.colour_error.value_or(std::array<double, 2>{NAN, NAN});
      std::fprintf(file, "%llu,%s,%d,%s,%.4f,%.4f,%.4f,%zu,%s,%.4f,%.4f,%.4f,%.3f,%.4f,%s%s\n",
                   static_cast<unsigned long long>(item.seed), item.device.c_str(), item.bits,
                   bench::family_name(item.family), item.amount, error[0], error[1], known,
                   kind_name(tint.kind), density.value, density.lower95.value_or(0.0),
                   density.upper95.value_or(0.0), tint.confidence,
                   tint.detection_limit.value_or(0.0),
                   tint.kind ? "" : fogline::fact_row(tint.kind.why().kind).code.data(),
                   item.trouble.c_str());
    }
  }
  std::fclose(file);
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  if (!parse(argc, argv, options)) {
    std::fputs(usage, stderr);
    return 2;
  }
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("tint-bench-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  const std::vector<TintCase> cases = run(options, folder);
  std::filesystem::remove_all(folder);
  const std::array<const char*, 2> titles{"STOCK UNKNOWN", "CLEAN BASE KNOWN"};
  for (std::size_t known = 0; known < titles.size(); ++known) {
    std::printf("\n=== %s ===\n", titles[known]);
    print_false_alarms(cases, known);
    print_seen(cases, known);
    print_families(cases, known);
    print_amounts(cases, known);
    print_confidence(cases, known);
    print_limits(cases, known);
  }
  if (!options.csv.empty()) {
    write_rows(options.csv, cases);
  }
  return 0;
}
