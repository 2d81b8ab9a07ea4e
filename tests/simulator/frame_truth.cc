#include "simulator/strip_exposure.h"
#include "simulator/tell_truth.h"

#include <algorithm>
#include <cmath>

namespace filmsim {
namespace {

constexpr double kBorderMm = 0.7;    // left out along the frame's border
constexpr double kSpotMm = 0.1;      // densitometer's spot
constexpr float kWholeSpot = 0.99F;  // share of a spot that must be clean, open film
constexpr std::size_t kFewestSpots = 200;

// Sums over rectangles of pixels in constant time, ends anywhere between pixels: the picture is
// taken as constant within each pixel, so the mean over any upright box is exact.
class BoxSums {
 public:
  BoxSums(int x0, int y0, int width, int height)
      : x0_(x0),
        y0_(y0),
        width_(width + 1),
        height_(height + 1),
        sums_(static_cast<std::size_t>(width_) * static_cast<std::size_t>(height_), 0.0) {}

  void set_row(int y, const std::vector<double>& values) {
    double sum = 0.0;
    for (int x = 1; x < width_; ++x) {
      sum += values[static_cast<std::size_t>(x - 1)];
      at(x, y + 1) = at(x, y) + sum;
    }
  }

  [[nodiscard]] double over(double x, double y, double side) const {
    return up_to(x + side, y + side) - up_to(x, y + side) - up_to(x + side, y) + up_to(x, y);
  }

 private:
  double& at(int x, int y) { return sums_[index(x, y)]; }
  [[nodiscard]] std::size_t index(int x, int y) const {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
           static_cast<std::size_t>(x);
  }
  [[nodiscard]] double up_to(double x, double y) const {
    const double cx = std::clamp(x - x0_, 0.0, width_ - 1.0);
    const double cy = std::clamp(y - y0_, 0.0, height_ - 1.0);
    const int ix = std::min(static_cast<int>(cx), width_ - 2);
    const int iy = std::min(static_cast<int>(cy), height_ - 2);
    const double fx = cx - ix;
    const double fy = cy - iy;
    const double top = sums_[index(ix, iy)] * (1.0 - fx) + sums_[index(ix + 1, iy)] * fx;
    const double low = sums_[index(ix, iy + 1)] * (1.0 - fx) + sums_[index(ix + 1, iy + 1)] * fx;
    return top * (1.0 - fy) + low * fy;
  }

  int x0_, y0_, width_, height_;
  std::vector<double> sums_;
};

struct FrameView {
  const FramePlan& plan;
  const FilmStock& stock;
  const FilmPlanes& planes;
  const CameraGeometry& camera;
  const StripGeometry& geometry;
  unsigned char strip_number;

  // Picture position of a point of the frame, offsets from its middle.
  [[nodiscard]] Point px(double du, double dv) const {
    return camera.px_from_mm(geometry.glass_from_film(
        {plan.middle_u_mm + du, 0.5 * geometry.width_mm() + plan.middle_v_mm + dv}));
  }
  // Index of the pixel there, or none where the picture ends, film ends or the holder covers.
  [[nodiscard]] std::optional<std::size_t> open_pixel(double du, double dv) const {
    const Point p = px(du, dv);
    const int x = static_cast<int>(std::floor(p.x));
    const int y = static_cast<int>(std::floor(p.y));
    if (x < 0 || y < 0 || x >= planes.net.width || y >= planes.net.height) return std::nullopt;
    const std::size_t i = planes.net.index(x, y);
    if (planes.open.values[i] < 0.5F || planes.strip[i] != strip_number) return std::nullopt;
    return i;
  }
};

struct PixelBox {
  int x0, y0, x1, y1;
};

PixelBox pixel_box(const std::array<Point, 4>& corners, int width, int height) {
  double low_x = 1e9, low_y = 1e9, high_x = -1e9, high_y = -1e9;
  for (const Point p : corners) {
    low_x = std::min(low_x, p.x);
    low_y = std::min(low_y, p.y);
    high_x = std::max(high_x, p.x);
    high_y = std::max(high_y, p.y);
  }
  const auto inside = [](double value, int limit) {
    return std::clamp(static_cast<int>(std::floor(value)), 0, limit);
  };
  return {inside(low_x, width), inside(low_y, height), inside(high_x + 1.0, width),
          inside(high_y + 1.0, height)};
}

// visual_transmittance() with what is the same all over the film worked out once.
class QuickTransmittance {
 public:
  QuickTransmittance(const FilmPlanes& planes, const FilmStock& stock)
      : planes_(planes), stock_(stock), simple_(planes.haze.values.empty()) {
    for (const double stain : stock.image_stain) simple_ = simple_ && stain == 0.0;
    const Rgb clear = clear_density(stock);
    clear_ = 0.2126 * std::pow(10.0, -clear[0]) + 0.7152 * std::pow(10.0, -clear[1]) +
             0.0722 * std::pow(10.0, -clear[2]);
  }

  [[nodiscard]] double at(std::size_t pixel) const {
    if (!simple_) return visual_transmittance(planes_, stock_, pixel);
    constexpr float kLn10 = 2.302585093F;
    return clear_ * static_cast<double>(std::exp(-kLn10 * planes_.clean_net.values[pixel]));
  }

 private:
  const FilmPlanes& planes_;
  const FilmStock& stock_;
  bool simple_;
  double clear_ = 1.0;
};

// Visual densities of all whole, clean spots of the frame less its border.
std::vector<float> spot_densities(const FrameView& view, const PixelBox& box, double spot_px) {
  std::vector<float> densities;
  if (box.x1 <= box.x0 || box.y1 <= box.y0) return densities;
  const int width = box.x1 - box.x0;
  BoxSums light(box.x0, box.y0, width, box.y1 - box.y0);
  BoxSums clean(box.x0, box.y0, width, box.y1 - box.y0);
  const QuickTransmittance transmittance(view.planes, view.stock);
  std::vector<double> light_row(static_cast<std::size_t>(width));
  std::vector<double> clean_row(static_cast<std::size_t>(width));
  for (int y = box.y0; y < box.y1; ++y) {
    for (int x = box.x0; x < box.x1; ++x) {
      const std::size_t i = view.planes.net.index(x, y);
      const bool good = view.planes.strip[i] == view.strip_number &&
                        view.planes.open.values[i] >= 1.0F && view.planes.film.values[i] >= 1.0F &&
                        (view.planes.what[i] & kMarked) == 0;
      const auto column = static_cast<std::size_t>(x - box.x0);
      clean_row[column] = good ? 1.0 : 0.0;
      light_row[column] = good ? transmittance.at(i) : 0.0;
    }
    light.set_row(y - box.y0, light_row);
    clean.set_row(y - box.y0, clean_row);
  }
  const double half_u = 0.5 * view.plan.length_mm - kBorderMm - 0.5 * kSpotMm;
  const double half_v = 0.5 * view.plan.width_mm - kBorderMm - 0.5 * kSpotMm;
  for (double dv = -half_v; dv <= half_v; dv += kSpotMm) {
    const Point first = view.px(-half_u, dv);
    const Point last = view.px(half_u, dv);
    const Point mid = view.px(0.0, dv);
    for (double du = -half_u; du <= half_u; du += kSpotMm) {
      // Within a row the map is nearly straight: a parabola through three points.
      const double t = du / half_u;
      const double a = 0.5 * t * (t - 1.0);
      const double b = 0.5 * t * (t + 1.0);
      const double m = 1.0 - a - b;
      const double x = a * first.x + m * mid.x + b * last.x - 0.5 * spot_px;
      const double y = a * first.y + m * mid.y + b * last.y - 0.5 * spot_px;
      const double share = clean.over(x, y, spot_px) / (spot_px * spot_px);
      if (share < static_cast<double>(kWholeSpot)) continue;
      const double mean = light.over(x, y, spot_px) / (share * spot_px * spot_px);
      densities.push_back(static_cast<float>(-std::log10(std::max(mean, 1e-9))));
    }
  }
  return densities;
}

// Share of one side along which the picture just inside is clearly denser than the base.
double side_share(const FrameView& view, Point from, Point to, Point inwards) {
  constexpr int kPoints = 120;
  constexpr double kClearlyDenser = 0.1;
  int denser = 0;
  for (int i = 0; i < kPoints; ++i) {
    const double t = (i + 0.5) / kPoints;
    const double u = from.x + t * (to.x - from.x);
    const double v = from.y + t * (to.y - from.y);
    // The side itself must show, then a mean over three depths against grain.
    if (!view.open_pixel(u - 0.3 * inwards.x, v - 0.3 * inwards.y)) continue;
    double net = 0.0;
    int seen = 0;
    for (const double depth : {0.25, 0.4, 0.55}) {
      const auto pixel = view.open_pixel(u + depth * inwards.x, v + depth * inwards.y);
      if (!pixel) continue;
      net += view.planes.clean_net.values[*pixel];
      ++seen;
    }
    if (seen > 0 && net / seen >= kClearlyDenser) ++denser;
  }
  return static_cast<double>(denser) / kPoints;
}

std::array<double, 4> sides_shown(const FrameView& view) {
  const double u = 0.5 * view.plan.length_mm;
  const double v = 0.5 * view.plan.width_mm;
  return {side_share(view, {-u, -v}, {-u, v}, {1.0, 0.0}),
          side_share(view, {u, -v}, {u, v}, {-1.0, 0.0}),
          side_share(view, {-u, -v}, {u, -v}, {0.0, 1.0}),
          side_share(view, {-u, v}, {u, v}, {0.0, -1.0})};
}

double visible_share(const FrameView& view) {
  constexpr int kPoints = 40;
  int seen = 0;
  for (int i = 0; i < kPoints; ++i) {
    for (int j = 0; j < kPoints; ++j) {
      const double du = ((i + 0.5) / kPoints - 0.5) * view.plan.length_mm;
      const double dv = ((j + 0.5) / kPoints - 0.5) * view.plan.width_mm;
      if (view.open_pixel(du, dv)) ++seen;
    }
  }
  return static_cast<double>(seen) / (kPoints * kPoints);
}

bool overlaps_neighbour(const StripPlan& strip, std::size_t frame) {
  const FramePlan& self = strip.frames[frame];
  for (std::size_t other = 0; other < strip.frames.size(); ++other) {
    const FramePlan& next = strip.frames[other];
    if (other == frame || next.blank || self.blank) continue;
    const double apart = std::abs(next.middle_u_mm - self.middle_u_mm);
    if (apart < 0.5 * (next.length_mm + self.length_mm)) return true;
  }
  return false;
}

// Corners in the order a reader of the picture would give them.
std::array<Point, 4> corners(const FrameView& view, FilmAxis axis) {
  const double u = 0.5 * view.plan.length_mm;
  const double v = 0.5 * view.plan.width_mm;
  if (axis == FilmAxis::kX) return {view.px(-u, -v), view.px(u, -v), view.px(u, v), view.px(-u, v)};
  return {view.px(-u, v), view.px(-u, -v), view.px(u, -v), view.px(u, v)};
}

bool edge_shows(const FrameTruth& truth, bool blank) {
  constexpr double kEachSide = 0.5;
  constexpr double kOnAverage = 0.7;
  if (blank || truth.overlap) return false;
  double sum = 0.0;
  for (const double side : truth.side_shows) {
    if (side < kEachSide) return false;
    sum += side;
  }
  return sum >= 4.0 * kOnAverage;
}

bool leaves_picture_or_film(const FrameView& view, const std::array<Point, 4>& corner_px) {
  for (const Point p : corner_px) {
    if (p.x < 0.0 || p.y < 0.0 || p.x > view.planes.net.width || p.y > view.planes.net.height) {
      return true;
    }
  }
  return view.plan.middle_u_mm - 0.5 * view.plan.length_mm < 0.0 ||
         view.plan.middle_u_mm + 0.5 * view.plan.length_mm > view.geometry.length_mm();
}

}  // namespace

double percentile(std::vector<float>& values, double share) {
  std::sort(values.begin(), values.end());
  const double rank = share * static_cast<double>(values.size() - 1);
  const auto i = std::min(static_cast<std::size_t>(rank), values.size() - 1);
  const auto next = std::min(i + 1, values.size() - 1);
  const double t = rank - static_cast<double>(i);
  return static_cast<double>(values[i]) * (1.0 - t) + static_cast<double>(values[next]) * t;
}

double visual_transmittance(const FilmPlanes& planes, const FilmStock& stock, std::size_t pixel) {
  return 0.2126 * std::pow(10.0, -diffuse_density(planes, stock, pixel, 0)) +
         0.7152 * std::pow(10.0, -diffuse_density(planes, stock, pixel, 1)) +
         0.0722 * std::pow(10.0, -diffuse_density(planes, stock, pixel, 2));
}

FrameTruth frame_truth(const Scenario& scenario, std::size_t strip, std::size_t frame,
                       const FilmPlanes& planes, const CameraGeometry& camera,
                       const StripGeometry& geometry) {
  const StripPlan& strip_plan = scenario.strips[strip];
  const FramePlan& plan = strip_plan.frames[frame];
  const FrameView view{plan,   strip_plan.stock, planes,
                       camera, geometry,         static_cast<unsigned char>(strip + 1)};
  FrameTruth truth;
  truth.strip = static_cast<int>(strip) + 1;
  truth.plan = &plan;
  truth.corners_px = corners(view, geometry.settings().axis);
  const Point middle = view.px(0.0, 0.0);
  const bool along_x = geometry.settings().axis == FilmAxis::kX;
  const double width_px = (along_x ? plan.length_mm : plan.width_mm) * scenario.pixels_per_mm;
  const double height_px = (along_x ? plan.width_mm : plan.length_mm) * scenario.pixels_per_mm;
  truth.box_px = {middle.x - 0.5 * width_px, middle.y - 0.5 * height_px, width_px, height_px};
  truth.visible_share = visible_share(view);
  truth.cut = leaves_picture_or_film(view, truth.corners_px);
  truth.overlap = overlaps_neighbour(strip_plan, frame);
  truth.side_shows = sides_shown(view);
  truth.edge_shows = edge_shows(truth, plan.blank);
  std::vector<float> spots =
      spot_densities(view, pixel_box(truth.corners_px, planes.net.width, planes.net.height),
                     kSpotMm * scenario.pixels_per_mm);
  if (spots.size() >= kFewestSpots) {
    truth.shadow = percentile(spots, 0.02);
    truth.middle = percentile(spots, 0.50);
    truth.highlight = percentile(spots, 0.98);
  }
  return truth;
}

}  // namespace filmsim
