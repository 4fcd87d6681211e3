// SPDX-License-Identifier: MIT
// Small builds that several tests stand on; their currents follow by hand.
#pragma once

#include "solve/build_maker.h"

namespace loomfolio::test {

/// What is changed of fused_lamp().
struct FusedLamp {
  double rating = 10;  // A
  double area = 1;     // mm2, of the wire behind the fuse
  double metres = 1;   // its length
};

/// Battery of 12.6 V and 12 mohm, fuse, one wire, a lamp of 26.5 W at 13.5 V; returns through earths of 1 mohm. Wires:
/// strap, feed, the one behind the fuse, the lamp's return. One situation.
inline BuildMaker fused_lamp(const FusedLamp& what) {
  BuildMaker m;
  m.part("battery", {"+", "-"}, {battery(0.012)}, {TerminalForm::stud});
  m.part("fuse", {"in", "out"}, {fuse(what.rating)});
  m.part("lamp", {"+", "-"}, {lamp("lamp", {"+", "-"}, 26.5)});
  m.earth("E1", 0.001);
  m.earth("E2", 0.001);
  m.wire("battery.-", "E1", 16, 0.3);
  m.wire("battery.+", "fuse.in", 6, 0.15);
  m.wire("fuse.out", "lamp.+", what.area, what.metres);
  m.wire("lamp.-", "E2", 0.75, 0.3);
  m.situation("only");
  return m;
}

}  // namespace loomfolio::test
