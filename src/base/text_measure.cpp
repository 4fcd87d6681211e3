// SPDX-License-Identifier: MIT
#include "base/text_measure.h"

#include <cmath>

#include "base/text.h"

namespace loomfolio {

TextSize FixedTextMeasure::measure(std::string_view text, const TextStyle& style) const {
  const double em = style.points * 25.4 / 72;
  const double width = static_cast<double>(count_characters(text)) * em * 0.6;
  return {Millimetres(std::ceil(width * 100 - 1e-9) / 100), Millimetres(em * 0.93), Millimetres(em * 0.25)};
}

}  // namespace loomfolio
