// SPDX-License-Identifier: MIT
// What rules look up, worked out once a build.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "check/paths.h"
#include "diag/diagnostic.h"
#include "model/build.h"
#include "solve/protection.h"
#include "solve/solution.h"

namespace loomfolio {

struct Facts {
  const Build& build;
  const std::vector<Solution>& solutions;     ///< one a situation; those that did not settle are among them
  std::vector<std::vector<WireId>> wires_at;  ///< by TerminalId
  Paths paths;
  std::optional<ProtectionStudy> protection;  ///< of the settled situations; set when any settled
  std::optional<Solution> at_rest;            ///< every switch at rest, engine stopped; set when solutions are given
};

struct CheckInput;
Facts gather_facts(const CheckInput& input);

/// One end of a wire at a part's terminal.
struct WireEnd {
  WireId wire;
  TerminalId terminal;
  const Part* part = nullptr;
  const KindTerminal* kind_terminal = nullptr;
};

/// Calls `visit` for each end of each wire that stands at a part (not at a splice or an earth), in wire order.
void each_part_end(const Facts& facts, const std::function<void(const WireEnd&)>& visit);

/// Calls `visit` for each element inside a part, in order.
void each_inside(const Build& build, const std::function<void(InsideRef, const Part&, const Inside&)>& visit);

/// Sizes read off different tables may differ by this factor and still be the same: 18 AWG is 0.82 or 0.85 mm2.
constexpr double size_tolerance = 1.05;

/// The two sides of one way through a connector, with the wires at each.
struct CavityPair {
  TerminalId a, b;
  const std::vector<WireId>&wires_a, &wires_b;
};
void each_cavity_pair(const Facts& facts, const std::function<void(const CavityPair&)>& visit);

/// Solutions that settled, with their situation.
struct SettledSituation {
  const Situation* situation;
  const Solution* solution;
};
std::vector<SettledSituation> settled_situations(const Facts& facts);

/// A rating may be passed by this factor before a rule speaks: no figure here is better known than that.
constexpr double rating_tolerance = 1.02;

/// The settled situation in which an element carries most, or has most volts over it; both without sign.
struct Peak {
  const Situation* situation = nullptr;
  Amperes amperes;
  Volts volts;
};
Peak greatest_amperes(const Facts& facts, InsideRef inside);
Peak greatest_volts(const Facts& facts, InsideRef inside);

/// Current that a battery gives; negative while it is charged.
Amperes given_by_source(const Facts& facts, const Solution& solution, InsideRef source);

/// Volts of the battery, without sign, or of several in series; nothing when the build has none, or several side by side.
std::optional<Volts> battery_volts(const Facts& facts, const Solution& solution);

/// Where the spec gives the rating of a fuse: `rating` of an in-line fuse, `f2` of a box, `main_fuse` of a starter
/// relay; else the part.
Where rating_place(const Part& part, const Inside& fuse);

// How findings name things. All with their backticks.
std::string say_wire(const Build& build, WireId wire);              ///< wire `12`
std::string say_terminal(const Build& build, TerminalId terminal);  ///< `relay.86`
std::string say_inside(const Build& build, InsideRef inside);       ///< `headlamp.dip`, or `horn` when it holds one
std::string say_part(const Part& part);                             ///< part `horn`
std::string say_situation(const Situation& situation);              ///< situation `night`
std::string say(Amperes a);                                         ///< 4.2 A
std::string say(Volts v);                                           ///< 11.85 V
std::string say(SquareMillimetres a);                               ///< 2.5 mm2
std::string say(Millimetres l);                                     ///< 2.4 mm
std::string say(Metres l);                                          ///< 350 mm

/// A finding with notes, for chains of calls.
void add_note(Diagnostic& diagnostic, Where where, std::string message);

}  // namespace loomfolio
