// SPDX-License-Identifier: MIT
// The list of all kinds of sheet, in the order they are bound. To add one: a file with its maker, its declaration in
// sheet_makers.h, and a line here.
#include "sheets/folio.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {

const std::vector<SheetKind>& sheet_kinds() {
  static const std::vector<SheetKind> kinds = {
      {"cover", SheetScope::opening, make_cover},
      {"safety", SheetScope::once, make_safety},
      {"chooser", SheetScope::once, make_chooser},
      {"works", SheetScope::each_variant, make_how_it_works},
      {"diagrams", SheetScope::each_variant, make_diagrams},
      {"situations", SheetScope::each_variant, make_situations},
      {"terminals", SheetScope::each_variant, make_terminal_map},
      {"wires", SheetScope::each_variant, make_wire_table},
      {"fuses", SheetScope::each_variant, make_fuse_chart},
      {"earths", SheetScope::each_variant, make_earths},
      {"crimps", SheetScope::each_variant, make_crimps},
      {"steps", SheetScope::each_variant, make_steps},
      {"tests", SheetScope::each_variant, make_tests},
      {"parts", SheetScope::each_variant, make_parts_list},
      {"cuts", SheetScope::each_variant, make_cut_list},
      {"labels", SheetScope::each_variant, make_label_strips},
      {"changes", SheetScope::once, make_changes},
  };
  return kinds;
}

}  // namespace loomfolio
