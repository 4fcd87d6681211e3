// SPDX-License-Identifier: MIT
// Drawings as text, so that a later print can stay near them. Our own form: one JSON text, read back by no one else.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "layout/laid.h"

namespace loomfolio {

/// A drawing that was printed. `graph` is as it was given to the engine, with joints unsettled.
struct KeptDrawing {
  Graph graph;
  Laid laid;
};

/// What a print leaves for the next one, by the name of each drawing: the drawing, or nothing where one was tried and found too large
/// for its page.
using Placements = std::map<std::string, std::optional<KeptDrawing>>;

/// Same placements, same text.
std::string write_placements(const Placements& placements);

/// What write_placements wrote. Nothing when it is no such text, or when a number in it points nowhere: a damaged text is
/// refused as a whole.
std::optional<Placements> read_placements(std::string_view text);

}  // namespace loomfolio
