// SPDX-License-Identifier: MIT
// The cut list as blocks: a sheet of its own, or a part of what a hook-up adds.
#pragma once

#include "sheets/page_flow.h"

namespace loomfolio {

/// Wires by reel, each with its number and length and a box to tick, in two columns. Nothing where no wire is cut.
void add_cut_list(PageFlow& flow, Millimetres gap);

/// Its place among the parts that a hook-up adds ("parts").
inline constexpr std::string_view cut_list_anchor = "cuts";

}  // namespace loomfolio
