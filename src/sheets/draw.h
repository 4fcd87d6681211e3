// SPDX-License-Identifier: MIT
// Short ways to add items, and to move, measure and stack what was drawn.
#pragma once

#include <string>
#include <vector>

#include "sheets/look.h"
#include "sheets/sheet.h"

namespace loomfolio {

using Items = std::vector<Item>;

void add_line(Items& items, Point from, Point to, const Pen& pen);
void add_polyline(Items& items, const std::vector<Point>& points, const Pen& pen);
/// A closed filled figure, with an outline when `outline` has a width.
void add_polygon(Items& items, const std::vector<Point>& points, Colour fill, const Pen& outline);
void add_rect(Items& items, const Rect& rect, const Pen& outline, Millimetres corner = {});
void add_filled_rect(Items& items, const Rect& rect, Colour fill, Millimetres corner = {});
void add_boxed_rect(Items& items, const Rect& rect, Colour fill, const Pen& outline, Millimetres corner = {});
void add_circle(Items& items, Point centre, Millimetres radius, const Stroke& stroke, const Fill& fill);
/// The largest ellipse in the rectangle.
void add_ellipse(Items& items, const Rect& rect, const Pen& outline);
void add_text(Items& items, Point at, std::string text, const TextStyle& style, Colour colour = look::ink,
              Align align = Align::left);

/// Something drawn in its own coordinates, from (0, 0) to (width, height).
struct Block {
  Millimetres width, height;
  Items items;
};

void move_item(Item& item, Point by);
/// Appends the block's items, its top left at `at`.
void place_block(Items& items, const Block& block, Point at);
void place_block(Items& items, Block&& block, Point at);

/// Makes the block that many times larger: places, sizes and drawn widths, but not texts.
void scale_block(Block& block, double factor);

/// Text made smaller, to the least size, then cut with an ellipsis, until it is at most `room` wide.
struct FittedText {
  std::string text;
  TextStyle style;
};
FittedText fit_text(const std::string& text, const TextStyle& style, Millimetres room, const TextMeasure& measure);

/// Baseline that centres a line of capitals of that style at `middle`.
Millimetres baseline_at_middle(Millimetres middle, const TextStyle& style);

}  // namespace loomfolio
