// SPDX-License-Identifier: MIT
// A control unit: what is inside is software, so the box says in words what each terminal is for, with a sign that
// tells inputs from outputs. Inputs and outputs keep the side their kind gives them.
#include <algorithm>

#include "base/text.h"
#include "layout/inside_flow.h"

namespace loomfolio::inside {
namespace {

constexpr Grid sign_gap = 90, between_texts = 450;

/// What the terminal is for, short: its name up to the first comma.
std::string purpose_of(const KindTerminal& terminal) { return terminal.name.substr(0, terminal.name.find(',')); }

/// The output that a terminal drives, -1: it drives none.
int output_at(const Plan& plan, int terminal) {
  for (std::size_t i = 0; i < plan.part->insides.size(); ++i) {
    const Inside& inside = plan.part->insides[i];
    if (inside.type == InsideType::output && inside.nodes.size() > 1 && inside.nodes[1].terminal == terminal)
      return static_cast<int>(i);
  }
  return -1;
}

struct Entry {
  int terminal = -1;
  int output = -1;
  int taps = 1;
  std::string purpose;
  FlowSize id, words;
};

std::vector<Entry> entries_on(const Plan& plan, Side side) {
  std::vector<Entry> entries;
  for (std::size_t t = 0; t < plan.ends.size(); ++t) {
    if (plan.ends[t] < 0 || plan.kind->terminals[t].side != side) continue;
    Entry entry{static_cast<int>(t),
                output_at(plan, static_cast<int>(t)),
                std::max(plan.ends[t], 1),
                purpose_of(plan.kind->terminals[t]),
                {},
                {}};
    if (entry.output >= 0) {
      const auto& rating = plan.part->insides[static_cast<std::size_t>(entry.output)].rating;
      if (rating) entry.purpose += ", " + shortest(rating->number()) + " A";
    }
    entry.id = size_in_flow(plan, plan.kind->terminals[t].id, plan.request->styles.terminal, false);
    entry.words = size_in_flow(plan, entry.purpose, plan.request->styles.small, false);
    entries.push_back(std::move(entry));
  }
  return entries;
}

Grid widest_id(const std::vector<Entry>& entries) {
  Grid widest = 0;
  for (const Entry& entry : entries) widest = std::max(widest, entry.id.x);
  return widest;
}

struct Unit {
  const Plan& plan;
  PartDrawing drawing;
};

void put_terminal(Unit& unit, const Entry& entry, Side side, GridPoint lead) {
  PlacedTerminal placed;
  placed.terminal = entry.terminal;
  placed.side = side;
  placed.lead = lead;
  placed.is_open = unit.plan.ends[static_cast<std::size_t>(entry.terminal)] == 0;
  const bool is_level = side == Side::top || side == Side::bottom;
  for (int i = 0; i < entry.taps; ++i) {
    const Grid by = (2 * i - (entry.taps - 1)) * module;
    placed.taps.push_back({lead.x + (is_level ? by : 0), lead.y + (is_level ? 0 : by)});
  }
  unit.drawing.terminals.push_back(std::move(placed));
}

/// A lead from the terminal to its sign; the sign points in at an input, out at an output.
void put_sign(Unit& unit, const Entry& entry, GridPoint lead, GridPoint near_edge, Heading inward) {
  const bool is_output = entry.output >= 0;
  PlacedSymbol symbol;
  symbol.symbol = is_output ? Symbol::driver : Symbol::receiver;
  symbol.inside = entry.output;
  const Grid half = room_of(symbol.symbol).length / 2;
  const GridPoint step = inward == Heading::right  ? GridPoint{1, 0}
                         : inward == Heading::left ? GridPoint{-1, 0}
                         : inward == Heading::down ? GridPoint{0, 1}
                                                   : GridPoint{0, -1};
  symbol.at = {near_edge.x + step.x * half, near_edge.y + step.y * half};
  const GridPoint far{symbol.at.x + step.x * half, symbol.at.y + step.y * half};
  if (is_output) {
    symbol.heading = inward == Heading::right  ? Heading::left
                     : inward == Heading::left ? Heading::right
                     : inward == Heading::down ? Heading::up
                                               : Heading::down;
    symbol.pins = {far, near_edge};
    symbol.nodes = {-1, entry.terminal};
    symbol.letters = unit.plan.part->insides[static_cast<std::size_t>(entry.output)].is_low_side ? "-" : "+";
  } else {
    symbol.heading = inward;
    symbol.pins = {near_edge, far};
    symbol.nodes = {entry.terminal, -1};
  }
  unit.drawing.lines.push_back({InnerStyle::wire, entry.terminal, {lead, near_edge}, {}});
  unit.drawing.symbols.push_back(std::move(symbol));
}

void put_words(Unit& unit, const Entry& entry, GridPoint corner) {
  unit.drawing.texts.push_back({TextRole::element,
                                entry.purpose,
                                unit.plan.request->styles.small,
                                {corner.x, corner.y, corner.x + entry.words.x, corner.y + entry.words.y},
                                {}});
}

/// Left and right entries, row by row from `top`; returns where they end.
Grid put_rows(Unit& unit, const std::vector<Entry>& entries, Side side, Grid top) {
  const bool is_left = side == Side::left;
  const Grid width = unit.drawing.width, reach = up_to_module(widest_id(entries) + ring_room + 60);
  Grid y = top;
  for (const Entry& entry : entries) {
    y += (entry.taps - 1) * module;
    const GridPoint lead{is_left ? 0 : width, y}, near_edge{is_left ? reach : width - reach, y};
    put_terminal(unit, entry, side, lead);
    put_sign(unit, entry, lead, near_edge, is_left ? Heading::right : Heading::left);
    const Grid sign = room_of(entry.output >= 0 ? Symbol::driver : Symbol::receiver).length + sign_gap;
    put_words(unit, entry, {is_left ? near_edge.x + sign : near_edge.x - sign - entry.words.x, y - entry.words.y / 2});
    y += (entry.taps + 1) * module;
  }
  return y - 2 * module;
}

Grid room_across(const std::vector<Entry>& entries) {
  Grid room = module;
  for (const Entry& entry : entries)
    room += std::max({entry.words.x, entry.id.x + 300, 2 * module * entry.taps}) + 2 * module;
  return room;
}

/// Top or bottom entries side by side, words beside their sign.
void put_columns(Unit& unit, const std::vector<Entry>& entries, Side side) {
  const bool is_top = side == Side::top;
  Grid x = (unit.drawing.width - room_across(entries)) / 2 / module * module + 2 * module;
  for (const Entry& entry : entries) {
    x += (entry.taps - 1) * module;
    const GridPoint lead{x, is_top ? 0 : unit.drawing.height},
        near_edge{x, is_top ? 2 * module : unit.drawing.height - 2 * module};
    put_terminal(unit, entry, side, lead);
    put_sign(unit, entry, lead, near_edge, is_top ? Heading::down : Heading::up);
    const Grid y = is_top ? near_edge.y + 60 : near_edge.y - 60 - entry.words.y;
    put_words(unit, entry, {x + 250 + sign_gap / 2, y});
    x += up_to_module(std::max(entry.words.x + 300, entry.id.x + 300)) + module + (entry.taps - 1) * module;
  }
}

Grid width_of_rows(const std::vector<Entry>& left, const std::vector<Entry>& right) {
  const auto side_width = [](const std::vector<Entry>& entries) {
    Grid widest = 0;
    for (const Entry& entry : entries) widest = std::max(widest, entry.words.x);
    return entries.empty() ? Grid{0} : up_to_module(widest_id(entries) + ring_room + 60) + 500 + sign_gap + widest;
  };
  return side_width(left) + side_width(right) + between_texts;
}

}  // namespace

PartDrawing draw_control_unit(const Plan& plan) {
  const auto left = entries_on(plan, Side::left), right = entries_on(plan, Side::right);
  const auto top = entries_on(plan, Side::top), bottom = entries_on(plan, Side::bottom);
  Unit unit{plan, {}};
  unit.drawing.width = up_to_module(std::max({width_of_rows(left, right), room_across(top), room_across(bottom)}));
  const Grid first = top.empty() ? 3 * module : 6 * module;
  const Grid last = std::max(put_rows(unit, left, Side::left, first), put_rows(unit, right, Side::right, first));
  unit.drawing.height = std::max(last, first) + (bottom.empty() ? 2 * module : 5 * module);
  put_columns(unit, top, Side::top);
  put_columns(unit, bottom, Side::bottom);
  put_terminal_names(plan, unit.drawing);
  put_part_name(plan, unit.drawing);
  return std::move(unit.drawing);
}

}  // namespace loomfolio::inside
