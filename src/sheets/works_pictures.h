// SPDX-License-Identifier: MIT
// The inside of a part beside the faces that hold its terminals, each terminal joined by a thin line to the same
// terminal on its face.
#pragma once

#include "sheets/folio.h"
#include "sheets/text_flow.h"

namespace loomfolio {

struct WorksPictures {
  Block block;
  bool is_roomy = false;  ///< neither inside nor faces had to be made smaller to find room side by side
};

/// That wide; terminals that no face holds, or that the inside does not show, are not joined.
WorksPictures make_works_pictures(const SheetContext& context, PartId part, Millimetres width, const TypeSetting& setting);

}  // namespace loomfolio
