// SPDX-License-Identifier: MIT
// What the tests of this room share: the faces, small folios, and tools that read a file back.
#pragma once

#include <string>

#include "render/render.h"

namespace loomfolio::test {

/// The faces of this source tree; one set for the whole test program.
const FontSet& fonts();

inline Point at(double x, double y) { return {Millimetres(x), Millimetres(y)}; }
inline Rect box(double x, double y, double width, double height) {
  return {Millimetres(x), Millimetres(y), Millimetres(width), Millimetres(height)};
}

/// An A4 sheet with these lines of 10 pt text, 10 mm apart, from the top left.
Sheet sheet_of_lines(const std::string& id, const std::vector<std::string>& lines);

/// Sheets one and two, with a heading each, a figure, a link each way, an anchor and an attachment.
Folio small_folio();

/// What a command prints, its standard error with it, when `content` stands in the file it names as FILE. A command
/// that fails, or is not there, gives a text that starts with "FAILED".
std::string read_back(const std::string& content, const std::string& command);

}  // namespace loomfolio::test
