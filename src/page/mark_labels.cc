#include "page/mark_labels.h"

#include <algorithm>
#include <utility>

// Numbers stand outside the picture, above and below a lying strip or at both sides of a standing
// one. Each goes to the nearer side; along the side they keep their order, so that no two lines of
// one side cross, and are pushed apart only as far as their width asks. All slanting is done
// between numbers and edge: over the picture lines run straight across, which hides least of it.

namespace fogline {
namespace {

/// Room between a mark and its outline, pixels of the picture.
constexpr double outline_room_px = 3.0;
/// Depth of the zone in which lines slant, as a share of the room that a number takes.
constexpr double slant_share = 0.7;

/// A mark in the frame of a window: `along` runs by the window's long side.
struct Candidate {
  const NumberedMark* numbered = nullptr;
  double along = 0.0;
  double near_rim = 0.0;
  double far_rim = 0.0;
};

void keep_surest(std::vector<Candidate>& side, std::size_t room) {
  if (side.size() <= room) {
    return;
  }
  std::stable_sort(side.begin(), side.end(), [](const Candidate& a, const Candidate& b) {
    return a.numbered->mark->confidence > b.numbered->mark->confidence;
  });
  side.resize(room);
}

/// Places in the order given, at least `room` apart, within 0 ... length.
std::vector<double> spread(const std::vector<Candidate>& side, double length, double room) {
  std::vector<double> places;
  double next = room / 2.0;
  for (const Candidate& candidate : side) {
    places.push_back(std::max(candidate.along, next));
    next = places.back() + room;
  }
  double last = length - room / 2.0;
  for (std::size_t i = places.size(); i-- > 0;) {
    places[i] = std::min(places[i], last);
    last = places[i] - room;
  }
  return places;
}

/// Marks that reach into the window, by the long side that is nearer.
struct Sides {
  std::vector<Candidate> near_side;
  std::vector<Candidate> far_side;
};

Sides share_out(const std::vector<NumberedMark>& marks, double scale, const BoxPx& window,
                bool lying) {
  const double length = lying ? window.width : window.height;
  const double depth = lying ? window.height : window.width;
  Sides sides;
  for (const NumberedMark& numbered : marks) {
    const BoxPx box = mark_outline(*numbered.mark, scale);
    const double begin = lying ? box.x - window.x : box.y - window.y;
    const double end = begin + (lying ? box.width : box.height);
    const double near_rim = lying ? box.y - window.y : box.x - window.x;
    const double far_rim = near_rim + (lying ? box.height : box.width);
    if (end <= 0.0 || begin >= length || far_rim <= 0.0 || near_rim >= depth) {
      continue;
    }
    const Candidate candidate{&numbered, (std::max(begin, 0.0) + std::min(end, length)) / 2.0,
                              std::clamp(near_rim, 0.0, depth), std::clamp(far_rim, 0.0, depth)};
    const bool is_near = candidate.near_rim <= depth - candidate.far_rim;
    (is_near ? sides.near_side : sides.far_side).push_back(candidate);
  }
  return sides;
}

/// An outline in the frame of a window.
struct WindowBox {
  double along_begin = 0.0;
  double along_end = 0.0;
  double across_begin = 0.0;
  double across_end = 0.0;
};

std::vector<WindowBox> window_outlines(const std::vector<NumberedMark>& marks, double scale,
                                       const BoxPx& window, bool lying) {
  std::vector<WindowBox> boxes;
  for (const NumberedMark& numbered : marks) {
    const BoxPx box = mark_outline(*numbered.mark, scale);
    const double left = box.x - window.x;
    const double top = box.y - window.y;
    boxes.push_back(lying ? WindowBox{left, left + box.width, top, top + box.height}
                          : WindowBox{top, top + box.height, left, left + box.width});
  }
  return boxes;
}

/// Pieces of the line across the window at `along`, from its edge to `rim`, that lie in no outline.
std::vector<std::pair<double, double>> clear_pieces(double along, double edge, double rim,
                                                    const std::vector<WindowBox>& outlines) {
  std::vector<std::pair<double, double>> covered;
  for (const WindowBox& box : outlines) {
    if (box.along_begin < along && along < box.along_end) {
      covered.emplace_back(box.across_begin, box.across_end);
    }
  }
  std::sort(covered.begin(), covered.end());
  std::vector<std::pair<double, double>> pieces;
  double from = std::min(edge, rim);
  const double to = std::max(edge, rim);
  for (const auto& [begin, end] : covered) {
    if (begin > from && from < to) {
      pieces.emplace_back(from, std::min(begin, to));
    }
    from = std::max(from, end);
  }
  if (from < to) {
    pieces.emplace_back(from, to);
  }
  return pieces;
}

}  // namespace

BoxPx mark_outline(const Mark& mark, double scale) {
  const BoxPx& box = mark.box_px;
  return {box.x / scale - outline_room_px, box.y / scale - outline_room_px,
          box.width / scale + 2.0 * outline_room_px, box.height / scale + 2.0 * outline_room_px};
}

std::vector<MarkLabel> place_labels(const std::vector<NumberedMark>& marks, double scale,
                                    const BoxPx& window, double room_share) {
  const bool lying = window.width >= window.height;
  const double length = lying ? window.width : window.height;
  const double depth = lying ? window.height : window.width;
  Sides sides = share_out(marks, scale, window, lying);
  const std::vector<WindowBox> outlines = window_outlines(marks, scale, window, lying);
  const auto point = [&](double along, double across) {
    return lying ? PointPx{window.x + along, window.y + across}
                 : PointPx{window.x + across, window.y + along};
  };
  std::vector<MarkLabel> labels;
  for (const bool is_near : {true, false}) {
    std::vector<Candidate>& side = is_near ? sides.near_side : sides.far_side;
    keep_surest(side, static_cast<std::size_t>(1.0 / room_share));
    std::stable_sort(side.begin(), side.end(),
                     [](const Candidate& a, const Candidate& b) { return a.along < b.along; });
    const std::vector<double> places = spread(side, length, room_share * length);
    const double edge = is_near ? 0.0 : depth;
    const double off = (is_near ? -slant_share : slant_share) * room_share * length;
    for (std::size_t i = 0; i < side.size(); ++i) {
      const Candidate& candidate = side[i];
      MarkLabel label;
      label.number = candidate.numbered->number;
      label.side = lying ? (is_near ? LabelSide::top : LabelSide::bottom)
                         : (is_near ? LabelSide::left : LabelSide::right);
      label.place = point(places[i], edge + off);
      label.line.push_back({label.place, point(candidate.along, edge)});
      const double rim = is_near ? candidate.near_rim : candidate.far_rim;
      for (const auto& [from, to] : clear_pieces(candidate.along, edge, rim, outlines)) {
        label.line.push_back({point(candidate.along, from), point(candidate.along, to)});
      }
      labels.push_back(std::move(label));
    }
  }
  return labels;
}

}  // namespace fogline
