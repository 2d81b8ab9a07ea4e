#include "compare_frames.h"

#include <algorithm>

namespace bench {

namespace {

constexpr double found_iou = 0.9;
/// A reported frame belongs to a true one when this share of it lies there.
constexpr double belongs_share = 0.5;

double common_area(const fogline::BoxPx& a, const filmsim::Box& b) {
  const double width = std::min(a.x + a.width, b.x + b.width) - std::max(a.x, b.x);
  const double height = std::min(a.y + a.height, b.y + b.height) - std::max(a.y, b.y);
  return std::max(0.0, width) * std::max(0.0, height);
}

double share_inside(const fogline::BoxPx& a, const filmsim::Box& b) {
  return common_area(a, b) / std::max(1.0, a.width * a.height);
}

}  // namespace

double box_iou(const fogline::BoxPx& a, const filmsim::Box& b) {
  const double common = common_area(a, b);
  return common / (a.width * a.height + b.width * b.height - common);
}

bool shows_whole(const filmsim::FrameTruth& frame) {
  return frame.edge_shows && !frame.cut;
}

std::vector<MatchedFrame> matched_frames(const filmsim::Truth& truth,
                                         const fogline::ScanMeasurement& scan) {
  std::vector<MatchedFrame> matches;
  for (const filmsim::FrameTruth& frame : truth.frames) {
    for (const fogline::FrameMeasurement& found : scan.frames) {
      if (box_iou(found.box_px, frame.box_px) >= found_iou) {
        matches.push_back({&frame, &found});
        break;
      }
    }
  }
  return matches;
}

void count_frames(const filmsim::Truth& truth, const fogline::ScanMeasurement& scan,
                  ScanCase& result) {
  for (const MatchedFrame& match : matched_frames(truth, scan)) {
    result.frames_found += shows_whole(*match.truth) ? 1 : 0;
  }
  std::vector<bool> taken(truth.frames.size(), false);
  for (const fogline::FrameMeasurement& found : scan.frames) {
    const auto home = std::find_if(
        truth.frames.begin(), truth.frames.end(), [&](const filmsim::FrameTruth& frame) {
          return share_inside(found.box_px, frame.box_px) >= belongs_share;
        });
    const bool real = home != truth.frames.end();
    if (found.inferred) {
      (real ? result.blanks_right : result.blanks_wrong) += 1;
    } else if (!real) {
      ++result.frames_invented;
    } else {
      const auto at = static_cast<std::size_t>(home - truth.frames.begin());
      // Overlapping exposures share their ground: nobody can say whose a frame is.
      result.frames_doubled += taken[at] && !home->overlap ? 1 : 0;
      taken[at] = true;
    }
  }
}

bool same_format(fogline::FilmFormat format, const filmsim::StripPlan& plan) {
  switch (plan.geometry.format) {
    case filmsim::FilmFormat::k135:
      return format == fogline::FilmFormat::f135;
    case filmsim::FilmFormat::k120:
      return format == fogline::FilmFormat::f120;
    case filmsim::FilmFormat::k127:
    case filmsim::FilmFormat::k110:
      return format == fogline::FilmFormat::unknown;
    case filmsim::FilmFormat::kSheet:
      break;
  }
  return format == fogline::FilmFormat::sheet;
}

double true_rotation_deg(const filmsim::Simulated& simulated, std::size_t strip) {
  return simulated.scenario.strips[strip].geometry.rotation_deg;
}

}  // namespace bench
