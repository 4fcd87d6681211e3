// SPDX-License-Identifier: MIT
// Every kind in layouts/parts: read without a finding, drawn with every terminal in its place, and explained.
#include <doctest/doctest.h>

#include <cmath>
#include <set>

#include "model/shipped.h"

using namespace loomfolio;
using test::shipped;

namespace {

double distance(Point a, Point b) { return std::hypot((a.x - b.x).number(), (a.y - b.y).number()); }

bool is_on_face(Point p, const Face& face) {
  return p.x >= Millimetres(0) && p.y >= Millimetres(0) && p.x <= face.width && p.y <= face.height;
}

/// Corners of what a shape covers.
std::vector<Point> extremes(const FaceShape& shape) {
  if (shape.type == ShapeType::rect)
    return {shape.points[0], {shape.points[0].x + shape.width, shape.points[0].y + shape.height}};
  if (shape.type == ShapeType::circle) {
    const Point r{shape.radius, shape.radius};
    return {shape.points[0] - r, shape.points[0] + r};
  }
  return shape.points;
}

}  // namespace

TEST_CASE("the library is read without a finding") {
  CHECK(print_diagnostics(shipped().findings, shipped().sources, Paint::plain) == "");
  CHECK(shipped().library.kinds.size() >= 35);
}

TEST_CASE("every terminal has a place on a face of its kind") {
  for (const Kind& kind : shipped().library.kinds) {
    CAPTURE(kind.id);
    CHECK_FALSE(kind.terminals.empty());
    CHECK_FALSE(kind.faces.empty());
    for (const KindTerminal& terminal : kind.terminals) {
      CAPTURE(terminal.id);
      REQUIRE(terminal.face >= 0);
      CHECK(is_on_face(terminal.at, kind.faces[static_cast<std::size_t>(terminal.face)]));
    }
  }
}

TEST_CASE("no two terminals of a face stand nearer than 2 mm") {
  for (const Kind& kind : shipped().library.kinds)
    for (std::size_t a = 0; a < kind.terminals.size(); ++a)
      for (std::size_t b = a + 1; b < kind.terminals.size(); ++b) {
        if (kind.terminals[a].face != kind.terminals[b].face) continue;
        CAPTURE(kind.id);
        CAPTURE(kind.terminals[a].id);
        CAPTURE(kind.terminals[b].id);
        CHECK(distance(kind.terminals[a].at, kind.terminals[b].at) >= 2);
      }
}

TEST_CASE("every shape lies inside its face, and every face says which way up it is") {
  for (const Kind& kind : shipped().library.kinds)
    for (const Face& face : kind.faces) {
      CAPTURE(kind.id);
      CAPTURE(face.id);
      CHECK_FALSE(face.keying.empty());
      CHECK_FALSE(face.shapes.empty());
      for (const FaceShape& shape : face.shapes)
        for (const Point p : extremes(shape)) {
          CAPTURE(p.x.number());
          CAPTURE(p.y.number());
          CHECK(is_on_face(p, face));
        }
    }
}

TEST_CASE("every face without terminals stands beside one that has them") {
  for (const Kind& kind : shipped().library.kinds) {
    std::set<int> used;
    for (const KindTerminal& terminal : kind.terminals) used.insert(terminal.face);
    CAPTURE(kind.id);
    CHECK_FALSE(used.empty());
  }
}

TEST_CASE("acting kinds have insides; each kind but a lone stud has one at every terminal") {
  for (const Kind& kind : shipped().library.kinds) {
    CAPTURE(kind.id);
    CHECK_FALSE(kind.about.empty());
    CHECK_FALSE(kind.mounting.empty());
    if (kind.is_acting) CHECK_FALSE(kind.insides.empty());
    if (kind.terminals.size() == 1) continue;
    for (std::size_t t = 0; t < kind.terminals.size(); ++t) {
      bool is_joined = false;
      for (const Inside& inside : kind.insides)
        for (const Inside::Node& node : inside.nodes) is_joined = is_joined || node.terminal == static_cast<int>(t);
      CAPTURE(kind.terminals[t].id);
      CHECK(is_joined);
    }
  }
}

TEST_CASE("what a wire meets at a terminal is told by its form") {
  for (const Kind& kind : shipped().library.kinds)
    for (const KindTerminal& terminal : kind.terminals) {
      CAPTURE(kind.id);
      CAPTURE(terminal.id);
      if (terminal.form != TerminalForm::body) CHECK(terminal.takes.has_value());
      if (terminal.form == TerminalForm::stud) CHECK_FALSE(terminal.thread.empty());
      if (terminal.form == TerminalForm::blade) CHECK(terminal.blade_width.has_value());
      if (terminal.form == TerminalForm::sealed) CHECK(terminal.insulation.has_value());
      if (terminal.form == TerminalForm::body) CHECK(terminal.may_stay_open);
    }
}

TEST_CASE("both halves of a connector are mirror images seen from their wires") {
  int seen = 0;
  for (const Kind& kind : shipped().library.kinds) {
    if (!kind.id.starts_with("sealed-connector-")) continue;
    CAPTURE(kind.id);
    REQUIRE(kind.faces.size() == 2);
    const std::size_t ways = kind.terminals.size() / 2;
    for (std::size_t i = 1; i < ways; ++i) {
      const Point a = kind.terminals[i].at - kind.terminals[0].at;
      const Point b = kind.terminals[ways + i].at - kind.terminals[ways].at;
      CHECK(a.x.number() == doctest::Approx(-b.x.number()));
      CHECK(a.y.number() == doctest::Approx(b.y.number()));
    }
    ++seen;
  }
  CHECK(seen == 5);
}
