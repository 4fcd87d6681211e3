// SPDX-License-Identifier: MIT
// What the terminal map says of each terminal: its mark, its wires, where they go.
#pragma once

#include <vector>

#include "sheets/face_drawing.h"
#include "sheets/folio.h"
#include "sheets/table.h"

namespace loomfolio {

/// Wires at terminals, gathered once a build.
struct TerminalWires {
  std::vector<std::vector<WireId>> by_terminal;  ///< by TerminalId
};

std::vector<Column> terminal_columns(const Words& words);

/// Whether terminals' names stand under their marks; alike parts need them once.
enum class NameTerminals : std::uint8_t { yes, no };

/// A row for each wire end of the part, and one for each terminal that stays open.
std::vector<Row> terminal_rows(const SheetContext& context, const TerminalWires& wires, const Part& part,
                               NameTerminals names);

enum class LabelCodes : std::uint8_t { with_colours, marks_only };

/// Labels of the part's terminals on that face.
std::vector<FaceLabel> face_labels(const SheetContext& context, const TerminalWires& wires, const Part& part, int face,
                                   LabelCodes codes);

}  // namespace loomfolio
