// SPDX-License-Identifier: MIT
// The tables of the crimps' pages: what goes into a fitting, how far to strip, how hard a spare must hold.
#pragma once

#include <vector>

#include "sheets/fitting_uses.h"
#include "sheets/page_flow.h"
#include "sheets/table.h"

namespace loomfolio {

/// A row a fitting: what it takes, how far its wire is stripped, where it is used here and whether that fits.
Table fit_table(const SheetContext& context, FittingShape shape, const std::vector<FittingUse>& uses);

/// A row for all splices that need a barrel of one size: by the metal of all wires that lie in it.
Table barrel_table(const SheetContext& context, const std::vector<const Build*>& builds);

/// Strip lengths at true size: the wire is laid on the page. No height where no terminal states one.
Block strip_rulers(const PageFlow& flow, const std::vector<FittingUse>& uses);

/// For each size of the kit's wires, the force that a spare crimp must bear; no rows: none is known.
Table pull_table(const SheetContext& context, const std::vector<const Build*>& builds);

}  // namespace loomfolio
