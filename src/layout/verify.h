// SPDX-License-Identifier: MIT
// What must be true of every drawing, looked for in the finished geometry alone.
#pragma once

#include <string>
#include <vector>

#include "layout/laid.h"

namespace loomfolio {

/// The promises of a drawing. Soft qualities (crossings, bends, length) are not here.
enum class Promise : std::uint8_t {
  parts_apart,          ///< no two parts overlap
  parts_in_band,        ///< a part stands in its zone's band; references stand outside all bands
  bands_apart,
  wire_outside_parts,   ///< no wire inside a part, its own included
  wire_clear_of_parts,  ///< a wire keeps its distance from parts other than where it ends
  wire_attached,        ///< begins and ends exactly at its terminals
  wire_leaves_straight, ///< leaves along the terminal's direction for at least the clearance
  wire_square,          ///< level and upright in turn, nothing of length 0
  wire_simple,          ///< does not cross or touch itself
  nets_apart,           ///< different figures share no line and keep their distance
  nets_cross_square,    ///< they meet only where both run straight on
  joints_dotted,        ///< three ways of one figure meet only at a dot, never four
  connected_as_meant,   ///< re-read from lines and dots alone, the drawing is the netlist
  inside_frame,
  label_free,           ///< a label lies on no part, wire, hop or label
  label_near_own        ///< the wire nearest to a label is its own
};

struct Violation {
  Promise promise{};
  std::string what;
};

const char* name_of(Promise promise);

/// All violations, in the order of the promises; empty when the drawing is as it must be.
std::vector<Violation> verify(const Graph& graph, const Laid& laid);

}  // namespace loomfolio
