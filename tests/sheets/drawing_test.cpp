// SPDX-License-Identifier: MIT
// How wires, hops and tables of switches are drawn.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>

#include "base/text.h"
#include "sheets/diagram_part.h"
#include "sheets/diagram_wire.h"
#include "sheets/fixed_face.h"
#include "sheets/sample_sheets.h"
#include "sheets/situation_layout.h"
#include "sheets/wire_contrast.h"
#include "sheets/wire_look.h"

using namespace loomfolio;

namespace {

/// How often a path leaves the height `y` mm upwards.
int count_hops(const std::vector<PathPiece>& path, double y) {
  int hops = 0;
  bool is_up = false;
  for (const PathPiece& piece : path) {
    Point to;
    if (const auto* start = std::get_if<PathMove>(&piece)) to = start->to;
    if (const auto* line = std::get_if<PathLine>(&piece)) to = line->to;
    if (const auto* curve = std::get_if<PathCurve>(&piece)) to = curve->to;
    const bool is_above = to.y.number() < y - 0.01;
    if (is_above && !is_up) ++hops;
    is_up = is_above;
  }
  return hops;
}

int count_strokes(const std::string& base, const std::string& stripe) {
  Items items;
  add_wire(items, std::vector<Point>{{}, {Millimetres(9), Millimetres(0)}}, {base, stripe}, Millimetres(1));
  return static_cast<int>(items.size());
}

}  // namespace

TEST_CASE("every wire has its number on a diagram, or in the note below it") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    const SampleFolio& sample = shared_sample(name);
    std::set<std::string> numbers;
    for (const Sheet& sheet : sample.composed().folio.sheets) {
      if (sheet.id.find("diagram") == std::string::npos) continue;
      bool is_note = false;  // which may go on over several lines
      for (const Item& item : sheet.items) {
        const auto* text = std::get_if<TextItem>(&item);
        is_note = is_note && text != nullptr && text->style.points == look::small.points;
        if (text == nullptr) continue;
        if (text->style.face == FaceName::mono && text->style.weight == Weight::bold) numbers.insert(text->text);
        const std::size_t note = text->text.find(" above: ");
        if (note == std::string::npos && !is_note) continue;
        is_note = true;
        for (const std::string& told : split(note == std::string::npos ? text->text : text->text.substr(note + 8), ' '))
          numbers.insert(told);
      }
    }
    for (const SolvedBuild& solved : sample.solved())
      for (const Wire& wire : solved.build.wires) CHECK_MESSAGE(numbers.count(wire.id) == 1, wire.id);
  }
}

TEST_CASE("a stripe as dark as its base gets a light edge, any other none") {
  CHECK(lightness_of({0, 0, 0}) == doctest::Approx(0));
  CHECK(lightness_of({255, 255, 255}) == doctest::Approx(1));
  // Mid grey 119 of 255 has lightness 50: from memory.
  CHECK(lightness_of({119, 119, 119}) == doctest::Approx(0.5).epsilon(0.01));
  const int plain = count_strokes("RD", ""), striped = count_strokes("BK", "WH");
  CHECK(striped == plain + 1);
  CHECK(count_strokes("GN", "BK") == plain + 1);
  for (const auto& [base, stripe] : {std::pair("RD", "GN"), {"BU", "RD"}, {"BN", "BK"}, {"RD", "VT"}})
    CHECK_MESSAGE(count_strokes(base, stripe) == plain + 2, base);
}

TEST_CASE("a stripe that is about as light as its base gets an edge that is far from both, any other none") {
  const std::array letters{"BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "GD", "TQ", "SR"};
  const auto apart = [](Colour a, Colour b) { return std::abs(lightness_of(a) - lightness_of(b)); };
  int edged = 0;
  for (const char* base : letters)
    for (const char* stripe : letters) {
      if (base == std::string_view(stripe)) continue;
      CAPTURE(base);
      CAPTURE(stripe);
      const Colour a = wire_paint(base), b = wire_paint(stripe);
      const std::optional<Colour> edge = stripe_edge_of(a, b);
      CHECK(edge.has_value() == (apart(a, b) < 0.3));
      if (!edge) continue;
      ++edged;
      CHECK(apart(*edge, a) > 0.35);
      CHECK(apart(*edge, b) > 0.35);
    }
  CHECK(edged > 20);
  CHECK(stripe_edge_of(wire_paint("SR"), wire_paint("WH")) == look::ink);  // light grey and white
  CHECK(stripe_edge_of(wire_paint("BN"), wire_paint("BK")) == look::paper);
}

TEST_CASE("hops that all but touch become one, others stay apart") {
  const auto hops_at = [](Grid a, Grid b) {
    return count_hops(path_of({{{0, 500}, {4000, 500}}, {{{a, 500}, 130, 130}, {{b, 500}, 130, 130}}}, {}), 5);
  };
  CHECK(hops_at(1000, 1280) == 1);
  CHECK(hops_at(1000, 1500) == 2);
}

TEST_CASE("a hop that would begin within a bend takes the bend along") {
  // From above, and from below; the hop's foot is 0.45 mm from the bend.
  for (const Grid start : {0, 1500}) {
    const std::vector<PathPiece> path = path_of({{{0, start}, {0, 500}, {3000, 500}}, {{{250, 500}, 205, 205}}}, {});
    for (const PathPiece& piece : path) {
      const auto* line = std::get_if<PathLine>(&piece);
      if (line == nullptr) continue;
      const bool is_between = std::abs(line->to.y.number() - 5) < 0.01 && line->to.x.number() < 4;
      CHECK_FALSE(is_between);
    }
  }
}

TEST_CASE("a hop keeps its arch where a wire as thin as it is can turn beside it") {
  // The hop's foot is 1 mm from the bend.
  const auto is_level_between = [](Grid pen) {
    WireCourse course{{{0, 0}, {0, 500}, {3000, 500}}, {{{250, 500}, 150, 150}}, pen};
    const std::vector<PathPiece> path = path_of(course, {});
    return std::any_of(path.begin(), path.end(), [](const PathPiece& piece) {
      const auto* line = std::get_if<PathLine>(&piece);
      return line != nullptr && std::abs(line->to.y.number() - 5) < 0.01 && line->to.x.number() > 0.5 && line->to.x.number() < 1.5;
    });
  };
  CHECK(is_level_between(100));
  CHECK_FALSE(is_level_between(200));
}

TEST_CASE("what goes over other wires is found along a path: each hop, with the bend that it takes along") {
  // Two hops far apart, and a third whose foot leaves no room for the bend.
  const WireCourse course{{{0, 500}, {6000, 500}, {6000, 3000}}, {{{1000, 500}, 150, 150}, {{3000, 500}, 150, 150}, {{5820, 500}, 150, 150}}, 100};
  const auto hops = hops_along(path_of(course, {}), course, {});
  REQUIRE(hops.size() == 3);
  for (std::size_t h = 0; h < hops.size(); ++h) {
    const auto* start = std::get_if<PathMove>(&hops[h].front());
    REQUIRE(start != nullptr);
    CHECK(std::abs(start->to.y.number() - 5) < 0.01);
    CHECK(start->to.x.number() < course.hops[h].at.x / 100.0 - 1.49);
    CHECK(start->to.x.number() > course.hops[h].at.x / 100.0 - 2.8);
  }
  const WireCourse straight{{{0, 500}, {6000, 500}}, {}, 100};
  CHECK(hops_along(path_of(straight, {}), straight, {}).empty());
}

TEST_CASE("a terminal's figure follows its mark on the side of its wire") {
  const SolvedBuild& solved = shared_sample("street-single").solved().front();
  const auto part = std::find_if(solved.build.parts.begin(), solved.build.parts.end(),
                                 [&](const Part& p) { return solved.build.kind_of(p).group == "supply" && p.terminals.size() == 2; });
  REQUIRE(part != solved.build.parts.end());
  Build build = solved.build;
  PartState state;
  state.is_known = true;
  for (const KindTerminal& terminal : build.kind_of(*part).terminals) {
    state.marks.push_back(terminal.id);
    state.figures.push_back("12.6 V");
  }
  state.insides.resize(part->insides.size());
  state.joints.resize(part->insides.size());
  state.positions.resize(part->insides.size(), -1);
  state.position_names.resize(part->insides.size());
  const std::size_t p = static_cast<std::size_t>(part - solved.build.parts.begin());
  build.kinds.push_back(kind_with_figures(build.kind_of(build.parts[p]), {&state}, fixed_face));
  build.parts[p].kind = KindId{static_cast<std::int32_t>(build.kinds.size() - 1)};
  const PartDrawing drawing = draw_inside({build, PartId{static_cast<std::int32_t>(p)}, fixed_face, {}, inside_styles()});
  state.figures[0] = "0 V";  // shorter than the room kept for it
  Items items;
  draw_part(items, drawing, {}, fixed_face, state);
  const auto find = [&](const std::string& words) {
    for (const Item& item : items)
      if (const auto* text = std::get_if<TextItem>(&item); text != nullptr && text->text == words) return text;
    return static_cast<const TextItem*>(nullptr);
  };
  const TextItem *mark = find(state.marks[0]), *figure = find("0 V");
  REQUIRE(mark != nullptr);
  REQUIRE(figure != nullptr);
  CHECK(mark->at.y == figure->at.y);
  const double mark_width = fixed_face.measure(mark->text, mark->style).width.number(), figure_width = fixed_face.measure("0 V", figure->style).width.number();
  const double mark_right = mark->at.x.number() + (mark->align == Align::right ? 0 : mark_width);
  const double figure_left = figure->at.x.number() - (figure->align == Align::right ? figure_width : 0);
  CHECK(figure_left - mark_right > 0.5);
  CHECK(figure_left - mark_right < 2.5);
}

TEST_CASE("a switch's groups that reach into one another are drawn on tracks of their own") {
  const SolvedBuild& solved = shared_sample("street-single").solved().front();
  const auto part = std::find_if(solved.build.parts.begin(), solved.build.parts.end(),
                                 [&](const Part& p) { return solved.build.kind_of(p).id == "heated-grips"; });
  REQUIRE(part != solved.build.parts.end());
  const PartId id{static_cast<std::int32_t>(part - solved.build.parts.begin())};
  const PartDrawing drawing = draw_inside({solved.build, id, fixed_face, {}, inside_styles()});
  REQUIRE(drawing.tables.size() == 1);
  Items items;
  draw_part(items, drawing, {}, fixed_face);
  // Bars: heavy paths. No two of them share a stretch.
  struct Bar {
    double low, high, at;
  };
  std::vector<Bar> bars;
  for (const Item& item : items) {
    const auto* path = std::get_if<PathItem>(&item);
    if (path == nullptr || path->stroke.pen.width != look::heavy_line || path->fill.is_filled) continue;
    const auto* from = std::get_if<PathMove>(&path->pieces.front());
    const auto* to = std::get_if<PathLine>(&path->pieces.back());
    if (from == nullptr || to == nullptr) continue;
    const bool is_across = drawing.tables[0].is_across;
    const auto along = [&](Point p) { return (is_across ? p.y : p.x).number(); };
    bars.push_back({std::min(along(from->to), along(to->to)), std::max(along(from->to), along(to->to)),
                    (is_across ? from->to.x : from->to.y).number()});
  }
  REQUIRE(bars.size() == 4);
  for (std::size_t i = 0; i < bars.size(); ++i)
    for (std::size_t k = i + 1; k < bars.size(); ++k)
      CHECK((std::abs(bars[i].at - bars[k].at) > 1 || bars[i].high < bars[k].low || bars[k].high < bars[i].low));
}
