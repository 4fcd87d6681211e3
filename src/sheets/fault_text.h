// SPDX-License-Identifier: MIT
// How the boxes and ends of fault charts are set.
#pragma once

#include "sheets/text_flow.h"

namespace loomfolio {

inline constexpr TextStyle fault_print{FaceName::sans, Weight::regular, 9}, fault_bold{FaceName::sans, Weight::bold, 9};

inline Paragraph fault_paragraph(std::vector<Span> spans) { return {std::move(spans), Align::left, "P"}; }

}  // namespace loomfolio
