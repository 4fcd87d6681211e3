// SPDX-License-Identifier: MIT
// The tables of `loomfolio tables`, one a file: the figures of the pages, for programs that cut, order and label.
#pragma once

#include "commands/tables/plain_table.h"
#include "model/words.h"
#include "sheets/figures.h"

namespace loomfolio {

/// A row a wire, by number: ends, size, length, what goes on each end, what it carries and what saves it.
PlainTable make_wires_table(const SolvedBuild& solved, const Words& words);

/// A row a fuse in use, in the order of parts.
PlainTable make_fuses_table(const SolvedBuild& solved, const Words& words);

/// A row a part, in the order of the spec.
PlainTable make_parts_table(const SolvedBuild& solved, const Words& words);

/// A row a wire that is to be cut, by size, insulation and colour, then by number: the order of the reels.
PlainTable make_cuts_table(const SolvedBuild& solved, const Words& words);

/// A row a wire end at an earth or splice: where it is, what meets there.
PlainTable make_earths_table(const SolvedBuild& solved, const Words& words);

/// A row a situation: engine, switches, what must work. For comparing.
PlainTable make_situations_table(const SolvedBuild& solved, const Words& words);

/// A row a value of the document and its electrics, by name. For comparing.
PlainTable make_build_table(const SolvedBuild& solved, const Words& words);

}  // namespace loomfolio
