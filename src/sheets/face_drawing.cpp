// SPDX-License-Identifier: MIT
#include "sheets/face_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "base/text.h"
#include "sheets/face_labels.h"

namespace loomfolio {
namespace {

Point scaled(Point p, int scale) { return {p.x / scale, p.y / scale}; }

/// Words keep their size: on a face drawn smaller than 1:2 they would lie on what they name.
constexpr int least_worded = 2;

/// The signs of poles are what a reader goes by: they stand out.
void add_face_words(Items& items, Point at, const std::string& text) {
  const bool is_pole = text == "+" || text == "-" || text == "\u2212";
  const TextStyle& style = is_pole ? look::fuse_rating : look::face_text;
  add_text(items, {at.x, baseline_at_middle(at.y, style)}, text, style, is_pole ? look::ink : look::grey,
           Align::centre);
}

void add_shape(Items& items, const FaceShape& shape, int scale) {
  if (shape.points.empty()) return;
  const Pen pen{look::ink, shape.is_thin ? look::thin_line : look::part_line};
  const Fill fill{shape.is_filled, look::band_dark};
  std::vector<Point> points;
  for (const Point& p : shape.points) points.push_back(scaled(p, scale));
  switch (shape.type) {
    case ShapeType::rect:
      items.push_back(RectItem{{points[0].x, points[0].y, shape.width / scale, shape.height / scale},
                               shape.radius / scale,
                               {true, pen},
                               fill});
      break;
    case ShapeType::circle:
      add_circle(items, points[0], shape.radius / scale, {true, pen}, fill);
      break;
    case ShapeType::line:
    case ShapeType::polyline:
      add_polyline(items, points, pen);
      break;
    case ShapeType::text:
      if (scale <= least_worded) add_face_words(items, points[0], shape.text);
      break;
  }
}

/// Several wires at one terminal, in one line.
std::string joined_codes(const FaceLabel& label) { return join(label.codes, ", "); }

/// A round cavity that none of the labels is of: blocked, or left alone.
bool is_other_cavity(const Face& face, const FaceShape& shape, const std::vector<FaceLabel>& labels) {
  if (shape.type != ShapeType::circle || shape.radius > Millimetres(3) || shape.radius > face.height / 6) return false;
  return std::none_of(labels.begin(), labels.end(), [&](const FaceLabel& label) {
    const Point off{label.at.x - shape.points[0].x, label.at.y - shape.points[0].y};
    return std::hypot(off.x.number(), off.y.number()) < shape.radius.number();
  });
}

/// What a leader should not cross: figures, other cavities, and lids and latches, which are smaller than half the face and
/// larger than a terminal.
void add_feature(FaceLabelRequest& request, const Face& face, const FaceShape& shape, const std::vector<FaceLabel>& labels,
                 int scale, const TextMeasure& measure) {
  if (shape.points.empty()) return;
  const Point at = scaled(shape.points[0], scale);
  if (shape.type == ShapeType::text) {
    const TextSize size = measure.measure(shape.text, look::face_text);
    const Millimetres height(look::face_text.points * 0.3);
    request.features.push_back({at.x - size.width / 2, at.y - height / 2, size.width, height});
    return;
  }
  if (is_other_cavity(face, shape, labels)) {
    const Millimetres radius = shape.radius / scale;
    request.features.push_back({at.x - radius, at.y - radius, radius * 2, radius * 2});
  }
  if (shape.type != ShapeType::rect) return;
  const bool is_outline = shape.width > face.width * 0.6 && shape.height > face.height * 0.6;
  if (!is_outline) request.features.push_back({at.x, at.y, shape.width / scale, shape.height / scale});
}

/// How far a nut, blade or cavity drawn about a terminal reaches from its middle, at the side that reaches furthest: the
/// larger of the shapes that stand centred on it and are a good deal smaller than the face.
Millimetres reach_about(Point terminal, const Face& face) {
  constexpr double same_middle = 0.5;
  Millimetres reach(0);
  for (const FaceShape& shape : face.shapes) {
    if (shape.points.empty() || shape.type == ShapeType::text || shape.type == ShapeType::line) continue;
    Point low = shape.points[0], high = low;
    for (const Point& p : shape.points) {
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    if (shape.type == ShapeType::rect) high = {low.x + shape.width, low.y + shape.height};
    if (shape.type == ShapeType::circle) {
      low = {low.x - shape.radius, low.y - shape.radius};
      high = {high.x + shape.radius, high.y + shape.radius};
    }
    const Millimetres width = high.x - low.x, height = high.y - low.y;
    const double off_x = (low.x + width / 2 - terminal.x).number(), off_y = (low.y + height / 2 - terminal.y).number();
    const bool is_centred = std::hypot(off_x, off_y) < same_middle;
    const bool is_of_terminal = width < face.width / 2 && height < face.height / 2;
    if (is_centred && is_of_terminal) reach = std::max({reach, width / 2, height / 2});
  }
  return reach;
}

FaceLabelRequest request_of(const Face& face, const std::vector<FaceLabel>& labels, int scale,
                            const TextMeasure& measure) {
  FaceLabelRequest request;
  request.width = face.width / scale;
  request.height = face.height / scale;
  request.line_height = look::line_step(look::terminal_name);
  for (const FaceLabel& label : labels) {
    const Millimetres mark = measure.measure(label.mark, look::terminal_name).width;
    Millimetres widest = mark;
    for (const std::string& code : label.codes) widest = std::max(widest, measure.measure(code, look::wire_code).width);
    const Millimetres all = measure.measure(joined_codes(label), look::wire_code).width;
    request.terminals.push_back(scaled(label.at, scale));
    request.reaches.push_back(reach_about(label.at, face) / scale);
    request.one_line_widths.push_back(mark + (label.codes.empty() ? Millimetres(0) : all + look::label_word_gap));
    request.stacked_widths.push_back(widest);
    request.stacked_lines.push_back(1 + static_cast<int>(label.codes.size()));
  }
  for (const FaceShape& shape : face.shapes) add_feature(request, face, shape, labels, scale, measure);
  return request;
}

/// A minus would read as the leader's end: the leader stops short of it.
std::vector<Point> drawn_leader(const PlacedFaceLabel& place, const FaceLabel& label) {
  std::vector<Point> points = place.leader;
  const bool meets = place.side == LabelSide::right  ? has_dash_at(label.mark, LabelSide::left)
                     : place.side == LabelSide::left ? label.codes.empty() && has_dash_at(label.mark, LabelSide::right)
                                                     : false;
  if (!meets || points.size() < 2) return points;
  Point& last = points.back();
  const Millimetres run = last.x - points[points.size() - 2].x;
  if (run > dash_gap * 2) last.x -= dash_gap;
  if (run < dash_gap * -2) last.x += dash_gap;
  return points;
}

void add_leader(Items& items, const PlacedFaceLabel& place, const FaceLabel& label) {
  add_polyline(items, drawn_leader(place, label), {look::ink, look::thin_line});
  add_circle(items, place.leader.front(), look::leader_dot, {false, {}}, {true, look::ink});
}

/// Beside the face mark and codes stand in one line; above and below it the mark stands next to the face and each code
/// on a line of its own outside it, so that none slides over a neighbour's mark.
void add_label(Items& items, const PlacedFaceLabel& place, const FaceLabel& label, const TextMeasure& measure) {
  const Point c = place.centre;
  if (place.side == LabelSide::left || place.side == LabelSide::right) {
    const Millimetres left = c.x - place.width / 2, baseline = baseline_at_middle(c.y, look::terminal_name);
    add_text(items, {left, baseline}, label.mark, look::terminal_name);
    const Millimetres mark = measure.measure(label.mark, look::terminal_name).width;
    add_text(items, {left + mark + look::label_word_gap, baseline}, joined_codes(label), look::wire_code);
    return;
  }
  const auto lines = static_cast<int>(label.codes.size()) + 1;
  const Millimetres line = place.height / lines, top = c.y - place.height / 2;
  const bool is_top = place.side == LabelSide::top;
  const auto add = [&](int at, const std::string& text, const TextStyle& style) {
    const Millimetres middle = top + line * ((is_top ? lines - 1 - at : at) + 0.5);
    add_text(items, {c.x, baseline_at_middle(middle, style)}, text, style, look::ink, Align::centre);
  };
  add(0, label.mark, look::terminal_name);
  for (int i = 1; i < lines; ++i) add(i, label.codes[static_cast<std::size_t>(i - 1)], look::wire_code);
}

/// The box around face and labels.
Rect extent_of(const FaceLabelRequest& request, const std::vector<PlacedFaceLabel>& labels) {
  Millimetres x0, y0, x1 = request.width, y1 = request.height;
  for (const PlacedFaceLabel& label : labels) {
    x0 = std::min(x0, label.centre.x - label.width / 2);
    x1 = std::max(x1, label.centre.x + label.width / 2);
    y0 = std::min(y0, label.centre.y - label.height / 2);
    y1 = std::max(y1, label.centre.y + label.height / 2);
  }
  const Millimetres pen = look::part_line / 2;
  return {x0 - pen, y0 - pen, x1 - x0 + pen * 2, y1 - y0 + pen * 2};
}

/// The middle of the label's edge that looks away from the face.
Point outer_edge(const PlacedFaceLabel& label) {
  Point at = label.centre;
  if (label.side == LabelSide::left) at.x -= label.width / 2;
  if (label.side == LabelSide::right) at.x += label.width / 2;
  if (label.side == LabelSide::top) at.y -= label.height / 2;
  if (label.side == LabelSide::bottom) at.y += label.height / 2;
  return at;
}

std::string_view view_key(View view) {
  switch (view) {
    case View::front:
      return "view.front";
    case View::top:
      return "view.top";
    case View::rear:
      return "view.rear";
    case View::underside:
      return "view.underside";
    case View::left_side:
      return "view.left_side";
    case View::right_side:
      return "view.right_side";
    case View::wire_side:
      return "view.wire_side";
    case View::mating_side:
      return "view.mating_side";
  }
  return "view.front";
}

}  // namespace

bool has_dash_at(const std::string& mark, LabelSide end) {
  constexpr std::array<std::string_view, 3> dashes{"-", "\u2212", "\u2013"};
  return std::any_of(dashes.begin(), dashes.end(), [&](std::string_view dash) {
    return end == LabelSide::left ? mark.starts_with(dash) : end == LabelSide::right && mark.ends_with(dash);
  });
}

int face_scale(const Face& face, Millimetres most_width, Millimetres most_height) {
  for (const int scale : std::array{1, 2, 5})
    if (face.width / scale <= most_width && face.height / scale <= most_height) return scale;
  return 10;
}

Block draw_face(const Face& face, const std::vector<FaceLabel>& labels, int scale, const TextMeasure& measure) {
  return draw_face_with_ends(face, labels, scale, LabelArrangement::shortest, measure).block;
}

FaceWithEnds draw_face_with_ends(const Face& face, const std::vector<FaceLabel>& labels, int scale,
                                 LabelArrangement arrangement, const TextMeasure& measure) {
  const FaceLabelRequest request = request_of(face, labels, scale, measure);
  const FaceLabelPlan plan = plan_face_labels(request, arrangement);
  Items items;
  items.push_back(TagOpenItem{"Figure", face.name});
  for (const FaceShape& shape : face.shapes) add_shape(items, shape, scale);
  for (const PlacedFaceLabel& place : plan.labels) add_leader(items, place, labels[place.label]);
  for (const PlacedFaceLabel& place : plan.labels) add_label(items, place, labels[place.label], measure);
  items.push_back(TagCloseItem{});
  const Rect extent = extent_of(request, plan.labels);
  FaceWithEnds drawn{{extent.width, extent.height, {}}, std::vector<LeadEnd>(labels.size()), plan.cost};
  const Point by{extent.x * -1, extent.y * -1};
  place_block(drawn.block.items, Block{{}, {}, std::move(items)}, by);
  for (const PlacedFaceLabel& place : plan.labels) drawn.ends[place.label] = {outer_edge(place) + by, place.side};
  return drawn;
}

Block face_caption(const Face& face, int scale, Millimetres width, const Words& words, const TypeSetting& setting) {
  const std::string view = words(view_key(face.seen));
  const std::string said_scale = words("terminals.scale", {{"scale", std::to_string(scale)}});
  Block block =
      set_paragraph({{{view, look::table_bold, look::ink, {}}, {"  " + said_scale, look::table, look::ink, {}}},
                     Align::left,
                     "Caption"},
                    width, setting);
  std::string more = face.name;
  if (!face.keying.empty()) more += (more.empty() ? "" : ". ") + face.keying;
  if (more.empty()) return block;
  Block second = set_paragraph({{{more, look::table_small, look::ink, {}}}, Align::left, "P"}, width, setting);
  const Millimetres height = second.height;
  place_block(block.items, std::move(second), {{}, block.height});
  block.height += height;
  return block;
}

Block scale_bar(const Words& words, const TypeSetting& setting) {
  const Millimetres length(50), bar(1.6);
  Block block{length, Millimetres(6.5), {}};
  block.items.push_back(TagOpenItem{"Figure", words("terminals.scale_bar")});
  for (int i = 0; i < 5; ++i)
    add_boxed_rect(block.items, {length * (i / 5.0), Millimetres(0.2), length / 5, bar},
                   i % 2 == 0 ? look::ink : look::paper, {look::ink, look::thin_line});
  const Millimetres baseline(5.4);
  for (const int mark : {0, 10, 20, 30, 40, 50})
    add_text(block.items, {Millimetres(mark), baseline}, std::to_string(mark), look::least, look::ink, Align::centre);
  block.items.push_back(TagCloseItem{});
  const std::string sentence = words("terminals.scale_bar");
  Block text = set_paragraph({{{sentence, look::table, look::ink, {}}}, Align::left, "P"}, Millimetres(110), setting);
  const Millimetres x = length + Millimetres(6);
  block.width = x + text.width;
  place_block(block.items, std::move(text), {x, Millimetres(0.4)});
  return block;
}

}  // namespace loomfolio
