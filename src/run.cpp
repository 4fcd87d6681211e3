// SPDX-License-Identifier: MIT
#include "run.h"

#include <ostream>

#include "command_line.h"
#include "commands/command.h"

namespace loomfolio {

int run(const std::vector<std::string>& arguments, Surroundings& surroundings) {
  const ParsedLine parsed = parse_command_line(arguments, LOOMFOLIO_VERSION);
  if (!parsed.is_request) {
    (parsed.exit_code == 0 ? surroundings.out : surroundings.err) << parsed.text;
    return parsed.exit_code;
  }
  switch (parsed.request.command) {
    case CommandName::print: return run_print(parsed.request, surroundings);
    case CommandName::check: return run_check(parsed.request, surroundings);
    case CommandName::meter: return run_meter(parsed.request, surroundings);
    case CommandName::tables: return run_tables(parsed.request, surroundings);
    case CommandName::watch: return run_watch(parsed.request, surroundings);
    case CommandName::compare: return run_compare(parsed.request, surroundings);
    case CommandName::parts: return run_parts(parsed.request, surroundings);
    case CommandName::new_spec: return run_new(parsed.request, surroundings);
    case CommandName::bench_layout: return run_bench_layout(parsed.request, surroundings);
  }
  return 2;
}

}  // namespace loomfolio
