// SPDX-License-Identifier: MIT
// What parts, terminals, fuses and situations are called on the pages.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// The terminal in its kind; nothing for splices and earths.
const KindTerminal* kind_terminal_of(const Build& build, TerminalId terminal);

/// What owns the terminal, for people: a part's label, 'Splice S1', 'Earth E2'.
std::string owner_name(const Build& build, TerminalId terminal, const Words& words);

/// The terminal's own mark on its owner: '86'; empty for splices and earths.
std::string terminal_mark(const Build& build, TerminalId terminal);

/// Ids of wires, in the order given: '3, 4, 17'.
std::string wire_ids(const Build& build, const std::vector<WireId>& wires);

/// 'Fuse box, fuse 3', 'Starter relay, main fuse'; the part's label alone where its fuse has no name.
std::string fuse_name(const Build& build, InsideRef fuse);

/// A part's label, with the element's own name when it has several that matter: 'Headlamp, dip'.
std::string inside_name(const Build& build, InsideRef ref);

/// An element of a part and what is said of it, if anything: 'flashes'.
struct NamedElement {
  InsideRef what;
  std::string note;
};

/// 'Headlamp: dip, main; Horn': elements of one part stand together, in the order given; parts with nothing to tell
/// apart stand alone.
std::string list_elements(const Build& build, const std::vector<NamedElement>& elements);

/// A switch as a person finds it: its part's label, with its own name where the part holds several.
std::string switch_name(const Build& build, InsideRef ref);

/// Values for {earthed} and {live}, the battery's poles as this machine has them, and for {earthed_off}, which cables to
/// take off the earthed one: 'all cables (C3, C4) off the negative (−) pole'.
std::vector<std::pair<std::string, std::string>> pole_names(const Build& build, const Words& words);

/// Its label, or its name when it has none.
const std::string& situation_name(const Situation& situation);

}  // namespace loomfolio
