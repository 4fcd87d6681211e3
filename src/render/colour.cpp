// SPDX-License-Identifier: MIT
#include "render/colour.h"

#include <cmath>

namespace loomfolio {
namespace {

double to_linear(std::uint8_t code) {
  const double v = code / 255.0;
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

std::uint8_t to_code(double linear) {
  const double v = linear <= 0.0031308 ? linear * 12.92 : 1.055 * std::pow(linear, 1 / 2.4) - 0.055;
  return static_cast<std::uint8_t>(std::lround(v * 255));
}

}  // namespace

Colour to_grey(Colour colour) {
  if (colour.red == colour.green && colour.green == colour.blue) return colour;
  const double luminance =
      0.2126 * to_linear(colour.red) + 0.7152 * to_linear(colour.green) + 0.0722 * to_linear(colour.blue);
  const std::uint8_t code = to_code(luminance);
  return {code, code, code};
}

std::string to_hex(Colour colour) {
  std::string text = "#";
  for (const std::uint8_t part : {colour.red, colour.green, colour.blue}) {
    text += "0123456789abcdef"[part >> 4];
    text += "0123456789abcdef"[part & 15];
  }
  return text;
}

}  // namespace loomfolio
