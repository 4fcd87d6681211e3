// SPDX-License-Identifier: MIT
// The cut list as blocks: a sheet of its own, or where there are several hook-ups a part of the parts list.
#pragma once

#include "sheets/page_flow.h"

namespace loomfolio {

/// Wires by reel, each with its number and length and a box to tick, in two columns. Nothing where no wire is cut.
void add_cut_list(PageFlow& flow, Millimetres gap);

/// Its place in the parts list ("parts") of several hook-ups.
inline constexpr std::string_view cut_list_anchor = "cuts";

}  // namespace loomfolio
