// SPDX-License-Identifier: MIT
// Which function a load serves, and the volts its loop may lose.
#pragma once

#include <string_view>

#include "model/build.h"

namespace loomfolio {

enum class WireFunction : std::uint8_t { starter, charging, lighting, ignition, control, other };

/// By what the element is and the group of its kind.
WireFunction wire_function_of(const Build& build, InsideRef inside);

Volts drop_limit(const DropLimits& limits, WireFunction function);

/// 'lighting': the key of its limit in the spec.
std::string_view word_of(WireFunction function);

}  // namespace loomfolio
