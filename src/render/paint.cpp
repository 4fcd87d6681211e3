// SPDX-License-Identifier: MIT
#include "render/paint.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "render/arc.h"
#include "render/colour.h"

namespace loomfolio {
namespace {

template <class... Cases>
struct Overloaded : Cases... {
  using Cases::operator()...;
};

void set_colour(const Painter& painter, Colour wanted) {
  const Colour colour = shown(wanted, painter.colouring);
  cairo_set_source_rgb(painter.cairo, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0);
}

void set_pen(const Painter& painter, const Pen& pen) {
  cairo_t* cairo = painter.cairo;
  set_colour(painter, pen.colour);
  cairo_set_line_width(cairo, to_points(pen.width));
  cairo_set_line_cap(cairo, pen.cap == Cap::round    ? CAIRO_LINE_CAP_ROUND
                            : pen.cap == Cap::square ? CAIRO_LINE_CAP_SQUARE
                                                     : CAIRO_LINE_CAP_BUTT);
  // A round cap asks for round corners too: both ends of a wire and its bends look alike.
  cairo_set_line_join(cairo, pen.cap == Cap::round ? CAIRO_LINE_JOIN_ROUND : CAIRO_LINE_JOIN_MITER);
  double lengths[16];
  int count = 0;
  double sum = 0;
  for (const Millimetres dash : pen.dashes) {
    if (count == 16) break;
    sum += lengths[count++] = std::max(0.0, to_points(dash));
  }
  cairo_set_dash(cairo, lengths, sum > 0 ? count : 0, 0);
}

/// Fills and outlines the current path and forgets it.
void finish_path(const Painter& painter, const Stroke& stroke, const Fill& fill) {
  if (fill.is_filled) {
    set_colour(painter, fill.colour);
    cairo_fill_preserve(painter.cairo);
  }
  if (stroke.is_drawn && stroke.pen.width > Millimetres(0)) {
    set_pen(painter, stroke.pen);
    cairo_stroke_preserve(painter.cairo);
  }
  cairo_new_path(painter.cairo);
}

double to_radians(double degrees) { return degrees * std::numbers::pi / 180; }

void add_piece(cairo_t* cairo, const PathPiece& piece) {
  const auto x = [](Point p) { return to_points(p.x); };
  const auto y = [](Point p) { return to_points(p.y); };
  std::visit(Overloaded{
                 [&](const PathMove& p) { cairo_move_to(cairo, x(p.to), y(p.to)); },
                 [&](const PathLine& p) { cairo_line_to(cairo, x(p.to), y(p.to)); },
                 [&](const PathCurve& p) {
                   cairo_curve_to(cairo, x(p.control_1), y(p.control_1), x(p.control_2), y(p.control_2), x(p.to),
                                  y(p.to));
                 },
                 [&](const PathArc& p) {
                   if (is_whole_circle(p)) cairo_new_sub_path(cairo);
                   cairo_arc(cairo, x(p.centre), y(p.centre), to_points(p.radius), to_radians(p.from_degrees),
                             to_radians(p.from_degrees + sweep_of(p)));
                 },
                 [&](const PathClose&) { cairo_close_path(cairo); },
             },
             piece);
}

void add_rounded_rect(cairo_t* cairo, const Rect& rect, double corner) {
  const double x0 = to_points(rect.x), y0 = to_points(rect.y), x1 = to_points(rect.right()),
               y1 = to_points(rect.bottom());
  constexpr double quarter = std::numbers::pi / 2;
  cairo_new_sub_path(cairo);
  cairo_arc(cairo, x1 - corner, y0 + corner, corner, -quarter, 0);
  cairo_arc(cairo, x1 - corner, y1 - corner, corner, 0, quarter);
  cairo_arc(cairo, x0 + corner, y1 - corner, corner, quarter, 2 * quarter);
  cairo_arc(cairo, x0 + corner, y0 + corner, corner, 2 * quarter, 3 * quarter);
  cairo_close_path(cairo);
}

void show_glyphs(cairo_t* cairo, cairo_scaled_font_t* font, const std::string& utf8, const std::vector<cairo_glyph_t>& glyphs,
                 const std::vector<cairo_text_cluster_t>& clusters) {
  cairo_set_scaled_font(cairo, font);
  cairo_show_text_glyphs(cairo, utf8.data(), static_cast<int>(utf8.size()), glyphs.data(), static_cast<int>(glyphs.size()), clusters.data(),
                         static_cast<int>(clusters.size()), cairo_text_cluster_flags_t{});
}

void append_at(std::vector<cairo_glyph_t>& placed, const std::vector<cairo_glyph_t>& glyphs, double x, double y) {
  for (const cairo_glyph_t& glyph : glyphs) placed.push_back({glyph.index, glyph.x + x, glyph.y + y});
}

void show_run(cairo_t* cairo, const ShapedRun& run, double x, double y) {
  if (run.glyphs.empty()) return;
  std::vector<cairo_glyph_t> placed;
  append_at(placed, run.glyphs, x, y);
  show_glyphs(cairo, run.font.get(), run.utf8, placed, run.clusters);
}

/// Two runs of one face as one.
void show_joined(cairo_t* cairo, const ShapedRun& run, double x, const ShapedRun& further, double further_x, double y) {
  std::vector<cairo_glyph_t> placed;
  append_at(placed, run.glyphs, x, y);
  append_at(placed, further.glyphs, further_x, y);
  std::vector<cairo_text_cluster_t> clusters = run.clusters;
  clusters.insert(clusters.end(), further.clusters.begin(), further.clusters.end());
  show_glyphs(cairo, run.font.get(), run.utf8 + further.utf8, placed, clusters);
}

/// With `tail`, if there is one, at its end.
void show_line(const Painter& painter, const ShapedLine& line, const ShapedRun* tail, double x, double y) {
  for (const ShapedRun& run : line.runs) {
    const bool is_joined = tail != nullptr && &run == &line.runs.back() && run.font.get() == tail->font.get();
    if (!is_joined) {
      show_run(painter.cairo, run, x, y);
      continue;
    }
    show_joined(painter.cairo, run, x, *tail, x + line.width, y);
    tail = nullptr;
  }
  if (tail != nullptr) show_run(painter.cairo, *tail, x + line.width, y);
  for (const MissingBox& box : line.missing) {
    const double inset = box.width * 0.1;
    cairo_rectangle(painter.cairo, x + box.x + inset, y - box.width * 1.1, box.width - 2 * inset, box.width * 1.1);
    cairo_set_line_width(painter.cairo, box.width * 0.08);
    cairo_set_dash(painter.cairo, nullptr, 0, 0);
    cairo_stroke(painter.cairo);
  }
}

void paint_text(const Painter& painter, const TextItem& item, const ShapedRun* tail) {
  const ShapedLine& line = painter.shaper.shape(item.text, item.style);
  const double back = -line.width * share_before(item.align);
  const double x = to_points(item.at.x), y = to_points(item.at.y);
  set_colour(painter, item.colour);
  if (!item.is_upright) return show_line(painter, line, tail, x + back, y);
  cairo_save(painter.cairo);
  cairo_translate(painter.cairo, x, y);
  cairo_rotate(painter.cairo, -std::numbers::pi / 2);
  show_line(painter, line, tail, back, 0);
  cairo_restore(painter.cairo);
}

}  // namespace

cairo_status_t append_bytes(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

void paint_ground(cairo_t* cairo) {
  cairo_set_source_rgb(cairo, 1, 1, 1);
  cairo_paint(cairo);
}

void paint(const Painter& painter, const PathItem& item) {
  cairo_new_path(painter.cairo);
  for (const PathPiece& piece : item.pieces) add_piece(painter.cairo, piece);
  finish_path(painter, item.stroke, item.fill);
}

void paint(const Painter& painter, const RectItem& item) {
  const Rect& rect = item.rect;
  const double corner = std::min({to_points(item.corner), to_points(rect.width) / 2, to_points(rect.height) / 2});
  cairo_new_path(painter.cairo);
  if (corner > 0)
    add_rounded_rect(painter.cairo, rect, corner);
  else
    cairo_rectangle(painter.cairo, to_points(rect.x), to_points(rect.y), to_points(rect.width), to_points(rect.height));
  finish_path(painter, item.stroke, item.fill);
}

void paint(const Painter& painter, const TextItem& item) { paint_text(painter, item, nullptr); }

void paint_with_space(const Painter& painter, const TextItem& item) {
  paint_text(painter, item, &painter.shaper.shape(" ", item.style).runs.front());
}

}  // namespace loomfolio
