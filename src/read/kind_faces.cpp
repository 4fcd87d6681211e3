// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "read/kind_reader.h"

namespace loomfolio {
namespace {

constexpr Choice<View> views[] = {{"front", View::front},         {"top", View::top},
                                  {"rear", View::rear},           {"underside", View::underside},
                                  {"left side", View::left_side}, {"right side", View::right_side},
                                  {"wire side", View::wire_side}, {"mating side", View::mating_side}};
constexpr QuantityRule face_size_rule{Dimension::paper_length, {1, 1000}};

/// The kinds of stroke, and how many numbers each takes.
struct Stroke {
  std::string_view key;
  ShapeType type;
  std::size_t least, most;
  std::string_view numbers;
};
constexpr Stroke strokes[] = {{"rect", ShapeType::rect, 4, 4, "left, top, width, height"},
                              {"circle", ShapeType::circle, 3, 3, "across, down, radius"},
                              {"line", ShapeType::line, 4, 4, "across, down, across, down"},
                              {"polyline", ShapeType::polyline, 4, 400, "pairs of across and down"},
                              {"text", ShapeType::text, 2, 2, "across, down"}};

std::optional<std::vector<double>> read_numbers(const TomlValue& list, const Stroke& stroke, TableReader& table) {
  std::vector<double> numbers;
  for (const TomlValue& item : list.items) {
    const bool is_number = item.type == TomlType::whole || item.type == TomlType::decimal;
    if (!is_number || !std::isfinite(item.number) || std::abs(item.number) > 1000) {
      table.report(DiagnosticId::bad_shape, item.where,
                   "a shape is drawn with plain numbers, millimetres from the face's top left");
      return std::nullopt;
    }
    numbers.push_back(item.number);
  }
  if (numbers.size() >= stroke.least && numbers.size() <= stroke.most &&
      (stroke.type != ShapeType::polyline || numbers.size() % 2 == 0))
    return numbers;
  table.report(DiagnosticId::bad_shape, list.where,
               "`" + std::string(stroke.key) + "` has " + std::to_string(numbers.size()) + " numbers; it takes " +
                   std::string(stroke.numbers));
  return std::nullopt;
}

void place_numbers(FaceShape& shape, const std::vector<double>& numbers) {
  const std::size_t coordinates = shape.type == ShapeType::rect || shape.type == ShapeType::circle ? 2 : numbers.size();
  for (std::size_t i = 0; i < coordinates; i += 2)
    shape.points.push_back({Millimetres(numbers[i]), Millimetres(numbers[i + 1])});
  if (shape.type == ShapeType::rect) shape.width = Millimetres(numbers[2]), shape.height = Millimetres(numbers[3]);
  if (shape.type == ShapeType::circle) shape.radius = Millimetres(numbers[2]);
}

/// A shape's outermost points must lie on the face.
bool lies_on(const FaceShape& shape, const Face& face) {
  constexpr Millimetres slack{0.01};
  const bool is_circle = shape.type == ShapeType::circle;
  const Millimetres reach = is_circle ? shape.radius : Millimetres(0);
  if (shape.width < Millimetres(0) || shape.height < Millimetres(0) || shape.radius < Millimetres(0)) return false;
  return std::all_of(shape.points.begin(), shape.points.end(), [&](const Point& p) {
    return p.x - reach >= -slack && p.y - reach >= -slack && p.x + reach + shape.width <= face.width + slack &&
           p.y + reach + shape.height <= face.height + slack;
  });
}

void read_radius(FaceShape& shape, const TomlValue& radius, TableReader& table) {
  const bool is_number = radius.type == TomlType::whole || radius.type == TomlType::decimal;
  if (is_number && std::isfinite(radius.number) && shape.type == ShapeType::rect)
    shape.radius = Millimetres(radius.number);
  else
    table.report(DiagnosticId::bad_shape, radius.where,
                 "`radius` is a plain number, and rounds the corners of a `rect`");
}

void read_shape(const TomlValue& tree, Face& face, Diagnostics& findings) {
  TableReader table(tree, "a shape", findings);
  const Stroke* stroke = nullptr;
  for (const Stroke& candidate : strokes)
    if (tree.find(candidate.key)) stroke = &candidate;
  if (!stroke) {
    table.report(DiagnosticId::bad_shape, tree.where, "a shape is one of `rect`, `circle`, `line`, `polyline`, `text`");
    return;
  }
  FaceShape shape;
  shape.type = stroke->type;
  if (shape.type == ShapeType::text) shape.text = table.line("text", Need::must);
  const TomlValue* numbers = table.array(shape.type == ShapeType::text ? "at" : stroke->key);
  if (!numbers && shape.type == ShapeType::text)
    table.report(DiagnosticId::bad_shape, tree.where, "a text shape needs `at`, its centre");
  shape.is_filled = table.truth("fill", false);
  shape.is_thin = table.truth("thin", false);
  if (const TomlEntry* radius = table.take("radius")) read_radius(shape, radius->value, table);
  table.refuse_unknown_keys();
  const auto read = numbers ? read_numbers(*numbers, *stroke, table) : std::nullopt;
  if (!read) return;
  place_numbers(shape, *read);
  if (!lies_on(shape, face))
    table.report(DiagnosticId::place_off_face, numbers->where,
                 "this shape leaves face `" + face.id + "`, which is " +
                     print_quantity(face.width.number(), Dimension::paper_length) + " by " +
                     print_quantity(face.height.number(), Dimension::paper_length));
  face.shapes.push_back(shape);
}

Face read_face(const TomlValue& tree, const Kind& kind, Diagnostics& findings) {
  TableReader table(tree, "[[face]]", findings);
  Face face;
  face.id = table.id("id", Need::must);
  for (const Face& other : kind.faces)
    if (!face.id.empty() && other.id == face.id)
      table.report(DiagnosticId::duplicate_id, table.origin().key("id"), "the kind has two faces `" + face.id + "`");
  face.name = table.line("name", Need::may);
  face.seen = table.choice<View>("seen", views, Need::must).value_or(View::front);
  const auto width = table.quantity<Millimetres>("width", face_size_rule, Need::must);
  const auto height = table.quantity<Millimetres>("height", face_size_rule, Need::must);
  // An unread size is reported already; a huge face keeps what stands on it from being reported too.
  face.width = width.value_or(Millimetres(1000));
  face.height = height.value_or(Millimetres(1000));
  face.keying = table.line("keying", Need::may);
  if (const TomlValue* shapes = table.array("shapes"))
    for (const TomlValue& shape : shapes->items)
      if (table.expect_type(shape, TomlType::table, "shapes")) read_shape(shape, face, findings);
  table.refuse_unknown_keys();
  return face;
}

}  // namespace

void read_faces(Kind& kind, TableReader& table) {
  for (const TomlValue* tree : table.tables("face", 30)) kind.faces.push_back(read_face(*tree, kind, table.findings()));
}

}  // namespace loomfolio
