// SPDX-License-Identifier: MIT
// The drawings of the print before, and those of this one. People learn a drawing: what a small change does not touch
// must be where it was.
#pragma once

#include <mutex>
#include <string>

#include "layout/placement_text.h"

namespace loomfolio {

class PlacementBook {
 public:
  PlacementBook() = default;
  explicit PlacementBook(Placements earlier) : earlier_(std::move(earlier)) {}

  /// The drawing of that name as it was, with what has changed worked in; nothing when there was none, or when too much has
  /// changed.
  std::optional<Laid> find_near(const Graph& graph) const;
  /// Whether a drawing of that name was too large for its page in the print before, and another way was taken.
  bool was_refused(const std::string& name) const;

  /// For the print after this one, under the graph's name.
  /// Both may be called by several threads.
  void keep(const Graph& graph, const Laid& laid);
  void refuse(const std::string& name);

  /// Those of this print. Where only one hook-up is printed, those of the others, as they were in the print before.
  Placements take(const std::string& only_variant) const;

 private:
  Placements earlier_, kept_;
  std::mutex keeping_;  ///< of `kept_`
};

}  // namespace loomfolio
