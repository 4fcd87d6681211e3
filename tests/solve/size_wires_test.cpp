// SPDX-License-Identifier: MIT
#include "solve/size_wires.h"

#include <doctest/doctest.h>

#include "solve/drops.h"
#include "solve/protection.h"
#include "solve/small_builds.h"

using namespace loomfolio;
using namespace loomfolio::test;

namespace {

BuildMaker lamp_loop(double watts, double metres, double rating) {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)}, {TerminalForm::stud});
  m.part("fuse", {"in", "out"}, {fuse(rating)});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, watts)});
  m.wire("battery.+", "fuse.in", 6, 0.1);
  m.wire("fuse.out", "lamp.+", 0, metres);
  m.wire("lamp.-", "battery.-", 0, metres);
  m.situation("only");
  return m;
}

}  // namespace

TEST_CASE("a small load gets the thinnest wire on sale") {
  const SizingResult r = size_wires(lamp_loop(5.5, 1, 5).build);
  REQUIRE(r.chosen.size() == 2);
  CHECK(r.build.wires[1].size_text == "0.5 mm2");
  CHECK(!r.build.wires[1].is_auto_size);
  CHECK(r.chosen[0].reason == SizeReason::least);
  CHECK(r.unmet_wires.empty());
  CHECK(r.unmet_drops.empty());
}

TEST_CASE("a headlamp four metres off: thick enough that no more than the limit is lost, and no thicker") {
  const BuildMaker m = lamp_loop(68, 4, 15);
  const SizingResult r = size_wires(m.build);
  const auto loss = [](const Build& build) { return find_loop_drops(build, solve_all(build)).front().total.number(); };
  CHECK(loss(r.build) <= 0.6);
  CHECK(r.chosen[0].reason == SizeReason::drop);
  // One size less on either wire would lose too much; on the return it would lift the lamp's earth.
  for (const std::size_t w : {std::size_t{1}, std::size_t{2}}) {
    Build thinner = r.build;
    const auto& sizes = sizes_on_sale(UnitSystem::metric);
    std::size_t i = 0;
    while (sizes[i].area < thinner.wires[w].area) ++i;
    REQUIRE(i > 0);
    thinner.wires[w].area = sizes[i - 1].area;
    const bool is_return = w == 2;
    CHECK((loss(thinner) > 0.6 || (is_return && !find_earth_lifts(thinner, solve_all(thinner)).empty())));
  }
}

TEST_CASE("a large fuse asks for a wire that it saves") {
  const BuildMaker m = lamp_loop(5.5, 0.5, 30);
  const SizingResult r = size_wires(m.build);
  CHECK(r.chosen[0].reason == SizeReason::protection);
  const ProtectionStudy study = study_protection(r.build, solve_all(r.build));
  CHECK(study.wires[1].verdict <= WireVerdict::opens_slowly);
  CHECK(study.wires[1].ampacity.number() >= 30);
}

TEST_CASE("terminals set least and most; what cannot be met is said") {
  BuildMaker m = lamp_loop(120, 6, 20);
  m.build.kinds[2].terminals[0].takes = Range<SquareMillimetres>{SquareMillimetres(0.75), SquareMillimetres(1.5)};
  m.build.kinds[2].terminals[1].takes = Range<SquareMillimetres>{SquareMillimetres(0.75), SquareMillimetres(1.5)};
  const SizingResult r = size_wires(m.build);
  CHECK(r.build.wires[1].area.number() == 1.5);
  CHECK(!r.unmet_drops.empty());
}

TEST_CASE("the battery's earth strap is as thick as its live cable") {
  BuildMaker m = fused_lamp({10, 1.0, 1.0});
  m.build.wires[0].area = SquareMillimetres(0);  // battery.- to E1; the live cable has 6 mm2
  const SizingResult r = size_wires(m.build);
  CHECK(r.build.wires[0].area.number() == 6);
  REQUIRE(r.chosen.size() == 1);
  CHECK(r.chosen[0].reason == SizeReason::strap);
}

TEST_CASE("a part's earth stands no more than 0.2 V above the battery's, and the return is no thicker than that takes") {
  // 10 A over 3 m: 0.75 mm2 loses 0.9 V of it, 4 mm2 0.16 V (18.1 and 4.61 ohm/km at 20 degC, IEC 60228 class 2).
  BuildMaker m = lamp_loop(120, 3, 15);
  m.build.electrics.drop_limits.lighting = Volts(5);
  const auto lifts = [](const Build& build) { return find_earth_lifts(build, solve_all(build)); };
  const SizingResult r = size_wires(m.build);
  CHECK(lifts(r.build).empty());
  CHECK(r.unmet_lifts.empty());
  CHECK(r.chosen[1].reason == SizeReason::earth);
  const auto& sizes = sizes_on_sale(UnitSystem::metric);
  std::size_t i = 0;
  while (sizes[i].area < r.build.wires[2].area) ++i;
  REQUIRE(i > 0);
  Build thinner = r.build;
  thinner.wires[2].area = sizes[i - 1].area;
  REQUIRE(lifts(thinner).size() == 1);
  CHECK(lifts(thinner)[0].volts > most_earth_lift);
  CHECK(lifts(thinner)[0].volts.number() ==
        doctest::Approx(std::abs(solve_all(thinner)[0].terminal_volts[lifts(thinner)[0].terminal.at()].number())));
}

TEST_CASE("an earth that no wire its terminals take can hold down is said") {
  BuildMaker m = lamp_loop(120, 6, 15);
  m.build.electrics.drop_limits.lighting = Volts(5);
  for (KindTerminal& terminal : m.build.kinds[2].terminals)
    terminal.takes = Range<SquareMillimetres>{SquareMillimetres(0.75), SquareMillimetres(1.5)};
  const SizingResult r = size_wires(m.build);
  CHECK(r.build.wires[2].area.number() == 1.5);
  REQUIRE(r.unmet_lifts.size() == 1);
  CHECK(r.unmet_lifts[0].volts.number() > 0.2);
}

TEST_CASE("hook-ups that share a wire get it in one size, the thickest that one of them needs") {
  std::vector<Build> builds = {lamp_loop(26.5, 1, 5).build, lamp_loop(300, 1, 5).build, lamp_loop(26.5, 1, 5).build};
  const double alone = size_wires(builds[0]).build.wires[1].area.number(),
               strong = size_wires(builds[1]).build.wires[1].area.number();
  REQUIRE(alone < strong);
  size_wires_of_all(builds);
  for (const Build& build : builds) {
    CHECK(build.wires[1].area.number() == strong);
    CHECK(build.wires[1].size_text == builds[1].wires[1].size_text);
    CHECK(!build.wires[1].is_auto_size);
  }
}

TEST_CASE("what hook-ups make thicker for each other, and the battery's strap, leave no loop or earth over its limit") {
  // Three lamps on one auto feed and one auto return, strap and live cable auto too: each hook-up has other lamps, so that a wire
  // made thick for one sends more through a wire that another one sized.
  const auto hook_up = [](double first, double second, double metres) {
    BuildMaker m;
    m.part("battery", {"+", "-"}, {battery(0.012)}, {TerminalForm::stud});
    m.part("fuse", {"in", "out"}, {fuse(20)});
    m.part("one", {"+", "-"}, {lamp("lamp", {"+", "-"}, first)});
    m.part("two", {"+", "-"}, {lamp("lamp", {"+", "-"}, second)});
    m.splice("live");
    m.splice("back");
    m.earth("E1");
    m.wire("battery.-", "E1", 0, 0.6);
    m.wire("battery.+", "fuse.in", 0, 0.6);
    m.wire("fuse.out", "live", 0, metres);
    m.wire("live", "one.+", 0, 1.5);
    m.wire("live", "two.+", 0, 2);
    m.wire("one.-", "back", 0, 1);
    m.wire("two.-", "back", 0, 1.5);
    m.wire("back", "E1", 0, metres);
    m.situation("only");
    return m.build;
  };
  int sized = 0;
  for (const double first : {5.5, 26.5, 68.0})
    for (const double second : {5.5, 26.5, 68.0})
      for (const double metres : {0.5, 2.0}) {
        std::vector<Build> builds = {hook_up(first, second, metres), hook_up(second, 5.5, metres), hook_up(26.5, 26.5, metres)};
        size_wires_of_all(builds);
        for (const Build& build : builds) {
          const auto solutions = solve_all(build);
          CHECK(find_earth_lifts(build, solutions).empty());
          for (const LoopDrop& drop : find_loop_drops(build, solutions)) CHECK(drop.total <= drop.limit);
          for (std::size_t w = 0; w < build.wires.size(); ++w) CHECK(build.wires[w].area == builds[0].wires[w].area);
          CHECK(build.wires[0].area >= build.wires[1].area);
          ++sized;
        }
      }
  CHECK(sized == 54);
}

TEST_CASE("an imperial document gets gauges") {
  BuildMaker m = lamp_loop(26.5, 1, 5);
  m.build.document.units = UnitSystem::imperial;
  const SizingResult r = size_wires(m.build);
  CHECK(r.build.wires[1].size_text.ends_with("AWG"));
}

TEST_CASE("starter loop: SAE J541 allows 0.2 V for 100 A, two milliohm; the sum of the loop by hand") {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)}, {TerminalForm::stud});
  Element motor = element(InsideType::motor, "motor", {"+", "-"});
  motor.inside.current = Amperes(120);
  motor.inside.at_voltage = Volts(10);
  m.part("starter", {"+", "-"}, {motor}, {TerminalForm::stud});
  m.build.kinds.back().group = "starting";
  m.wire("battery.+", "starter.+", 25, 0.8);
  m.wire("starter.-", "battery.-", 25, 0.6);
  m.situation("cranking", {}, EngineState::cranking);
  const auto drops = find_loop_drops(m.build, solve_all(m.build));
  REQUIRE(drops.size() == 1);
  CHECK(drops[0].function == DropFunction::starter);
  // 1.4 m of 0.78 mohm/m, four studs of 0.05 mohm, four crimps as long as 20 mm: 1.35 mohm at 20 degC.
  const double amperes = 12.6 / (0.012 + 10.0 / 120 + 0.00135);
  CHECK(drops[0].total.number() == doctest::Approx(0.00135 * amperes).epsilon(0.02));
  CHECK(drops[0].total.number() < 0.002 * amperes);
  CHECK((drops[0].feed + drops[0].back).number() == doctest::Approx(drops[0].total.number()));
}
