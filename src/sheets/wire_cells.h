// SPDX-License-Identifier: MIT
// Table cells about wires that several pages share.
#pragma once

#include "sheets/folio.h"
#include "sheets/table.h"

namespace loomfolio {

/// The wire's number, bold, leading to its row of the wire table.
Cell wire_number_cell(const SheetContext& context, WireId wire);

/// A piece of the wire and its colour letters; `second` small below.
Cell wire_colour_cell(const Wire& wire, const std::string& second);

/// 'Starter relay 86' with the terminal's mark bold; `second` small below.
Cell terminal_cell(const SheetContext& context, TerminalId terminal, const std::string& second);

/// The other end of a wire seen from `here`.
TerminalId other_end(const Wire& wire, TerminalId here);

}  // namespace loomfolio
