// SPDX-License-Identifier: MIT
// Diagrams: what a reader is told where a wire goes on, and which parts make a pair.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "disk_files.h"
#include "sheets/diagram_graph.h"
#include "sheets/fixed_face.h"
#include "sheets/look.h"
#include "sheets/sample_sheets.h"

using namespace loomfolio;

namespace {

const std::string specs_folder = LOOMFOLIO_SOURCE_FOLDER;

/// The specs of samples/ and tests/machines/, from the source folder.
std::vector<std::string> all_specs() {
  std::vector<std::string> specs;
  for (const std::string folder : {"/samples/", "/tests/machines/"})
    for (const std::string& file : DiskFiles().list(specs_folder + folder))
      if (file.ends_with(".toml")) specs.push_back(folder + file);
  return specs;
}

Project read_project(const std::string& spec) {
  std::ifstream in(specs_folder + spec, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  const DiskFiles files;
  Sources sources;
  Diagnostics findings;
  const Library library = read_library(specs_folder + "/layouts", files, sources, findings);
  return read_spec(spec, text.str(), library, sources, findings);
}

template <class Visit>
void for_each_diagram(const Build& build, Visit visit) {
  const std::vector<DiagramPlan> plans = split_build(build, {});
  for (std::size_t d = 0; d < plans.size(); ++d) visit(make_diagram_graph({build, plans, d, fixed_face}));
}

/// Whether the terminal has a wire on the diagram or names the sheet of its wires.
bool goes_on(const DiagramGraph& diagram, std::size_t box, const Build& build, TerminalId terminal) {
  const DiagramBox& b = diagram.boxes[box];
  const auto is_wired = [&](WireId id) { return build.wire(id).from == terminal || build.wire(id).to == terminal; };
  return std::any_of(b.flags.begin(), b.flags.end(), [&](const Flag& f) { return f.terminal == terminal; }) ||
         std::any_of(b.earths.begin(), b.earths.end(), [&](const LocalEarth& e) { return is_wired(e.wire); }) ||
         std::any_of(diagram.wires.begin(), diagram.wires.end(), is_wired);
}

bool is_wired(const Build& build, TerminalId terminal) {
  return std::any_of(build.wires.begin(), build.wires.end(),
                     [&](const Wire& wire) { return wire.from == terminal || wire.to == terminal; });
}

bool shows(const DiagramBox& box, int terminal) {
  return std::any_of(box.drawing.terminals.begin(), box.drawing.terminals.end(),
                     [&](const PlacedTerminal& t) { return t.terminal == terminal; });
}

bool overlap(const Rect& a, const Rect& b) {
  return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

/// Straight pieces of all wires of a sheet, as thick as they are drawn.
std::vector<Rect> wire_pieces(const Sheet& sheet) {
  std::vector<Rect> pieces;
  for (const Item& item : sheet.items) {
    const auto* path = std::get_if<PathItem>(&item);
    if (path == nullptr || path->stroke.pen.width.number() < 0.95 || path->stroke.pen.colour != look::ink) continue;
    const Millimetres half = path->stroke.pen.width / 2;
    Point at;
    for (const PathPiece& piece : path->pieces) {
      if (const auto* line = std::get_if<PathLine>(&piece)) {
        const Millimetres x0 = std::min(at.x, line->to.x), y0 = std::min(at.y, line->to.y);
        pieces.push_back({x0 - half, y0 - half, std::max(at.x, line->to.x) - x0 + half * 2,
                          std::max(at.y, line->to.y) - y0 + half * 2});
        at = line->to;
      }
      if (const auto* move = std::get_if<PathMove>(&piece)) at = move->to;
      if (const auto* curve = std::get_if<PathCurve>(&piece)) at = curve->to;
    }
  }
  return pieces;
}

}  // namespace

TEST_CASE("both halves of a connector's way go on: by a wire, an earth or the sheet of their wires") {
  int ways = 0, flags = 0;
  for (const std::string& spec : all_specs()) {
    CAPTURE(spec);
    for (const Build& build : read_project(spec).builds)
      for_each_diagram(build, [&](const DiagramGraph& diagram) {
        for (std::size_t b = 0; b < diagram.boxes.size(); ++b) {
          const DiagramBox& box = diagram.boxes[b];
          if (box.content != BoxContent::part) continue;
          const Part& part = build.parts[static_cast<std::size_t>(box.index)];
          if (!build.kind_of(part).is_connector) continue;
          for (const Inside& way : part.insides) {
            if (way.nodes.size() < 2) continue;
            const int ends[] = {way.nodes[0].terminal, way.nodes[1].terminal};
            if (ends[0] < 0 || ends[1] < 0) continue;  // a joint of several ways
            if (!shows(box, ends[0]) && !shows(box, ends[1])) continue;
            ++ways;
            for (const int end : ends) {
              const TerminalId terminal = part.terminals[static_cast<std::size_t>(end)];
              if (!is_wired(build, terminal)) continue;
              CHECK_MESSAGE(goes_on(diagram, b, build, terminal), part.id << "." << build.terminal(terminal).name);
            }
          }
          flags += static_cast<int>(box.flags.size());
        }
      });
  }
  CHECK(ways > 100);
  CHECK(flags > 10);
}

TEST_CASE("no words of a flag lie on a wire") {
  int flags = 0;
  for (const std::string& name : sample_names())
    for (const Sheet& sheet : shared_sample(name).composed().folio.sheets) {
      if (sheet.id.find("diagram") == std::string::npos) continue;
      CAPTURE(name);
      CAPTURE(sheet.id);
      const std::vector<Rect> wires = wire_pieces(sheet);
      for (const Item& item : sheet.items) {
        const auto* text = std::get_if<TextItem>(&item);
        const bool is_flag = text != nullptr && text->colour == look::accent && text->style.weight == Weight::bold &&
                             text->style.face == FaceName::sans && text->style.points < 10;
        if (!is_flag) continue;
        ++flags;
        const TextSize size = fixed_face.measure(text->text, text->style);
        const double part = text->align == Align::centre ? 0.5 : text->align == Align::right ? 1 : 0;
        const Rect words{text->at.x - size.width * part, text->at.y - size.ascent, size.width, size.ascent};
        for (const Rect& wire : wires) CHECK_MESSAGE(!overlap(words, wire), text->text);
      }
    }
  CHECK(flags > 50);
}

TEST_CASE("left and right lamps of one kind, zone and wiring make a pair; the front ones and the rear ones do not mix") {
  const Project project = read_project("/samples/street-single.toml");
  int pairs = 0;
  for_each_diagram(project.builds.front(), [&](const DiagramGraph& diagram) {
    for (std::size_t b = 0; b < diagram.boxes.size(); ++b) {
      const GraphBox& box = diagram.graph.boxes[b];
      if (box.partner < 0) continue;
      const GraphBox& other = diagram.graph.boxes[static_cast<std::size_t>(box.partner)];
      CHECK(other.partner == static_cast<int>(b));
      const std::string end = box.name.find("front") != std::string::npos ? "front" : "rear";
      if (box.name.find("turn-front") == std::string::npos && box.name.find("turn-rear") == std::string::npos) continue;
      ++pairs;
      CHECK(other.name.find(end) != std::string::npos);
      CHECK(other.name != box.name);
    }
  });
  CHECK(pairs >= 4);
}
