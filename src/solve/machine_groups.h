// SPDX-License-Identifier: MIT
// Which parts can have to do with each other at all.
#pragma once

#include "solve/plain_metal.h"

namespace loomfolio {

/// Parts that hang together by more than the battery's poles and the frame.
class MachineGroups {
 public:
  explicit MachineGroups(const Build& build);
  /// Equal for parts of one group.
  int of(PartId part) { return parts_.root(part.index); }

 private:
  template <class Visit>
  void each_node(const Build& build, Visit visit);

  PlainMetal metal_;
  Islands parts_;
};

}  // namespace loomfolio
