// Every parameter of one simulated scan. Lengths in millimetres, densities in log10 units.
#pragma once

#include "simulator/camera_geometry.h"
#include "simulator/encoding.h"
#include "simulator/film_stock.h"
#include "simulator/foreign_laws.h"
#include "simulator/marks.h"
#include "simulator/scanner.h"
#include "simulator/scene.h"
#include "simulator/strip_geometry.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace filmsim {

/// One exposure on a strip.
struct FramePlan {
  double middle_u_mm = 0.0;  ///< middle along the film, from its left (upper) end
  double middle_v_mm = 0.0;  ///< middle across, from the film's middle; about +-0.3
  double length_mm = 36.0;   ///< gate along the film
  double width_mm = 24.0;    ///< gate across the film
  bool blank = false;        ///< transported but not exposed
  SceneSettings scene;
  /// Log exposure of the scene's mean luminance, from the speed point. A meter that places the
  /// mean at ten times the speed point's exposure gives 1.0; safety adds about 0.2.
  double mean_log_h = 1.2;
  double exposure_error_stops = 0.0;  ///< already part of mean_log_h; kept for the truth
};

/// One piece of film.
struct StripPlan {
  StripGeometrySettings geometry;
  FilmStock stock;
  std::vector<FramePlan> frames;
  bool edge_print = true;
  bool print_turned = false;   ///< numbers along the other edge, upside down
  int first_frame_number = 1;  ///< number printed beside the first frame
  double leader_mm = 0.0;      ///< fogged length from the left (upper) end
  double surge_density = 0.0;  ///< streaks from the holes at net density 0.4 and above
  /// Density that the film's cut edges and the holes' borders take away from a directed light, over
  /// about 0.05 mm inside the film.
  double edge_shade = 0.0;
  std::vector<MarkPlan> marks;
};

/// Clear opening of an opaque holder, about a middle given in glass millimetres.
struct HolderWindow {
  Point middle_mm;
  double width_mm = 0.0;
  double height_mm = 0.0;
  double corner_radius_mm = 0.5;
};

/// Something that lies across the film: a bar, a strip of tape.
struct HolderBar {
  HolderWindow outline;
  double passes = 0.0;  ///< share of the light, 0 (opaque) to 0.4 (translucent)
};

struct Holder {
  bool present = false;  ///< false: film on open glass or before a bare panel
  std::vector<HolderWindow> windows;
  std::vector<HolderBar> bars;
};

struct Scenario {
  std::uint64_t seed = 1;
  std::string kind = "hand-made";
  int width_px = 1600;
  int height_px = 480;
  double pixels_per_mm = 12.0;
  CameraSettings camera;
  std::vector<StripPlan> strips;  ///< top to bottom, or left to right
  Holder holder;
  /// A positive picture that fills the glass instead of a negative: an unfit scan.
  std::optional<SceneSettings> positive_picture;
  ScannerSettings scanner;
  EncodingSettings encoding;
  /// Absent: all is as the analyser assumes.
  std::optional<ForeignLaws> foreign;
};

}  // namespace filmsim
