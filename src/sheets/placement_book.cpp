// SPDX-License-Identifier: MIT
#include "sheets/placement_book.h"

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

void PlacementBook::keep(const Graph& graph, const Laid& laid) {
  const std::lock_guard keeping(keeping_);
  kept_[graph.name] = KeptDrawing{graph, laid};
}

void PlacementBook::refuse(const std::string& name) {
  const std::lock_guard keeping(keeping_);
  kept_.emplace(name, std::nullopt);
}

Placements PlacementBook::take(const std::string& only_variant) const {
  Placements all = kept_;
  if (only_variant.empty()) return all;
  for (const auto& [name, drawing] : earlier_)
    if (!name.starts_with(only_variant + "/")) all.emplace(name, drawing);
  return all;
}

}  // namespace loomfolio
