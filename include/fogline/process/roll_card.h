#pragma once

#include <fogline/base/quantity.h>
#include <fogline/density/scanner_calibration.h>
#include <fogline/roll/exposure_target.h>

#include <optional>
#include <string>
#include <vector>

namespace fogline {

/// How the emulsion is made, as far as processing cares.
enum class FilmType { cubic, tabular, chromogenic };

/// How the negatives will be used.
enum class PrintWith { diffusion, condenser, scan };

enum class FixKind { rapid, plain, hardening };

struct DevelopmentCard {
  std::optional<std::string> developer;
  std::optional<std::string> dilution;
  std::optional<double> volume_ml;
  std::optional<double> time_s;
  /// At the start.
  std::optional<double> temperature_c;
  std::optional<double> end_temperature_c;
  std::optional<std::string> agitation;
  std::optional<std::string> presoak;
  /// Date on which the concentrate was opened.
  std::optional<std::string> opened;

  friend bool operator==(const DevelopmentCard&, const DevelopmentCard&) = default;
};

struct StopCard {
  std::optional<std::string> kind;
  std::optional<double> time_s;

  friend bool operator==(const StopCard&, const StopCard&) = default;
};

struct FixCard {
  std::optional<FixKind> kind;
  std::optional<std::string> dilution;
  std::optional<double> time_s;
  /// Rolls through the same bath before this one.
  std::optional<int> rolls_before;
  std::optional<double> clearing_time_s;
  std::optional<double> fresh_clearing_time_s;

  friend bool operator==(const FixCard&, const FixCard&) = default;
};

struct WashCard {
  std::optional<std::string> method;
  /// Inversions of each fill.
  std::vector<int> fills;
  std::optional<double> time_s;

  friend bool operator==(const WashCard&, const WashCard&) = default;
};

enum class TargetKind { bracket, exposed_wedge };

/// A target of known exposures on the roll itself.
struct TargetCard {
  TargetKind kind = TargetKind::bracket;
  /// From the metered exposure; or else shutter times as marked, and the metered one.
  std::vector<double> stops;
  std::vector<double> times_s;
  std::optional<double> metered_time_s;
  /// Number of the roll's frame that begins it.
  std::optional<int> first_frame;
  std::optional<std::string> by;
  /// Standard uncertainty of each exposure alone.
  std::optional<double> doubt_stops;
  std::optional<std::string> reference;
  std::optional<double> h_at_zero_lux_s;

  friend bool operator==(const TargetCard&, const TargetCard&) = default;
};

/// What the person wrote of a roll. Everything but the name may be missing.
struct RollCard {
  std::string name;
  /// A label; rolls with one label share one model.
  std::optional<std::string> film;
  std::optional<FilmType> film_type;
  std::optional<double> exposure_index;
  std::optional<double> aim_contrast_index;
  std::optional<std::string> aim_like;
  std::optional<PrintWith> print_with;
  std::optional<std::string> batch;
  std::optional<std::string> expiry;
  std::optional<std::string> exposed;
  std::optional<std::string> developed;
  std::optional<std::string> camera;
  std::optional<std::string> tank;
  /// What scans the roll.
  std::optional<ScannerDevice> device;
  /// Red, green, blue density of the stock's clean base.
  std::optional<PerChannel<double>> base_tint;
  DevelopmentCard development;
  StopCard stop;
  FixCard fix;
  WashCard wash;
  std::optional<TargetCard> target;
  /// Tones of pictures that were metered and placed on a zone.
  std::vector<MeteredTone> metered;

  friend bool operator==(const RollCard&, const RollCard&) = default;
};

/// Known exposures from what the card says. `reference`: the table of an exposed wedge, read by the
/// caller. Shutter times count as what their marks stand for; where the card tells no doubt, marked
/// times, apertures and unknown means err by 0.15 to 0.2 stop, filters by 0.05 (standard
/// uncertainty; common practice, no source), and times beyond a second by more (reciprocity).
ExposureTarget target_of_card(const RollCard& card, std::optional<WedgeReference> reference);

}  // namespace fogline
