// SPDX-License-Identifier: MIT
// `watch`: prints at once, then whenever the spec's text has changed and stood still for one look: an editor that is still
// writing is not printed half. A spec that is gone for a moment, as some editors leave it, is waited for.
#include <ostream>

#include "commands/command.h"

namespace loomfolio {

int run_watch(const Request& request, Surroundings& surroundings) {
  if (request.spec == "-" || request.output == "-") {
    surroundings.err << "loomfolio: only a file can be watched, and printed to a file\nhint: `loomfolio print` takes `-`\n";
    return 2;
  }
  std::string why;
  std::optional<std::string> seen = surroundings.files.read(request.spec, why), printed;
  if (!seen) {
    surroundings.err << "loomfolio: cannot read `" << request.spec << "`: " << why << "\n";
    return 2;
  }
  int code = 0;
  do {
    std::optional<std::string> text = surroundings.files.read(request.spec, why);
    if (text && text == seen && text != printed) {
      printed = text;
      code = run_print(request, surroundings);
      surroundings.leftovers.clear();
      surroundings.err << "loomfolio: " << (code == 2 ? "not printed" : code == 1 ? "errors found" : "printed")
                       << "; waiting for the next save of `" << request.spec << "`, Ctrl-C ends\n"
                       << std::flush;
    }
    seen = std::move(text);
  } while (surroundings.wait && surroundings.wait());
  return code;
}

}  // namespace loomfolio
