// SPDX-License-Identifier: MIT
// What a fuse protects, and what stops when it blows, in words.
#pragma once

#include <string>
#include <vector>

#include "model/words.h"
#include "sheets/figures.h"

namespace loomfolio {

/// 'everything', 'everything but the horn' where little goes on, else a list. Everything is every lamp, load, motor and
/// coil that works in some situation. A fuse that cuts the battery off while the generator feeds on: what stops with the
/// engine stopped, and with it running.
std::string stopped_text(const SolvedBuild& solved, const FuseStudy& study, const Words& words);

/// What the fuse's wires lead to: labels of the parts that hold the fuses behind it and of those that take current at
/// their ends, its own part left out; where none takes any, of those that give it. The study must have been made.
std::string protected_text(const SolvedBuild& solved, const FuseStudy& study, const Words& words);

}  // namespace loomfolio
