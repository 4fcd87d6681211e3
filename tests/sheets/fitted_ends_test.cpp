// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <algorithm>

#include "base/text_measure.h"
#include "sheets/assembly_plan.h"
#include "sheets/cavity_plugs.h"
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

TEST_CASE("a sealed cavity at which no wire ends needs a plug, unless the machine brings its connector") {
  const SampleFolio& sample = shared_sample("driving-lamp-kit");
  const SolvedBuild& given = sample.solved().front();
  Build build = given.build;
  const SolvedBuild solved{build, given.solutions, given.study, given.wire_loads};
  const FixedTextMeasure measure;
  const FolioInput input = sample.input(measure);
  const SheetContext context{input, solved, {}, {}};
  CHECK(find_empty_cavities(context).empty());
  CHECK_FALSE(leaves_cavities_empty(context));
  // The left lamp's return does without the second way.
  std::vector<Wire>& wires = build.wires;
  wires.erase(std::remove_if(wires.begin(), wires.end(),
                             [&](const Wire& wire) {
                               return given.build.terminal(wire.from).name == "left-plug.b2" ||
                                      given.build.terminal(wire.to).name == "left-plug.b2";
                             }),
              wires.end());
  const std::vector<EmptyCavities> found = find_empty_cavities(context);
  REQUIRE(found.size() == 1);
  CHECK(found.front().marks == std::vector<std::string>{"b2"});
  for (Part& part : build.parts)
    if (part.label == found.front().part) part.provided = Provider::machine;
  CHECK(find_empty_cavities(context).empty());
  const auto set_plugs = [&](PlugSource source) {
    for (Part& part : build.parts)
      if (part.label == found.front().part) part.plugs = source;
  };
  set_plugs(PlugSource::bag);  // the kit brings plugs for a connector of the machine
  REQUIRE(find_empty_cavities(context).size() == 1);
  CHECK(find_empty_cavities(context).front().plugs == PlugSource::bag);
  set_plugs(PlugSource::nowhere);
  REQUIRE(find_empty_cavities(context).size() == 1);
  CHECK(find_empty_cavities(context).front().plugs == PlugSource::nowhere);
  set_plugs(PlugSource::fitted);
  CHECK(find_empty_cavities(context).empty());
  CHECK(leaves_cavities_empty(context));
}
