// SPDX-License-Identifier: MIT
// The commands: each is a function from a request to an exit code, and strings stages together. One command a file.
#pragma once

#include "command_line.h"
#include "run.h"

namespace loomfolio {

int run_print(const Request& request, Surroundings& surroundings);
int run_check(const Request& request, Surroundings& surroundings);
int run_meter(const Request& request, Surroundings& surroundings);
int run_tables(const Request& request, Surroundings& surroundings);
int run_watch(const Request& request, Surroundings& surroundings);
int run_compare(const Request& request, Surroundings& surroundings);
int run_parts(const Request& request, Surroundings& surroundings);
int run_new(const Request& request, Surroundings& surroundings);
int run_bench_layout(const Request& request, Surroundings& surroundings);

}  // namespace loomfolio
