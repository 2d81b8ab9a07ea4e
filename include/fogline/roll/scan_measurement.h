#pragma once

#include <fogline/base/caution.h>
#include <fogline/base/known.h>
#include <fogline/base/quantity.h>
#include <fogline/base/raster.h>
#include <fogline/base/scan_source.h>
#include <fogline/density/doubt.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/film/film_format.h>
#include <fogline/marks/mark.h>
#include <fogline/sensitometry/film_tones.h>
#include <fogline/tint/tint.h>

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// A small display picture of the scan (sRGB, 8 bits, 1 or 3 channels).
struct ScanPicture {
  Raster<std::uint8_t> pixels;
  /// Stored pixels of the scan a picture pixel.
  double scan_px_per_pixel = 1.0;
};

/// What an outline drawn over the scan's picture shows.
enum class OutlineKind {
  strip,        ///< edge of a piece of film
  perforation,  ///< a perforation, whole or partly hidden
  frame,        ///< border of a frame
  tone_area,    ///< part of a frame whose tone was read
  clear_film,   ///< unexposed film where base plus fog was read
  light_path,   ///< bare light where density zero was read
  edge_print,   ///< factory-exposed edge print
  leader,       ///< fogged leader
  opaque,       ///< opaque surround where stray light was read
  exposed_step  ///< area of known exposure, read for the characteristic curve
};

/// A closed outline in stored pixels, drawn on the report's picture so that the reader sees where
/// each number comes from.
struct Outline {
  OutlineKind kind = OutlineKind::frame;
  std::vector<PointPx> points;
  int strip = 0;
  /// Number of the frame for frame and tone_area, else 0.
  int number = 0;
  /// Inferred, hidden or cut: drawn with a dash.
  bool partial = false;

  friend bool operator==(const Outline&, const Outline&) = default;
};

/// One frame of the roll.
struct FrameMeasurement {
  int number = 0;
  int strip = 0;
  /// Upright box of the frame's own size about its centre.
  BoxPx box_px;
  /// Clockwise from top left.
  std::array<PointPx, 4> corners_px;
  /// Placed by its neighbours only (blank film).
  bool inferred = false;
  /// Cut off by the image border, the holder or the end of the film.
  bool cut = false;
  /// The same picture as an earlier frame of the roll (scanned twice): left out of the medians.
  std::optional<int> repeats_frame;
  FrameTone tone;
  /// Part of a target: no picture to be judged by its tones.
  bool target = false;

  friend bool operator==(const FrameMeasurement&, const FrameMeasurement&) = default;
};

/// One piece of film in a scan.
struct StripMeasurement {
  int number = 0;
  FilmFormat format = FilmFormat::unknown;
  BoxPx box_px;
  /// Clockwise, -45 to 45.
  double rotation_deg = 0.0;
  /// Perforations seen, whole or in part.
  int perforations = 0;
  Known<BaseFog> base_fog;

  friend bool operator==(const StripMeasurement&, const StripMeasurement&) = default;
};

/// Density 0 of a scan.
struct ZeroReport {
  ZeroSource source = ZeroSource::none;
  /// Greatest difference of the bare light over the film, as a density.
  std::optional<double> unevenness_density;

  friend bool operator==(const ZeroReport&, const ZeroReport&) = default;
};

/// The doubt of one number of a scan, source by source.
struct DoubtBudget {
  /// "base_fog" (with several strips "strips[0].base_fog"), "frame 3 highlight".
  std::string number;
  Quantity quantity;
  std::vector<BudgetLine> lines;

  friend bool operator==(const DoubtBudget&, const DoubtBudget&) = default;
};

/// The calibration that a scan was read by.
struct ScanCalibration {
  CalibrationMethod method = CalibrationMethod::wedge;
  bool shape_only = false;
  std::string date;
  std::string checksum;
  std::string reference;
  double shown_to_density = 0.0;
  /// Learned from a wedge in this very scan.
  bool own_wedge = false;
  /// Bit depth, bare light and balance of channels are those of the calibration.
  bool same_settings = true;

  friend bool operator==(const ScanCalibration&, const ScanCalibration&) = default;
};

/// What a step is of: a wedge beside the film, a wedge printed on it, a frame of an even target, an
/// area that the user marked.
enum class StepRole { scanner_wedge, exposed_wedge, bracket, marked_area };

/// A step of known density or exposure.
struct StepMeasurement {
  int number = 0;
  StepRole role = StepRole::scanner_wedge;
  BoxPx box_px;
  std::array<PointPx, 4> corners_px{};
  /// Median stored code per channel (of 255 or 65535).
  PerChannel<double> code{};
  Known<double> reference_density = Unknown::no_wedge_step;
  Known<double> log_h = Unknown::step_not_exposed;
  Quantity density;
  bool outlier = false;
  /// Why it doesn't count; absent where it does.
  std::optional<WhyUnknown> left_out;

  friend bool operator==(const StepMeasurement&, const StepMeasurement&) = default;
};

/// What one scan alone says.
struct ScanMeasurement {
  ScanInfo info;
  /// What made it: as told, else a camera where its file says so, else as its calibration says.
  ScannerDevice device = ScannerDevice::unknown;
  /// Somebody told the device, and silver's densities are what diffuse light would give.
  bool device_told = false;
  Known<double> pixels_per_mm;
  ZeroReport zero;
  Fitness fitness = Fitness::unfit;
  DensitiesAbove densities_above = DensitiesAbove::light_path;
  /// Stray light as a share of the bare light path.
  Known<Quantity> veiling_glare;
  Known<Quantity> leader;
  Known<Quantity> edge_print;
  /// Highest density this scan can tell within 0.1.
  Known<double> density_limit;
  std::vector<Caution> cautions;
  /// Top to bottom or left to right.
  std::vector<StripMeasurement> strips;
  Known<BaseFog> base_fog;
  std::vector<FrameMeasurement> frames;
  Known<ScanCalibration> calibration;
  /// Steps of the wedge in the scan, lightest first.
  std::vector<StepMeasurement> steps;
  /// How many steps of a wedge printed on the film were read; only where the roll has one as its
  /// target.
  Known<int> exposed_wedge_steps;
  /// Of base plus fog and of each frame's tones, in their order.
  std::vector<DoubtBudget> budgets;
  /// Colour of clear film.
  Tint tint;
  std::vector<Mark> marks;
  /// Why none or only some kinds of marks could be looked for; absent where all were.
  std::optional<WhyUnknown> marks_limit;
  std::vector<Outline> outlines;

  friend bool operator==(const ScanMeasurement&, const ScanMeasurement&) = default;
};

}  // namespace fogline
