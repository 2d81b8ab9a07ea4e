#include "target_case.h"

#include "end_to_end/measured_target.h"

#include <algorithm>
#include <cmath>
#include <filesystem>

namespace bench {

namespace {

/// Exposure of the frame or step at a place of the picture, in the program's scale.
std::optional<double> true_log_h(const filmsim::TargetScan& scan, const filmsim::Simulated& drawn,
                                 const fogline::PointPx& at) {
  for (const filmsim::FrameTruth& frame : drawn.truth.frames) {
    const filmsim::Box& box = frame.box_px;
    const bool inside =
        at.x > box.x && at.x < box.x + box.width && at.y > box.y && at.y < box.y + box.height;
    if (!inside) {
      continue;
    }
    const filmsim::FramePlan& plan = *frame.plan;
    if (scan.kind == filmsim::TargetKind::kBracket) {
      return plan.mean_log_h - scan.metered_log_h;
    }
    const auto& wedge = plan.scene.wedge_densities;
    // Corners run from the strip's start along the film, then across it.
    const auto share = [&](const filmsim::Point& a, const filmsim::Point& b) {
      const double dx = b.x - a.x;
      const double dy = b.y - a.y;
      return ((at.x - a.x) * dx + (at.y - a.y) * dy) / (dx * dx + dy * dy);
    };
    const double part = plan.scene.wedge_downwards
                            ? share(frame.corners_px[0], frame.corners_px[3])
                            : share(frame.corners_px[0], frame.corners_px[1]);
    const auto step =
        static_cast<std::size_t>(std::clamp(part, 0.0, 0.999) * static_cast<double>(wedge.size()));
    return -wedge[step];
  }
  return std::nullopt;
}

void compare_steps(TargetCase& result, const filmsim::TargetScan& scan,
                   const filmsim::Simulated& drawn, const fogline::RollMeasurement& roll) {
  // A quarter of the smallest distance between two exposures, and what a shutter errs.
  const double within = scan.kind == filmsim::TargetKind::kBracket
                            ? 0.10 + 3.5 * scan.doubt_stops * 0.30103
                            : 0.25 * (scan.printed[1] - scan.printed[0]);
  for (const fogline::ScanMeasurement& one : roll.scans) {
    for (const fogline::StepMeasurement& step : one.steps) {
      const auto truth = true_log_h(scan, drawn, fogline::middle_of(step.corners_px));
      ++result.steps;
      result.steps_right += truth && step.log_h && std::abs(*truth - *step.log_h) < within ? 1 : 0;
    }
  }
}

}  // namespace

TargetCase run_target_case(const filmsim::TargetWish& wish, std::uint64_t seed,
                           const std::string& folder) {
  TargetCase result;
  result.seed = seed;
  const filmsim::TargetScan scan = filmsim::sample_target(wish, seed);
  result.steps_made = static_cast<int>(std::max(scan.stops.size(), scan.printed.size()));
  const std::string base = folder + "/" + std::to_string(seed);
  const filmsim::Simulated drawn = filmsim::render(scan.scenario);
  try {
    const fogline::RollMeasurement roll = end_to_end::measure_target(
        scan, drawn, end_to_end::target_of(scan), wish.calibratable, base);
    for (const fogline::Caution& caution : roll.target_cautions) {
      result.place_doubtful =
          result.place_doubtful || caution.fact.kind == fogline::CautionKind::wedge_place_doubtful;
      result.ambiguous =
          result.ambiguous || caution.fact.kind == fogline::CautionKind::bracket_ambiguous;
      if (caution.fact.kind == fogline::CautionKind::target_unread) {
        result.trouble = fogline::fact_row(roll.sensitometry.why().kind).code;
      }
    }
    compare_steps(result, scan, drawn, roll);
    if (roll.sensitometry) {
      const fogline::Sensitometry& read = *roll.sensitometry;
      const filmsim::TargetCurve curve(scan);
      result.numbers = compare_numbers(
          read.readings, numbers_of_curve([&](double log_h) { return curve.net_density(log_h); },
                                          {curve.speed_point_log_h(), read.curve.begin_log_h,
                                           read.curve.sure_end_log_h}));
    }
  } catch (const std::exception& error) {
    result.trouble = error.what();
  }
  for (const char* ending : {".tif", "-wedge.tif", ".truth.json"}) {
    std::filesystem::remove(base + ending);
  }
  return result;
}

}  // namespace bench
