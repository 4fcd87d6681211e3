// SPDX-License-Identifier: MIT
#include "solve/machine_groups.h"

#include <algorithm>
#include <map>

namespace loomfolio {

template <class Visit>
void MachineGroups::each_node(const Build& build, Visit visit) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (const Inside& inside : build.parts[p].insides)
      for (const Inside::Node& node : inside.nodes)
        visit(p, inside, metal_.islands.root(metal_.point(build.parts[p], p, node)));
}

MachineGroups::MachineGroups(const Build& build)
    : metal_(join_plain_metal(build)), parts_(static_cast<int>(build.parts.size())) {
  std::vector<int> hubs{metal_.islands.root(metal_.frame)};
  each_node(build, [&](std::size_t, const Inside& inside, int root) {
    if (inside.type == InsideType::source) hubs.push_back(root);
  });
  std::map<int, int> first;  // by metal: the first part at it
  each_node(build, [&](std::size_t p, const Inside& inside, int root) {
    if (inside.type == InsideType::source || std::find(hubs.begin(), hubs.end(), root) != hubs.end()) return;
    parts_.join(first.try_emplace(root, static_cast<int>(p)).first->second, static_cast<int>(p));
  });
}

}  // namespace loomfolio
