// SPDX-License-Identifier: MIT
// The idea. From every stretch of a wire its mates' next stretches beside it are gathered for as long as they run on together. What
// stands in the way cuts that run: nothing but wires that cross may lie on the thick course, nothing at all on the fans and the
// numbers. The longest piece that is left is the trunk.
#include "sheets/diagram_trunks.h"

#include <algorithm>
#include <tuple>
#include <utility>

#include "base/text.h"
#include "layout/segments.h"
#include "sheets/diagram_tags.h"
#include "sheets/look.h"

namespace loomfolio {
namespace {

using laying::Segment;

constexpr Grid trunk_clear = 60;           // of wires and labels, from what is not theirs
constexpr Grid words_margin = 80;   // on both sides of the numbers
constexpr Grid hop_room = 200;       // of a wire that crosses, along the trunk
constexpr Grid least_thick = 3000;   // of the thick course, where the author has not asked for it
constexpr std::size_t least_wires = 4;
constexpr std::string_view between_numbers = " \u00b7 ";
constexpr Grid base_width = 190, width_a_wire = 40;

using GridSpan = std::pair<Grid, Grid>;

/// Which wires may share a trunk.
struct Mates {
  int group = -1;  ///< of the author, from 0
  std::string run;  ///< else the two boxes that they join; empty: none
  bool is_any() const { return group >= 0 || !run.empty(); }
  friend bool operator==(const Mates&, const Mates&) = default;
};

struct TrunkFinder {
  const DiagramGraph& diagram;
  const TextMeasure& measure;
  std::vector<Mates> mates;  ///< by wire
  std::vector<Segment> segments;
  std::vector<char> is_used;  ///< by segment
  std::vector<GridBox> taken;  ///< labels, tags and boxes
  Grid half_pen_of(int wire) const { return diagram.graph.wires[static_cast<std::size_t>(wire)].pen / 2; }
  const Mates& mates_of(const Segment& s) const { return mates[static_cast<std::size_t>(s.wire)]; }
};

std::vector<Mates> find_mates(const Build& build, const DiagramGraph& diagram) {
  std::vector<Mates> mates(diagram.wires.size());
  for (std::size_t w = 0; w < mates.size(); ++w) {
    const WireId id = diagram.wires[w];
    const auto& loose = build.layout.loose;
    if (std::find(loose.begin(), loose.end(), id) != loose.end()) continue;
    for (std::size_t g = 0; g < build.layout.gathered.size(); ++g) {
      const std::vector<WireId>& group = build.layout.gathered[g];
      if (std::find(group.begin(), group.end(), id) != group.end()) mates[w].group = static_cast<int>(g);
    }
    const bool has_ring = !build.wire(id).cable.empty();
    if (mates[w].group < 0 && !has_ring) mates[w].run = diagram.graph.wires[w].bundle;
  }
  return mates;
}

/// Mates' stretches side by side, in order across; indices into Finder::segments.
struct TrunkRun {
  std::vector<std::size_t> stretches;
  Grid low = 0, high = 0;
};

TrunkRun gather_mates(const TrunkFinder& finder, std::size_t first) {
  const Segment& begin = finder.segments[first];
  TrunkRun run{{first}, begin.low, begin.high};
  for (;;) {
    const Segment& last = finder.segments[run.stretches.back()];
    std::size_t next = finder.segments.size();
    for (std::size_t s = 0; s < finder.segments.size(); ++s) {
      const Segment& one = finder.segments[s];
      if (one.is_level != last.is_level || one.at <= last.at || one.at > last.at + side_by_side_gap || finder.is_used[s]) continue;
      if (finder.mates_of(one) != finder.mates_of(last) || std::min(run.high, one.high) <= std::max(run.low, one.low)) continue;
      if (next == finder.segments.size() || one.at < finder.segments[next].at) next = s;
    }
    if (next == finder.segments.size()) return run;
    run.low = std::max(run.low, finder.segments[next].low), run.high = std::min(run.high, finder.segments[next].high);
    run.stretches.push_back(next);
  }
}

/// What is left of `whole` without the spans, in order.
std::vector<GridSpan> without(GridSpan whole, std::vector<GridSpan> spans) {
  std::sort(spans.begin(), spans.end());
  std::vector<GridSpan> left;
  Grid from = whole.first;
  for (const auto& [low, high] : spans) {
    if (low > from) left.push_back({from, std::min(low, whole.second)});
    from = std::max(from, high);
    if (from >= whole.second) return left;
  }
  left.push_back({from, whole.second});
  return left;
}

GridSpan along_of(const GridBox& box, bool is_level) { return is_level ? GridSpan{box.x0, box.x1} : GridSpan{box.y0, box.y1}; }
GridSpan across_of(const GridBox& box, bool is_level) { return along_of(box, !is_level); }
bool meets(GridSpan a, GridSpan b) { return a.first < b.second && b.first < a.second; }

class TrunkMaker {
 public:
  TrunkMaker(const TrunkFinder& finder, const TrunkRun& run) : finder_(finder), run_(run) {
    const Segment &first = segment(0), &last = segment(run.stretches.size() - 1);
    trunk_.is_level = first.is_level;
    trunk_.width = base_width + width_a_wire * static_cast<Grid>(run.stretches.size());
    trunk_.at = (first.at + last.at) / 2;
    trunk_.fan = std::max<Grid>(350, (last.at - first.at) * 3 / 8);
    across_ = {first.at - finder.half_pen_of(first.wire) - trunk_clear, last.at + finder.half_pen_of(last.wire) + trunk_clear};
    across_ = {std::min(across_.first, trunk_.at - trunk_.width / 2 - trunk_clear), std::max(across_.second, trunk_.at + trunk_.width / 2 + trunk_clear)};
    words_ = to_grid(finder.measure.measure(words(), look::wire_number).width) + 2 * words_margin;
  }

  std::optional<Trunk> make() {
    find_obstacles();
    const Mates& mates = finder_.mates_of(segment(0));
    const Grid least = std::max(words_, mates.group >= 0 ? 0 : least_thick);
    std::optional<Trunk> best;
    for (const GridSpan& free : without({run_.low, run_.high}, blocked_)) {
      std::optional<Trunk> one = within(free);
      if (one && one->high - one->low - 2 * one->fan >= least && (!best || one->high - one->low > best->high - best->low)) best = one;
    }
    return best;
  }

 private:
  const Segment& segment(std::size_t i) const { return finder_.segments[run_.stretches[i]]; }
  bool is_own(std::size_t s) const { return std::find(run_.stretches.begin(), run_.stretches.end(), s) != run_.stretches.end(); }

  std::string words() const {
    std::vector<std::string> numbers;
    for (const std::size_t s : run_.stretches) numbers.push_back(finder_.diagram.labels[static_cast<std::size_t>(finder_.segments[s].wire)].number);
    return join(numbers, between_numbers);
  }

  /// `blocked_`: where no trunk can be; `crossed_`: where a wire crosses all of it.
  void find_obstacles() {
    const bool is_level = trunk_.is_level;
    for (const GridBox& box : finder_.taken)
      if (meets(across_of(box, is_level), across_)) add(blocked_, along_of(box, is_level), trunk_clear);
    for (std::size_t s = 0; s < finder_.segments.size(); ++s) {
      const Segment& other = finder_.segments[s];
      if (is_own(s)) continue;
      if (other.is_level == is_level) {
        if (other.at > across_.first && other.at < across_.second) add(blocked_, {other.low, other.high}, trunk_clear);
        continue;
      }
      if (!meets({other.low, other.high}, across_)) continue;
      const bool is_across = other.low <= across_.first && other.high >= across_.second;
      add(is_across ? crossed_ : blocked_, {other.at, other.at}, is_across ? hop_room : finder_.half_pen_of(other.wire) + trunk_clear);
    }
  }

  static void add(std::vector<GridSpan>& spans, GridSpan span, Grid margin) { spans.push_back({span.first - margin, span.second + margin}); }

  /// The longest trunk in a piece where nothing but wires across it stands in the way: fans where none crosses.
  std::optional<Trunk> within(GridSpan free) const {
    const std::vector<GridSpan> open = without(free, crossed_);
    const auto holds_fan = [&](const GridSpan& span) { return span.second - span.first >= trunk_.fan; };
    const auto first = std::find_if(open.begin(), open.end(), holds_fan);
    const auto last = std::find_if(open.rbegin(), open.rend(), holds_fan);
    if (first == open.end()) return std::nullopt;
    Trunk trunk = trunk_;
    trunk.low = first->first, trunk.high = last->second;
    if (trunk.high - trunk.low < 2 * trunk.fan) return std::nullopt;
    // Numbers nearest to the middle, where nothing crosses them.
    const Grid middle = (trunk.low + trunk.high) / 2;
    std::optional<Grid> words_at;
    for (const GridSpan& span : without({trunk.low + trunk.fan, trunk.high - trunk.fan}, crossed_)) {
      if (span.second - span.first < words_) continue;
      const Grid at = std::clamp(middle, span.first + words_ / 2, span.second - words_ / 2);
      if (!words_at || std::abs(at - middle) < std::abs(*words_at - middle)) words_at = at;
    }
    if (!words_at) return std::nullopt;
    trunk.words_at = *words_at;
    const auto count = static_cast<Grid>(run_.stretches.size());
    for (Grid i = 0; i < count; ++i) {
      const Segment& s = segment(static_cast<std::size_t>(i));
      const Grid joins = trunk.at + (2 * i - count + 1) * (trunk.width - 2 * trunk_clear) / (2 * count);
      trunk.wires.push_back({static_cast<std::size_t>(s.wire), static_cast<std::size_t>(s.index), s.at, joins});
    }
    return trunk;
  }

  const TrunkFinder& finder_;
  const TrunkRun& run_;
  Trunk trunk_;
  GridSpan across_;
  Grid words_ = 0;
  std::vector<GridSpan> blocked_, crossed_;
};

/// The trunk of most wires, of those the longest.
std::optional<std::pair<Trunk, TrunkRun>> next_trunk(const TrunkFinder& finder) {
  std::optional<std::pair<Trunk, TrunkRun>> best;
  const auto size_of = [](const Trunk& trunk) { return std::pair(trunk.wires.size(), trunk.high - trunk.low); };
  for (std::size_t s = 0; s < finder.segments.size(); ++s) {
    if (finder.is_used[s] || !finder.mates_of(finder.segments[s]).is_any()) continue;
    const TrunkRun run = gather_mates(finder, s);
    const std::size_t least = finder.mates_of(finder.segments[s]).group >= 0 ? 2 : least_wires;
    if (run.stretches.size() < least) continue;
    std::optional<Trunk> trunk = TrunkMaker(finder, run).make();
    if (trunk && (!best || size_of(*trunk) > size_of(best->first))) best = {std::move(*trunk), run};
  }
  return best;
}

}  // namespace

GridBox Trunk::thick() const {
  const Grid from = low + fan, to = high - fan, side = width / 2;
  return is_level ? GridBox{from, at - side, to, at + side} : GridBox{at - side, from, at + side, to};
}

GridBox Trunk::whole() const {
  const Grid first = std::min(wires.front().at, at - width / 2), last = std::max(wires.back().at, at + width / 2);
  return is_level ? GridBox{low, first, high, last} : GridBox{first, low, last, high};
}

std::vector<Trunk> find_trunks(const Build& build, const DiagramGraph& diagram, const Laid& laid, const TextMeasure& measure) {
  TrunkFinder finder{diagram, measure, find_mates(build, diagram), laying::find_segments(laid), {}, words_on_wires(diagram, laid)};
  finder.is_used.assign(finder.segments.size(), 0);
  for (const PlacedBox& box : laid.boxes) finder.taken.push_back(box.box);
  std::vector<Trunk> trunks;
  while (auto found = next_trunk(finder)) {
    for (const std::size_t s : found->second.stretches) finder.is_used[s] = 1;
    finder.taken.push_back(found->first.whole());
    trunks.push_back(std::move(found->first));
  }
  return trunks;
}

std::string trunk_words(const DiagramGraph& diagram, const Trunk& trunk) {
  std::vector<std::string> numbers;
  for (const TrunkWire& wire : trunk.wires) numbers.push_back(diagram.labels[wire.wire].number);
  return join(numbers, between_numbers);
}

}  // namespace loomfolio
