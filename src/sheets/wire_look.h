// SPDX-License-Identifier: MIT
// How a wire is drawn wherever one is shown: in its colours, with a dark edge so that pale ones stand on white paper.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "model/build.h"
#include "sheets/draw.h"

namespace loomfolio {

/// The ink for IEC 60757 letters; our own choice, made to stay apart on a printer. Unknown letters are drawn grey.
Colour wire_paint(std::string_view letters);

/// The edge that keeps a stripe apart from its base in grey: dark or light, whichever both differ from more; none where
/// they differ enough themselves.
std::optional<Colour> stripe_edge_of(Colour base, Colour stripe);

/// Drawn width of a wire of that area: 1.0 mm to 1.0 mm2, 1.4 to 2.5, 1.8 to 6, else 2.2. An unknown area is drawn
/// thinnest.
Millimetres wire_width(SquareMillimetres area);

/// Draws a wire along a path: dark edge, base colour, broken stripe down the middle.
void add_wire(Items& items, const std::vector<PathPiece>& path, const WireColour& colour, Millimetres width);
void add_wire(Items& items, const std::vector<Point>& points, const WireColour& colour, Millimetres width);

/// A short straight piece of the wire: as a table shows it. The block is as high as the wire is drawn.
Block wire_swatch(const WireColour& colour, SquareMillimetres area, Millimetres length);

/// How a text runs: level, or from below upwards.
enum class TextRun : std::uint8_t { level, upright };

/// A label's colour letters and size, 'BU/BK 0.75': the letters in the face of fixed widths, the size in the other, as in the
/// first a point stands in a gap. Never longer than all of it in the first; its length comes back.
Millimetres add_wire_code(Items& items, Point at, const std::string& code, Colour colour, TextRun run,
                          const TextMeasure& measure);

}  // namespace loomfolio
