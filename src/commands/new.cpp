// SPDX-License-Identifier: MIT
// `new`: a commented spec that checks clean, for a first spec of one's own.
#include <ostream>

#include "commands/command.h"

namespace loomfolio {

int run_new(const Request& request, Surroundings& surroundings) {
  std::string why;
  const std::string source = surroundings.share_folder + "/layouts/starter/spec.toml";
  const std::optional<std::string> text = surroundings.files.read(source, why);
  if (!text) {
    surroundings.err << "loomfolio: cannot read `" << source << "`: " << why << "\n";
    return 2;
  }
  if (request.spec == "-") {
    surroundings.out << *text;
    return 0;
  }
  if (surroundings.files.read(request.spec, why)) {
    surroundings.err << "loomfolio: `" << request.spec << "` is there already; it is as it was\n"
                     << "hint: give another name\n";
    return 2;
  }
  if (!surroundings.files.write(request.spec, *text, why)) {
    surroundings.err << "loomfolio: cannot write `" << request.spec << "`: " << why << "\n";
    return 2;
  }
  surroundings.err << "Change it, then: loomfolio check " << request.spec << "\n";
  return 0;
}

}  // namespace loomfolio
