// SPDX-License-Identifier: MIT
// One maker a symbol, each in a file of its own. Spots are millimetres from the centre, heading down.
#pragma once

#include "sheets/symbols/symbols.h"

namespace loomfolio {

struct SymbolDrawing {
  const PlacedSymbol& symbol;
  SymbolState state;
  Point origin;
};

void draw_battery(Pencil& pencil, const SymbolDrawing& drawing);
void draw_load(Pencil& pencil, const SymbolDrawing& drawing);
void draw_lamp(Pencil& pencil, const SymbolDrawing& drawing);
void draw_machine(Pencil& pencil, const SymbolDrawing& drawing);  ///< motor, generator
void draw_horn(Pencil& pencil, const SymbolDrawing& drawing);
void draw_gauge(Pencil& pencil, const SymbolDrawing& drawing);
void draw_spark_gap(Pencil& pencil, const SymbolDrawing& drawing);
void draw_coil(Pencil& pencil, const SymbolDrawing& drawing);
void draw_make_contact(Pencil& pencil, const SymbolDrawing& drawing);
void draw_break_contact(Pencil& pencil, const SymbolDrawing& drawing);
void draw_selector(Pencil& pencil, const SymbolDrawing& drawing);
void draw_fuse(Pencil& pencil, const SymbolDrawing& drawing);
void draw_diode(Pencil& pencil, const SymbolDrawing& drawing);
void draw_resistor(Pencil& pencil, const SymbolDrawing& drawing);
void draw_winding(Pencil& pencil, const SymbolDrawing& drawing);
void draw_charger(Pencil& pencil, const SymbolDrawing& drawing);
void draw_driver(Pencil& pencil, const SymbolDrawing& drawing);
void draw_receiver(Pencil& pencil, const SymbolDrawing& drawing);
void draw_frame_earth(Pencil& pencil, const SymbolDrawing& drawing);
void draw_contact_pair(Pencil& pencil, const SymbolDrawing& drawing);
void draw_electronics(Pencil& pencil, const SymbolDrawing& drawing);

/// Half the bar of an earth.
inline constexpr double usual_earth = 2.5, narrow_earth = 1.5;
void draw_earth_of(Pencil& pencil, double half);

/// What works a contact, linked to its blade at `blade`.
void draw_operator(Pencil& pencil, Operator worked_by, Pencil::Spot blade);

}  // namespace loomfolio
