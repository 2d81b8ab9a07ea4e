#include "marks_case.h"

#include "simulator/device_sampling.h"
#include "simulator/layout_sampling.h"
#include "simulator/random.h"
#include "simulator/render.h"
#include "simulator/roll_sampling.h"
#include "tables/shipped_knowledge.h"

#include <fogline/pixels/open_scan.h>
#include <fogline/roll/measure_roll.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <numbers>

namespace bench {

namespace {

std::string limits_code(const fogline::ScanMeasurement& scan) {
  return scan.marks_limit ? std::string(fogline::fact_row(scan.marks_limit->kind).code) : "";
}

using filmsim::MarkPlan;
using fogline::MarkKind;

constexpr double fine_pixels_per_mm = 1200.0 / 25.4;

MarkPlan mark_somewhere(filmsim::MarkKind kind, const filmsim::StripPlan& strip,
                        filmsim::Random& random) {
  MarkPlan mark;
  mark.kind = kind;
  mark.middle_mm = {random.uniform(1.0, strip.geometry.length_mm - 1.0),
                    random.uniform(0.5, filmsim::film_width_mm(strip.geometry.format) - 0.5)};
  mark.angle_deg = random.uniform(0.0, 180.0);
  mark.seed = random.next() >> 1U;
  return mark;
}

void add_spots(filmsim::StripPlan& strip, filmsim::Random& random) {
  for (int i = random.integer(2, 8); i > 0; --i) {
    MarkPlan mark = mark_somewhere(filmsim::MarkKind::kDust, strip, random);
    mark.size_mm = random.log_uniform(0.08, 0.5);
    mark.strength = random.uniform(0.5, 2.0);
    strip.marks.push_back(mark);
  }
  for (int i = random.integer(0, 4); i > 0; --i) {
    MarkPlan mark = mark_somewhere(filmsim::MarkKind::kPinhole, strip, random);
    mark.size_mm = random.log_uniform(0.06, 0.28);
    mark.strength = 1.0;
    strip.marks.push_back(mark);
  }
  for (int i = random.integer(0, 6); i > 0; --i) {
    // Most cling near the edges, below the holes.
    MarkPlan mark = mark_somewhere(filmsim::MarkKind::kAirBell, strip, random);
    if (random.chance(0.5)) {
      mark.middle_mm.y = random.chance(0.5) ? random.uniform(5.6, 9.0) : random.uniform(26.0, 29.4);
    }
    mark.size_mm = random.chance(0.7) ? random.uniform(0.5, 1.5) : random.log_uniform(0.3, 3.0);
    mark.strength = random.uniform(0.2, 0.9);
    strip.marks.push_back(mark);
  }
}

void add_lines_and_rings(filmsim::StripPlan& strip, filmsim::Random& random) {
  for (int i = random.integer(0, 3); i > 0; --i) {
    MarkPlan mark = mark_somewhere(filmsim::MarkKind::kFibre, strip, random);
    mark.size_mm = random.log_uniform(0.7, 6.0);
    mark.width_mm = random.uniform(0.012, 0.03);
    mark.strength = random.uniform(0.6, 2.0);
    strip.marks.push_back(mark);
  }
  for (int i = random.integer(0, 2); i > 0; --i) {
    MarkPlan mark = mark_somewhere(filmsim::MarkKind::kDryingMark, strip, random);
    mark.size_mm = random.log_uniform(3.0, 12.0);
    mark.width_mm = random.uniform(0.2, 0.6);
    mark.strength = random.uniform(0.03, 0.15);
    strip.marks.push_back(mark);
  }
  for (int i = random.integer(0, 2); i > 0; --i) {
    MarkPlan mark = mark_somewhere(filmsim::MarkKind::kScratch, strip, random);
    mark.size_mm = random.log_uniform(8.0, 60.0);
    mark.width_mm = random.log_uniform(0.012, 0.08);
    mark.strength = random.chance(0.5) ? random.uniform(0.05, 0.3) : -random.uniform(0.05, 0.5);
    strip.marks.push_back(mark);
  }
}

MarkKind kind_of(filmsim::MarkKind kind) {
  switch (kind) {
    case filmsim::MarkKind::kDust:
      return MarkKind::dust;
    case filmsim::MarkKind::kFibre:
      return MarkKind::fibre;
    case filmsim::MarkKind::kDryingMark:
      return MarkKind::drying_mark;
    case filmsim::MarkKind::kAirBell:
      return MarkKind::air_bell;
    case filmsim::MarkKind::kScratch:
      return MarkKind::scratch;
    case filmsim::MarkKind::kPinhole:
      return MarkKind::pinhole;
    case filmsim::MarkKind::kSurge:
      break;
  }
  return MarkKind::unknown;
}

bool is_line(MarkKind kind) {
  return kind == MarkKind::fibre || kind == MarkKind::scratch;
}

/// Area as a mark's is told: inside the outline of a ring, length times width of a line.
double area_of(const filmsim::DrawnMark& drawn, double pixels_per_mm) {
  const double box_mm2 = drawn.box_px.width * drawn.box_px.height / (pixels_per_mm * pixels_per_mm);
  switch (kind_of(drawn.plan.kind)) {
    case MarkKind::drying_mark:
      return 0.25 * std::numbers::pi * box_mm2;
    case MarkKind::fibre:
    case MarkKind::scratch:
      return drawn.plan.size_mm * drawn.plan.width_mm;
    case MarkKind::air_bell:
    case MarkKind::pinhole:
      return 0.25 * std::numbers::pi * drawn.plan.size_mm * drawn.plan.size_mm;
    default:
      return drawn.area_mm2;
  }
}

TrueMark true_mark(const filmsim::DrawnMark& drawn, const filmsim::Scenario& scenario) {
  const filmsim::StripPlan& strip = scenario.strips[0];
  const bool fine = scenario.pixels_per_mm > 40.0;
  TrueMark mark;
  mark.kind = kind_of(drawn.plan.kind);
  mark.size_mm = drawn.plan.size_mm;
  mark.area_mm2 = area_of(drawn, scenario.pixels_per_mm);
  // Grain by Selwyn's law at the density of a middle tone.
  constexpr double usual_silver = 0.7;
  mark.contrast = drawn.contrast_density;
  mark.sigmas = std::abs(drawn.contrast_density) * std::sqrt(drawn.area_mm2) /
                (strip.stock.granularity * std::sqrt(usual_silver));
  const filmsim::StripGeometry geometry(strip.geometry);
  // Rings and lines reach over holes and edges; spots there are no plain ones.
  const bool on_film = geometry.outline_distance(drawn.plan.middle_mm) < -0.5 &&
                       geometry.hole_distance(drawn.plan.middle_mm) > 0.4;
  const bool small_asked = fine && (mark.kind == MarkKind::dust || mark.kind == MarkKind::pinhole);
  const bool too_fine = mark.kind == MarkKind::dust || mark.kind == MarkKind::fibre;
  constexpr double least_contrast = 0.02;
  // What a coarse scan can tell at all; find_marks says so itself.
  const double least_mm = small_asked                       ? 0.1
                          : fine                            ? 0.3
                          : too_fine                        ? INFINITY
                          : mark.kind == MarkKind::air_bell ? 0.8
                                                            : 0.3;
  mark.asked = on_film && mark.kind != MarkKind::unknown && mark.sigmas > 3.0 &&
               mark.size_mm >= least_mm && std::abs(mark.contrast) >= least_contrast;
  return mark;
}

void match(const std::vector<filmsim::DrawnMark>& drawn, const filmsim::Scenario& scenario,
           const fogline::ScanMeasurement& scan, MarksCase& result) {
  for (const filmsim::DrawnMark& mark : drawn) {
    result.truth.push_back(true_mark(mark, scenario));
  }
  for (const fogline::Mark& mark : scan.marks) {
    ToldMark told{mark.kind,    mark.confidence,
                  mark.size_mm, 0.0,
                  0.0,          mark.contrast_density.value_or(0.0),
                  false,        false};
    told.x_px = mark.box_px.x + 0.5 * mark.box_px.width;
    told.y_px = mark.box_px.y + 0.5 * mark.box_px.height;
    const FoundMark found{mark.kind, told.x_px, told.y_px, mark.size_mm,
                          mark.area_mm2.value_or(0.0)};
    for (std::size_t i = 0; i < drawn.size(); ++i) {
      if (!lies_in(found, drawn[i], scenario.pixels_per_mm)) {
        continue;
      }
      told.something_there = told.something_there || mark.kind != MarkKind::drying_mark;
      if (is_right(found, drawn[i], scenario.pixels_per_mm)) {
        told.right = true;
        result.truth[i].found = true;
      }
    }
    result.told.push_back(told);
  }
}

}  // namespace

const char* mark_name(MarkKind kind) {
  switch (kind) {
    case MarkKind::dust:
      return "dust";
    case MarkKind::fibre:
      return "fibre";
    case MarkKind::drying_mark:
      return "drying mark";
    case MarkKind::air_bell:
      return "air bell";
    case MarkKind::scratch:
      return "scratch";
    case MarkKind::pinhole:
      return "pinhole";
    default:
      return "other";
  }
}

const char* scan_name(MarksScan scan) {
  switch (scan) {
    case MarksScan::fine:
    case MarksScan::fine_clean:
      return "fine";
    case MarksScan::coarse:
    case MarksScan::coarse_clean:
      return "coarse";
    case MarksScan::medium:
    case MarksScan::medium_clean:
      break;
  }
  return "medium";
}

filmsim::Scenario marks_scenario(std::uint64_t seed, MarksScan scan) {
  const bool fine = scan == MarksScan::fine || scan == MarksScan::fine_clean;
  const bool medium = scan == MarksScan::medium || scan == MarksScan::medium_clean;
  const bool clean = scan == MarksScan::fine_clean || scan == MarksScan::coarse_clean ||
                     scan == MarksScan::medium_clean;
  filmsim::Random random(seed, fine ? 71U : medium ? 73U : 72U);
  filmsim::Scenario scenario;
  scenario.seed = seed;
  scenario.kind = "marks";
  scenario.pixels_per_mm = fine ? fine_pixels_per_mm : random.uniform(10.0, 18.0);
  const filmsim::Roll roll =
      filmsim::sample_roll(medium ? filmsim::FilmFormat::k120 : filmsim::FilmFormat::k135, random);
  filmsim::StripLayout layout;
  if (medium) {
    layout.format = filmsim::FilmFormat::k120;
    layout.frame_length_mm = layout.frame_width_mm = 56.0;
  }
  layout.frames = fine ? 1 : 2;
  scenario.strips.push_back(filmsim::lay_out_strip(roll, layout, random));
  constexpr std::array devices{filmsim::Device::kFlatbed, filmsim::Device::kFlatbed,
                               filmsim::Device::kFilmScanner};
  scenario.scanner =
      filmsim::sample_scanner(devices[static_cast<std::size_t>(random.integer(0, 2))], random);
  scenario.encoding = filmsim::sample_encoding(random);
  scenario.encoding.tone_told = filmsim::ToneTold::kIccProfile;
  scenario.strips[0].marks.clear();
  if (!clean) {
    add_spots(scenario.strips[0], random);
    add_lines_and_rings(scenario.strips[0], random);
  }
  filmsim::arrange_on_glass(scenario, 0.0, 2.0);
  return scenario;
}

bool lies_in(const FoundMark& found, const filmsim::DrawnMark& drawn, double pixels_per_mm) {
  const filmsim::Box& box = drawn.box_px;
  const double slack = 0.1 * pixels_per_mm;
  return found.x_px >= box.x - slack && found.x_px <= box.x + box.width + slack &&
         found.y_px >= box.y - slack && found.y_px <= box.y + box.height + slack;
}

bool is_right(const FoundMark& found, const filmsim::DrawnMark& drawn, double pixels_per_mm) {
  // The breadth of a line finer than the scan can't be read from it: length decides there.
  const filmsim::Box& box = drawn.box_px;
  const double ratio = is_line(found.kind)
                           ? found.size_mm / (std::max(box.width, box.height) / pixels_per_mm)
                           : found.area_mm2 / area_of(drawn, pixels_per_mm);
  return lies_in(found, drawn, pixels_per_mm) && kind_of(drawn.plan.kind) == found.kind &&
         ratio > 0.5 && ratio < 2.0;
}

MarksCase run_marks_case(std::uint64_t seed, MarksScan scan, const std::string& folder, bool keep) {
  MarksCase result;
  result.seed = seed;
  result.scan = scan;
  const filmsim::Simulated simulated = filmsim::render(marks_scenario(seed, scan));
  const std::string path =
      filmsim::write_scan(simulated, folder + "/marks-" + std::to_string(static_cast<int>(scan)) +
                                         "-" + std::to_string(seed) + ".tif");
  const filmsim::StripPlan& strip = simulated.scenario.strips[0];
  const double width_mm = filmsim::film_width_mm(strip.geometry.format);
  result.film_cm2 = strip.geometry.length_mm * width_mm / 100.0;
  try {
    const auto start = std::chrono::steady_clock::now();
    const auto source = fogline::open_scan(path, {});
    const fogline::ScanMeasurement measured =
        fogline::measure_roll(*source, fogline::shipped_options()).measurement.scans.front();
    result.search_s =
        std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    result.limits = limits_code(measured);
    match(simulated.truth.marks, simulated.scenario, measured, result);
  } catch (const std::exception& error) {
    result.trouble = error.what();
  }
  if (!keep) {
    std::filesystem::remove(path);
    std::filesystem::path truth(path);
    std::filesystem::remove(truth.replace_extension(".truth.json"));
  }
  return result;
}

void list_marks_of_file(const std::string& path) {
  const auto source = fogline::open_scan(path, {});
  const fogline::ScanMeasurement measured =
      fogline::measure_roll(*source, fogline::shipped_options()).measurement.scans.front();
  if (measured.marks_limit) {
    std::printf("# %s\n", limits_code(measured).c_str());
  }
  for (const fogline::Mark& mark : measured.marks) {
    std::printf("%-12s %.2f  %.1f,%.1f,%.1f,%.1f  %.3f mm  %.4f mm2  %+.3f\n", mark_name(mark.kind),
                mark.confidence, mark.box_px.x, mark.box_px.y, mark.box_px.width,
                mark.box_px.height, mark.size_mm, mark.area_mm2.value_or(0.0),
                mark.contrast_density.value_or(0.0));
  }
}

}  // namespace bench
