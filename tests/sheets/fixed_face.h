// SPDX-License-Identifier: MIT
#pragma once

#include "base/text_measure.h"

namespace loomfolio {

/// A face whose letters all have one width, so that pages in tests hang on no font.
inline const FixedTextMeasure fixed_face;

}  // namespace loomfolio
