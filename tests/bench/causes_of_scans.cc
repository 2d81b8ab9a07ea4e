#include "causes_of_scans.h"

#include "process/belief/weigh_light_and_time.h"
#include "process/causes/find_causes.h"
#include "simulator/render.h"
#include "tables/shipped_knowledge.h"

#include <fogline/pixels/open_scan.h>
#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <thread>

#include <unistd.h>

namespace bench {

namespace {

double middle_of(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

std::optional<RollReading> true_reading(const filmsim::Simulated& simulated,
                                        const filmsim::RollFaults& faults) {
  const filmsim::StripTruth& strip = simulated.truth.strips.front();
  const double callier = simulated.scenario.scanner.callier;
  const double base = strip.base_fog.visual;
  std::vector<double> shadows;
  std::vector<double> highlights;
  for (const filmsim::FrameTruth& frame : simulated.truth.frames) {
    if (frame.shadow && frame.highlight && !frame.plan->blank) {
      shadows.push_back(std::max(0.0, callier * (*frame.shadow - base)));
      highlights.push_back(callier * (*frame.highlight - base));
    }
  }
  if (shadows.empty() || !strip.edge_print) {
    return std::nullopt;
  }
  RollReading reading;
  reading.faults = faults;
  reading.frames = static_cast<int>(shadows.size());
  reading.shadow = middle_of(shadows);
  reading.highlight = middle_of(highlights);
  reading.edge_print = callier * (*strip.edge_print - base);
  if (strip.leader) {
    constexpr double darkest_reading = 2.3;
    reading.leader = std::min(darkest_reading, callier * (*strip.leader - base));
  }
  return reading;
}

ScannedRoll scan_roll(std::uint64_t seed, const std::string& folder,
                      const fogline::PriorKnowledge& knowledge) {
  ScannedRoll result;
  result.seed = seed;
  filmsim::FaultyScan scan = filmsim::sample_faulty_scan(seed);
  result.faults = scan.faults;
  const filmsim::Simulated simulated = filmsim::render(std::move(scan.scenario));
  result.truth = true_reading(simulated, result.faults);
  const std::string path =
      filmsim::write_scan(simulated, folder + "/" + std::to_string(seed) + ".tif");
  try {
    const auto source = fogline::open_scan(path, {});
    const fogline::RollMeasurement roll =
        fogline::measure_roll(*source, fogline::shipped_options()).measurement;
    const auto start = std::chrono::steady_clock::now();
    const fogline::Aim aim = fogline::aim_for(nullptr, std::nullopt);
    result.weighed = fogline::weigh_light_and_time(roll, aim, knowledge.population, nullptr);
    result.findings =
        fogline::find_causes(roll, result.weighed, aim, knowledge.population, nullptr);
    result.judge_ms =
        1e3 * std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    if (roll.medians && roll.medians->net_shadow) {
      result.net_shadow = roll.medians->net_shadow->value;
      result.net_highlight = roll.medians->net_highlight->value;
    }
  } catch (const std::exception& error) {
    result.trouble = error.what();
  }
  std::filesystem::remove(path);
  std::filesystem::path truth(path);
  std::filesystem::remove(truth.replace_extension(".truth.json"));
  return result;
}

double said_of(const ScannedRoll& roll, fogline::Cause cause) {
  for (const fogline::Finding& finding : roll.findings) {
    if (finding.cause == cause) {
      return finding.confidence;
    }
  }
  return 0.0;
}

bool has_pictures(const ScannedRoll& roll) {
  return roll.faults.exposed && roll.faults.developed;
}

void print_light_or_time(const std::vector<ScannedRoll>& rolls, const CauseLimit& limit) {
  std::vector<CauseCase> ours;
  std::vector<CauseCase> best;
  Coverage coverage;
  double slowest = 0.0;
  std::size_t unjudged = 0;
  std::vector<double> shadow_errors;
  std::vector<double> highlight_errors;
  for (const ScannedRoll& roll : rolls) {
    slowest = std::max(slowest, roll.judge_ms);
    if (!has_pictures(roll) || !roll.truth) {
      continue;
    }
    if (!roll.weighed.judged()) {
      ++unjudged;
      continue;
    }
    const std::size_t truth = true_cause(roll.faults);
    ours.push_back({shares_of(*roll.weighed.causes), truth});
    best.push_back({limit.causes(*roll.truth), truth});
    coverage.add(roll.weighed, roll.faults);
    if (roll.net_shadow) {
      shadow_errors.push_back(std::abs(*roll.net_shadow - roll.truth->shadow));
      highlight_errors.push_back(std::abs(*roll.net_highlight - roll.truth->highlight));
    }
  }
  print_score("fogline", score(ours));
  print_score("best estimator, true densities", score(best));
  std::printf("  not judged though pictures are there: %zu; slowest judgement %.0f ms\n", unjudged,
              slowest);
  if (!shadow_errors.empty()) {
    std::printf("  median error of net shadow %.3f, of net highlight %.3f\n",
                middle_of(shadow_errors), middle_of(highlight_errors));
  }
  coverage.print();
  print_reliability("light or time", all_said(ours));
  print_confusion(ours);
}

template <typename IsSo>
void print_finding(const std::vector<ScannedRoll>& rolls, fogline::Cause cause, IsSo is_so) {
  constexpr double told = 0.5;
  std::size_t so = 0;
  std::size_t found = 0;
  std::size_t clean = 0;
  std::size_t alarms = 0;
  double brier = 0.0;
  for (const ScannedRoll& roll : rolls) {
    const double said = said_of(roll, cause);
    const bool truth = is_so(roll);
    so += truth ? 1U : 0U;
    clean += truth ? 0U : 1U;
    found += truth && said >= told ? 1U : 0U;
    alarms += !truth && said >= told ? 1U : 0U;
    brier += (said - (truth ? 1.0 : 0.0)) * (said - (truth ? 1.0 : 0.0));
  }
  std::printf("  %-16s true of %3zu, told of %3zu; false alarms %zu of %zu; Brier %.4f\n",
              std::string(fogline::fact_row(cause).code).c_str(), so, found, alarms, clean,
              brier / static_cast<double>(std::max<std::size_t>(1, rolls.size())));
}

void print_list(const std::vector<ScannedRoll>& rolls) {
  for (const ScannedRoll& roll : rolls) {
    std::printf("  %llu light %+.1f contrast %.2f%s%s%s |",
                static_cast<unsigned long long>(roll.seed), roll.faults.exposure_error_stops,
                roll.faults.contrast_index, roll.faults.fogged ? " fogged" : "",
                roll.faults.exposed ? "" : " not-exposed",
                roll.faults.developed ? "" : " not-developed");
    if (roll.truth && roll.net_shadow) {
      std::printf(" S %.2f (%.2f) H %.2f (%.2f) |", *roll.net_shadow, roll.truth->shadow,
                  *roll.net_highlight, roll.truth->highlight);
    }
    for (const fogline::Finding& finding : roll.findings) {
      std::printf(" %s %.2f", std::string(fogline::fact_row(finding.cause).code).c_str(),
                  finding.confidence);
    }
    std::printf(" %s\n", roll.trouble.c_str());
  }
}

}  // namespace

void Coverage::add(const fogline::LightOrTime& weighed, const filmsim::RollFaults& faults) {
  const double contrast = weighed.contrast_index->value - faults.contrast_index;
  const double exposure = weighed.exposure_stops->value - faults.exposure_error_stops;
  ++cases_;
  contrast_covered_ += std::abs(contrast) <= weighed.contrast_index->u95 ? 1U : 0U;
  exposure_covered_ += std::abs(exposure) <= weighed.exposure_stops->u95 ? 1U : 0U;
  contrast_u95_ += weighed.contrast_index->u95;
  exposure_u95_ += weighed.exposure_stops->u95;
  contrast_error_ += contrast;
  contrast_square_ += contrast * contrast;
  exposure_error_ += exposure;
  exposure_square_ += exposure * exposure;
}

void Coverage::print() const {
  const auto count = static_cast<double>(std::max<std::size_t>(1, cases_));
  std::printf("  contrast index: u95 covers %.1f %%, mean u95 %.3f, error rms %.3f, mean %+.3f\n",
              100.0 * static_cast<double>(contrast_covered_) / count, contrast_u95_ / count,
              std::sqrt(contrast_square_ / count), contrast_error_ / count);
  std::printf("  exposure stops: u95 covers %.1f %%, mean u95 %.2f, error rms %.2f, mean %+.2f\n",
              100.0 * static_cast<double>(exposure_covered_) / count, exposure_u95_ / count,
              std::sqrt(exposure_square_ / count), exposure_error_ / count);
}

std::vector<ScannedRoll> scan_rolls(int count, std::uint64_t first_seed, unsigned jobs,
                                    const fogline::PriorKnowledge& knowledge) {
  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("causes-bench-" + std::to_string(getpid()));
  std::filesystem::create_directories(folder);
  std::vector<ScannedRoll> rolls(static_cast<std::size_t>(count));
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < rolls.size(); i = next++) {
      rolls[i] = scan_roll(first_seed + i, folder, knowledge);
    }
  };
  std::vector<std::thread> threads;
  for (unsigned j = 1; j < jobs; ++j) {
    threads.emplace_back(work);
  }
  work();
  for (std::thread& thread : threads) {
    thread.join();
  }
  std::filesystem::remove_all(folder);
  return rolls;
}

void print_scanned(const std::vector<ScannedRoll>& rolls, const CauseLimit& limit, bool list) {
  std::printf("\n=== ROLLS RENDERED AND MEASURED: %zu ===\n", rolls.size());
  if (list) {
    print_list(rolls);
  }
  print_light_or_time(rolls, limit);
  print_finding(rolls, fogline::Cause::fogged,
                [](const ScannedRoll& roll) { return roll.faults.fogged; });
  print_finding(rolls, fogline::Cause::not_exposed,
                [](const ScannedRoll& roll) { return !roll.faults.exposed; });
  print_finding(rolls, fogline::Cause::not_developed,
                [](const ScannedRoll& roll) { return !roll.faults.developed; });
}

}  // namespace bench
