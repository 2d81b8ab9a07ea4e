#pragma once

#include <fogline/process/roll_card.h>

#include <optional>
#include <vector>

namespace fogline {

/// A positive quantity that varies from case to case: 95 in 100 lie between the two, log-normally.
struct PriorRange {
  double low = 0.0;
  double high = 0.0;

  bool operator==(const PriorRange&) const = default;
};

/// One value for ordinary (cubic-grain) film and one for tabular-grain film.
struct ByFilmType {
  double cubic = 0.0;
  double tabular = 0.0;

  /// The value for `type`; for film of unknown type the greater one, the safer of two baths.
  [[nodiscard]] double of(std::optional<FilmType> type) const;

  bool operator==(const ByFilmType&) const = default;
};

/// How far and how fast films develop.
struct FilmKinetics {
  PriorRange contrast_limit;
  /// Of film whose developing time lies in the middle of DevelopmentPriors::time_min; in inverse
  /// proportion for other times, because makers give weak developers and cool baths longer ones.
  PriorRange rate_per_min;

  bool operator==(const FilmKinetics&) const = default;
};

/// How development usually behaves, before this person's rolls have been seen.
struct DevelopmentPriors {
  FilmKinetics cubic;
  FilmKinetics tabular;
  FilmKinetics unknown;
  /// Any start time from 0 to this is as likely, minutes.
  double latest_start_min = 0.0;
  /// Factor of the rate for 10 degrees.
  PriorRange q10;
  /// Usual developing times, minutes.
  PriorRange time_min;
  /// Standard deviations, shares of contrast: of one roll about what this person's habits give, and
  /// of those habits about the aim.
  double roll_scatter_share = 0.0;
  double habit_sd_share = 0.0;
  /// The same of exposure, stops.
  double exposure_scatter_stops = 0.0;
  double exposure_habit_sd_stops = 0.0;

  bool operator==(const DevelopmentPriors&) const = default;
};

/// Rules of thumb for stop, fix and wash.
struct BathPriors {
  /// Seconds that are enough for any film in an acid stop, and the most that is of use for
  /// tabular-grain film.
  double stop_s = 0.0;
  double stop_longest_s = 0.0;
  ByFilmType fix_rapid_s;
  ByFilmType fix_plain_s;
  /// Fixing time over clearing time.
  ByFilmType fix_over_clearing;
  /// Beyond it fresh rapid fixer begins to take silver off the picture.
  double fix_rapid_longest_s = 0.0;
  /// Fixer is spent where it clears this many times slower than fresh.
  double clearing_when_spent = 0.0;
  double film_units_per_litre = 0.0;
  /// Units that one roll takes out of the fixer.
  ByFilmType units_per_roll;
  std::vector<int> wash_fills;
  /// Inversions of the fill that is added where dye is left.
  int wash_extra_fill = 0;
  double wash_rest_s = 0.0;
  double wash_running_s = 0.0;

  bool operator==(const BathPriors&) const = default;
};

/// Prior knowledge that advice rests on. Shipped in `calibration/development.toml` and
/// `calibration/baths.toml`, each value with its source; a default one holds nothing.
struct ProcessPriors {
  DevelopmentPriors development;
  BathPriors baths;

  bool operator==(const ProcessPriors&) const = default;
};

}  // namespace fogline
