// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "commands/tables/plain_table.h"

namespace loomfolio {

/// A line for each row that came, went or differs, in the order of the newer table, what went at its end:
/// "+ 12: ...", "- 12: ...", "12: length_mm 600 -> 650, most_A 3.2 -> 3.3". Tables of one maker; rows are told apart by
/// their first `keys` columns, of which a repeated one counts on ("12 (2)"). A computed figure - a column in A or V - that moves by less
/// than 2 % says nothing.
std::vector<std::string> compare_tables(const PlainTable& older, const PlainTable& newer, std::size_t keys);

}  // namespace loomfolio
