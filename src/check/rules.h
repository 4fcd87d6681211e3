// SPDX-License-Identifier: MIT
// The rules by name, for their own files and for the list in rules.cpp.
#pragma once

#include "check/facts.h"
#include "check/feed.h"
#include "diag/diagnostic.h"

namespace loomfolio::rules {

#define RULE(name) void name(const Facts& facts, Diagnostics& findings);
#include "check/rules.def"
#undef RULE

}  // namespace loomfolio::rules
