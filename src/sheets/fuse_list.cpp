// SPDX-License-Identifier: MIT
#include "sheets/fuse_list.h"

#include <algorithm>

namespace loomfolio {

std::vector<InsideRef> list_fuses(const Build& build) {
  const auto is_wired = [&](const Part& part, const Inside::Node& node) {
    return node.terminal < 0 || has_wire(build, part.terminals[static_cast<std::size_t>(node.terminal)]);
  };
  std::vector<InsideRef> fuses;
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Part& part = build.parts[p];
    for (std::size_t i = 0; i < part.insides.size(); ++i) {
      const Inside& inside = part.insides[i];
      if (inside.type != InsideType::fuse) continue;
      const bool is_used = std::all_of(inside.nodes.begin(), inside.nodes.end(),
                                       [&](const Inside::Node& node) { return is_wired(part, node); });
      if (is_used) fuses.push_back({PartId{static_cast<std::int32_t>(p)}, static_cast<int>(i)});
    }
  }
  return fuses;
}

}  // namespace loomfolio
