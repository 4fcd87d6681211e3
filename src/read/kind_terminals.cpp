// SPDX-License-Identifier: MIT
#include <algorithm>

#include "read/kind_reader.h"

namespace loomfolio {
namespace {

constexpr Choice<TerminalForm> forms[] = {{"blade", TerminalForm::blade},     {"stud", TerminalForm::stud},
                                          {"sealed", TerminalForm::sealed},   {"cavity", TerminalForm::cavity},
                                          {"bullet", TerminalForm::bullet},   {"splice", TerminalForm::splice},
                                          {"lead", TerminalForm::lead},       {"screw", TerminalForm::screw},
                                          {"push_on", TerminalForm::push_on}, {"body", TerminalForm::body}};
constexpr Choice<Side> sides[] = {
    {"top", Side::top}, {"right", Side::right}, {"bottom", Side::bottom}, {"left", Side::left}};

// Sizes that fittings of a motorcycle have, wide on both sides; no source, common practice.
constexpr QuantityRule place_rule{Dimension::paper_length, {0, 1000}};
constexpr QuantityRule area_rule{Dimension::area, {0.05, 150}};
constexpr QuantityRule diameter_rule{Dimension::paper_length, {0.3, 40}};
constexpr QuantityRule strip_rule{Dimension::paper_length, {1, 60}};
constexpr QuantityRule blade_rule{Dimension::paper_length, {0.5, 15}};
constexpr QuantityRule torque_rule{Dimension::torque, {0.05, 100}};
constexpr int most_wire_ends = 12;

template <class Q>
std::optional<Range<Q>> range_of(TableReader& table, std::string_view key, const QuantityRule& rule) {
  const auto pair = table.range(key, rule);
  return pair ? std::optional(Range<Q>{Q(pair->first), Q(pair->second)}) : std::nullopt;
}

int find_face(const Kind& kind, const PlacedText& id, TableReader& table) {
  std::vector<std::string> ids;
  for (std::size_t i = 0; i < kind.faces.size(); ++i) {
    if (kind.faces[i].id == id.text) return static_cast<int>(i);
    ids.push_back(kind.faces[i].id);
  }
  table.report(DiagnosticId::unknown_face, id.where, "the kind has no face `" + id.text + "`",
               ids.empty() ? "it has no [[face]] at all" : suggest_and_list(id.text, ids, "its faces are"));
  return -1;
}

void read_place(KindTerminal& terminal, const Kind& kind, TableReader& table) {
  const PlacedText face = table.placed_line("face", Need::may);
  const TomlValue* at = table.array("at");
  if (face.where.is_set()) terminal.face = find_face(kind, face, table);
  if (face.where.is_set() != (at != nullptr)) {
    table.report(DiagnosticId::place_without_face, at ? at->where : face.where,
                 at ? "`at` has no `face` that it stands on" : "`face` has no `at` that says where on it");
    return;
  }
  if (!at) return;
  if (at->items.size() != 2) {
    table.report(DiagnosticId::wrong_count, at->where,
                 "`at` holds " + std::to_string(at->items.size()) + " values; it takes two, across and down");
    return;
  }
  const auto x = table.parse(at->items[0], "at", place_rule);
  const auto y = table.parse(at->items[1], "at", place_rule);
  if (!x || !y || terminal.face < 0) return;
  terminal.at = {Millimetres(*x), Millimetres(*y)};
  const Face& on = kind.faces[static_cast<std::size_t>(terminal.face)];
  if (terminal.at.x > on.width || terminal.at.y > on.height)
    table.report(DiagnosticId::place_off_face, at->where,
                 "terminal `" + terminal.id + "` stands off face `" + on.id + "`, which is " +
                     print_quantity(on.width.number(), Dimension::paper_length) + " by " +
                     print_quantity(on.height.number(), Dimension::paper_length));
}

void read_id(KindTerminal& terminal, const Kind& kind, TableReader& table) {
  const PlacedText id = table.placed_line("id", Need::must);
  if (!id.where.is_set()) return;
  terminal.id = id.text;
  terminal.where = id.where;
  if (!is_terminal_id(id.text))
    table.report(DiagnosticId::bad_id, id.where,
                 "`" + id.text + "` cannot be a terminal's id; it is letters, digits, `+`, `-`, `_` or `/`");
  for (const KindTerminal& other : kind.terminals)
    if (other.id == id.text) {
      table.report(DiagnosticId::duplicate_id, id.where, "the kind has two terminals `" + id.text + "`", {},
                   {{other.where, "the first stands here"}});
      return;
    }
}

KindTerminal read_terminal(const TomlValue& tree, const Kind& kind, Diagnostics& findings) {
  TableReader table(tree, "[[terminal]]", findings);
  KindTerminal terminal;
  terminal.where = table.where();
  read_id(terminal, kind, table);
  terminal.name = table.line("name", Need::may);
  terminal.form = table.choice<TerminalForm>("form", forms, Need::must).value_or(TerminalForm::lead);
  terminal.side = table.choice<Side>("side", sides, Need::must).value_or(Side::bottom);
  read_place(terminal, kind, table);
  terminal.takes = range_of<SquareMillimetres>(table, "takes", area_rule);
  terminal.insulation = range_of<Millimetres>(table, "insulation", diameter_rule);
  terminal.strip = table.quantity<Millimetres>("strip", strip_rule);
  terminal.blade_width = table.quantity<Millimetres>("blade_width", blade_rule);
  terminal.thread = table.line("thread", Need::may);
  terminal.torque = table.quantity<NewtonMetres>("torque", torque_rule);
  terminal.most_wires = table.whole("wires", 1, most_wire_ends).value_or(1);
  terminal.may_stay_open = table.truth("open", false);
  table.refuse_unknown_keys();
  return terminal;
}

}  // namespace

void read_kind_terminals(Kind& kind, TableReader& table) {
  const auto trees = table.tables("terminal", 300);
  for (const TomlValue* tree : trees) kind.terminals.push_back(read_terminal(*tree, kind, table.findings()));
  if (trees.empty())
    table.report(DiagnosticId::kind_without_terminals, table.where(),
                 "kind `" + kind.id + "` has no terminals; a wire could never reach it");
}

}  // namespace loomfolio
