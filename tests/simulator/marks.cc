#include "simulator/marks.h"

#include "simulator/random.h"

#include <numbers>

namespace filmsim {
namespace {

// Radius of an uneven round outline as a share of the mean: two low harmonics.
double wobble(std::uint64_t seed, double angle, double amount) {
  const double a = static_cast<double>(seed % 628) / 100.0;
  const double b = static_cast<double>((seed / 628) % 628) / 100.0;
  return 1.0 + amount * std::sin(2.0 * angle + a) + 0.6 * amount * std::sin(3.0 * angle + b);
}

float disc(double distance_mm, double radius_mm, double soft_mm, double pixel_mm) {
  const double soft = std::max(soft_mm, pixel_mm);
  const float edge = covered_share((distance_mm - radius_mm) / soft);
  // A disc smaller than the pixel covers only its area's share of it.
  const double area = std::numbers::pi * radius_mm * radius_mm / (pixel_mm * pixel_mm);
  return edge * static_cast<float>(std::min(1.0, area));
}

float line(double distance_mm, double width_mm, double pixel_mm) {
  const double soft = std::max(pixel_mm, 0.3 * width_mm);
  const float edge =
      covered_share((std::abs(distance_mm) - 0.5 * std::max(width_mm, pixel_mm)) / soft);
  return edge * static_cast<float>(std::min(1.0, width_mm / pixel_mm));
}

float fibre(const MarkPlan& mark, double du, double dv, double pixel_mm) {
  const double angle = mark.angle_deg * std::numbers::pi / 180.0;
  const double a = du * std::cos(angle) + dv * std::sin(angle);
  const double b = dv * std::cos(angle) - du * std::sin(angle);
  if (std::abs(a) > 0.5 * mark.size_mm) return 0.0F;
  const double phase = static_cast<double>(mark.seed % 628) / 100.0;
  const double bend = 2.5 / mark.size_mm * 2.0;
  const double amplitude = 0.12 * mark.size_mm;
  const double curve = amplitude * (std::sin(bend * a + phase) - std::sin(phase));
  const double slope = amplitude * bend * std::cos(bend * a + phase);
  return line((b - curve) / std::hypot(1.0, slope), mark.width_mm, pixel_mm);
}

float scratch(const MarkPlan& mark, double du, double dv, double pixel_mm) {
  if (std::abs(du) > 0.5 * mark.size_mm) return 0.0F;
  const double phase = static_cast<double>(mark.seed % 628) / 100.0;
  return line(dv - 0.05 * std::sin(0.2 * du + phase), mark.width_mm, pixel_mm);
}

float drying_mark(const MarkPlan& mark, double du, double dv, double pixel_mm) {
  // Hanging film: drops are longer along the film.
  const double angle = std::atan2(dv, du);
  const double radius = 0.5 * mark.size_mm * wobble(mark.seed, angle, 0.1);
  const double distance = std::hypot(0.8 * du, 1.2 * dv) - radius;
  const double width = std::max(mark.width_mm, pixel_mm);
  const double rim = std::exp(-0.5 * std::pow(distance / (0.42 * width), 2.0));
  const double inside = distance < 0.0 ? 0.25 * (1.0 - rim) : 0.0;
  return static_cast<float>(rim - inside);
}

float air_bell(const MarkPlan& mark, double du, double dv, double pixel_mm) {
  const double distance = std::hypot(du, dv);
  const double radius = 0.5 * mark.size_mm;
  const double rim = std::exp(-0.5 * std::pow((distance - radius - 0.06) / 0.05, 2.0));
  return disc(distance, radius, 0.06, pixel_mm) - static_cast<float>(0.12 * rim);
}

}  // namespace

const char* mark_kind_name(MarkKind kind) {
  switch (kind) {
    case MarkKind::kDust:
      return "dust";
    case MarkKind::kFibre:
      return "fibre";
    case MarkKind::kDryingMark:
      return "drying-mark";
    case MarkKind::kAirBell:
      return "air-bell";
    case MarkKind::kScratch:
      return "scratch";
    case MarkKind::kPinhole:
      return "pinhole";
    case MarkKind::kSurge:
      return "surge";
  }
  return "unknown";
}

bool removes_silver(MarkKind kind) {
  return kind == MarkKind::kAirBell || kind == MarkKind::kPinhole;
}

double mark_reach_mm(const MarkPlan& mark) {
  return 0.75 * mark.size_mm + 2.0 * mark.width_mm + 0.3;
}

double mark_peak_share(const MarkPlan& mark, double pixel_mm) {
  switch (mark.kind) {
    case MarkKind::kFibre:
    case MarkKind::kScratch:
      return std::min(1.0, mark.width_mm / pixel_mm);
    case MarkKind::kDust:
    case MarkKind::kPinhole:
      return std::min(1.0, std::numbers::pi / 4.0 * std::pow(mark.size_mm / pixel_mm, 2.0));
    case MarkKind::kDryingMark:
    case MarkKind::kAirBell:
    case MarkKind::kSurge:
      return 1.0;
  }
  return 1.0;
}

float mark_share(const MarkPlan& mark, double du, double dv, double pixel_mm) {
  switch (mark.kind) {
    case MarkKind::kDust:
      return disc(std::hypot(du, dv),
                  0.5 * mark.size_mm * wobble(mark.seed, std::atan2(dv, du), 0.25), 0.01, pixel_mm);
    case MarkKind::kFibre:
      return fibre(mark, du, dv, pixel_mm);
    case MarkKind::kDryingMark:
      return drying_mark(mark, du, dv, pixel_mm);
    case MarkKind::kAirBell:
      return air_bell(mark, du, dv, pixel_mm);
    case MarkKind::kScratch:
      return scratch(mark, du, dv, pixel_mm);
    case MarkKind::kSurge:
      return 0.0F;
    case MarkKind::kPinhole:
      return disc(std::hypot(du, dv), 0.5 * mark.size_mm, 0.02, pixel_mm);
  }
  return 0.0F;
}

}  // namespace filmsim
