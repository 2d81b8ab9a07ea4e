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

double iou(const fogline::BoxPx& a, const filmsim::Box& b) {
  const double common = common_area(a, b);
  return common / (a.width * a.height + b.width * b.height - common);
}

double share_inside(const fogline::BoxPx& a, const filmsim::Box& b) {
  return common_area(a, b) / std::max(1.0, a.width * a.height);
}

}  // namespace

std::vector<MatchedFrame> matched_frames(const filmsim::Truth& truth,
                                         const fogline::ScanMeasurement& scan) {
  std::vector<MatchedFrame> matches;
  for (const filmsim::FrameTruth& frame : truth.frames) {
    for (const fogline::FrameMeasurement& found : scan.frames) {
      if (iou(found.box_px, frame.box_px) >= found_iou) {
        matches.push_back({&frame, &found});
        break;
      }
    }
  }
  return matches;
}

void count_frames(const filmsim::Truth& truth, const fogline::ScanMeasurement& scan,
                  ScanCase& result) {
  const std::vector<MatchedFrame> matches = matched_frames(truth, scan);
  for (const filmsim::FrameTruth& frame : truth.frames) {
    if (!frame.edge_shows || frame.cut) {
      continue;
    }
    ++result.frames_to_find;
    result.frames_found += std::any_of(matches.begin(), matches.end(),
                                       [&](const MatchedFrame& m) { return m.truth == &frame; })
                               ? 1
                               : 0;
  }
  for (const fogline::FrameMeasurement& found : scan.frames) {
    const bool real =
        std::any_of(truth.frames.begin(), truth.frames.end(), [&](const filmsim::FrameTruth& t) {
          return share_inside(found.box_px, t.box_px) >= belongs_share;
        });
    if (found.inferred) {
      (real ? result.blanks_right : result.blanks_wrong) += 1;
    } else if (!real) {
      ++result.frames_invented;
    }
  }
}

bool same_format(fogline::FilmFormat format, const filmsim::StripPlan& plan) {
  switch (plan.geometry.format) {
    case filmsim::FilmFormat::k135:
      return format == fogline::FilmFormat::f135;
    case filmsim::FilmFormat::k120:
      return format == fogline::FilmFormat::f120;
    case filmsim::FilmFormat::kSheet:
      break;
  }
  return format == fogline::FilmFormat::sheet;
}

double true_rotation_deg(const filmsim::Simulated& simulated, std::size_t strip) {
  return simulated.scenario.strips[strip].geometry.rotation_deg;
}

}  // namespace bench
