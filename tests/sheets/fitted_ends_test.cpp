// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <algorithm>

#include "sheets/assembly_plan.h"
#include "sheets/fitted_ends.h"
#include "sheets/sample_sheets.h"

using namespace loomfolio;

TEST_CASE("wires that share a fitting are counted as one, with the metal of all") {
  const SampleFolio& kit = shared_sample("electric-start-kit");
  const Build& build = kit.solved().back().build;
  const std::vector<FittedEnd> ends = find_fitted_ends(build);
  const auto at = [&](const std::string& terminal) {
    return std::count_if(ends.begin(), ends.end(),
                         [&](const FittedEnd& end) { return build.terminal(end.terminal).name == terminal; });
  };
  // Key switch 15 feeds two wires of the kit through one contact: 0.75 and 1 mm2.
  REQUIRE(at("key.15") == 1);
  const auto shared = std::find_if(ends.begin(), ends.end(), [&](const FittedEnd& end) {
    return build.terminal(end.terminal).name == "key.15";
  });
  CHECK(shared->wires.size() == 2);
  CHECK(shared->area.number() == doctest::Approx(1.75));
  // Rings of one bolt, and wires in a barrel, are each for themselves.
  CHECK(at("battery.-") == 2);
  CHECK(at("S1") == 3);
  // No end of the kit's wires is forgotten.
  std::size_t wires = 0, wanted = 0;
  for (const FittedEnd& end : ends) wires += end.wires.size();
  for (const Wire& wire : build.wires) wanted += is_joined_by_fitter(wire) ? 2 : 0;
  CHECK(wires == wanted);
}
