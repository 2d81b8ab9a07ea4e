// Which reported frame is which true one.
#pragma once

#include "scan_case.h"
#include "simulator/render.h"

#include <fogline/roll/roll_measurement.h>

#include <vector>

namespace bench {

struct MatchedFrame {
  const filmsim::FrameTruth* truth = nullptr;
  const fogline::FrameMeasurement* frame = nullptr;
};

/// Common area of two upright boxes over the area that they cover together.
double box_iou(const fogline::BoxPx& a, const filmsim::Box& b);

/// A frame that must be found: its border shows, and all of it is there.
bool shows_whole(const filmsim::FrameTruth& frame);

/// True frames and the reported ones that overlap them by an IoU of 0.9 and more.
std::vector<MatchedFrame> matched_frames(const filmsim::Truth& truth,
                                         const fogline::ScanMeasurement& scan);

/// Counts frames found, invented, doubled, and blanks.
void count_frames(const filmsim::Truth& truth, const fogline::ScanMeasurement& scan,
                  ScanCase& result);

bool same_format(fogline::FilmFormat format, const filmsim::StripPlan& plan);

/// Turn of a strip against the nearest image axis, clockwise, degrees.
double true_rotation_deg(const filmsim::Simulated& simulated, std::size_t strip);

Compared compared(const fogline::Quantity& quantity, double truth);

}  // namespace bench
