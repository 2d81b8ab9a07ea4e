// What is true of a simulated scan.
#pragma once

#include "simulator/film_planes.h"
#include "simulator/scenario.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace filmsim {

/// Diffuse density above the bare light path.
struct ChannelDensities {
  double visual = 0.0;  ///< 0.2126 red, 0.7152 green, 0.0722 blue, mixed in transmittance
  double red = 0.0;
  double green = 0.0;
  double blue = 0.0;
};

struct StripTruth {
  int number = 1;
  Box box_px;                   ///< upright box of the film that shows
  std::vector<Point> holes_px;  ///< middles of holes that show whole
  int holes_partly = 0;
  ChannelDensities base_fog;         ///< clean unexposed film, tint and mean haze included
  std::optional<double> edge_print;  ///< visual density of its cores above the light path
  std::optional<double> leader;      ///< visual density above the light path
  double contrast_index = 0.0;
  double average_gradient = 0.0;  ///< over 1.50 log H from the speed point
};

struct FrameTruth {
  int number = 1;  ///< through the image
  int strip = 1;
  const FramePlan* plan = nullptr;  ///< in the scenario
  std::array<Point, 4> corners_px;  ///< clockwise from top left
  Box box_px;
  double visible_share = 0.0;  ///< of its area, inside the picture and the windows
  bool cut = false;            ///< by the picture's border or the film's end
  bool overlap = false;
  bool edge_shows = false;
  /// Share of each side along which the picture is 0.1 denser than base: the side nearest the
  /// strip's start, its end, the upper (right) and the lower (left) one. Hidden parts don't count.
  std::array<double, 4> side_shows = {0.0, 0.0, 0.0, 0.0};
  std::optional<double> shadow;  ///< 2nd, 50th, 98th percentile of visual density of spots
  std::optional<double> middle;
  std::optional<double> highlight;
};

struct Truth {
  std::vector<StripTruth> strips;
  std::vector<FrameTruth> frames;
  std::vector<DrawnMark> marks;
  std::string zero_visible;         ///< "holes", "gap", "none"
  double zero_clipped_share = 0.0;  ///< of the bare light, in its most clipped channel
  std::string expected_fitness;     ///< "fit", "relative", "unfit"
  std::string reason;
};

}  // namespace filmsim
