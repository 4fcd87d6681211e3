// SPDX-License-Identifier: MIT
// Makers of blocks, one a sort of element. Only inside_*.cpp include this.
#pragma once

#include <vector>

#include "layout/inside_flow.h"
#include "layout/inside_levels.h"

namespace loomfolio::inside {

struct BlockMaker {
  const Plan& plan;
  const Levels& levels;
  bool is_transposed = false;

  const Inside& inside(const Shown& shown) const { return plan.part->insides[static_cast<std::size_t>(shown.inside)]; }
  const InsideStyles& styles() const { return plan.request->styles; }
};

/// Lines of text beside an element: name and rating, those that say something.
struct TextLine {
  TextRole role = TextRole::element;
  std::string text;
};
std::vector<TextLine> lines_beside(const BlockMaker& maker, const Inside& inside);

/// The blocks of one inside: one as a rule, a switch may have a pole a block.
std::vector<Block> make_blocks(const BlockMaker& maker, const Shown& shown);
Block make_changeover(const BlockMaker& maker, const Shown& first, const Shown& second);
Block make_frame_earth(int node);

/// An element of two nodes; `lines` stand beside it.
struct TwoNodes {
  Symbol symbol = Symbol::load;
  int inside = -1;
  int a = -1, b = -1;      ///< nodes of its first and second pin
  bool is_linked = false;  ///< one of several poles
};
Block make_two_node_block(const BlockMaker& maker, const TwoNodes& what, const std::vector<TextLine>& lines);

/// One common and several ways.
struct Ways {
  int inside = -1;
  int common = -1;
  std::vector<int> nodes;          ///< by way
  std::vector<std::string> names;  ///< by way
  int rest = -1;                   ///< way on which it rests, -1: between
};
Block make_selector(const BlockMaker& maker, const Ways& ways, const std::vector<TextLine>& lines);

std::vector<Block> make_switch(const BlockMaker& maker, const Shown& shown);
Block make_table(const BlockMaker& maker, const Shown& shown);
Block make_box_with_pins(const BlockMaker& maker, const Shown& shown, Symbol symbol);

/// Puts lines of text on the high side of a block that runs along, or past the end of a bridge.
void add_lines_beside(const BlockMaker& maker, Block& block, const std::vector<TextLine>& lines);

}  // namespace loomfolio::inside
