// SPDX-License-Identifier: MIT
// The makers of sheets, one file each, in the order they are bound.
#pragma once

#include <vector>

#include "sheets/folio.h"

namespace loomfolio {

std::vector<Sheet> make_cover(const SheetContext& context);
std::vector<Sheet> make_safety(const SheetContext& context);
std::vector<Sheet> make_chooser(const SheetContext& context);
std::vector<Sheet> make_how_it_works(const SheetContext& context);
std::vector<Sheet> make_diagrams(const SheetContext& context);
std::vector<Sheet> make_situations(const SheetContext& context);
std::vector<Sheet> make_terminal_map(const SheetContext& context);
std::vector<Sheet> make_wire_table(const SheetContext& context);
std::vector<Sheet> make_fuse_chart(const SheetContext& context);
std::vector<Sheet> make_battery(const SheetContext& context);
std::vector<Sheet> make_earths(const SheetContext& context);
std::vector<Sheet> make_crimps(const SheetContext& context);
std::vector<Sheet> make_steps(const SheetContext& context);
std::vector<Sheet> make_tests(const SheetContext& context);
std::vector<Sheet> make_parts_list(const SheetContext& context);
std::vector<Sheet> make_cut_list(const SheetContext& context);
std::vector<Sheet> make_label_strips(const SheetContext& context);
/// Lines to write on; stands where a left page is wanted.
std::vector<Sheet> make_notes(const SheetContext& context);
std::vector<Sheet> make_changes(const SheetContext& context);

}  // namespace loomfolio
