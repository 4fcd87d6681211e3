// SPDX-License-Identifier: MIT
#include "sheets/symbols/symbols.h"

#include "sheets/symbols/symbol_makers.h"

namespace loomfolio {
namespace {

using SymbolMaker = void (*)(Pencil&, const SymbolDrawing&);

SymbolMaker maker_of(Symbol symbol) {
  switch (symbol) {
    case Symbol::battery:
      return draw_battery;
    case Symbol::load:
      return draw_load;
    case Symbol::lamp:
      return draw_lamp;
    case Symbol::motor:
    case Symbol::generator:
      return draw_machine;
    case Symbol::horn:
      return draw_horn;
    case Symbol::gauge:
      return draw_gauge;
    case Symbol::spark_gap:
      return draw_spark_gap;
    case Symbol::coil:
      return draw_coil;
    case Symbol::make_contact:
      return draw_make_contact;
    case Symbol::break_contact:
      return draw_break_contact;
    case Symbol::selector:
      return draw_selector;
    case Symbol::fuse:
      return draw_fuse;
    case Symbol::diode:
      return draw_diode;
    case Symbol::resistor:
      return draw_resistor;
    case Symbol::winding:
      return draw_winding;
    case Symbol::charger:
      return draw_charger;
    case Symbol::driver:
      return draw_driver;
    case Symbol::receiver:
      return draw_receiver;
    case Symbol::frame_earth:
      return draw_frame_earth;
    case Symbol::contact_pair:
      return draw_contact_pair;
    case Symbol::electronics:
      return draw_electronics;
  }
  return draw_load;
}

}  // namespace

void draw_symbol(Items& items, const PlacedSymbol& symbol, Point origin, const SymbolInk& ink,
                 const SymbolState& state) {
  Pencil pencil(items, origin + to_mm(symbol.at), symbol.heading, symbol.is_mirrored && symbol.symbol != Symbol::frame_earth, ink);
  maker_of(symbol.symbol)(pencil, {symbol, state, origin});
}

void draw_earth(Items& items, Point at, const SymbolInk& ink, EarthWidth width) {
  const Point centre = at + to_mm(GridPoint{0, room_of(Symbol::frame_earth).length / 2});
  Pencil pencil(items, centre, Heading::down, false, ink);
  draw_earth_of(pencil, width == EarthWidth::narrow ? narrow_earth : usual_earth);
}

}  // namespace loomfolio
