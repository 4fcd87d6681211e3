// SPDX-License-Identifier: MIT
// Around a picture, lines leave in the order in which their ends stand around it, so that none crosses another there;
// what must cross does so in the channel, level over upright in an arch. In the channel each line has one upright piece; the order
// of these pieces is searched: falling lines from the lowest, rising ones from the highest, then swaps while they help.
#include "sheets/leader_lines.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace loomfolio {
namespace {

constexpr Millimetres first_track{1.4};
constexpr double straight_within = 0.05, leader_clear = 0.9;
constexpr double arch = 0.6;  // its radius; two side by side stay apart
constexpr int clash_weight = 50;

LabelSide mirrored_side(LabelSide side) {
  if (side == LabelSide::left) return LabelSide::right;
  return side == LabelSide::right ? LabelSide::left : side;
}

Point mirrored_point(Point p) { return {p.x * -1, p.y}; }

class Tracks {
 public:
  Tracks(const Rect& picture, const std::vector<LeadEnd>& ends, std::size_t over)
      : picture_(picture), ends_(ends), over_(over) {
    out_.lines.resize(ends.size());
    out_.extent = picture;
  }

  /// Out at the right.
  LeadOut make() {
    std::vector<std::size_t> back = ends_at(LabelSide::left);
    sort_by(back, [&](std::size_t i) { return ends_[i].at.y; });
    const auto split = back.begin() + static_cast<std::ptrdiff_t>(std::min(over_, back.size()));
    const std::vector<std::size_t> above(back.begin(), split);
    std::vector<std::size_t> below(split, back.end());
    std::reverse(below.begin(), below.end());
    const std::vector<std::size_t> upper = level_tracks(LabelSide::top, above);
    const std::vector<std::size_t> lower = level_tracks(LabelSide::bottom, below);
    out_.order.assign(upper.rbegin(), upper.rend());
    std::vector<std::size_t> front = ends_at(LabelSide::right);
    sort_by(front, [&](std::size_t i) { return ends_[i].at.y; });
    for (const std::size_t i : front) {
      out_.lines[i] = {ends_[i].at, {picture_.right(), ends_[i].at.y}};
      out_.order.push_back(i);
    }
    out_.order.insert(out_.order.end(), lower.begin(), lower.end());
    return out_;
  }

 private:
  std::vector<std::size_t> ends_at(LabelSide side) const {
    std::vector<std::size_t> found;
    for (std::size_t i = 0; i < ends_.size(); ++i)
      if (ends_[i].side == side) found.push_back(i);
    return found;
  }
  template <typename Key>
  static void sort_by(std::vector<std::size_t>& list, Key key) {
    std::stable_sort(list.begin(), list.end(), [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
  }

  /// From the nearest track outwards: ends of that side from the right, then those that come around from the left.
  std::vector<std::size_t> level_tracks(LabelSide side, const std::vector<std::size_t>& around) {
    std::vector<std::size_t> list = ends_at(side);
    sort_by(list, [&](std::size_t i) { return ends_[i].at.x * -1; });
    const std::size_t own = list.size();
    list.insert(list.end(), around.begin(), around.end());
    const bool is_top = side == LabelSide::top;
    for (std::size_t k = 0; k < list.size(); ++k) {
      const Millimetres off = first_track + leader_pitch * static_cast<double>(k);
      const Millimetres y = is_top ? picture_.y - off : picture_.bottom() + off;
      std::vector<Point>& line = out_.lines[list[k]];
      line = {ends_[list[k]].at};
      if (k >= own) {
        const Millimetres x = picture_.x - first_track - leader_pitch * static_cast<double>(k - own);
        line.push_back({x, line.front().y});
        grow({x, y});
      }
      line.push_back({line.back().x, y});
      line.push_back({picture_.right(), y});
      grow({picture_.right(), y});
    }
    return list;
  }

  void grow(Point p) {
    Rect& e = out_.extent;
    const Millimetres x0 = std::min(e.x, p.x), y0 = std::min(e.y, p.y);
    e = {x0, y0, std::max(e.right(), p.x) - x0, std::max(e.bottom(), p.y) - y0};
  }

  const Rect picture_;
  const std::vector<LeadEnd>& ends_;
  std::size_t over_;
  LeadOut out_;
};

/// One line of the channel with its upright piece at a place that is only known by its order.
struct Upright {
  double left = 0, right = 0;
  bool is_straight() const { return std::abs(left - right) < straight_within; }
  bool spans(double y) const { return y > std::min(left, right) && y < std::max(left, right); }
};

struct PairCost {
  int crossings = 0, clashes = 0;
};

/// Of two lines, the first with its upright piece farther left.
PairCost cost_of(const Upright& a, const Upright& b) {
  PairCost cost;
  if (a.spans(b.left)) ++cost.crossings;
  if (b.spans(a.right)) ++cost.crossings;
  if (!a.is_straight() && !b.is_straight() && std::abs(a.right - b.left) < leader_clear) ++cost.clashes;
  return cost;
}

struct Search {
  std::vector<Upright> lines;
  std::vector<std::size_t> order;

  PairCost cost() const {
    PairCost sum;
    for (std::size_t i = 0; i < order.size(); ++i)
      for (std::size_t k = i + 1; k < order.size(); ++k) {
        const PairCost pair = cost_of(lines[order[i]], lines[order[k]]);
        sum.crossings += pair.crossings;
        sum.clashes += pair.clashes;
      }
    return sum;
  }
  static int weight(PairCost cost) { return cost.crossings + clash_weight * cost.clashes; }

  void begin() {
    order.resize(lines.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
      const bool a_falls = lines[a].right > lines[a].left, b_falls = lines[b].right > lines[b].left;
      if (a_falls != b_falls) return a_falls;
      return a_falls ? lines[a].left > lines[b].left : lines[a].left < lines[b].left;
    });
  }

  void improve(int least) {
    int now = weight(cost());
    for (bool moved = true; moved && now > least;) {
      moved = false;
      for (std::size_t i = 0; i < order.size(); ++i)
        for (std::size_t k = i + 1; k < order.size(); ++k) {
          std::swap(order[i], order[k]);
          const int then = weight(cost());
          if (then < now) {
            now = then;
            moved = true;
          } else {
            std::swap(order[i], order[k]);
          }
        }
    }
  }
};

std::vector<std::size_t> ranks(const std::vector<ChannelLine>& lines, bool at_left) {
  std::vector<std::size_t> order(lines.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return at_left ? lines[a].left < lines[b].left : lines[a].right < lines[b].right;
  });
  return order;
}

/// Where uprights of other lines pass a level piece, in its direction.
std::vector<double> passed_by(Point from, Point to, const std::vector<std::vector<Point>>& others) {
  const double x0 = std::min(from.x, to.x).number(), x1 = std::max(from.x, to.x).number(), y = from.y.number();
  std::vector<double> places;
  for (const std::vector<Point>& other : others)
    for (std::size_t i = 1; i < other.size(); ++i) {
      const double x = other[i].x.number(), a = other[i - 1].y.number(), b = other[i].y.number();
      const bool is_upright = std::abs(other[i - 1].x.number() - x) < straight_within;
      if (is_upright && x > x0 + arch && x < x1 - arch && y > std::min(a, b) + straight_within && y < std::max(a, b) - straight_within)
        places.push_back(x);
    }
  std::sort(places.begin(), places.end());
  if (to.x < from.x) std::reverse(places.begin(), places.end());
  return places;
}

/// A half circle, upwards.
void add_arch(std::vector<PathPiece>& path, double x, double y, double way) {
  constexpr double reach = 0.5522847498;  // of the controls of a quarter circle
  const auto at = [](double px, double py) { return Point{Millimetres(px), Millimetres(py)}; };
  const double x0 = x - way * arch, x1 = x + way * arch;
  path.push_back(PathLine{at(x0, y)});
  path.push_back(PathCurve{at(x0, y - arch * reach), at(x - way * arch * reach, y - arch), at(x, y - arch)});
  path.push_back(PathCurve{at(x + way * arch * reach, y - arch), at(x1, y - arch * reach), at(x1, y)});
}

}  // namespace

std::vector<PathPiece> arched_line(const std::vector<Point>& line, const std::vector<std::vector<Point>>& others) {
  std::vector<PathPiece> path;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (i == 0) {
      path.push_back(PathMove{line[i]});
      continue;
    }
    const Point from = line[i - 1], to = line[i];
    if (std::abs((from.y - to.y).number()) < straight_within)
      for (const double x : passed_by(from, to, others)) add_arch(path, x, from.y.number(), to.x > from.x ? 1 : -1);
    path.push_back(PathLine{to});
  }
  return path;
}

LeadOut lead_out(const Rect& picture, const std::vector<LeadEnd>& ends, LabelSide to, std::size_t over) {
  if (to == LabelSide::right) return Tracks(picture, ends, over).make();
  std::vector<LeadEnd> turned;
  for (const LeadEnd& end : ends) turned.push_back({mirrored_point(end.at), mirrored_side(end.side)});
  const Rect around{picture.right() * -1, picture.y, picture.width, picture.height};
  LeadOut out = Tracks(around, turned, over).make();
  for (std::vector<Point>& line : out.lines)
    for (Point& p : line) p = mirrored_point(p);
  out.extent.x = out.extent.right() * -1;
  return out;
}

int count_inversions(const std::vector<std::size_t>& left, const std::vector<std::size_t>& right) {
  int count = 0;
  for (std::size_t i = 0; i < left.size(); ++i)
    for (std::size_t k = i + 1; k < left.size(); ++k)
      if (std::find(right.begin(), right.end(), left[i]) > std::find(right.begin(), right.end(), left[k])) ++count;
  return count;
}

LeadChannel route_channel(const std::vector<ChannelLine>& lines, Millimetres from, Millimetres to) {
  Search search;
  for (const ChannelLine& line : lines) search.lines.push_back({line.left.number(), line.right.number()});
  search.begin();
  search.improve(count_inversions(ranks(lines, true), ranks(lines, false)));
  const PairCost cost = search.cost();
  LeadChannel channel{{}, cost.crossings, cost.clashes};
  channel.lines.resize(lines.size());
  const auto bent =
      std::count_if(search.lines.begin(), search.lines.end(), [](const Upright& line) { return !line.is_straight(); });
  const Millimetres step = (to - from) / static_cast<double>(bent + 1);
  Millimetres x = from;
  for (const std::size_t i : search.order) {
    const ChannelLine& line = lines[i];
    if (search.lines[i].is_straight()) {
      channel.lines[i] = {{from, line.left}, {to, line.right}};
      continue;
    }
    x = x + step;
    channel.lines[i] = {{from, line.left}, {x, line.left}, {x, line.right}, {to, line.right}};
  }
  return channel;
}

}  // namespace loomfolio
