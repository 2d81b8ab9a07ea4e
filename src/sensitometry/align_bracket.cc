#include "sensitometry/align_bracket.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>

namespace fogline {

namespace {

/// Two ways this far apart in chi square: the better one is certain (1 in 400).
constexpr double certain = 12.0;
/// Density that a stop adds, at most: what an exposure's doubt may shift a frame.
constexpr double density_a_stop = 0.2;
/// Frames of one exposure differ by this even where nothing is doubtful (shutter, development).
constexpr double least_doubt = 0.01;
/// A frame with more spread than this is a picture rather than an even wall, and counts as much
/// against a way as a frame far off its density.
constexpr double widest_even_spread = 0.25;
constexpr double picture_penalty = 25.0;
constexpr int most_strips_turned_apart = 6;

struct Way {
  std::vector<int> exposure_of_frame;
  std::vector<bool> turned_of_frame;
  double chi_square = INFINITY;
};

/// Frames in the order in which they would have been exposed.
std::vector<std::size_t> exposure_order(const std::vector<BracketFrame>& frames,
                                        const std::vector<int>& strips, unsigned turned,
                                        bool backwards) {
  std::vector<std::size_t> order;
  for (std::size_t k = 0; k < strips.size(); ++k) {
    const std::size_t s = backwards ? strips.size() - 1 - k : k;
    std::vector<std::size_t> within;
    for (std::size_t i = 0; i < frames.size(); ++i) {
      if (frames[i].strip == strips[s]) {
        within.push_back(i);
      }
    }
    if ((turned >> s & 1U) != 0U) {
      std::reverse(within.begin(), within.end());
    }
    order.insert(order.end(), within.begin(), within.end());
  }
  return order;
}

struct Placed {
  double stops = 0.0;
  double density = 0.0;
  double weight = 0.0;
};

/// Chi square about the best curve that never falls: pools neighbours that do. Repeats of one
/// exposure are one place.
double isotonic_chi_square(std::vector<Placed> placed) {
  std::stable_sort(placed.begin(), placed.end(),
                   [](const Placed& a, const Placed& b) { return a.stops < b.stops; });
  struct Pool {
    double weight = 0.0;
    double sum = 0.0;
    double stops = 0.0;
    [[nodiscard]] double mean() const { return sum / weight; }
  };
  std::vector<Pool> pools;
  double squares = 0.0;
  for (const Placed& one : placed) {
    squares += one.weight * one.density * one.density;
    if (!pools.empty() && pools.back().stops == one.stops) {
      pools.back().weight += one.weight;
      pools.back().sum += one.weight * one.density;
    } else {
      pools.push_back({one.weight, one.weight * one.density, one.stops});
    }
    while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
      pools[pools.size() - 2].weight += pools.back().weight;
      pools[pools.size() - 2].sum += pools.back().sum;
      pools[pools.size() - 2].stops = pools.back().stops;
      pools.pop_back();
    }
  }
  for (const Pool& pool : pools) {
    squares -= pool.sum * pool.sum / pool.weight;
  }
  return std::max(0.0, squares);
}

/// Chi square about one density for all: what the best way must undercut.
double level_chi_square(const std::vector<Placed>& placed) {
  std::vector<Placed> level = placed;
  for (Placed& one : level) {
    one.stops = 0.0;
  }
  return isotonic_chi_square(level);
}

/// Exposures without a frame may only be the least ones: too little light to show.
bool only_least_missing(const std::vector<double>& stops, std::size_t first, std::size_t count) {
  const auto begin = stops.begin() + static_cast<std::ptrdiff_t>(first);
  const double least = *std::min_element(begin, begin + static_cast<std::ptrdiff_t>(count));
  for (std::size_t i = 0; i < stops.size(); ++i) {
    if ((i < first || i >= first + count) && stops[i] > least) {
      return false;
    }
  }
  return true;
}

class Search {
 public:
  Search(const std::vector<double>& stops, const std::vector<BracketFrame>& frames,
         double doubt_stops, int first_frame)
      : stops_(stops), frames_(frames), doubt_stops_(doubt_stops), first_frame_(first_frame) {
    for (const BracketFrame& frame : frames) {
      if (strips_.empty() || strips_.back() != frame.strip) {
        strips_.push_back(frame.strip);
      }
    }
  }

  std::vector<Way> ways() {
    const auto strips = static_cast<unsigned>(strips_.size());
    const bool apart = strips_.size() <= most_strips_turned_apart;
    const unsigned turns = apart ? 1U << strips : 2U;
    for (unsigned turn = 0; turn < turns; ++turn) {
      const unsigned turned = apart || turn == 0 ? turn : ~0U;
      for (const bool backwards : {false, true}) {
        if (strips_.size() > 1 || !backwards) {
          try_order(exposure_order(frames_, strips_, turned, backwards), turned);
        }
      }
    }
    std::stable_sort(ways_.begin(), ways_.end(),
                     [](const Way& a, const Way& b) { return a.chi_square < b.chi_square; });
    return ways_;
  }

  [[nodiscard]] std::vector<Placed> placed(const std::vector<int>& exposure_of_frame) const {
    std::vector<Placed> result;
    for (std::size_t i = 0; i < frames_.size(); ++i) {
      if (exposure_of_frame[i] >= 0) {
        const double doubt = std::hypot(std::hypot(frames_[i].density_doubt, least_doubt),
                                        density_a_stop * doubt_stops_);
        result.push_back({stops_[static_cast<std::size_t>(exposure_of_frame[i])],
                          frames_[i].density, 1.0 / (doubt * doubt)});
      }
    }
    return result;
  }

 private:
  void try_order(const std::vector<std::size_t>& order, unsigned turned) {
    const std::size_t count = std::min(stops_.size(), order.size());
    for (std::size_t first_frame = 0; first_frame + count <= order.size(); ++first_frame) {
      for (std::size_t first_stop = 0; first_stop + count <= stops_.size(); ++first_stop) {
        if (only_least_missing(stops_, first_stop, count)) {
          try_way(order, turned, first_frame, first_stop, count);
        }
      }
    }
  }

  void try_way(const std::vector<std::size_t>& order, unsigned turned, std::size_t first_frame,
               std::size_t first_stop, std::size_t count) {
    Way way;
    way.exposure_of_frame.assign(frames_.size(), -1);
    double penalty = 0.0;
    std::size_t lowest = frames_.size();
    for (std::size_t k = 0; k < count; ++k) {
      const std::size_t frame = order[first_frame + k];
      way.exposure_of_frame[frame] = static_cast<int>(first_stop + k);
      penalty += frames_[frame].spread > widest_even_spread ? picture_penalty : 0.0;
      lowest = std::min(lowest, frame);
    }
    if (first_frame_ >= 0 && lowest != static_cast<std::size_t>(first_frame_)) {
      return;
    }
    for (const BracketFrame& frame : frames_) {
      const auto s = std::find(strips_.begin(), strips_.end(), frame.strip) - strips_.begin();
      way.turned_of_frame.push_back((turned >> s & 1U) != 0U);
    }
    way.chi_square = penalty + isotonic_chi_square(placed(way.exposure_of_frame));
    ways_.push_back(std::move(way));
  }

  const std::vector<double>& stops_;
  const std::vector<BracketFrame>& frames_;
  double doubt_stops_;
  int first_frame_;
  std::vector<int> strips_;
  std::vector<Way> ways_;
};

/// Whether two ways give every frame the same light, up to a shift of all.
bool same_exposures(const std::vector<double>& stops, const Way& a, const Way& b) {
  for (std::size_t i = 0; i < a.exposure_of_frame.size(); ++i) {
    const int one = a.exposure_of_frame[i];
    const int other = b.exposure_of_frame[i];
    if ((one < 0) != (other < 0) || (one >= 0 && stops[static_cast<std::size_t>(one)] !=
                                                     stops[static_cast<std::size_t>(other)])) {
      return false;
    }
  }
  return true;
}

}  // namespace

Known<BracketAlignment> align_bracket(const std::vector<double>& stops,
                                      const std::vector<BracketFrame>& frames, double doubt_stops,
                                      int first_frame) {
  if (frames.empty()) {
    return Unknown::no_bracket_frame;
  }
  Search search(stops, frames, doubt_stops, first_frame);
  const std::vector<Way> ways = search.ways();
  if (ways.empty()) {
    return fact_of(Unknown::bracket_frames_missing,
                   {static_cast<double>(frames.size()), static_cast<double>(stops.size())});
  }
  const Way& best = ways.front();
  // What follows the exposures leaves little of the frames' scatter unexplained (common practice,
  // no source).
  constexpr double most_unexplained = 0.15;
  const double level = level_chi_square(search.placed(best.exposure_of_frame));
  if (!(level - best.chi_square > certain) ||
      best.chi_square > std::max(certain, most_unexplained * level)) {
    return Unknown::bracket_not_rising;
  }
  BracketAlignment alignment;
  alignment.exposure_of_frame = best.exposure_of_frame;
  alignment.turned_of_frame = best.turned_of_frame;
  const auto other = std::find_if(ways.begin() + 1, ways.end(), [&](const Way& way) {
    return way.chi_square < best.chi_square + certain && !same_exposures(stops, best, way);
  });
  if (other != ways.end()) {
    alignment.ambiguity =
        fact_of(other->turned_of_frame != best.turned_of_frame ? Unknown::bracket_fits_turned
                                                               : Unknown::bracket_fits_shifted);
  }
  return alignment;
}

}  // namespace fogline
