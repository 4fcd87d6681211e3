// SPDX-License-Identifier: MIT
// What layout and sheets may ask about text without drawing it. render/ implements it with Pango; tests use fixed widths.
#pragma once

#include <cstdint>
#include <string_view>

#include "base/quantity.h"

namespace loomfolio {

enum class FaceName : std::uint8_t { sans, mono };  ///< B612 and B612 Mono, with Noto for scripts they lack
enum class Weight : std::uint8_t { regular, bold };

struct TextStyle {
  FaceName face = FaceName::sans;
  Weight weight = Weight::regular;
  double points = 10;  ///< type size, 1/72 inch
  friend constexpr auto operator<=>(const TextStyle&, const TextStyle&) = default;
};

struct TextSize {
  Millimetres width;    ///< advance width, rounded up to 0.01 mm
  Millimetres ascent;   ///< baseline to the top of the face
  Millimetres descent;  ///< baseline to the foot of the face
};

class TextMeasure {
 public:
  virtual ~TextMeasure() = default;
  /// Size of one line of text. Never fails; a glyph that no face has is counted at the width of its substitute.
  virtual TextSize measure(std::string_view text, const TextStyle& style) const = 0;
};

/// Every glyph 0.6 em wide, ascent 0.93 em, descent 0.25 em: for tests and for layout without faces.
class FixedTextMeasure final : public TextMeasure {
 public:
  TextSize measure(std::string_view text, const TextStyle& style) const override;
};

}  // namespace loomfolio
