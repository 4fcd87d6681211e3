// SPDX-License-Identifier: MIT
// Fuses as drawn: a blade fuse in the colour of its rating, a glass tube, a bolted strip.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/quantity.h"
#include "model/words.h"
#include "sheets/draw.h"

namespace loomfolio {

/// The body colour of a blade fuse and what it is called.
struct FusePaint {
  Colour body;
  Colour letters;        ///< dark or light, whichever reads on the body
  std::string_view key;  ///< word: fuse_colour.red
};

/// Colours by rating of ISO 8820-3 blades (types C and F; type E where the family is blade_maxi). Nothing for other
/// families and for ratings that have no colour.
std::optional<FusePaint> fuse_paint(std::string_view family, Amperes rating);

/// 'red'; empty when the family is not coded by colour.
std::string fuse_colour_name(std::string_view family, Amperes rating, const Words& words);

/// The family in words: 'regular blade'.
std::string fuse_family_name(std::string_view family, const Words& words);

/// The fuse as a small picture with its rating on it; not to scale.
Block fuse_body(std::string_view family, Amperes rating);

}  // namespace loomfolio
