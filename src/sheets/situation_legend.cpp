// SPDX-License-Identifier: MIT
#include "sheets/situation_legend.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "base/text.h"
#include "sheets/diagram_legend.h"
#include "sheets/diagram_live.h"
#include "sheets/diagram_tags.h"
#include "sheets/drawing_rooms.h"
#include "sheets/inner_ways.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/put_below.h"
#include "sheets/readings.h"
#include "sheets/situation_exits.h"
#include "sheets/situation_state.h"
#include "sheets/situation_text.h"
#include "sheets/text_flow.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

constexpr Millimetres state_entry_gap{7}, state_sign_gap{1.6}, sign_length{13};

/// A sign with its meaning; the sign's left end at (0, 0), its middle on y = 0.
struct Sign {
  Items items;
  Millimetres width;
  std::string text;
};

Sign wire_sign(const Wire& wire, Liveness liveness, std::string text) {
  Sign sign;
  sign.width = sign_length;
  WireState state;
  state.liveness = liveness;
  add_wire_in_state(sign.items, {PathMove{{}}, PathLine{{sign_length, Millimetres(0)}}}, wire, state);
  sign.text = std::move(text);
  return sign;
}

const Solution& solution_of(const LaidPair& laid, ShownStates shown) {
  return shown == ShownStates::before ? laid.pair.before.solution : laid.pair.after.solution;
}

bool is_alternating(const Solution& solution, WireId id) {
  return id.at() < solution.wire_alternating.size() && solution.wire_alternating[id.at()] >= least_flow;
}

/// The drawn wire that carries most, as example: one on which an arrow shows, if any is; none when nothing flows.
std::optional<WireId> find_example(const Build& build, const LaidPair& laid, ShownStates shown) {
  const Solution& solution = solution_of(laid, shown);
  std::optional<WireId> best;
  const auto rank = [&](WireId id) {
    const std::string& base = build.wire(id).colour.base;
    return std::pair(base != "BK" && base != "WH", std::abs(solution.wire_amperes[id.at()].number()));
  };
  for (const WireId id : laid.drawing.plan.wires) {
    if (liveness_of(build, solution, id) != Liveness::flowing || is_alternating(solution, id)) continue;
    if (!best || rank(id) > rank(*best)) best = id;
  }
  return best;
}

std::optional<WireId> find_alternating(const LaidPair& laid, ShownStates shown) {
  for (const WireId id : laid.drawing.plan.wires)
    if (is_alternating(solution_of(laid, shown), id)) return id;
  return std::nullopt;
}

bool is_any(const Build& build, const LaidPair& laid, ShownStates shown, Liveness wanted) {
  const auto& wires = laid.drawing.plan.wires;
  return std::any_of(wires.begin(), wires.end(), [&](WireId id) {
    return (shown != ShownStates::after && liveness_of(build, laid.pair.before.solution, id) == wanted) ||
           (shown != ShownStates::before && liveness_of(build, laid.pair.after.solution, id) == wanted);
  });
}

bool is_anywhere(const Build& build, const std::vector<ShownPair>& pairs, Liveness wanted) {
  return std::any_of(pairs.begin(), pairs.end(),
                     [&](const ShownPair& pair) { return is_any(build, *pair.laid, pair.shown, wanted); });
}

/// Whether a line inside a drawn part holds no volts and carries no current: it is drawn like a dead wire.
bool is_grey_inside(const Build& build, const LaidPair& laid, const SolvedState& solved) {
  for (const DiagramBox& box : laid.drawing.diagram.boxes) {
    if (box.content != BoxContent::part) continue;
    const PartState state = make_part_state(build, solved.situation, solved.solution, PartId{static_cast<std::int32_t>(box.index)});
    for (const InnerRun& run : runs_of_lines(box.drawing, state))
      if (run.line.style == InnerStyle::wire && !run.is_live && run.line.node >= 0 && !state.is_held(run.line.node)) return true;
  }
  return false;
}

bool is_grey_anywhere(const Build& build, const std::vector<ShownPair>& pairs) {
  return is_anywhere(build, pairs, Liveness::dead) || std::any_of(pairs.begin(), pairs.end(), [&](const ShownPair& pair) {
           return (pair.shown != ShownStates::after && is_grey_inside(build, *pair.laid, pair.laid->pair.before)) ||
                  (pair.shown != ShownStates::before && is_grey_inside(build, *pair.laid, pair.laid->pair.after));
         });
}

std::vector<Sign> signs_for(const SheetContext& context, const std::vector<ShownPair>& pairs) {
  const Build& build = context.build();
  const Words& words = context.words();
  std::vector<Sign> signs;
  std::optional<WireId> thin;
  for (const ShownPair& pair : pairs) {
    ShownStates shown = pair.shown;
    auto example = find_example(build, *pair.laid, shown);
    if (!example && shown == ShownStates::both) example = find_example(build, *pair.laid, shown = ShownStates::before);
    if (!example) continue;
    const Wire& wire = build.wire(*example);
    const std::string amperes = print_flow(solution_of(*pair.laid, shown).wire_amperes[example->at()]);
    Sign flows =
        wire_sign(wire, Liveness::flowing, words("live.sign_flows", {{"amperes", amperes}, {"wire", wire.id}}));
    add_arrow(flows.items, {sign_length / 2, Millimetres(0)}, 1, 0, wire_width(wire.area));
    signs.push_back(std::move(flows));
    thin = example;
    break;
  }
  for (const ShownPair& pair : pairs) {
    const auto alternating = find_alternating(*pair.laid, pair.shown);
    if (!alternating) continue;
    signs.push_back(wire_sign(build.wire(*alternating), Liveness::flowing, words("live.sign_alternating")));
    break;
  }
  for (const ShownPair& pair : pairs)
    if (!thin && !pair.laid->drawing.plan.wires.empty()) thin = pair.laid->drawing.plan.wires.front();
  if (!thin) return signs;
  if (is_anywhere(build, pairs, Liveness::waiting))
    signs.push_back(wire_sign(build.wire(*thin), Liveness::waiting, words("live.sign_waiting")));
  if (is_grey_anywhere(build, pairs))
    signs.push_back(wire_sign(build.wire(*thin), Liveness::dead, words("live.sign_dead")));
  Sign volts;
  const Volts resting = build.electrics.resting;
  add_text(volts.items, {Millimetres(0), baseline_at_middle(Millimetres(0), look::volts)},
           print_terminal_volts(resting), look::volts, look::accent);
  volts.width = context.measure().measure(print_terminal_volts(resting), look::volts).width;
  volts.text = words("live.sign_volts", pole_names(build, words));
  signs.push_back(std::move(volts));
  return signs;
}

/// '10 BK 0 A, 2.6 A': wires whose tag had no room for their amperes, in the states shown; with where they run when
/// not even their number had room.
std::string numbers_without_figures(const SheetContext& context, const LaidPair& laid, ShownStates shown) {
  std::vector<std::string> numbered, unnumbered;
  for (const SpareTag& tag : find_spare_tags(laid.drawing.diagram, laid.drawing.laid)) {
    if (!tag.is_number_only) continue;
    const WireId id = laid.drawing.diagram.wires[tag.wire];
    const WireLabel& label = laid.drawing.diagram.labels[tag.wire];
    const auto flow = [&](const SolvedState& state) {
      return print_flow(is_stray_flow(context.build(), state.solution, id) ? Amperes(0)
                                                                           : flow_in_wire(state.solution, id));
    };
    std::string text = label.number + " " + label.code + " ";
    if (shown != ShownStates::after) text += flow(laid.pair.before);
    if (shown == ShownStates::both) text += ", ";
    if (shown != ShownStates::before) text += flow(laid.pair.after);
    if (!tag.is_placed) text += ", " + wire_run_text(context.build(), id, context.words());
    (tag.is_placed ? numbered : unnumbered).push_back(std::move(text));
  }
  const char* key = shown == ShownStates::both ? "live.numbers_only" : "live.numbers_only_one";
  std::string told;
  if (!numbered.empty()) told = context.words()(key, {{"wires", join(numbered, " \u00b7 ")}});
  if (!unnumbered.empty())
    told +=
        (told.empty() ? "" : "   ") + context.words()("diagram.no_number", {{"wires", join(unnumbered, " \u00b7 ")}});
  return told;
}

bool is_drawn(const Build& build, const LaidPair& laid, PartId part) {
  const auto& terminals = build.part(part).terminals;
  const auto is_here = [&](TerminalId end) {
    return std::find(terminals.begin(), terminals.end(), end) != terminals.end();
  };
  return std::any_of(laid.drawing.plan.wires.begin(), laid.drawing.plan.wires.end(), [&](WireId id) {
    return is_here(build.wire(id).from) || is_here(build.wire(id).to);
  });
}

/// '3.6 A', or in both states '3.6 A, then 3.2 A'; empty when nothing flows there in the states shown.
std::string amperes_of(const CurrentExit& exit, ShownStates shown, const Words& words) {
  const std::string before = print_flow(exit.before), after = print_flow(exit.after), none = print_flow(Amperes(0));
  if (shown != ShownStates::both) {
    const std::string& one = shown == ShownStates::before ? before : after;
    return one == none ? std::string() : one;
  }
  return before == after ? before : words("live.then_amperes", {{"before", before}, {"after", after}});
}

std::string names_of(const Build& build, const std::vector<PartId>& parts) {
  std::vector<std::string> names;
  for (const PartId part : parts) names.push_back(build.part(part).label);
  return join(names, ", ");
}

/// Where current leaves the drawing or comes into it: else it would look like a leak.
std::string exits_text(const SheetContext& context, const ShownPair& pair, const std::vector<CurrentExit>& exits) {
  const Build& build = context.build();
  std::vector<std::string> told;
  for (const CurrentExit& exit : exits) {
    const std::string amperes = amperes_of(exit, pair.shown, context.words());
    if (amperes.empty()) continue;
    const Wire& wire = build.wire(exit.wires.front());
    const std::string where = owner_name(build, exit.at, context.words()),
                      parts = exit.parts.empty() ? owner_name(build, wire.from == exit.at ? wire.to : wire.from, context.words())
                                                 : names_of(build, exit.parts);
    told.push_back(context.words()(exit.is_leaving ? "live.exit_to" : "live.exit_from",
                                   {{"wires", wire_ids(build, exit.wires)}, {"where", where}, {"amperes", amperes}, {"parts", parts}}));
  }
  return told.empty() ? std::string() : context.words()("live.exits", {{"what", join(told, " \u00b7 ")}});
}

/// What works and is left out of a drawing that shows a part only, and is fed by none of the wires that lead out of it.
std::string not_drawn_text(const SheetContext& context, const ShownPair& pair, const std::vector<CurrentExit>& exits) {
  const Build& build = context.build();
  std::vector<PartId> left_out;
  const auto is_told = [&](PartId part) {
    return std::any_of(exits.begin(), exits.end(), [&](const CurrentExit& exit) {
      return std::find(exit.parts.begin(), exit.parts.end(), part) != exit.parts.end();
    });
  };
  for (const SolvedState* state : {&pair.laid->pair.before, &pair.laid->pair.after})
    for (const PartId part : working_parts(build, state->solution))
      if (!is_drawn(build, *pair.laid, part) && !is_told(part) && std::find(left_out.begin(), left_out.end(), part) == left_out.end())
        left_out.push_back(part);
  return left_out.empty() ? std::string() : context.words()("live.not_drawn", {{"what", names_of(build, left_out)}});
}

/// What of each pair's current is elsewhere; of several, with the situation's number.
std::vector<std::string> elsewhere_texts(const SheetContext& context, const std::vector<ShownPair>& pairs) {
  std::vector<std::string> texts;
  for (const ShownPair& pair : pairs) {
    const auto exits = find_exits(context.build(), pair.laid->pair, pair.laid->drawing.plan.wires);
    std::string text = exits_text(context, pair, exits);
    const std::string rest = not_drawn_text(context, pair, exits);
    if (!rest.empty()) text += (text.empty() ? "" : " ") + rest;
    if (text.empty()) continue;
    if (pairs.size() > 1) text = std::to_string(pair.laid->pair.after.index + 1) + ": " + text;
    texts.push_back(std::move(text));
  }
  return texts;
}

}  // namespace

Block make_spare_figures(const SheetContext& context, const ShownPair& pair, Millimetres width) {
  const std::string numbers = numbers_without_figures(context, *pair.laid, pair.shown);
  if (numbers.empty()) return {width, {}, {}};
  return set_paragraph({{{numbers, look::small, look::ink, {}}}, Align::left, "P"}, width,
                       {context.measure(), context.words().is_right_to_left()});
}

Block make_situation_legend(const SheetContext& context, const std::vector<ShownPair>& pairs, Millimetres width) {
  Block block;
  block.width = width;
  block.items.push_back(TagOpenItem{"P", {}});
  Millimetres x(0), y = legend_line_height / 2;
  for (Sign& sign : signs_for(context, pairs)) {
    const Millimetres text = context.measure().measure(sign.text, look::small).width,
                      whole = sign.width + state_sign_gap + text;
    if (x > Millimetres(0) && x + whole > width) {
      x = Millimetres(0);
      y += legend_line_height;
    }
    place_block(block.items, Block{sign.width, legend_line_height, std::move(sign.items)}, {x, y});
    add_text(block.items, {x + sign.width + state_sign_gap, baseline_at_middle(y, look::small)}, sign.text, look::small);
    x += whole + state_entry_gap;
  }
  y += legend_line_height;
  const FittedText note = fit_text(context.words()("live.note"), look::small, width, context.measure());
  add_text(block.items, {Millimetres(0), baseline_at_middle(y, look::small)}, note.text, note.style, look::grey);
  block.items.push_back(TagCloseItem{});
  block.height = y + legend_line_height / 2;
  for (const std::string& text : elsewhere_texts(context, pairs)) {
    Block told = set_paragraph({{{text, look::small, look::ink, {}}}, Align::left, "P"}, width,
                               {context.measure(), context.words().is_right_to_left()});
    put_below(block, std::move(told));
    block.height += Millimetres(0.6);
  }
  return block;
}

}  // namespace loomfolio
