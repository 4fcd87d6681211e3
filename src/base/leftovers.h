// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <vector>

namespace loomfolio {

/// What is no longer needed but takes long to free, thousands of objects each: whoever holds it frees it, or leaves that to the end of the
/// process.
using Leftovers = std::vector<std::shared_ptr<const void>>;

}  // namespace loomfolio
