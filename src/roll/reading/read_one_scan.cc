#include "roll/reading/read_scan.h"
#include "roll/reading/scan_budget.h"
#include "roll/reading/scan_calibration.h"
#include "roll/reading/scan_doubt.h"
#include "roll/reading/scan_fitness.h"
#include "roll/reading/scan_marks.h"
#include "roll/reading/scan_picture.h"
#include "roll/reading/scan_reading.h"
#include "roll/reading/scan_tint.h"
#include "roll/reading/strip_numbers.h"
#include "roll/target/scan_target.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace fogline {

namespace {

double clipped_pixels_share(const ScanGrid& grid) {
  constexpr int most_bits = 0x70;
  const std::vector<std::uint8_t>& bits = grid.clipped.samples();
  const auto clipped = std::count_if(bits.begin(), bits.end(),
                                     [](std::uint8_t bit) { return (bit & most_bits) != 0; });
  return bits.empty() ? 0.0 : static_cast<double>(clipped) / static_cast<double>(bits.size());
}

ZeroReport zero_of(const std::vector<StripReading>& readings) {
  ZeroReport zero;
  const auto told = std::find_if(readings.begin(), readings.end(), [](const StripReading& reading) {
    return reading.zero != ZeroSource::none;
  });
  if (told != readings.end()) {
    zero.source = told->zero;
    zero.unevenness_density = told->lamp.unevenness_density();
  }
  return zero;
}

Known<Quantity> veiling_glare_of(const StrayLight& stray) {
  if (!stray.measured()) {
    return Unknown::nothing_opaque;
  }
  return Quantity{stray.share(), coverage_factor_95 * stray.share_doubt(), {}, {}, {}, false};
}

Known<double> density_limit_of(const ScanInfo& info, const std::vector<StripReading>& readings) {
  const auto read = std::find_if(readings.begin(), readings.end(),
                                 [](const StripReading& r) { return r.clear.has_value(); });
  return density_limit(doubt_of(info, *read));
}

/// Where marks weren't looked for at all, their limit says why.
MarkSearch marks_of(const ScanWork& work, Fitness fitness, const MarkKnowledge& knowledge) {
  if (fitness == Fitness::unfit) {
    MarkSearch none;
    none.limits = fact_of(Unknown::no_densities);
    return none;
  }
  return scan_marks(work.grid, work.layout, work.stray, work.readings, knowledge);
}

/// Each kind of caution once, in the order in which they came up.
std::vector<Caution> gathered(std::vector<Caution> cautions,
                              std::initializer_list<std::vector<Caution>> others) {
  for (const std::vector<Caution>& some : others) {
    for (const Caution& caution : some) {
      const bool told = std::any_of(cautions.begin(), cautions.end(), [&](const Caution& other) {
        return other.fact.kind == caution.fact.kind;
      });
      if (!told) {
        cautions.push_back(caution);
      }
    }
  }
  return cautions;
}

std::vector<StripNumbers> numbers_of_strips(const ScanInfo& info, const FilmLayout& layout,
                                            const std::vector<StripReading>& readings,
                                            int frame_number, bool densities) {
  std::vector<StripNumbers> strips;
  int number = 1;
  for (std::size_t i = 0; i < layout.strips.size(); ++i) {
    strips.push_back(
        strip_numbers(info, layout.strips[i], readings[i], number++, frame_number, densities));
    frame_number += static_cast<int>(strips.back().frames.size());
  }
  return strips;
}

template <typename T>
void append(std::vector<T>& all, std::vector<T> some) {
  std::move(some.begin(), some.end(), std::back_inserter(all));
}

/// Lays the strips' numbers side by side.
void put_strips(ScanReading& reading, std::vector<StripNumbers> strips,
                const std::vector<StripReading>& readings) {
  ScanMeasurement& scan = reading.scan;
  for (std::size_t i = 0; i < strips.size(); ++i) {
    StripNumbers& numbers = strips[i];
    const std::string name =
        strips.size() == 1 ? "base_fog" : "strips[" + std::to_string(i) + "].base_fog";
    append(scan.budgets,
           strip_budgets(scan.info, readings[i], numbers.strip.base_fog, name, numbers.frames));
    scan.strips.push_back(std::move(numbers.strip));
    append(scan.frames, std::move(numbers.frames));
    append(scan.outlines, std::move(numbers.outlines));
    append(reading.sketches, std::move(numbers.sketches));
  }
}

}  // namespace

ScanReading read_one_scan(ScanSource& source, const MeasureOptions& options, int frame_number,
                          const Progress& progress) {
  const ScanScanner scanner(source, options);
  ScanWork work = read_scan(source, options, scanner, progress);
  const ScanInfo& info = source.info();
  const ZeroReport zero = zero_of(work.readings);
  const Known<Quantity> glare = veiling_glare_of(work.stray);
  CalibrationUse calibration = use_of_calibration(scanner, info, zero.source, work.readings);
  const FitnessJudgement fitness =
      judge_fitness({info, work.layout, work.readings, zero, glare, calibration.calibration,
                     options.knowledge->devices, options.knowledge->films,
                     clipped_pixels_share(work.grid), work.wedge_alone});
  const bool densities = fitness.tells_densities();

  ScanReading reading;
  ScanMeasurement& scan = reading.scan;
  // Colour is read on whole patches, tone without the marks in it.
  scan.tint =
      scan_tint(info, work.layout, work.readings, options.base_tint, densities, *options.knowledge);
  MarkSearch marks = marks_of(work, fitness.fitness, options.knowledge->marks);
  reading.picture = scan_picture(work.grid);
  const std::vector<StripReading> readings =
      without_marks(std::move(work.readings), work.layout, marks.marks);
  std::vector<StripNumbers> strips =
      numbers_of_strips(info, work.layout, readings, frame_number, densities);
  if (densities && options.target) {
    reading.exposures = read_exposures(info, work.layout, readings, *options.target);
  }

  scan.info = info;
  scan.device = device_of(info, options.device, scanner.calibration());
  scan.device_told = options.device != ScannerDevice::unknown;
  scan.pixels_per_mm = known_or(work.layout.pixels_per_mm, Unknown::no_scale);
  scan.zero = zero;
  scan.fitness = fitness.fitness;
  scan.densities_above = fitness.densities_above;
  scan.veiling_glare = glare;
  FactoryDensities factory{Unknown::no_densities, Unknown::no_densities};
  factory = densities ? factory_densities(info, readings) : factory;
  scan.edge_print = factory.edge_print;
  scan.leader = factory.leader;
  scan.base_fog = densities ? combined_base_fog(strips) : Unknown::no_densities;
  scan.density_limit = densities ? density_limit_of(info, readings) : Unknown::no_densities;
  scan.cautions = gathered(info.cautions, {calibration.cautions, fitness.cautions});
  scan.calibration = std::move(calibration.calibration);
  scan.steps = std::move(calibration.steps);
  scan.marks = std::move(marks.marks);
  scan.marks_limit = std::move(marks.limits);
  if (!reading.exposures.wedge) {
    scan.exposed_wedge_steps = reading.exposures.wedge.why();
  } else {
    scan.exposed_wedge_steps = static_cast<int>(reading.exposures.wedge->size());
  }
  put_strips(reading, std::move(strips), readings);
  return reading;
}

}  // namespace fogline
