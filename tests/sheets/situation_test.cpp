// SPDX-License-Identifier: MIT
// Situations as drawn and told: every state, arrow and figure is the solution's.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "check/paths.h"
#include "sheets/diagram_live.h"
#include "sheets/fixed_face.h"
#include "sheets/inside_sentences.h"
#include "sheets/sample_sheets.h"
#include "sheets/situation_layout.h"
#include "sheets/situation_paths.h"
#include "sheets/situation_state.h"
#include "sheets/works_story.h"

using namespace loomfolio;

namespace {

SituationId situation_named(const Build& build, const std::string& name) {
  for (std::size_t s = 0; s < build.situations.size(); ++s)
    if (build.situations[s].name == name) return {static_cast<std::int32_t>(s)};
  return {};
}

InsideRef element_named(const Build& build, const std::string& part, const std::string& inside) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i)
      if (build.parts[p].id == part && build.parts[p].insides[i].id == inside)
        return {PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
  return {};
}

std::set<std::string> ids_of(const Build& build, const std::vector<WireId>& wires) {
  std::set<std::string> ids;
  for (const WireId id : wires) ids.insert(build.wire(id).id);
  return ids;
}

/// Whether any sentence holds the words.
bool tells(const std::vector<std::string>& sentences, const std::string& words) {
  return std::any_of(sentences.begin(), sentences.end(),
                     [&](const std::string& s) { return s.find(words) != std::string::npos; });
}

/// Every arrowhead lies on its wire's course and points along it as the solution says.
int check_arrows(const LaidPair& laid, const Build& build, const DiagramState& whole, WireId id, std::size_t wire) {
  DiagramState alone = whole;
  for (std::size_t w = 0; w < alone.wires.size(); ++w)
    if (w != id.at()) alone.wires[w] = {};
  const DiagramInk ink{build, laid.drawing.diagram, laid.drawing.laid, fixed_face, {}, "", &alone};
  Items items;
  draw_flow(items, ink, {});
  const double amperes = laid.pair.after.solution.wire_amperes[id.at()].number();
  int found = 0;
  for (const Item& item : items) {
    const auto& pieces = std::get<PathItem>(item).pieces;
    const Point tip = std::get<PathMove>(pieces[0]).to, foot = std::get<PathLine>(pieces[1]).to,
                other = std::get<PathLine>(pieces[2]).to;
    const double x = tip.x.number() - (foot.x.number() + other.x.number()) / 2,
                 y = tip.y.number() - (foot.y.number() + other.y.number()) / 2;
    const auto& points = laid.drawing.laid.courses[wire].points;
    bool is_on_course = false;
    for (std::size_t i = 1; i < points.size(); ++i) {
      const Point a = to_mm(points[i - 1]), b = to_mm(points[i]);
      const auto lies = [](Millimetres at, Millimetres from, Millimetres to) {
        return at.number() > std::min(from.number(), to.number()) - 0.01 &&
               at.number() < std::max(from.number(), to.number()) + 0.01;
      };
      if (!lies(tip.x, a.x, b.x) || !lies(tip.y, a.y, b.y)) continue;
      const double along = x * (b.x - a.x).number() + y * (b.y - a.y).number();
      if (along * amperes > 0) is_on_course = true;
    }
    CHECK_MESSAGE(is_on_course, build.wire(id).id);
    ++found;
  }
  return found;
}

bool is_figure(const Item& item) {
  const auto* tag = std::get_if<TagOpenItem>(&item);
  return tag != nullptr && tag->tag == "Figure";
}

/// The lowest point of a line.
Millimetres foot_of(const PathItem& path) {
  Millimetres foot(0);
  for (const PathPiece& piece : path.pieces)
    if (const auto* line = std::get_if<PathLine>(&piece)) foot = std::max(foot, line->to.y);
  return foot;
}

}  // namespace

TEST_CASE("what is said below a drawn situation stands clear of the drawing, however much it is") {
  int sheets = 0;
  for (const std::string& name : sample_names())
    for (const Sheet& sheet : shared_sample(name).composed().folio.sheets) {
      if (sheet.id.find("situation") == std::string::npos || sheet.width < sheet.height) continue;
      const auto last = std::find_if(sheet.items.rbegin(), sheet.items.rend(), is_figure).base();
      if (last == sheet.items.begin()) continue;
      Millimetres foot(0);
      auto item = last;
      for (; item != sheet.items.end() && !std::holds_alternative<TagCloseItem>(*item); ++item)
        if (const auto* path = std::get_if<PathItem>(&*item)) foot = std::max(foot, foot_of(*path));
      const auto text = std::find_if(item, sheet.items.end(), [](const Item& i) { return std::holds_alternative<TextItem>(i); });
      REQUIRE(text != sheet.items.end());
      const auto& said = std::get<TextItem>(*text);
      CAPTURE(name);
      CAPTURE(sheet.id);
      CAPTURE(said.text);
      CHECK(foot < said.at.y - Millimetres(said.style.points * 25.4 / 72));
      ++sheets;
    }
  CHECK(sheets > 30);
}

TEST_CASE("a wire is drawn as the solution has it: flowing from the least current on, its way the current's") {
  for (const std::string& name : sample_names()) {
    const SampleFolio& sample = shared_sample(name);
    for (const SolvedBuild& solved : sample.solved())
      for (std::size_t s = 0; s < solved.solutions.size(); ++s) {
        const Solution& solution = solved.solutions[s];
        const DiagramState state = make_diagram_state(solved.build, solved.build.situations[s], solution);
        for (std::size_t w = 0; w < state.wires.size(); ++w) {
          const double amperes = solution.wire_amperes[w].number();
          const bool flows = (std::abs(amperes) >= least_flow.number() ||
                              solution.wire_alternating[w].number() >= least_flow.number()) &&
                             !is_stray_flow(solved.build, solution, WireId{static_cast<std::int32_t>(w)});
          CHECK((state.wires[w].liveness == Liveness::flowing) == flows);
          if (flows && std::abs(amperes) >= least_flow.number()) CHECK(state.wires[w].direction * amperes > 0);
          CHECK(state.wires[w].figure.empty() != flows);
          if (state.wires[w].liveness != Liveness::dead || flows) continue;
          for (const TerminalId end : {solved.build.wires[w].from, solved.build.wires[w].to})
            CHECK_FALSE(std::abs(solution.terminal_volts[end.at()].number()) > 2.5);
        }
        for (std::size_t p = 0; p < state.parts.size(); ++p)
          for (std::size_t i = 0; i < solved.build.parts[p].insides.size(); ++i)
            if (solved.build.parts[p].insides[i].type == InsideType::contact)
              CHECK(state.parts[p].joints[i].empty() != solution.insides[p][i].is_on);
      }
  }
}

TEST_CASE("arrowheads point the way of the solved current") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  REQUIRE(sample.solved().size() == 4);
  const SolvedBuild& solved = sample.solved().back();
  auto pair = find_pair(solved, situation_named(solved.build, "start-in-neutral"));
  REQUIRE(pair);
  const FolioInput input = sample.input(fixed_face);
  const LaidPair laid = lay_out_pair({input, solved, "", ""}, *std::move(pair));
  const DiagramState state = make_diagram_state(solved.build, laid.pair.after.situation, laid.pair.after.solution);
  int arrows = 0, flowing = 0;
  for (std::size_t w = 0; w < laid.drawing.diagram.wires.size(); ++w) {
    const WireId id = laid.drawing.diagram.wires[w];
    const int found = check_arrows(laid, solved.build, state, id, w);
    arrows += found;
    const bool flows = state.wires[id.at()].direction != 0;
    CHECK((found > 0) == flows);
    flowing += flows ? 1 : 0;
  }
  CHECK(flowing > 5);
  CHECK(arrows >= flowing);
}

TEST_CASE("the state before is one action away: named where there is one, else the button let go") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  for (const SolvedBuild& solved : sample.solved()) {
    const Build& build = solved.build;
    const auto start = find_pair(solved, situation_named(build, "start-in-neutral"));
    REQUIRE(start);
    CHECK(start->before.situation.name == "key-on");
    REQUIRE(start->moved.size() == 1);
    CHECK(build.part(start->moved[0].actuator.part).id == "start");
    const auto in_gear = find_pair(solved, situation_named(build, "start-in-gear"));
    REQUIRE(in_gear);
    CHECK(in_gear->before.index == -1);
    REQUIRE(in_gear->moved.size() == 1);
    CHECK(build.part(in_gear->moved[0].actuator.part).id == "start");
    CHECK_FALSE(find_pair(solved, situation_named(build, "rest")));
  }
}

TEST_CASE("the story of the horn is its own way from battery to earth, without what else is on") {
  const SampleFolio& sample = shared_sample("street-single");
  REQUIRE(sample.solved().size() == 1);
  const SolvedBuild& solved = sample.solved().front();
  const Build& build = solved.build;
  const auto pair = find_pair(solved, situation_named(build, "horn"));
  REQUIRE(pair);
  const std::vector<WireId> wires = find_story(build, *pair, StoryWidth::flowing);
  const auto touches = [&](const std::string& part) {
    return std::any_of(wires.begin(), wires.end(), [&](WireId id) {
      return build.terminal(build.wire(id).from).name.starts_with(part + ".") ||
             build.terminal(build.wire(id).to).name.starts_with(part + ".");
    });
  };
  CHECK(touches("horn"));
  CHECK(touches("left"));
  CHECK(touches("battery"));
  CHECK_FALSE(touches("headlamp"));
  CHECK_FALSE(touches("coil"));
  CHECK_FALSE(touches("turn-front-left"));
  CHECK(wires.size() < build.wires.size() / 3);
  const auto everything = ids_of(build, find_story(build, *pair, StoryWidth::everything));
  for (const std::string& id : ids_of(build, wires)) CHECK(everything.count(id) == 1);
}

TEST_CASE("the sequence of a relay tells the solution's amperes, and what they feed") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  for (const SolvedBuild& solved : sample.solved()) {
    const Build& build = solved.build;
    const InsideRef coil = element_named(build, "relay", "coil");
    REQUIRE(coil.part.is_set());
    const auto story = find_coil_story(solved, coil.part);
    REQUIRE(story);
    const Solution& after = solved.solutions[situation_named(build, "start-in-neutral").at()];
    const auto told = tell_coil_story(build, *story, sample.words());
    const auto flow = [&](InsideRef ref) {
      return print_flow(after.insides[ref.part.at()][static_cast<std::size_t>(ref.inside)].amperes);
    };
    CHECK(tells(told, flow(coil)));
    const WireId cable{static_cast<std::int32_t>(
        std::find_if(build.wires.begin(), build.wires.end(), [](const Wire& w) { return w.id == "C2"; }) -
        build.wires.begin())};
    CHECK(tells(told, print_flow(after.wire_amperes[cable.at()])));
    CHECK(tells(told, "Starter motor"));
    CHECK_FALSE(tells(told, "Neutral lamp"));
    // Let go: no current in the coil, and the sentence says so.
    const InsideState& released =
        story->released.solution.insides[coil.part.at()][static_cast<std::size_t>(coil.inside)];
    CHECK_FALSE(released.is_on);
    CHECK(tells(told, "carries nothing"));
  }
}

TEST_CASE("figures: nothing below what a person minds, milliamperes below a tenth, volts without a minus nought") {
  CHECK(print_flow(Amperes(-2.94)) == "2.9 A");
  CHECK(print_flow(Amperes(0.0026)) == "0 A");
  CHECK(print_flow(Amperes(0.0126)) == "13 mA");
  CHECK(print_flow(Amperes(0)) == "0 A");
  CHECK(print_flow(Amperes(0.085)) == "85 mA");
  CHECK(print_flow(Amperes(0.17)) == "0.17 A");
  CHECK(print_terminal_volts(Volts(-0.01)) == "0.0 V");
  CHECK(print_terminal_volts(Volts(12.56)) == "12.6 V");
  CHECK(print_plain_volts(Volts(0.13), Volts(12)) == "0 V");
  CHECK(print_plain_volts(Volts(-0.31), Volts(12)) == "-0.3 V");
}

TEST_CASE("every situation is drawn, is drawn as another's before, or is as another in all that a person finds") {
  std::size_t without = 0;
  for (const std::string& name : sample_names()) {
    const SampleFolio& sample = shared_sample(name);
    std::set<std::string> anchors;
    for (const Sheet& sheet : sample.composed().folio.sheets)
      for (const Item& item : sheet.items)
        if (const auto* anchor = std::get_if<AnchorItem>(&item)) anchors.insert(anchor->name);
    for (const SolvedBuild& solved : sample.solved())
      for (std::size_t s = 0; s < solved.build.situations.size(); ++s) {
        const auto pair = find_pair(solved, {static_cast<std::int32_t>(s)});
        if (!pair || find_story(solved.build, *pair, StoryWidth::waiting).empty()) continue;
        CAPTURE(solved.build.situations[s].name);
        const std::size_t here = anchors.count("live " + solved.build.situations[s].name);
        without += 1 - here;
      }
  }
  // In this wide face the street single's longest story fits no sheet at a legible size; printed, it has one
  // (golden_test).
  CHECK(without <= 1);
}

TEST_CASE("no situation's sheet is blank: it shows wires by their numbers, and the switch that is moved") {
  int sheets = 0;
  for (const std::string& name : sample_names())
    for (const Sheet& sheet : shared_sample(name).composed().folio.sheets) {
      if (sheet.id.find("situations-") == std::string::npos || !sheet.title.starts_with("Situation ")) continue;
      CAPTURE(name);
      CAPTURE(sheet.title);
      ++sheets;
      const auto numbers = std::count_if(sheet.items.begin(), sheet.items.end(), [](const Item& item) {
        const auto* text = std::get_if<TextItem>(&item);
        return text != nullptr && text->style.face == FaceName::mono && text->style.weight == Weight::bold;
      });
      CHECK(numbers >= 2);
    }
  CHECK(sheets > 20);
}

TEST_CASE("a small current without volts is a lamp's own where one sends it, and stray where none does") {
  const SampleFolio& sample = shared_sample("street-single");
  const SolvedBuild& solved = sample.solved().front();
  int stray = 0;
  for (const Solution& solution : solved.solutions)
    for (std::size_t w = 0; w < solved.build.wires.size(); ++w) {
      const WireId id{static_cast<std::int32_t>(w)};
      const double amperes = std::abs(solution.wire_amperes[w].number());
      if (amperes < least_flow.number() || !is_stray_flow(solved.build, solution, id)) continue;
      ++stray;
      CHECK(amperes < least_return.number());
      CHECK(liveness_of(solved.build, solution, id) == Liveness::dead);
      // No lamp, motor or coil at either end is fed by it.
      for (const TerminalId end : {solved.build.wires[w].from, solved.build.wires[w].to}) {
        const Terminal& terminal = solved.build.terminal(end);
        if (terminal.owner != OwnerType::part) continue;
        const auto p = static_cast<std::size_t>(terminal.owner_index);
        for (std::size_t i = 0; i < solution.insides[p].size(); ++i) {
          const InsideState& state = solution.insides[p][i];
          if (std::abs(state.volts.number()) > 6 && solved.build.parts[p].insides[i].type == InsideType::lamp &&
              solved.build.parts[p].terminals.size() == 2)
            CHECK(std::abs(state.amperes.number()) > 10 * amperes);
        }
      }
    }
  CHECK(stray > 0);
}

TEST_CASE("an output waits for its supply to be live, and for inputs that a resistor holds up to be earthed or not") {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  int told = 0;
  for (const SolvedBuild& solved : sample.solved())
    for (std::size_t p = 0; p < solved.build.parts.size(); ++p) {
      if (!solved.build.kind_of(solved.build.parts[p]).id.starts_with("control-unit")) continue;
      std::string all;
      for (const std::string& sentence : inside_sentences(solved.build, PartId{static_cast<std::int32_t>(p)}, sample.words()))
        all += sentence + "\n";
      CHECK(all.find("terminal 15 is live and terminal start is earthed") != std::string::npos);
      CHECK(all.find("terminal start is not earthed") != std::string::npos);
      CHECK(all.find("terminal 15 is not earthed") == std::string::npos);
      ++told;
    }
  CHECK(told >= 2);
}
