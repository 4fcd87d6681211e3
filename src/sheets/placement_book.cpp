// SPDX-License-Identifier: MIT
#include "sheets/placement_book.h"

#include <algorithm>

namespace loomfolio {

std::optional<Laid> PlacementBook::find_near(const Graph& graph) const {
  const auto found = earlier_.find(graph.name);
  if (found == earlier_.end() || !found->second) return std::nullopt;
  return lay_out_near(graph, found->second->laid, found->second->graph);
}

bool PlacementBook::was_refused(const std::string& name) const {
  const auto found = earlier_.find(name);
  return found != earlier_.end() && !found->second;
}

Placements PlacementBook::take(const std::vector<std::string>& not_printed) const {
  Placements all = kept_;
  for (const auto& [name, drawing] : earlier_)
    if (std::any_of(not_printed.begin(), not_printed.end(),
                    [&, &drawn = name](const std::string& prefix) { return drawn.starts_with(prefix); }))
      all.emplace(name, drawing);
  return all;
}

}  // namespace loomfolio
