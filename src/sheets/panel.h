// SPDX-License-Identifier: MIT
// Caution panels: a boxed panel with a signal word by ANSI Z535.6, the alert triangle where a person may be hurt, then
// what the hazard is, what happens, and how to avoid it. Word and triangle carry the meaning; colour only helps.
#pragma once

#include <string>
#include <vector>

#include "sheets/draw.h"
#include "sheets/text_flow.h"

namespace loomfolio {

enum class Signal : std::uint8_t {
  danger,   ///< will kill or injure badly if not avoided
  warning,  ///< could kill or injure badly
  caution,  ///< could injure lightly
  notice,   ///< damage to things; no triangle
};

struct Panel {
  Signal signal = Signal::warning;
  std::string hazard;              ///< what it is
  std::string outcome;             ///< what happens
  std::vector<std::string> avoid;  ///< how to avoid it, an action a line
};

/// The panel at that width.
Block make_panel(const Panel& panel, Millimetres width, const Words& words, const TypeSetting& setting);

/// Triangle, the word and one line, for a warning that stands in full elsewhere.
Block make_reminder(const std::string& text, Millimetres width, const Words& words, const TypeSetting& setting);

/// The bar with triangle and signal word alone.
Block signal_bar(Signal signal, Millimetres width, const Words& words, const TypeSetting& setting);

/// The panel whose sentences are `key`_hazard, `key`_outcome, `key`_avoid_1, _avoid_2 ... of the words; `values` fill
/// their places.
Panel panel_from_words(const Words& words, Signal signal, const std::string& key,
                       const std::vector<std::pair<std::string, std::string>>& values = {});

/// The alert triangle alone, that high.
Block alert_triangle(Millimetres height, Colour triangle, Colour mark);

}  // namespace loomfolio
