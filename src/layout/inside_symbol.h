// SPDX-License-Identifier: MIT
// Which graphic symbol stands for an element inside a part, and how much room it takes. Symbols follow IEC 60617 on a
// module of 2.5 mm; the exact proportions are ours, from memory.
#pragma once

#include <cstdint>

#include "base/geometry.h"
#include "model/kind.h"

namespace loomfolio {

/// A symbol has pins: the first at its start, the others at its end, seen along its heading.
enum class Symbol : std::uint8_t {
  battery,    ///< plus, minus
  load,       ///< a consumer of no special sort: a plain box
  lamp,       ///< circle with a cross
  motor,      ///< circle with M
  generator,  ///< circle with G
  horn,
  gauge,  ///< circle with a needle
  spark_gap,
  coil,  ///< of a relay: rectangle across the wire
  make_contact,
  break_contact,
  selector,  ///< one common, two or more ways
  fuse,
  diode,
  resistor,      ///< rectangle along the wire
  winding,       ///< four arcs
  charger,       ///< regulator: box with alternating and direct marks
  driver,        ///< output of a control unit: triangle
  receiver,      ///< input of a control unit: open arrow
  frame_earth,   ///< bolted to the frame by its own body
  contact_pair,  ///< one way of a connector: bar in cup
  electronics,   ///< the supply of a control unit
};

/// From the first pin to the others on the page.
enum class Heading : std::uint8_t { down, right, up, left };

/// What works a switch; drawn at its blade with a dashed link.
enum class Operator : std::uint8_t { none, hand, push, foot, pressure, gear, key, clutch, stand, coil };

/// Room of a symbol heading down: from its centre to the left and right, and from first to last pin.
struct SymbolRoom {
  Grid left = 0, right = 0, length = 0;
};

/// The symbol of an element with two nodes (switches: of one pole with two nodes).
Symbol symbol_of(const Kind& kind, const Inside& inside);
/// Contacts and selectors: what a dashed link moves.
bool has_blade(Symbol symbol);
SymbolRoom room_of(Symbol symbol);
Operator operator_of(const Inside& inside);

}  // namespace loomfolio
