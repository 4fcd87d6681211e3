// SPDX-License-Identifier: MIT
// How marks stand around each face, which lines go over a picture and which under it, and how high the two pictures
// stand to one another is chosen so that lines cross least, then so that they are short and do not jog.
#include "sheets/works_pictures.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "sheets/diagram_part.h"
#include "sheets/face_drawing.h"
#include "sheets/leader_lines.h"
#include "sheets/scale_items.h"

namespace loomfolio {
namespace {

constexpr Millimetres most_works_face_width(70), most_works_face_height(60), caption_gap(1.5);
constexpr Millimetres ring(1), mark_gap(0.7), level_step(0.5), least_jog(1.6), least_caption(38), channel_step(2.4);
constexpr double most_inside_growth = 1.3;  // of the drawing of the inside, where half the page has room for it
constexpr double crossing_cost = 22, length_cost = 0.12, jog_cost = 6, clash_cost = 1000;

/// The inside, with where its terminals leave it; `terminals` by end.
struct InsidePicture {
  Block block;
  Rect extent;
  std::vector<LeadEnd> ends;
  std::vector<int> terminals;
};

/// A face as its marks stand in one arrangement, its lines led out to the left.
struct FacePicture {
  int face = 0, scale = 1;
  Block block, caption;  ///< the caption of a chosen one alone
  LeadOut out;
  std::vector<int> terminals;
  double cost = 0;  ///< whatever the inside looks like
  Millimetres top;  ///< of the picture in the column, tracks and all
  Millimetres height() const { return out.extent.height + caption_gap + caption.height; }
};

double length_of(const LeadOut& out) {
  double sum = 0;
  for (const std::vector<Point>& line : out.lines)
    for (std::size_t i = 1; i < line.size(); ++i)
      sum += std::abs((line[i].x - line[i - 1].x).number()) + std::abs((line[i].y - line[i - 1].y).number());
  return sum;
}

LabelSide side_of(Side side) {
  switch (side) {
    case Side::top:
      return LabelSide::top;
    case Side::right:
      return LabelSide::right;
    case Side::bottom:
      return LabelSide::bottom;
    case Side::left:
      break;
  }
  return LabelSide::left;
}

Point pushed(Point at, LabelSide side, Millimetres by) {
  if (side == LabelSide::left) return {at.x - by, at.y};
  if (side == LabelSide::right) return {at.x + by, at.y};
  return {at.x, side == LabelSide::top ? at.y - by : at.y + by};
}

std::vector<std::size_t> places_of(const std::vector<std::size_t>& order, const std::vector<int>& terminals) {
  std::vector<std::size_t> list;
  for (const std::size_t i : order) list.push_back(static_cast<std::size_t>(terminals[i]));
  return list;
}

class Pictures {
 public:
  Pictures(const SheetContext& context, PartId part, Millimetres width, const TypeSetting& setting)
      : context_(context),
        setting_(setting),
        kind_(context.build().kind_of(context.build().part(part))),
        part_(part),
        width_(width),
        drawing_(draw_inside({context.build(), part, context.measure(), {}, inside_styles()})) {}

  WorksPictures make() {
    const Millimetres half = (width_ - look::gutter * 2) / 2;
    inside_ = draw(1);
    const double own = inside_.block.width / half;
    const double roomy = std::clamp(1 / own, 1.0, most_inside_growth);
    // A wide inside leaves little: it is made smaller, then the faces are, until both fit.
    for (int coarser = 0; coarser <= 3; ++coarser) {
      const std::vector<FaceWays> ways = find_face_ways(coarser);
      for (const double growth : {roomy, 1.0, look::least_scale}) {
        inside_ = draw(growth);
        if (choose(half, ways)) return {compose(), coarser == 0 && growth >= 1};
      }
    }
    inside_ = draw(1);
    choose(half, find_face_ways(0));
    return {compose_below(), false};
  }

 private:
  /// All pictures of one face, of which one is chosen.
  using FaceWays = std::vector<FacePicture>;

  InsidePicture draw(double growth) const {
    InsidePicture made;
    draw_part(made.block.items, drawing_, {ring, ring}, context_.measure());
    scale_items(made.block.items, {}, growth);
    made.block.width = (to_mm(drawing_.width) + ring * 2) * growth;
    made.block.height = (to_mm(drawing_.height) + ring * 2) * growth;
    made.extent = {{}, {}, made.block.width, made.block.height};
    for (const PlacedTerminal& terminal : drawing_.terminals) {
      const int face = kind_.terminals[static_cast<std::size_t>(terminal.terminal)].face;
      if (face < 0 || terminal.taps.empty()) continue;
      const Point tap = to_mm(terminal.taps.front()) + Point{ring, ring};
      const LabelSide side = side_of(terminal.side);
      made.ends.push_back({pushed({tap.x * growth, tap.y * growth}, side, ring * growth), side});
      made.terminals.push_back(terminal.terminal);
    }
    return made;
  }

  bool is_shown(int terminal) const {
    return std::find(inside_.terminals.begin(), inside_.terminals.end(), terminal) != inside_.terminals.end();
  }

  Millimetres channel_width() const { return leader_pitch * static_cast<double>(inside_.ends.size() + 1); }

  /// The best of all ways around the inside; false where the whole is too wide.
  bool choose(Millimetres half, const std::vector<FaceWays>& ways) {
    const auto back = static_cast<std::size_t>(std::count_if(
        inside_.ends.begin(), inside_.ends.end(), [](const LeadEnd& e) { return e.side == LabelSide::left; }));
    double least = 0;
    std::vector<const FacePicture*> chosen;
    bool is_found = false;
    for (std::size_t over = 0; over <= back; ++over) {
      LeadOut out = lead_out(inside_.extent, inside_.ends, LabelSide::right, over);
      const std::vector<std::size_t> order = places_of(out.order, inside_.terminals);
      const Millimetres column = std::max(half + look::gutter * 2, out.extent.width + channel_width());
      double cost = length_of(out) * length_cost;
      std::vector<const FacePicture*> faces = choose_faces(ways, order, width_ - column, cost);
      cost += crossing_cost * count_inversions(order, right_order(faces, order));
      if (is_found && cost >= least) continue;
      is_found = true;
      least = cost;
      inside_out_ = std::move(out);
      chosen = std::move(faces);
      column_ = column;
    }
    take_faces(chosen);
    return std::all_of(faces_.begin(), faces_.end(), [&](const FacePicture& face) {
      return column_ + std::max(face.out.extent.width, least_caption) <= width_ + Millimetres(0.01);
    });
  }

  static std::vector<std::size_t> right_order(const std::vector<const FacePicture*>& faces,
                                              const std::vector<std::size_t>& left) {
    std::vector<std::size_t> order;
    for (const FacePicture* face : faces)
      for (const std::size_t terminal : places_of(face->out.order, face->terminals))
        if (std::find(left.begin(), left.end(), terminal) != left.end()) order.push_back(terminal);
    return order;
  }

  /// The cheapest of each face's ways beside an inside of that order.
  static std::vector<const FacePicture*> choose_faces(const std::vector<FaceWays>& ways, const std::vector<std::size_t>& order,
                                                      Millimetres room, double& cost) {
    std::vector<const FacePicture*> faces;
    for (const FaceWays& of_face : ways) {
      const FacePicture* best = nullptr;
      double least = 0;
      for (const FacePicture& face : of_face) {
        std::vector<std::size_t> own;
        const std::vector<std::size_t> mine = places_of(face.out.order, face.terminals);
        for (const std::size_t t : order)
          if (std::find(mine.begin(), mine.end(), t) != mine.end()) own.push_back(t);
        const double price = face.cost + length_of(face.out) * length_cost +
                             crossing_cost * count_inversions(own, mine) +
                             (face.out.extent.width > room ? crossing_cost * 10 : 0);
        if (best == nullptr || price < least) {
          least = price;
          best = &face;
        }
      }
      if (best == nullptr) continue;
      cost += least;
      faces.push_back(best);
    }
    return faces;
  }

  void take_faces(const std::vector<const FacePicture*>& chosen) {
    faces_.clear();
    for (const FacePicture* way : chosen) {
      FacePicture& face = faces_.emplace_back(*way);
      const Millimetres width = std::min(width_ - column_, std::max(face.out.extent.width, Millimetres(60)));
      face.caption = face_caption(kind_.faces[static_cast<std::size_t>(face.face)], face.scale, width, context_.words(), setting_);
    }
  }

  std::vector<FaceWays> find_face_ways(int coarser) const {
    std::vector<FaceWays> ways(kind_.faces.size());
    for (std::size_t f = 0; f < ways.size(); ++f)
      for (const LabelArrangement arrangement : {LabelArrangement::beside, LabelArrangement::above_below})
        add_face_pictures(ways[f], static_cast<int>(f), arrangement, coarser);
    return ways;
  }

  /// One for each number of lines that may go over the picture; none where none of its terminals is shown.
  void add_face_pictures(FaceWays& ways, int index, LabelArrangement arrangement, int coarser) const {
    const Face& face = kind_.faces[static_cast<std::size_t>(index)];
    FacePicture made;
    made.face = index;
    std::vector<FaceLabel> labels;
    for (std::size_t t = 0; t < kind_.terminals.size(); ++t)
      if (kind_.terminals[t].face == index) {
        labels.push_back({kind_.terminals[t].at, kind_.terminals[t].id, {}});
        made.terminals.push_back(static_cast<int>(t));
      }
    if (labels.empty()) return;
    made.scale = face_scale(face, most_works_face_width, most_works_face_height);
    for (int i = 0; i < coarser; ++i) made.scale = made.scale == 1 ? 2 : made.scale == 2 ? 5 : 10;
    FaceWithEnds drawn = draw_face_with_ends(face, labels, made.scale, arrangement, context_.measure());
    made.cost = drawn.cost;
    std::vector<LeadEnd> joined;
    std::vector<int> joined_terminals;
    for (std::size_t i = 0; i < drawn.ends.size(); ++i)
      if (is_shown(made.terminals[i])) {
        const LabelSide side = drawn.ends[i].side;
        const Millimetres gap = has_dash_at(labels[i].mark, side) ? mark_gap + dash_gap : mark_gap;
        joined.push_back({pushed(drawn.ends[i].at, side, gap), side});
        joined_terminals.push_back(made.terminals[i]);
      }
    const auto back = static_cast<std::size_t>(
        std::count_if(joined.begin(), joined.end(), [](const LeadEnd& e) { return e.side == LabelSide::right; }));
    made.terminals = std::move(joined_terminals);
    if (made.terminals.empty()) return;
    made.block = std::move(drawn.block);
    for (std::size_t over = 0; over <= back; ++over) {
      made.out = lead_out({{}, {}, made.block.width, made.block.height}, joined, LabelSide::left, over);
      ways.push_back(made);
    }
  }

  /// The lines of the channel with the inside's picture that far down the block, the faces that far.
  std::vector<ChannelLine> channel_lines(Millimetres inside_top, Millimetres faces_top,
                                         std::vector<std::pair<std::size_t, std::size_t>>& joined) const {
    std::vector<ChannelLine> lines;
    joined.clear();
    for (std::size_t e = 0; e < inside_.ends.size(); ++e)
      for (std::size_t f = 0; f < faces_.size(); ++f) {
        const FacePicture& face = faces_[f];
        const auto at = std::find(face.terminals.begin(), face.terminals.end(), inside_.terminals[e]);
        if (at == face.terminals.end()) continue;
        const auto& end = face.out.lines[static_cast<std::size_t>(at - face.terminals.begin())].back();
        lines.push_back({inside_out_.lines[e].back().y - inside_out_.extent.y + inside_top,
                         end.y - face.out.extent.y + face.top + faces_top});
        joined.emplace_back(e, f);
      }
    return lines;
  }

  Block compose() {
    Millimetres faces_height;
    for (FacePicture& face : faces_) {
      face.top = faces_height + (faces_height.number() > 0 ? look::block_gap : Millimetres(0));
      faces_height = face.top + face.height();
    }
    const Millimetres inside_height = inside_out_.extent.height, height = std::max(faces_height, inside_height);
    const Millimetres to = column_;
    const Millimetres from =
        std::max(inside_out_.extent.width, to - channel_step * static_cast<double>(inside_.ends.size() + 1));
    Millimetres inside_top, faces_top;
    LeadChannel channel;
    std::vector<std::pair<std::size_t, std::size_t>> joined;
    double least = 1e9;
    for (Millimetres off; off <= height - std::min(faces_height, inside_height) + Millimetres(0.01);
         off += level_step) {
      const Millimetres a = inside_height < height ? off : Millimetres(0),
                        b = inside_height < height ? Millimetres(0) : off;
      const std::vector<ChannelLine> lines = channel_lines(a, b, joined);
      LeadChannel tried = route_channel(lines, from, to);
      double cost = crossing_cost * tried.crossings + clash_cost * tried.clashes;
      for (const ChannelLine& line : lines) {
        const double rise = std::abs((line.left - line.right).number());
        cost += length_cost * rise + (rise > 0.05 && rise < least_jog.number() ? jog_cost : 0);
      }
      if (cost >= least - 1e-6) continue;
      least = cost;
      inside_top = a;
      faces_top = b;
      channel = std::move(tried);
    }
    Block block{width_, height, {}};
    channel_lines(inside_top, faces_top, joined);
    add_leaders(block.items, channel, joined, inside_top, faces_top);
    place_inside(block.items, inside_at(inside_top));
    for (FacePicture& face : faces_) {
      place_block(block.items, std::move(face.block), face_at(face, faces_top));
      place_block(block.items, std::move(face.caption),
                  {column_, faces_top + face.top + face.out.extent.height + caption_gap});
    }
    return block;
  }

  /// Where the lines find no room: the faces below the inside, joined to it by their marks alone.
  Block compose_below() {
    Block block{width_, inside_.block.height, {}};
    place_inside(block.items, {});
    for (FacePicture& face : faces_) {
      const Millimetres top = block.height + look::block_gap, caption_top = top + face.block.height + caption_gap;
      block.height = caption_top + face.caption.height;
      place_block(block.items, std::move(face.block), {Millimetres(0), top});
      place_block(block.items, std::move(face.caption), {Millimetres(0), caption_top});
    }
    return block;
  }

  void place_inside(Items& items, Point at) {
    items.push_back(
        TagOpenItem{"Figure", context_.words()("works.picture", {{"part", context_.build().part(part_).label}})});
    place_block(items, std::move(inside_.block), at);
    items.push_back(TagCloseItem{});
  }

  Point inside_at(Millimetres top) const { return {inside_out_.extent.x * -1, top - inside_out_.extent.y}; }
  Point face_at(const FacePicture& face, Millimetres top) const {
    return {column_ - face.out.extent.x, top + face.top - face.out.extent.y};
  }

  void add_leaders(Items& items, const LeadChannel& channel,
                   const std::vector<std::pair<std::size_t, std::size_t>>& joined, Millimetres inside_top,
                   Millimetres faces_top) const {
    const Pen pen{look::grey, look::line, {}, Cap::round};
    items.push_back(TagOpenItem{"Artifact", {}});
    std::vector<std::vector<Point>> whole;
    for (std::size_t i = 0; i < joined.size(); ++i) {
      const auto [e, f] = joined[i];
      const FacePicture& face = faces_[f];
      const auto at = std::find(face.terminals.begin(), face.terminals.end(), inside_.terminals[e]);
      std::vector<Point> line;
      for (const Point& p : inside_out_.lines[e]) line.push_back(p + inside_at(inside_top));
      line.insert(line.end(), channel.lines[i].begin(), channel.lines[i].end());
      const auto& out = face.out.lines[static_cast<std::size_t>(at - face.terminals.begin())];
      for (auto p = out.rbegin(); p != out.rend(); ++p) line.push_back(*p + face_at(face, faces_top));
      whole.push_back(std::move(line));
    }
    for (const std::vector<Point>& line : whole) items.push_back(PathItem{arched_line(line, whole), {true, pen}, {}});
    items.push_back(TagCloseItem{});
  }

  const SheetContext& context_;
  const TypeSetting& setting_;
  const Kind& kind_;
  PartId part_;
  Millimetres width_, column_;
  PartDrawing drawing_;  ///< of the inside, unscaled
  InsidePicture inside_;
  LeadOut inside_out_;
  std::vector<FacePicture> faces_;
};

}  // namespace

WorksPictures make_works_pictures(const SheetContext& context, PartId part, Millimetres width, const TypeSetting& setting) {
  return Pictures(context, part, width, setting).make();
}

}  // namespace loomfolio
