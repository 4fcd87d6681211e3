// SPDX-License-Identifier: MIT
#include "sheets/put_below.h"

#include <utility>

namespace loomfolio {

void put_below(Block& block, Block&& below, Millimetres gap) {
  const Millimetres height = below.height, y = block.height + (height > Millimetres(0) ? gap : Millimetres(0));
  place_block(block.items, std::move(below), {{}, y});
  block.height = y + height;
}

}  // namespace loomfolio
