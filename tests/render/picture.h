// SPDX-License-Identifier: MIT
// A sheet as dots, whichever way it was drawn, to be asked for the colour of a place.
#pragma once

#include <string>
#include <vector>

#include "render/render.h"

namespace loomfolio::test {

struct Picture {
  int width = 0, height = 0;
  double dots_per_inch = 0;
  std::vector<Colour> dots;

  /// The colour of the dot that holds this place, in millimetres from the top left; outside the sheet: a black.
  Colour at(double x, double y) const;
};

Picture read_png(const std::string& png, double dots_per_inch);
/// The first page, as pdftoppm draws it.
Picture read_pdf(const std::string& pdf, double dots_per_inch);

}  // namespace loomfolio::test
