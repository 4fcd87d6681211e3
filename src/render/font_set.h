// SPDX-License-Identifier: MIT
// What a FontSet keeps, for the rest of this room.
#pragma once

#include <memory>
#include <string>

#include "render/faces.h"
#include "render/render.h"
#include "render/shaper.h"

namespace loomfolio {

struct FontSet::Inside {
  FaceList faces;
  std::string error;
  std::unique_ptr<Shaper> shaper;  ///< null when `error` says why
  FixedTextMeasure rough;
};

}  // namespace loomfolio
