// SPDX-License-Identifier: MIT
// From a solved situation to how a diagram is drawn in it: wires that carry current, wires that only hold volts,
// contacts as they stand, lamps lit, coils pulled in, figures. Nothing is measured here.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"
#include "sheets/diagram_draw.h"
#include "solve/solution.h"

namespace loomfolio {

/// Less than this is no current to a person: what a sleeping control unit and its inputs take.
inline constexpr Amperes least_flow{0.005};
/// In a return, less than this counts only where a consumer that is fed sends it: see is_stray_flow.
inline constexpr Amperes least_return{0.05};
/// Share of the nominal voltage below which volts are printed as none: 0.2 V of 12 V.
inline constexpr double least_volts_share = 1.0 / 60;
/// Share of the nominal voltage from which a wire without current is said to hold volts. A drop in a return is less.
inline constexpr double waiting_share = 0.2;

/// What flows in the wire, without sign; effective where it alternates.
Amperes flow_in_wire(const Solution& solution, WireId wire);

/// Whether the wire holds no volts and carries less than `least_return`, of which no consumer that is fed sends a tenth
/// part or more: it is what volts between two earths drive backwards through whatever joins them, no one's doing.
bool is_stray_flow(const Build& build, const Solution& solution, WireId wire);

/// How the wire is found in that solution. Alternating current counts, stray current does not.
Liveness liveness_of(const Build& build, const Solution& solution, WireId wire);

/// The element's joints as it stands: contacts by the solution, switches by the situation, fuses and links always.
std::vector<NodeJoint> joints_of(const Build& build, const Situation& situation, const Solution& solution,
                                 InsideRef element);

WireState make_wire_state(const Build& build, const Solution& solution, WireId wire);
DiagramState make_diagram_state(const Build& build, const Situation& situation, const Solution& solution);
PartState make_part_state(const Build& build, const Situation& situation, const Solution& solution, PartId part);

/// '2.6 mA', '8.4 A'.
std::string print_flow(Amperes amperes);
/// '12.4 V', '0.3 V'.
std::string print_terminal_volts(Volts volts);
/// The same, but '0 V' for what no one asks for: a small drop in a return.
std::string print_plain_volts(Volts volts, Volts nominal);

}  // namespace loomfolio
