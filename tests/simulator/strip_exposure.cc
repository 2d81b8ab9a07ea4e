#include "simulator/strip_exposure.h"

#include <cmath>

namespace filmsim {
namespace {

// The picture needs no more detail than a taking lens gives, whatever the scan's resolution.
constexpr double kSharpestPixelsPerMm = 24.0;
constexpr double kGateSoftMm = 0.05;  // the gate stands a little before the film
constexpr double kGateCornerMm = 0.4;
constexpr double kLeaderLogH = 3.5;       // daylight through no lens, above the speed point
constexpr double kLeaderFadePerMm = 1.2;  // log10 loss of light past the leader's end

// The print of the strip, in film coordinates turned by half a turn where the strip lies so.
EdgePrint factory_print(const StripPlan& plan) {
  constexpr double kBeforeFrameMm = 9.0;
  constexpr double k120PitchMm = 60.0;
  StripGeometrySettings film = plan.geometry;
  double first = plan.frames.empty() ? 5.0 : plan.frames.front().middle_u_mm - kBeforeFrameMm;
  if (plan.print_turned) {
    first = film.length_mm - first - 2.0 * kBeforeFrameMm;
    film.hole_phase_mm = std::fmod(film.length_mm - film.hole_phase_mm, k135PitchMm);
  }
  const double pitch = film.format == FilmFormat::k135 ? k135FramePitchMm : k120PitchMm;
  return EdgePrint(film, first, pitch, plan.first_frame_number);
}

}  // namespace

StripExposure::StripExposure(const StripPlan& plan, double pixels_per_mm, double from_u_mm,
                             double to_u_mm)
    : plan_(&plan),
      pixel_mm_(1.0 / pixels_per_mm),
      scene_pixels_per_mm_(std::min(pixels_per_mm, kSharpestPixelsPerMm)),
      print_exposure_(static_cast<float>(std::pow(10.0, plan.stock.edge_print_log_h))) {
  const double width = film_width_mm(plan.geometry.format);
  for (const FramePlan& frame : plan.frames) {
    const double half = 0.5 * frame.length_mm + 1.0;
    const bool seen = frame.middle_u_mm + half > from_u_mm && frame.middle_u_mm - half < to_u_mm;
    if (frame.blank || !seen) continue;
    const int w =
        std::max(2, static_cast<int>(std::lround(frame.length_mm * scene_pixels_per_mm_)));
    const int h = std::max(2, static_cast<int>(std::lround(frame.width_mm * scene_pixels_per_mm_)));
    Gate gate{frame, 0.5 * width + frame.middle_v_mm, scene_log_luminance(frame.scene, w, h)};
    for (float& value : gate.exposure.values) {
      value = std::pow(10.0F, value + static_cast<float>(frame.mean_log_h));
    }
    gates_.push_back(std::move(gate));
  }
  if (plan.edge_print) print_ = factory_print(plan);
}

float StripExposure::through_gate(const Gate& gate, Point film_mm) const {
  const double du = film_mm.x - gate.plan.middle_u_mm;
  const double dv = film_mm.y - gate.middle_v_mm;
  const double half_u = 0.5 * gate.plan.length_mm;
  const double half_v = 0.5 * gate.plan.width_mm;
  if (std::abs(du) > half_u + 0.2 || std::abs(dv) > half_v + 0.2) return 0.0F;
  const double distance = rounded_box_distance(du, dv, half_u, half_v, kGateCornerMm);
  const float open = covered_share(distance / std::max(pixel_mm_, kGateSoftMm));
  if (open <= 0.0F) return 0.0F;
  const double scale_x = gate.exposure.width / gate.plan.length_mm;
  const double scale_y = gate.exposure.height / gate.plan.width_mm;
  return open * gate.exposure.sample(static_cast<float>((du + half_u) * scale_x - 0.5),
                                     static_cast<float>((dv + half_v) * scale_y - 0.5));
}

StripExposure::Light StripExposure::at(Point film_mm) const {
  Light light{0.0F, kUnexposed};
  for (const Gate& gate : gates_) {
    const float share = through_gate(gate, film_mm);
    if (share > 0.0F) {
      light.exposure += share;
      light.what |= kInFrame;
    }
  }
  if (!print_.empty()) {
    const Point turned{plan_->geometry.length_mm - film_mm.x,
                       film_width_mm(plan_->geometry.format) - film_mm.y};
    const float share = print_.share(plan_->print_turned ? turned : film_mm);
    if (share > 0.0F) {
      light.exposure += share * print_exposure_;
      light.what |= kInPrint;
    }
  }
  if (plan_->leader_mm > 0.0) {
    const double past = std::max(0.0, film_mm.x - plan_->leader_mm);
    const double log_h = kLeaderLogH - kLeaderFadePerMm * past;
    if (log_h > -2.0) {
      light.exposure += static_cast<float>(std::pow(10.0, log_h));
      light.what |= kInLeader;
    }
  }
  return light;
}

}  // namespace filmsim
