// SPDX-License-Identifier: MIT
#include "run.h"

#include <ostream>

namespace loomfolio {

int run(const std::vector<std::string>& arguments, Surroundings& surroundings) {
  surroundings.err << "loomfolio: no command works yet (" << arguments.size() << " arguments given)\n";
  return 2;
}

}  // namespace loomfolio
