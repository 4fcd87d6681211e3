// SPDX-License-Identifier: MIT
#include "sheets/situation_legend.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/text.h"
#include "sheets/diagram_live.h"
#include "sheets/diagram_tags.h"
#include "sheets/names.h"
#include "sheets/print_text.h"
#include "sheets/readings.h"
#include "sheets/situation_state.h"
#include "sheets/wire_look.h"

namespace loomfolio {
namespace {

constexpr Millimetres line_height{4.6}, entry_gap{7}, sign_gap{1.6}, sign_length{13};

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

/// The drawn wire that carries most in the later state, as example.
WireId busiest(const LaidPair& laid) {
  const auto amperes = [&](WireId id) { return std::abs(laid.pair.after.solution.wire_amperes[id.at()].number()); };
  const auto& wires = laid.drawing.plan.wires;
  return *std::max_element(wires.begin(), wires.end(), [&](WireId a, WireId b) { return amperes(a) < amperes(b); });
}

bool is_any(const Build& build, const LaidPair& laid, Liveness wanted) {
  const auto& wires = laid.drawing.plan.wires;
  return std::any_of(wires.begin(), wires.end(), [&](WireId id) {
    return liveness_of(build, laid.pair.before.solution, id) == wanted ||
           liveness_of(build, laid.pair.after.solution, id) == wanted;
  });
}

bool is_any_alternating(const LaidPair& laid) {
  const auto& alternating = laid.pair.after.solution.wire_alternating;
  const auto& wires = laid.drawing.plan.wires;
  return std::any_of(wires.begin(), wires.end(),
                     [&](WireId id) { return id.at() < alternating.size() && alternating[id.at()] >= least_flow; });
}

std::vector<Sign> signs_for(const SheetContext& context, const LaidPair& laid) {
  const Build& build = context.build();
  const Words& words = context.words();
  std::vector<Sign> signs;
  if (laid.drawing.plan.wires.empty()) return signs;
  const WireId id = busiest(laid);
  const Wire& wire = build.wire(id);
  Sign flows =
      wire_sign(wire, Liveness::flowing,
                words("live.sign_flows",
                      {{"amperes", print_flow(laid.pair.after.solution.wire_amperes[id.at()])}, {"wire", wire.id}}));
  add_arrow(flows.items, {sign_length / 2, Millimetres(0)}, 1, 0, wire_width(wire.area));
  signs.push_back(std::move(flows));
  if (is_any_alternating(laid)) signs.push_back(wire_sign(wire, Liveness::flowing, words("live.sign_alternating")));
  if (is_any(build, laid, Liveness::waiting))
    signs.push_back(wire_sign(wire, Liveness::waiting, words("live.sign_waiting")));
  if (is_any(build, laid, Liveness::dead)) signs.push_back(wire_sign(wire, Liveness::dead, words("live.sign_dead")));
  Sign volts;
  const Volts shown = build.electrics.resting;
  add_text(volts.items, {Millimetres(0), baseline_at_middle(Millimetres(0), look::volts)}, print_terminal_volts(shown),
           look::volts, look::accent);
  volts.width = context.measure().measure(print_terminal_volts(shown), look::volts).width;
  volts.text = words("live.sign_volts", pole_names(build, words));
  signs.push_back(std::move(volts));
  return signs;
}

/// '10 BK 0 A, 2.6 A': wires whose tag had no room for their amperes, in both states.
std::string numbers_without_figures(const SheetContext& context, const LaidPair& laid) {
  std::vector<std::string> texts;
  for (const SpareTag& tag : find_spare_tags(laid.drawing.diagram, laid.drawing.laid)) {
    if (!tag.is_number_only) continue;
    const WireId id = laid.drawing.diagram.wires[tag.wire];
    const WireLabel& label = laid.drawing.diagram.labels[tag.wire];
    const auto flow = [id](const SolvedState& state) { return print_flow(flow_in_wire(state.solution, id)); };
    texts.push_back(label.number + " " + label.code + " " + flow(laid.pair.before) + ", " + flow(laid.pair.after));
  }
  return texts.empty() ? std::string() : context.words()("live.numbers_only", {{"wires", join(texts, " \u00b7 ")}});
}

}  // namespace

Block make_situation_legend(const SheetContext& context, const LaidPair& laid, Millimetres width) {
  Block block;
  block.width = width;
  block.items.push_back(TagOpenItem{"P", {}});
  Millimetres x(0), y = line_height / 2;
  for (Sign& sign : signs_for(context, laid)) {
    const Millimetres text = context.measure().measure(sign.text, look::small).width,
                      whole = sign.width + sign_gap + text;
    if (x > Millimetres(0) && x + whole > width) {
      x = Millimetres(0);
      y += line_height;
    }
    place_block(block.items, Block{sign.width, line_height, std::move(sign.items)}, {x, y});
    add_text(block.items, {x + sign.width + sign_gap, baseline_at_middle(y, look::small)}, sign.text, look::small);
    x += whole + entry_gap;
  }
  const std::string numbers = numbers_without_figures(context, laid);
  if (!numbers.empty()) {
    y += line_height;
    const FittedText fitted = fit_text(numbers, look::small, width, context.measure());
    add_text(block.items, {Millimetres(0), baseline_at_middle(y, look::small)}, fitted.text, fitted.style);
  }
  y += line_height;
  add_text(block.items, {Millimetres(0), baseline_at_middle(y, look::small)}, context.words()("live.note"), look::small,
           look::grey);
  block.items.push_back(TagCloseItem{});
  block.height = y + line_height / 2;
  return block;
}

}  // namespace loomfolio
