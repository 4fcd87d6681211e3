// SPDX-License-Identifier: MIT
// How one action of the assembly reads, and the picture beside it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "sheets/assembly_plan.h"
#include "sheets/draw.h"
#include "sheets/folio.h"
#include "sheets/panel.h"
#include "sheets/text_flow.h"

namespace loomfolio {

/// Width of the picture beside a step.
inline constexpr Millimetres step_picture_width{40};

/// One sentence; what helps to do it; a picture of what the action handles; a warning that stands before it.
struct ShownAction {
  std::vector<Span> sentence;
  std::vector<std::string> notes;
  Block picture;
  std::optional<Panel> warning = std::nullopt;
};

ShownAction show_action(const SheetContext& context, const Action& action);

/// 'sheet 53': of the tests, at that anchor. All hook-ups share them.
std::string sheet_of_tests(const SheetContext& context, std::string_view anchor);

}  // namespace loomfolio
