// SPDX-License-Identifier: MIT
// A paper size with its frame, from layouts/papers/.
#pragma once

#include <string>

#include "base/quantity.h"

namespace loomfolio {

/// Upright: width < height. A sheet across swaps the two and keeps the binding margin at the left.
struct Paper {
  std::string id;  ///< A4, A3, Letter, Tabloid
  Millimetres width{210}, height{297};
  Millimetres binding{20}, margin{12}, frame_margin{8};  ///< left edge; other edges of text pages; of framed drawings
  std::string larger;  ///< the paper diagrams use when this one is too small: A4 -> A3; may be empty
};

}  // namespace loomfolio
