// SPDX-License-Identifier: MIT
// Without its length a wire's drop, its place in the cut list and its part in a short cannot be told. One finding a
// build.

#include "check/rules.h"

namespace loomfolio::rules {

void length_missing(const Facts& facts, Diagnostics& findings) {
  std::size_t missing = 0;
  const Wire* first = nullptr;
  for (const Wire& wire : facts.build.wires) {
    if (wire.length) continue;
    ++missing;
    if (!first) first = &wire;
  }
  if (!first) return;
  const std::string count = std::to_string(missing);
  findings.push_back(make_diagnostic(
      DiagnosticId::length_missing, first->origin.table,
      missing == 1
          ? "wire `" + first->id + "` has no length, so its drop is that of an assumed one"
          : count + " wires have no length, `" + first->id + "` first, so their drop is that of an assumed one",
      "measure along the loom with a string and add `length`"));
}

}  // namespace loomfolio::rules
