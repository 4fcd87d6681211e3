// SPDX-License-Identifier: MIT
// Ways through a solved situation, on the street single: what feeds a load, and where a starved one's way stands open.
#include "check/ways.h"

#include "check/check.h"
#include "doctest/doctest.h"
#include "model/shipped.h"

using namespace loomfolio;
using test::shipped;
using test::source_folder;

namespace {

struct SolvedMachine {
  Sources sources;
  Build build;
  std::vector<Solution> solutions;
};

const SolvedMachine& machine() {
  static const SolvedMachine loaded = [] {
    SolvedMachine m;
    std::string why;
    const auto text = DiskFiles().read(source_folder + "/samples/street-single.toml", why);
    Diagnostics findings;
    m.sources = shipped().sources;
    m.build = read_spec("street-single.toml", *text, shipped().library, m.sources, findings).builds.front();
    m.solutions = solve_all(m.build);
    return m;
  }();
  return loaded;
}

InsideRef element(const std::string& part, const std::string& id) {
  const Build& build = machine().build;
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    for (std::size_t i = 0; i < build.parts[p].insides.size(); ++i)
      if (build.parts[p].id == part && build.parts[p].insides[i].id == id)
        return {{static_cast<std::int32_t>(p)}, static_cast<int>(i)};
  FAIL("no element ", part, ".", id);
  return {};
}

LoadWays ways_of(const std::string& part, const std::string& id, const std::string& situation) {
  const SolvedMachine& m = machine();
  const Facts facts = gather_facts({m.build, m.solutions});
  for (std::size_t s = 0; s < m.build.situations.size(); ++s)
    if (m.build.situations[s].name == situation)
      return find_load_ways({facts, m.build.situations[s], m.solutions[s]}, element(part, id));
  FAIL("no situation ", situation);
  return {};
}

std::string say_supply(const LoadWays& ways) {
  const SolvedMachine& m = machine();
  return say_way(m.build, trace_paths(m.build), ways.to_supply);
}

}  // namespace

TEST_CASE("a lit lamp's way names every switch, relay and fuse back to the battery") {
  const LoadWays ways = ways_of("headlamp", "dip", "ride-dipped");
  CHECK(ways.to_supply.open.empty());
  CHECK(say_supply(ways) == "`left.dip`, `lamp-relay.make`, `fuses-battery.f2`, `starter-relay.main`");
  CHECK(ways.to_earth.found);
  CHECK(ways.to_earth.open.empty());
}

TEST_CASE("a dark lamp's way names what stands open, and nothing else") {
  const LoadWays ways = ways_of("headlamp", "main", "ride-dipped");
  REQUIRE(ways.to_supply.open.size() == 1);
  CHECK(ways.to_supply.open.front() == element("left", "dip"));
  CHECK(ways.to_earth.open.empty());
}

TEST_CASE("with the key off, the way of the ignition coil stands open at the main relay") {
  const LoadWays ways = ways_of("coil", "primary", "parked");
  REQUIRE(ways.to_supply.open.size() == 1);
  CHECK(ways.to_supply.open.front() == element("main-relay", "make"));
}
