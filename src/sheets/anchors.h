// SPDX-License-Identifier: MIT
// Names of places that sheets lead to.
#pragma once

#include <string>

#include "model/build.h"

namespace loomfolio {

/// A wire's row in the wire table ("wires").
std::string wire_anchor(const Wire& wire);
/// A fuse's row in the fuse chart ("fuses").
std::string fuse_anchor(const Build& build, InsideRef fuse);
/// A part's place on the terminal map ("terminals").
std::string part_anchor(const Part& part);
/// A splice's or earth's place ("earths").
std::string splice_anchor(const Splice& splice);
std::string earth_anchor(const Earth& earth);

}  // namespace loomfolio
