// SPDX-License-Identifier: MIT
#include "sheets/draw.h"

#include <algorithm>
#include <utility>

#include "base/type_size.h"

namespace loomfolio {
namespace {

/// Height of B612's capitals over its type size, as its face states it (OS/2 table).
constexpr double capital_share = 0.75;

std::vector<PathPiece> path_through(const std::vector<Point>& points) {
  std::vector<PathPiece> pieces;
  pieces.reserve(points.size() + 1);
  for (std::size_t i = 0; i < points.size(); ++i)
    pieces.push_back(i == 0 ? PathPiece(PathMove{points[i]}) : PathPiece(PathLine{points[i]}));
  return pieces;
}

struct Mover {
  Point by;
  void operator()(PathMove& p) const { p.to = p.to + by; }
  void operator()(PathLine& p) const { p.to = p.to + by; }
  void operator()(PathCurve& p) const {
    p.control_1 = p.control_1 + by;
    p.control_2 = p.control_2 + by;
    p.to = p.to + by;
  }
  void operator()(PathArc& p) const { p.centre = p.centre + by; }
  void operator()(PathClose&) const {}

  void operator()(PathItem& item) const {
    for (PathPiece& piece : item.pieces) std::visit(*this, piece);
  }
  void operator()(RectItem& item) const { move(item.rect); }
  void operator()(TextItem& item) const { item.at = item.at + by; }
  void operator()(LinkItem& item) const { move(item.rect); }
  void operator()(AnchorItem& item) const { item.at = item.at + by; }
  void operator()(TagOpenItem&) const {}
  void operator()(TagCloseItem&) const {}

  void move(Rect& rect) const {
    rect.x += by.x;
    rect.y += by.y;
  }
};

struct Scaler {
  double factor;
  Point scaled(Point p) const { return {p.x * factor, p.y * factor}; }
  void operator()(PathMove& p) const { p.to = scaled(p.to); }
  void operator()(PathLine& p) const { p.to = scaled(p.to); }
  void operator()(PathCurve& p) const {
    p.control_1 = scaled(p.control_1);
    p.control_2 = scaled(p.control_2);
    p.to = scaled(p.to);
  }
  void operator()(PathArc& p) const {
    p.centre = scaled(p.centre);
    p.radius = p.radius * factor;
  }
  void operator()(PathClose&) const {}

  void operator()(PathItem& item) const {
    for (PathPiece& piece : item.pieces) std::visit(*this, piece);
    scale(item.stroke.pen);
  }
  void operator()(RectItem& item) const {
    scale(item.rect);
    item.corner = item.corner * factor;
    scale(item.stroke.pen);
  }
  void operator()(TextItem& item) const { item.at = scaled(item.at); }
  void operator()(LinkItem& item) const { scale(item.rect); }
  void operator()(AnchorItem& item) const { item.at = scaled(item.at); }
  void operator()(TagOpenItem&) const {}
  void operator()(TagCloseItem&) const {}

  void scale(Rect& rect) const { rect = {rect.x * factor, rect.y * factor, rect.width * factor, rect.height * factor}; }
  /// Thin lines stay thin: only what is drawn as a width of its own, a wire or a strand, grows.
  void scale(Pen& pen) const {
    if (pen.width > look::part_line) pen.width = pen.width * factor;
    for (Millimetres& dash : pen.dashes) dash = dash * factor;
  }
};

/// Removes the last character of UTF-8 text.
void drop_last_character(std::string& text) {
  while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80) text.pop_back();
  if (!text.empty()) text.pop_back();
}

}  // namespace

void add_line(Items& items, Point from, Point to, const Pen& pen) { add_polyline(items, {from, to}, pen); }

void add_polyline(Items& items, const std::vector<Point>& points, const Pen& pen) {
  items.push_back(PathItem{path_through(points), {true, pen}, {}});
}

void add_polygon(Items& items, const std::vector<Point>& points, Colour fill, const Pen& outline) {
  std::vector<PathPiece> pieces = path_through(points);
  pieces.push_back(PathClose{});
  items.push_back(PathItem{std::move(pieces), {outline.width.number() > 0, outline}, {true, fill}});
}

void add_rect(Items& items, const Rect& rect, const Pen& outline, Millimetres corner) {
  items.push_back(RectItem{rect, corner, {true, outline}, {}});
}

void add_filled_rect(Items& items, const Rect& rect, Colour fill, Millimetres corner) {
  items.push_back(RectItem{rect, corner, {false, {}}, {true, fill}});
}

void add_boxed_rect(Items& items, const Rect& rect, Colour fill, const Pen& outline, Millimetres corner) {
  items.push_back(RectItem{rect, corner, {true, outline}, {true, fill}});
}

void add_circle(Items& items, Point centre, Millimetres radius, const Stroke& stroke, const Fill& fill) {
  const Point start{centre.x + radius, centre.y};
  items.push_back(PathItem{{PathMove{start}, PathArc{centre, radius, 0, 360}, PathClose{}}, stroke, fill});
}

void add_ellipse(Items& items, const Rect& rect, const Pen& outline) {
  constexpr double round = 0.5522847498;  // reach of the controls of a quarter
  const Millimetres a = rect.width / 2, b = rect.height / 2;
  const Point middle{rect.x + a, rect.y + b};
  const auto at = [&](double x, double y) { return Point{middle.x + a * x, middle.y + b * y}; };
  items.push_back(PathItem{{PathMove{at(1, 0)}, PathCurve{at(1, round), at(round, 1), at(0, 1)}, PathCurve{at(-round, 1), at(-1, round), at(-1, 0)},
                            PathCurve{at(-1, -round), at(-round, -1), at(0, -1)}, PathCurve{at(round, -1), at(1, -round), at(1, 0)}, PathClose{}},
                           {true, outline}, {}});
}

void add_text(Items& items, Point at, std::string text, const TextStyle& style, Colour colour, Align align) {
  if (text.empty()) return;
  items.push_back(TextItem{at, std::move(text), style, colour, align});
}

void move_item(Item& item, Point by) { std::visit(Mover{by}, item); }

void scale_block(Block& block, double factor) {
  for (Item& item : block.items) std::visit(Scaler{factor}, item);
  block.width = block.width * factor;
  block.height = block.height * factor;
}

void place_block(Items& items, const Block& block, Point at) { place_block(items, Block(block), at); }

void place_block(Items& items, Block&& block, Point at) {
  items.reserve(items.size() + block.items.size());
  for (Item& item : block.items) {
    move_item(item, at);
    items.push_back(std::move(item));
  }
}

FittedText fit_text(const std::string& text, const TextStyle& style, Millimetres room, const TextMeasure& measure) {
  FittedText fitted{text, style};
  while (measure.measure(fitted.text, fitted.style).width > room && fitted.style.points > look::least_points)
    fitted.style.points = std::max(look::least_points, fitted.style.points - 0.5);
  std::string kept = text;
  while (measure.measure(fitted.text, fitted.style).width > room && !kept.empty()) {
    drop_last_character(kept);
    fitted.text = kept + "\u2026";
  }
  return fitted;
}

Millimetres baseline_at_middle(Millimetres middle, const TextStyle& style) {
  return middle + Millimetres(style.points * mm_per_point * capital_share / 2);
}

}  // namespace loomfolio
