// Scratches: straight lines along the film, 10 to 100 um broad, thinner where emulsion is gone,
// denser where pressure or the base side did it; they run on through frames, gaps and rebate and
// drift slowly (common practice, no source).
//
// Each row of the tile is compared with the rows beside it and averaged along the film over two
// millimetres, which grain and picture don't survive but a line along the film does. What parts it
// from a line of the picture (horizons, wires, walls): it is thin, long, and keeps its contrast,
// and where it leaves a frame it goes on.

#include "marks/find_scratches.h"

#include "marks/local_scale.h"
#include "marks/weigh_sign.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <opencv2/imgproc.hpp>

namespace fogline {

namespace {

/// Averaged along the film.
constexpr double average_mm = 2.0;
/// A row differs from both rows this far off; a scratch is narrower than that.
constexpr double side_mm = 0.07;
constexpr double least_side_px = 2.0;
/// The averaged line over what is usual round about, to begin and to go on.
constexpr double seed_sigmas = 4.0;
constexpr double link_sigmas = 2.5;
constexpr float least_height = 0.012F;
/// A piece within a tile is at least so long.
constexpr double least_piece_mm = 2.5;
/// Single pixels count no more than this: dust on the line isn't the line.
constexpr float most_pixel = 0.5F;

int side_px(const MarkTile& tile) {
  return static_cast<int>(std::lround(std::max(least_side_px, side_mm * tile.pixels_per_mm)));
}

/// Per pixel, averaged along the film: how far the row stands out of both rows beside it, and by
/// how much more out of one than of the other.
struct LineHeight {
  cv::Mat1f height;
  cv::Mat1f uneven;
};

LineHeight line_height(const MarkTile& tile, int sign) {
  const int side = side_px(tile);
  const int length = std::max(3, static_cast<int>(average_mm * tile.pixels_per_mm) | 1);
  cv::Mat1f above(tile.density.size(), 0.0F);
  cv::Mat1f below(tile.density.size(), 0.0F);
  for (int y = side; y + side < tile.density.rows; ++y) {
    const auto* row = tile.density.ptr<float>(y);
    const auto* up = tile.density.ptr<float>(y - side);
    const auto* down = tile.density.ptr<float>(y + side);
    for (int x = 0; x < tile.density.cols; ++x) {
      above(y, x) =
          std::clamp(static_cast<float>(sign) * (row[x] - up[x]), -most_pixel, most_pixel);
      below(y, x) =
          std::clamp(static_cast<float>(sign) * (row[x] - down[x]), -most_pixel, most_pixel);
    }
  }
  // Averaged apart, then the smaller: a step between two tones has one side only.
  cv::blur(above, above, {length, 1});
  cv::blur(below, below, {length, 1});
  return {cv::Mat1f(cv::min(above, below)), cv::Mat1f(cv::abs(above - below))};
}

struct Piece {
  std::vector<cv::Point> crest;
  std::vector<float> heights;
  std::vector<float> sigmas;
};

float median_of(std::vector<float> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

/// Follows crests from left to right: the next one lies in the same row or the ones beside it.
std::vector<Piece> follow(const cv::Mat1f& height, const cv::Mat1f& sigmas,
                          const cv::Mat1b& usable) {
  cv::Mat1b used(height.size(), static_cast<unsigned char>(0));
  const auto crest = [&](int x, int y) {
    return y > 0 && y + 1 < height.rows && usable(y, x) != 0 && height(y, x) >= least_height &&
           sigmas(y, x) >= static_cast<float>(link_sigmas) && height(y, x) >= height(y - 1, x) &&
           height(y, x) >= height(y + 1, x) && used(y, x) == 0;
  };
  std::vector<Piece> pieces;
  for (int x = 0; x < height.cols; ++x) {
    for (int y = 1; y + 1 < height.rows; ++y) {
      if (!crest(x, y)) {
        continue;
      }
      Piece piece;
      int at = y;
      for (int i = x; i < height.cols; ++i) {
        const std::array<int, 3> rows{at, at - 1, at + 1};
        const auto* next =
            std::find_if(rows.begin(), rows.end(), [&](int r) { return crest(i, r); });
        if (next == rows.end()) {
          break;
        }
        at = *next;
        used(at, i) = 1;
        piece.crest.emplace_back(i, at);
        piece.heights.push_back(height(at, i));
        piece.sigmas.push_back(sigmas(at, i));
      }
      pieces.push_back(std::move(piece));
    }
  }
  return pieces;
}

/// Breadth at half of its height, of the piece's mean profile.
double width_mm(const cv::Mat1f& density, const Piece& piece, int sign, double pixels_per_mm) {
  constexpr std::size_t reach = 8;
  std::array<double, 2 * reach + 1> profile{};
  int count = 0;
  for (const cv::Point& at : piece.crest) {
    const int first = at.y - static_cast<int>(reach);
    if (first < 0 || first + static_cast<int>(profile.size()) > density.rows) {
      continue;
    }
    ++count;
    for (std::size_t i = 0; i < profile.size(); ++i) {
      profile[i] += sign * static_cast<double>(density(first + static_cast<int>(i), at.x));
    }
  }
  if (count == 0) {
    return 1.0 / pixels_per_mm;
  }
  const double ground = std::max(profile.front(), profile.back());
  const double half = 0.5 * (profile[reach] + ground);
  int wide = 1;
  for (std::size_t i = reach + 1; i < profile.size() && profile[i] > half; ++i) {
    ++wide;
  }
  for (std::size_t i = reach; i > 0 && profile[i - 1] > half; --i) {
    ++wide;
  }
  return wide / pixels_per_mm;
}

}  // namespace

std::vector<MarkCandidate> scratch_pieces(const MarkTile& tile, const ScratchKnowledge& knowledge) {
  constexpr double block_mm = 4.0;
  const cv::Mat1b usable = inner_usable(tile.usable, 0, side_px(tile));
  std::vector<MarkCandidate> marks;
  for (const int sign : {1, -1}) {
    const LineHeight line = line_height(tile, sign);
    // Only rows that stand out count: beside a step a row falls far below its neighbour.
    const cv::Mat1f scale = local_scale(cv::Mat1f(cv::max(line.height, 0.0)), usable,
                                        static_cast<int>(block_mm * tile.pixels_per_mm), 0.96);
    const cv::Mat1f sigmas(line.height / scale);
    for (const Piece& piece : follow(line.height, sigmas, usable)) {
      const double length_mm = static_cast<double>(piece.crest.size()) / tile.pixels_per_mm;
      const float strength = median_of(piece.sigmas);
      if (length_mm < least_piece_mm || strength < static_cast<float>(seed_sigmas)) {
        continue;
      }
      MarkCandidate mark;
      mark.kind = MarkKind::scratch;
      const PointMm begin = tile.film(piece.crest.front().x, piece.crest.front().y);
      const PointMm end = tile.film(piece.crest.back().x + 1.0, piece.crest.back().y);
      const auto [low, high] =
          std::minmax_element(piece.crest.begin(), piece.crest.end(),
                              [](cv::Point a, cv::Point b) { return a.y < b.y; });
      mark.width_mm = width_mm(tile.density, piece, sign, tile.pixels_per_mm);
      mark.extent = {begin.along_mm, end.along_mm, tile.film(0.0, low->y).across_mm,
                     tile.film(0.0, high->y + 1.0).across_mm};
      mark.size_mm = length_mm;
      mark.contrast_density = sign * static_cast<double>(median_of(piece.heights));
      std::vector<float> uneven;
      for (const cv::Point& at : piece.crest) {
        uneven.push_back(line.uneven(at));
      }
      // Under a scratch the film goes on; a wall's edge has a tone on each side.
      const double one_sided =
          static_cast<double>(median_of(uneven)) / std::abs(mark.contrast_density);
      mark.log_odds = log_weighed(knowledge.strength, static_cast<double>(strength)) +
                      weighed_beyond(knowledge.one_sided, one_sided);
      marks.push_back(mark);
    }
  }
  return marks;
}

}  // namespace fogline
