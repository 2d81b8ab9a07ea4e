#include "sensitometry/developed_to.h"

#include "sensitometry/curve_constructions.h"

namespace fogline {

std::optional<CurveTable> developed_to(const CurveTable& curve, double contrast_index) {
  const auto grown = [&](double proportion) {
    CurveTable table = curve;
    for (double& density : table.net_density) {
      density *= proportion;
    }
    return table;
  };
  double low = 0.2;
  double high = 5.0;
  constexpr int halvings = 40;
  for (int i = 0; i < halvings; ++i) {
    const double middle = 0.5 * (low + high);
    const auto arcs = two_arcs(grown(middle));
    // What doesn't reach the outer arc is too soft.
    (arcs && arcs->contrast_index > contrast_index ? high : low) = middle;
  }
  CurveTable wished = grown(high);
  const auto arcs = two_arcs(wished);
  constexpr double near = 1e-3;
  if (!arcs || arcs->contrast_index > contrast_index + near) {
    return std::nullopt;
  }
  return wished;
}

}  // namespace fogline
