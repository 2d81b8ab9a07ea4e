// Puts the marks onto the planes and notes what each came to: box, area, contrast.

#include "simulator/film_planes.h"
#include "simulator/strip_exposure.h"

#include <cmath>

namespace filmsim {
namespace {

constexpr float kInTheMark = 0.3F;  // share above which a pixel counts as the mark
constexpr float kTouched = 0.02F;   // share above which the picture's truth leaves it out

class MarkBrush {
 public:
  MarkBrush(FilmPlanes& planes, const StripGeometry& strip, const CameraGeometry& camera,
            const FilmStock& stock)
      : planes_(planes), strip_(strip), camera_(camera), stock_(stock) {}

  DrawnMark draw(const MarkPlan& mark) {
    DrawnMark drawn;
    drawn.plan = mark;
    low_ = {1e9, 1e9};
    high_ = {-1e9, -1e9};
    count_ = 0;
    peak_share_ = mark_peak_share(mark, 1.0 / camera_.pixels_per_mm());
    sum_ = 0.0;
    const double reach = mark_reach_mm(mark);
    const Point middle = camera_.px_from_mm(strip_.glass_from_film(mark.middle_mm));
    const double reach_px = 1.5 * reach * camera_.pixels_per_mm() + 2.0;
    const int x1 = limited(middle.x + reach_px, planes_.net.width);
    const int y1 = limited(middle.y + reach_px, planes_.net.height);
    for (int y = limited(middle.y - reach_px, planes_.net.height); y < y1; ++y) {
      for (int x = limited(middle.x - reach_px, planes_.net.width); x < x1; ++x) touch(mark, x, y);
    }
    if (count_ == 0) return drawn;
    drawn.visible = true;
    drawn.box_px = {low_.x, low_.y, high_.x - low_.x, high_.y - low_.y};
    drawn.area_mm2 = count_ / (camera_.pixels_per_mm() * camera_.pixels_per_mm());
    drawn.contrast_density = sum_ / count_;
    return drawn;
  }

 private:
  static int limited(double value, int limit) {
    return std::clamp(static_cast<int>(std::lround(value)), 0, limit);
  }

  void touch(const MarkPlan& mark, int x, int y) {
    const std::size_t i = planes_.net.index(x, y);
    if (planes_.film.values[i] <= 0.0F) return;
    const Point film_mm = strip_.film_from_glass(camera_.mm_from_px({x + 0.5, y + 0.5}));
    const float share = mark_share(mark, film_mm.x - mark.middle_mm.x, film_mm.y - mark.middle_mm.y,
                                   1.0 / camera_.pixels_per_mm());
    if (std::abs(share) < 0.5F * kTouched) return;
    const auto strength = static_cast<float>(mark.strength);
    float change = strength * share;
    if (removes_silver(mark.kind)) {
      change = -change * std::max(0.0F, planes_.net.values[i]);
      planes_.net.values[i] += change;
    } else if (strength < 0.0F) {
      // Emulsion scraped off: at most all the silver goes.
      change = std::max(change, -planes_.net.values[i] - static_cast<float>(stock_.fog));
      planes_.net.values[i] += change;
    } else {
      // A part of the pixel is covered, so light is averaged, not density.
      const bool covers = mark.kind == MarkKind::kDust || mark.kind == MarkKind::kFibre;
      if (covers) change = -std::log10(1.0F - share * (1.0F - std::pow(10.0F, -strength)));
      planes_.added.values[i] += change;
    }
    if (std::abs(share) > kTouched) planes_.what[i] |= kMarked;
    if (share > kInTheMark * peak_share_ && planes_.open.values[i] > 0.5F) count(x, y, change);
  }

  void count(int x, int y, float change) {
    low_ = {std::min(low_.x, static_cast<double>(x)), std::min(low_.y, static_cast<double>(y))};
    high_ = {std::max(high_.x, x + 1.0), std::max(high_.y, y + 1.0)};
    ++count_;
    sum_ += change;
  }

  FilmPlanes& planes_;
  const StripGeometry& strip_;
  const CameraGeometry& camera_;
  const FilmStock& stock_;
  Point low_;
  Point high_;
  int count_ = 0;
  double peak_share_ = 1.0;
  double sum_ = 0.0;
};

}  // namespace

std::vector<DrawnMark> draw_marks(FilmPlanes& planes, const Scenario& scenario,
                                  const CameraGeometry& camera,
                                  const std::vector<StripGeometry>& geometries) {
  std::vector<DrawnMark> drawn;
  for (std::size_t s = 0; s < scenario.strips.size(); ++s) {
    MarkBrush brush(planes, geometries[s], camera, scenario.strips[s].stock);
    for (const MarkPlan& mark : scenario.strips[s].marks) {
      DrawnMark result = brush.draw(mark);
      result.strip = static_cast<int>(s);
      if (result.visible) drawn.push_back(result);
    }
  }
  return drawn;
}

}  // namespace filmsim
