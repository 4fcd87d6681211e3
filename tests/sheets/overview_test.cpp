// SPDX-License-Identifier: MIT
// The overview names every diagram, says where along the machine each zone is, and counts the wires between zones.
#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "sample_sheets.h"
#include "sheets/machine_outline.h"
#include "sheets/overview_brackets.h"

using namespace loomfolio;

namespace {

const char* const machine = "street-single";

const Sheet& overview_of(const Folio& folio) {
  const auto found = std::find_if(folio.sheets.begin(), folio.sheets.end(), [](const Sheet& sheet) { return sheet.id == "overview"; });
  REQUIRE(found != folio.sheets.end());
  return *found;
}

/// Ends of the level pieces of what is drawn, in mm.
std::vector<Point> points_of(const Items& items) {
  std::vector<Point> points;
  for (const Item& item : items) {
    const auto* path = std::get_if<PathItem>(&item);
    if (path == nullptr) continue;
    for (const PathPiece& piece : path->pieces) {
      if (const auto* move = std::get_if<PathMove>(&piece)) points.push_back(move->to);
      if (const auto* line = std::get_if<PathLine>(&piece)) points.push_back(line->to);
      if (const auto* curve = std::get_if<PathCurve>(&piece)) points.push_back(curve->to);
    }
  }
  return points;
}

}  // namespace

TEST_CASE("the overview leads to every diagram and shows the machine's outline") {
  const Folio& folio = shared_sample(machine).composed().folio;
  const Sheet& overview = overview_of(folio);
  std::set<std::string> linked;
  bool has_outline = false;
  for (const Item& item : overview.items) {
    if (const auto* link = std::get_if<LinkItem>(&item)) linked.insert(link->sheet);
    if (const auto* tag = std::get_if<TagOpenItem>(&item))
      has_outline = has_outline || (tag->tag == "Figure" && tag->alt == shared_sample(machine).words()("overview.outline"));
  }
  CHECK(has_outline);
  std::size_t diagrams = 0;
  for (const Sheet& sheet : folio.sheets) {
    if (!sheet.id.starts_with("diagram")) continue;
    ++diagrams;
    CAPTURE(sheet.id);
    CHECK(linked.contains(sheet.id));
  }
  CHECK(diagrams > 1);
}

TEST_CASE("brackets of the overview count each wire between zones once and never lie on one another") {
  const Build& build = shared_sample(machine).solved().front().build;
  std::vector<std::size_t> zones;
  std::vector<Millimetres> middles;
  for (std::size_t z = 0; z < build.zones.size(); ++z) {
    zones.push_back(z);
    middles.push_back(Millimetres(60.0 * static_cast<double>(z)));
  }
  auto brackets = make_overview_brackets(build, zones);
  place_bracket_ends(brackets, middles);
  int counted = 0, between = 0;
  for (const OverviewBracket& one : brackets) counted += one.wires;
  for (const Wire& wire : build.wires) between += zone_of(build, wire.from) != zone_of(build, wire.to);
  CHECK(counted == between);
  CHECK(between > 0);
  for (std::size_t i = 0; i < brackets.size(); ++i)
    for (std::size_t j = i + 1; j < brackets.size(); ++j) {
      const OverviewBracket &a = brackets[i], &b = brackets[j];
      if (a.level == b.level) CHECK((a.right_x < b.left_x || b.right_x < a.left_x));
      CHECK(a.left_x != b.left_x);
      CHECK(a.right_x != b.right_x);
    }
}

TEST_CASE("marks on the outline keep their order and stay on it, however long the machine is") {
  const Rect place{Millimetres(100), Millimetres(20), Millimetres(105), Millimetres(105 * outline_shape)};
  for (const double last : {1.9, 2.4, 3.5}) {
    CAPTURE(last);
    std::vector<OutlineMark> marks;
    const double places[] = {0.2, 0.6, last};
    for (std::size_t i = 0; i < 3; ++i) marks.push_back({Metres(places[i]), {Millimetres(50.0 * static_cast<double>(i)), Millimetres(100)}});
    Items items;
    add_machine_outline(items, place, marks);
    double before = place.x.number() - 1;
    for (const OutlineMark& mark : marks) {
      // The line that leads down to the mark's point begins on the ground.
      double x = -1;
      for (const Item& item : items)
        if (const auto* path = std::get_if<PathItem>(&item)) {
          const std::vector<Point> ends = points_of({*path});
          if (ends.size() == 2 && ends[1].x == mark.to.x && ends[1].y == mark.to.y) x = ends[0].x.number();
        }
      CHECK(x > before);
      CHECK(x <= place.right().number());
      before = x;
    }
  }
}
