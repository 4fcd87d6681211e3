// SPDX-License-Identifier: MIT
#include "sheets/anchors.h"

#include "check/paths.h"
#include "sheets/names.h"

namespace loomfolio {

std::string wire_anchor(const Wire& wire) { return "wire " + wire.id; }

std::string fuse_anchor(const Build& build, InsideRef fuse) {
  return "fuse " + build.part(fuse.part).id + " " + inside_of(build, fuse).id;
}

std::string part_anchor(const Part& part) { return "part " + part.id; }

std::string splice_anchor(const Splice& splice) { return "splice " + splice.id; }

std::string earth_anchor(const Earth& earth) { return "earth " + earth.id; }

}  // namespace loomfolio
