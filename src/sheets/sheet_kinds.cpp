// SPDX-License-Identifier: MIT
// The list of all kinds of sheet, in the order they are bound. To add one: a file with its maker, its declaration in
// sheet_makers.h, and a line here.
#include "sheets/folio.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {

const std::vector<SheetKind>& sheet_kinds() {
  static const std::vector<SheetKind> kinds = {
      {"cover", SheetScope::opening, make_cover, Joining::alone},
      {"safety", SheetScope::once, make_safety, Joining::opens},
      {"chooser", SheetScope::once, make_chooser},
      {"works", SheetScope::split, make_how_it_works},
      {"diagrams", SheetScope::compared, make_diagrams, Joining::drawn},
      {"terminals", SheetScope::split, make_terminal_map},
      {"wires", SheetScope::split, make_wire_table},
      {"fuses", SheetScope::split, make_fuse_chart},
      {"battery", SheetScope::split, make_battery},
      {"earths", SheetScope::split, make_earths},
      {"crimps", SheetScope::split, make_crimps},
      {"situations", SheetScope::split, make_situations, Joining::drawn},
      {"steps", SheetScope::split, make_steps},
      {"tests", SheetScope::split, make_tests},
      {"parts", SheetScope::split, make_parts_list},
      {"cuts", SheetScope::split, make_cut_list},
      {"changes", SheetScope::split, make_changes},
      {"labels", SheetScope::last, make_label_strips, Joining::alone},
  };
  return kinds;
}

}  // namespace loomfolio
