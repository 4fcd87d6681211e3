// SPDX-License-Identifier: MIT
// Every kind of layouts/parts as a part of one build, for tests of what is drawn inside.
#pragma once

#include <string>
#include <vector>

#include "layout/inside_drawing.h"

namespace loomfolio::test {

struct KindBench {
  Build build;  ///< a part a kind, in the library's order, none wired
  std::string errors;
};
KindBench all_kinds();

/// Wire ends for every terminal; bodies bolted down.
std::vector<int> ends_for(const Kind& kind, int wires);

/// What is wrong with the drawing, one sentence each; empty when nothing is.
std::vector<std::string> faults_of(const Build& build, const Part& part, const PartDrawing& drawing);

}  // namespace loomfolio::test
