#include "roll/target/target_steps.h"

#include "numerics/robust.h"
#include "sensitometry/align_bracket.h"

#include <algorithm>
#include <cmath>

namespace fogline {

namespace {

/// A percentile of a picture isn't the spot that was metered: net density, standard uncertainty
/// (common practice, no source).
constexpr double metered_tone_doubt = 0.05;

/// A frame that a target may use: its middle was read, and it isn't a frame scanned before.
struct EvenFrame {
  FrameIndex index;
  const FrameMeasurement* frame = nullptr;
  const ExposedReading* even = nullptr;
};

std::vector<EvenFrame> even_frames_of(const std::vector<ScanReading>& scans) {
  std::vector<EvenFrame> frames;
  for (std::size_t s = 0; s < scans.size(); ++s) {
    const auto& even = scans[s].exposures.frames;
    for (std::size_t f = 0; f < even.size(); ++f) {
      const FrameMeasurement& frame = scans[s].scan.frames[f];
      if (!frame.repeats_frame && even[f]) {
        frames.push_back({{s, f}, &frame, &*even[f]});
      }
    }
  }
  return frames;
}

const StripExposures& strip_of(const ScanReading& scan, int strip) {
  return scan.exposures.strips[static_cast<std::size_t>(strip - 1)];
}

/// An area of known exposure, laid on the target.
struct LaidArea {
  const ExposedReading& reading;
  StepRole role = StepRole::bracket;
  double log_h = 0.0;
  double log_h_doubt = 0.0;
  std::string label;
};

void add_step(TargetSteps& steps, const std::vector<ScanReading>& scans, std::size_t scan_index,
              const LaidArea& area) {
  const ExposedReading& reading = area.reading;
  const std::optional<NetDoubts>& doubts = strip_of(scans[scan_index], reading.strip).net_doubts;
  if (!doubts) {
    return;
  }
  StepMeasurement step;
  step.role = area.role;
  step.corners_px = reading.corners_px;
  step.box_px = reading.box_px;
  step.log_h = area.log_h;
  step.density = reading.density;
  ExposedStep exposed;
  exposed.label = area.label;
  exposed.log_h = area.log_h;
  exposed.log_h_doubt = area.log_h_doubt;
  exposed.density = reading.area.density - doubts->base;
  exposed.density_doubt = std::hypot(reading.area.doubt, doubts->own);
  if (reading.density.at_least) {
    exposed.left_out = fact_of(Unknown::step_too_dense);
    step.left_out = exposed.left_out;
  }
  if (steps.exposed.steps.empty()) {
    steps.exposed.base_fog = 0.0;
    steps.exposed.base_fog_doubt = doubts->base_doubt;
    steps.exposed.common_doubts = doubts->common;
    steps.exposed.net_limit = doubts->limit;
  }
  steps.places.push_back({scan_index, reading.strip, std::move(step)});
  steps.exposed.steps.push_back(std::move(exposed));
}

/// The least exposed frames may be too thin to be found as frames: where they must lie by the pitch
/// of the others, film is read all the same.
void add_unseen_frames(TargetSteps& steps, const std::vector<ScanReading>& scans,
                       const BracketTarget& bracket, const std::vector<EvenFrame>& frames,
                       const BracketAlignment& alignment) {
  const auto by_exposure = [&](std::size_t a, std::size_t b) {
    return alignment.exposure_of_frame[a] < alignment.exposure_of_frame[b];
  };
  std::vector<std::size_t> used;
  for (std::size_t i = 0; i < frames.size(); ++i) {
    if (alignment.exposure_of_frame[i] >= 0) {
      used.push_back(i);
    }
  }
  const auto [first, last] = std::minmax_element(used.begin(), used.end(), by_exposure);
  const auto add = [&](std::size_t end, bool later) {
    const std::size_t scan = frames[end].index.scan;
    const StripExposures& film = strip_of(scans[scan], frames[end].frame->strip);
    const bool turned = alignment.turned_of_frame[end];
    const std::vector<ExposedReading>& unseen =
        later != turned ? film.after_frames : film.before_frames;
    int exposure = alignment.exposure_of_frame[end];
    for (const ExposedReading& reading : unseen) {
      exposure += later ? 1 : -1;
      if (exposure < 0 || exposure >= static_cast<int>(bracket.stops.size())) {
        return;
      }
      const auto index = static_cast<std::size_t>(exposure);
      add_step(
          steps, scans, scan,
          {reading, StepRole::bracket, bracket.stops[index] * stop_log_h,
           bracket.doubt_stops[index] * stop_log_h, "exposure " + std::to_string(exposure + 1)});
    }
  };
  add(*first, false);
  add(*last, true);
}

void add_bracket(TargetSteps& steps, const std::vector<ScanReading>& scans,
                 const BracketTarget& bracket) {
  const std::vector<EvenFrame> frames = even_frames_of(scans);
  std::vector<BracketFrame> seen;
  int first = -1;
  for (std::size_t i = 0; i < frames.size(); ++i) {
    const ExposedReading& even = *frames[i].even;
    const std::size_t scan = frames[i].index.scan;
    const std::optional<NetDoubts>& doubts = strip_of(scans[scan], even.strip).net_doubts;
    // Strips of different scans are different pieces of film.
    constexpr int strips_a_scan = 100;
    seen.push_back({static_cast<int>(scan) * strips_a_scan + even.strip,
                    even.area.density - (doubts ? doubts->base : 0.0), even.area.doubt,
                    even.area.spread});
    if (bracket.first_frame && frames[i].frame->number == *bracket.first_frame) {
      first = static_cast<int>(i);
    }
  }
  if (bracket.first_frame && first < 0) {
    steps.failure =
        fact_of(Unknown::first_frame_missing, {static_cast<double>(*bracket.first_frame)});
    return;
  }
  const auto found = align_bracket(bracket.stops, seen, median(bracket.doubt_stops), first);
  if (!found) {
    steps.failure = found.why();
    return;
  }
  const BracketAlignment& alignment = *found;
  for (std::size_t i = 0; i < frames.size(); ++i) {
    if (alignment.exposure_of_frame[i] < 0) {
      continue;
    }
    const auto exposure = static_cast<std::size_t>(alignment.exposure_of_frame[i]);
    steps.frames.push_back(frames[i].index);
    add_step(steps, scans, frames[i].index.scan,
             {*frames[i].even, StepRole::bracket, bracket.stops[exposure] * stop_log_h,
              bracket.doubt_stops[exposure] * stop_log_h,
              "frame " + std::to_string(frames[i].frame->number)});
  }
  add_unseen_frames(steps, scans, bracket, frames, alignment);
  if (alignment.ambiguity) {
    steps.place_doubt = alignment.ambiguity;
    steps.cautions.push_back(
        {Severity::caution, fact_of(CautionKind::bracket_ambiguous), alignment.ambiguity});
  }
}

Known<Quantity> tone_of(const FrameTone& tone, TonePart part) {
  switch (part) {
    case TonePart::shadow:
      return tone.shadow;
    case TonePart::middle:
      return tone.middle;
    case TonePart::highlight:
      break;
  }
  return tone.highlight;
}

void add_metered(TargetSteps& steps, const std::vector<ScanReading>& scans,
                 const MeteredTone& metered) {
  for (const EvenFrame& one : even_frames_of(scans)) {
    if (one.frame->number != metered.frame) {
      continue;
    }
    if (const auto tone = tone_of(one.frame->tone, metered.part)) {
      ExposedReading reading = *one.even;
      reading.area.density = tone->value;
      reading.area.doubt = metered_tone_doubt;
      reading.density = *tone;
      add_step(steps, scans, one.index.scan,
               {reading, StepRole::marked_area, (metered.zone - metered_zone) * stop_log_h,
                metered.doubt_stops * stop_log_h, "frame " + std::to_string(metered.frame)});
      return;
    }
  }
  steps.cautions.push_back({Severity::caution, fact_of(CautionKind::metered_frame_missing,
                                                       {static_cast<double>(metered.frame)})});
}

/// A frame that holds steps of a printed wedge is no picture.
void add_wedge_frames(TargetSteps& steps, const ScanReading& reading, std::size_t scan_index) {
  if (!reading.exposures.wedge) {
    return;
  }
  const auto holds = [](const BoxPx& box, PointPx at) {
    return at.x > box.x && at.x < box.x + box.width && at.y > box.y && at.y < box.y + box.height;
  };
  const std::vector<ExposedReading>& wedge = *reading.exposures.wedge;
  for (std::size_t f = 0; f < reading.scan.frames.size(); ++f) {
    const BoxPx& box = reading.scan.frames[f].box_px;
    const bool any = std::any_of(wedge.begin(), wedge.end(), [&](const ExposedReading& step) {
      return holds(box, middle_of(step.corners_px));
    });
    if (any) {
      steps.frames.push_back({scan_index, f});
    }
  }
}

}  // namespace

TargetSteps metered_steps(const std::vector<ScanReading>& scans, const ExposureTarget& target) {
  TargetSteps steps;
  if (target.bracket) {
    add_bracket(steps, scans, *target.bracket);
  }
  for (std::size_t s = 0; s < scans.size(); ++s) {
    for (const ExposedReading& area : scans[s].exposures.marked_areas) {
      const auto index = static_cast<std::size_t>(area.target_index);
      add_step(steps, scans, s,
               {area, StepRole::marked_area, target.areas[index].stops * stop_log_h,
                target.area_doubt_stops * stop_log_h, "area " + std::to_string(index + 1)});
    }
  }
  for (const MeteredTone& metered : target.metered) {
    add_metered(steps, scans, metered);
  }
  if (steps.exposed.steps.empty() && !steps.failure) {
    steps.failure = fact_of(Unknown::no_exposure_read);
  }
  return steps;
}

TargetSteps wedge_steps(const std::vector<ScanReading>& scans, const ExposedWedgeTarget& target) {
  TargetSteps steps;
  const double zero = target.h_at_zero_lux_s ? std::log10(*target.h_at_zero_lux_s) : 0.0;
  double certificate = 0.0;
  for (std::size_t s = 0; s < scans.size(); ++s) {
    add_wedge_frames(steps, scans[s], s);
    if (!steps.exposed.steps.empty()) {
      continue;
    }
    const ScanExposures& exposures = scans[s].exposures;
    if (!exposures.wedge) {
      if (exposures.wedge.why().kind != Unknown::not_told) {
        steps.failure = exposures.wedge.why();
      }
      continue;
    }
    for (const ExposedReading& reading : *exposures.wedge) {
      const ReferenceStep& step =
          target.reference.steps[static_cast<std::size_t>(reading.target_index)];
      certificate = step.u95.value_or(usual_certificate_u95) / coverage_factor_95;
      add_step(steps, scans, s,
               {reading, StepRole::exposed_wedge, zero - step.density, 0.0, "step " + step.label});
      steps.places.back().step.reference_density = step.density;
    }
    if (exposures.wedge_place_doubtful && !exposures.wedge->empty()) {
      steps.place_doubt = fact_of(Unknown::wedge_place_unsure);
      steps.cautions.push_back({Severity::caution, fact_of(CautionKind::wedge_place_doubtful)});
    }
  }
  // A certificate's own error is mostly common: it stretches log H.
  constexpr double usual_range = 3.0;
  constexpr double common_part = 0.7;
  constexpr double nominal_share = 0.02;
  steps.exposed.log_h_share_doubt =
      target.reference.nominal ? nominal_share : common_part * certificate / usual_range;
  for (ExposedStep& step : steps.exposed.steps) {
    step.log_h_doubt = (1.0 - common_part) * certificate;
  }
  if (!steps.exposed.steps.empty()) {
    // A wedge on one strip or scan is enough; the others need hold none.
    steps.failure.reset();
  } else if (!steps.failure) {
    steps.failure = fact_of(Unknown::no_wedge_read);
  }
  return steps;
}

}  // namespace fogline
