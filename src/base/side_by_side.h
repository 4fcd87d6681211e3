// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <functional>

namespace loomfolio {

/// Calls `work` for each index below `count`, once, on as many threads as there are processors, this one among them.
/// Returns when all are done; of what they threw, passes on what came of the lowest index. What the calls share must bear it.
void work_side_by_side(std::size_t count, const std::function<void(std::size_t)>& work);

}  // namespace loomfolio
