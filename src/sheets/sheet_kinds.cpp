// SPDX-License-Identifier: MIT
// The list of all kinds of sheet, in the order they are bound. To add one: a file with its maker, its declaration in
// sheet_makers.h, and a line here.
#include "sheets/folio.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {

const std::vector<SheetKind>& sheet_kinds() {
  static const std::vector<SheetKind> kinds = {
      {"cover", SheetScope::once, make_cover},
  };
  return kinds;
}

}  // namespace loomfolio
