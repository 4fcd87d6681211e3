// SPDX-License-Identifier: MIT
// Symptoms between works and does not: a lamp with two switches, one that lights without flashing, a starter that turns slowly.
#include <doctest/doctest.h>

#include <algorithm>

#include "check/paths.h"
#include "sheets/fault_plan.h"
#include "sheets/sample_sheets.h"

using namespace loomfolio;

namespace {

const SolvedBuild& street() { return shared_sample("street-single").solved().front(); }

PartId part_called(const Build& build, const std::string& id) {
  for (std::size_t p = 0; p < build.parts.size(); ++p)
    if (build.parts[p].id == id) return PartId{static_cast<std::int32_t>(p)};
  FAIL("no part " << id);
  return {};
}

bool names(const FaultPlan& plan, const std::vector<int>& suspects, FaultType type, PartId part) {
  return std::any_of(suspects.begin(), suspects.end(), [&](int f) {
    const Fault& fault = plan.faults[static_cast<std::size_t>(f)];
    return fault.type == type && fault.inside.part == part;
  });
}

bool names_wire(const FaultPlan& plan, const std::vector<int>& suspects, const std::string& id) {
  return std::any_of(suspects.begin(), suspects.end(), [&](int f) {
    const Fault& fault = plan.faults[static_cast<std::size_t>(f)];
    return fault.wire.is_set() && fault.type == FaultType::bad_joint && plan.bench.build.wire(fault.wire).id == id;
  });
}

}  // namespace

TEST_CASE("the chart of the stop lamp asks for the other brake too, and each brake switch is looked at in some chart") {
  const FaultPlan& plan = shared_plan(street());
  const Build& build = plan.bench.build;
  const PartId tail = part_called(build, "tail"), front = part_called(build, "front-brake"), rear = part_called(build, "rear-brake");
  for (const PartId brake : {front, rear})
    CHECK(std::any_of(plan.charts.begin(), plan.charts.end(), [&](const FaultChart& chart) {
      return names(plan, chart.diagnosis.suspects, FaultType::switch_open, brake);
    }));
  int asked = 0;
  for (const FaultChart& chart : plan.charts)
    for (const OtherWay& way : chart.other_ways) {
      const auto moves = [&](PartId part) {
        return std::any_of(way.settings.begin(), way.settings.end(), [&](const Setting& s) { return s.actuator.part == part; });
      };
      if (std::none_of(way.works.begin(), way.works.end(), [&](InsideRef what) { return what.part == tail; }) || !moves(rear)) continue;
      ++asked;
      CHECK(moves(front));  // let go, or nothing is learnt
      CHECK(names(plan, way.suspects, FaultType::switch_open, front));
      CHECK_FALSE(names(plan, way.suspects, FaultType::switch_open, rear));
    }
  CHECK(asked == 1);
}

TEST_CASE("a flasher whose contact does not open: its lamps light and do not flash") {
  const FaultPlan& plan = shared_plan(street());
  const PartId flasher = part_called(plan.bench.build, "flasher");
  int rows = 0;
  for (const OddSymptom& odd : plan.odd)
    for (const Symptom& symptom : odd.symptoms) {
      if (symptom.expected != Expected::flashing || symptom.seen != Expected::on) continue;
      ++rows;
      CHECK(names(plan, odd.suspects, FaultType::contact_stuck, flasher));
    }
  CHECK(rows >= 4);  // two lamps at either side
}

TEST_CASE("a wire that touches a live one keeps its lamp lit, and stands where something is on that should be off") {
  const FaultPlan& plan = shared_plan(street());
  const Build& build = plan.bench.build;
  const auto is_crossed = [&](int f) { return plan.faults[static_cast<std::size_t>(f)].type == FaultType::wire_to_live; };
  for (const char* id : {"plate", "tail", "position", "turn-front-left"}) {
    CAPTURE(std::string(id));
    const PartId part = part_called(build, id);
    CHECK(std::any_of(plan.odd.begin(), plan.odd.end(), [&](const OddSymptom& odd) {
      const auto shows = [&](const Symptom& symptom) { return symptom.what.part == part && symptom.seen == Expected::on; };
      return std::any_of(odd.symptoms.begin(), odd.symptoms.end(), shows) &&
             std::any_of(odd.suspects.begin(), odd.suspects.end(), is_crossed);
    }));
  }
  CHECK(std::none_of(plan.burning.begin(), plan.burning.end(), is_crossed));
  // An earth wire against a live one is a short of the live one: it is told there.
  for (const Fault& fault : plan.faults)
    if (fault.type == FaultType::wire_to_live) CHECK(build.wire(fault.wire).id != "184");
}

TEST_CASE("a starter that only clicks or turns slowly has a chart: battery, joints of its cables, its seat on the engine") {
  for (const std::string& name : sample_names()) {
    CAPTURE(name);
    for (const SolvedBuild& solved : shared_sample(name).solved()) {
      const FaultPlan& plan = shared_plan(solved);
      const auto is_slow = [](const FaultChart& chart) {
        return chart.kind == Ailing::starter && chart.diagnosis.symptom.seen == Expected::dim;
      };
      const auto chart = std::find_if(plan.charts.begin(), plan.charts.end(), is_slow);
      const bool starts = std::any_of(plan.charts.begin(), plan.charts.end(), [](const FaultChart& c) { return c.kind == Ailing::starter; });
      REQUIRE((chart != plan.charts.end()) == starts);
      if (!starts) continue;
      const std::vector<int>& suspects = chart->diagnosis.suspects;
      CHECK(names(plan, suspects, FaultType::battery_flat, part_called(plan.bench.build, "battery")));
      const bool is_street = name == "street-single";
      for (const std::string wire : {is_street ? "1" : "C1", is_street ? "2" : "C2"}) {
        CAPTURE(wire);
        CHECK(names_wire(plan, suspects, wire));
      }
      // A bad joint of the engine's earth strap does not slow it: the frame's strap leads there too. The starter's own seat does.
      CHECK(std::any_of(suspects.begin(), suspects.end(), [&](int f) {
        const Fault& fault = plan.faults[static_cast<std::size_t>(f)];
        return fault.type == FaultType::earth_loose && fault.end.is_set();
      }));
      CHECK(chart->diagnosis.nodes.size() > 1);
    }
  }
}
