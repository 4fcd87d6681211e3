// SPDX-License-Identifier: MIT
// A switch's position in words.
#pragma once

#include <string>
#include <string_view>

#include "model/build.h"

namespace loomfolio {

/// Key of the words for the engine's state: 'engine running'.
std::string_view engine_key(EngineState engine);

/// 'Key switch: on'; several switches of one part keep their own names: 'Left switches, dip switch: main'.
std::string setting_text(const Build& build, const Setting& setting);

}  // namespace loomfolio
