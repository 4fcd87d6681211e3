// SPDX-License-Identifier: MIT
#include "layout/inside_symbol.h"

#include <algorithm>
#include <string_view>

namespace loomfolio {
namespace {

bool has_word(std::string_view id, std::string_view word) { return id.find(word) != std::string_view::npos; }

/// A kind with a contact that flashes by a circuit of its own.
bool beats(const Kind& kind) {
  return std::any_of(kind.insides.begin(), kind.insides.end(), [](const Inside& inside) { return inside.flashes; });
}

/// A consumer that people know by a picture of its own.
Symbol symbol_of_load(const Kind& kind, const Inside& inside) {
  if (beats(kind)) return Symbol::electronics;
  if (has_word(kind.id, "horn") || has_word(kind.id, "buzzer")) return Symbol::horn;
  if (has_word(kind.id, "spark-plug")) return Symbol::spark_gap;
  if (kind.group == "instruments" || has_word(inside.id, "gauge") || has_word(inside.id, "meter")) return Symbol::gauge;
  if (kind.group == "control") return Symbol::electronics;
  if (kind.group == "ignition" && has_word(kind.id, "coil")) return Symbol::winding;
  return Symbol::load;
}

/// A pole is at rest joined or not; one with two nodes only.
bool is_joined_at_rest(const Inside& inside) {
  const auto rest = static_cast<std::size_t>(inside.rest_position);
  return rest < inside.positions.size() && !inside.positions[rest].joined.empty();
}

}  // namespace

Symbol symbol_of(const Kind& kind, const Inside& inside) {
  switch (inside.type) {
    case InsideType::source:
      return kind.group == "charging" ? Symbol::generator : Symbol::battery;
    case InsideType::load:
      return symbol_of_load(kind, inside);
    case InsideType::lamp:
      return Symbol::lamp;
    case InsideType::motor:
      return Symbol::motor;
    case InsideType::coil:
      return Symbol::coil;
    case InsideType::contact:
      return inside.closed_at_rest ? Symbol::break_contact : Symbol::make_contact;
    case InsideType::switch_:
      return is_joined_at_rest(inside) ? Symbol::break_contact : Symbol::make_contact;
    case InsideType::fuse:
      return Symbol::fuse;
    case InsideType::diode:
      return Symbol::diode;
    case InsideType::resistor:
      if (has_word(kind.id, "spark-plug")) return Symbol::spark_gap;
      return inside.is_winding || inside.is_secondary || kind.group == "ignition" ? Symbol::winding : Symbol::resistor;
    case InsideType::link:
      return has_word(kind.id, "spark-plug") ? Symbol::spark_gap : Symbol::contact_pair;
    case InsideType::output:
      return Symbol::driver;
    case InsideType::charger:
      return Symbol::charger;
  }
  return Symbol::load;
}

bool has_blade(Symbol symbol) {
  return symbol == Symbol::make_contact || symbol == Symbol::break_contact || symbol == Symbol::selector;
}

SymbolRoom room_of(Symbol symbol) {
  switch (symbol) {
    case Symbol::battery:
      return {500, 500, 500};
    case Symbol::load:
      return {250, 250, 750};
    case Symbol::lamp:
      return {375, 375, 750};
    case Symbol::motor:
      return {500, 500, 1000};
    case Symbol::generator:
      return {500, 500, 1000};
    case Symbol::horn:
      return {375, 500, 750};
    case Symbol::gauge:
      return {500, 500, 1000};
    case Symbol::spark_gap:
      return {200, 200, 750};
    case Symbol::coil:
      return {500, 500, 500};
    case Symbol::make_contact:
      return {350, 100, 750};
    case Symbol::break_contact:
      return {100, 250, 750};
    case Symbol::selector:
      return {350, 100, 750};
    case Symbol::fuse:
      return {140, 140, 750};
    case Symbol::diode:
      return {250, 250, 500};
    case Symbol::resistor:
      return {140, 140, 750};
    case Symbol::winding:
      return {50, 150, 1000};
    case Symbol::charger:
      return {750, 750, 1000};
    case Symbol::driver:
      return {250, 250, 500};
    case Symbol::receiver:
      return {200, 200, 400};
    case Symbol::frame_earth:
      return {300, 300, 350};
    case Symbol::contact_pair:
      return {140, 140, 750};
    case Symbol::electronics:
      return {500, 500, 750};
  }
  return {250, 250, 500};
}

Operator operator_of(const Inside& inside) {
  if (inside.type == InsideType::contact) return Operator::coil;
  if (inside.type != InsideType::switch_) return Operator::none;
  const std::string_view by = inside.worked_by;
  if (by == "foot") return Operator::foot;
  if (by == "pressure") return Operator::pressure;
  if (by == "gear") return Operator::gear;
  if (by == "key") return Operator::key;
  if (by == "clutch") return Operator::clutch;
  if (by == "stand") return Operator::stand;
  if (inside.is_sprung) return Operator::push;
  return by == "hand" ? Operator::hand : Operator::none;
}

}  // namespace loomfolio
