// SPDX-License-Identifier: MIT
// One build in the making: names of a draft become ids.
#pragma once

#include <map>
#include <set>
#include <string>

#include "read/draft.h"

namespace loomfolio {

/// A name that a wire, a `without` or a situation may use.
struct Owner {
  OwnerType type = OwnerType::part;
  std::int32_t index = -1;  ///< into the build's parts, splices or earths; -1: known, but too broken to be built
  Where where;              ///< of its id
};

struct Removal {
  Where where;                       ///< the word in `without`
  bool is_found = false;             ///< the base has something of that name
  std::vector<DiagnosticNote> uses;  ///< where what stays still names it
};

struct Assembly {
  const SpecDraft& draft;
  Build build;
  Diagnostics& findings;
  std::map<std::string, Owner, std::less<>> owners;  ///< parts, splices, earths by id
  std::map<std::string, Where, std::less<>> wire_ids, situation_names;
  std::map<std::string, Removal, std::less<>> removals;
  std::vector<std::pair<PlacedText, PlacedText>> wire_ends;  ///< from and to as written, by WireId
  std::set<std::string, std::less<>> in_doubt;               ///< owners that a wire with a faulty end may have meant
  std::set<TerminalId> half_reached;                         ///< good ends of wires whose other end is faulty

  void report(DiagnosticId id, Where where, std::string message, std::string hint = {},
              std::vector<DiagnosticNote> notes = {});
};

/// The names of parts, splices and earths, for suggestions.
std::vector<std::string> owner_names(const Assembly& assembly);
/// Ids of a part's terminals, in the kind's order.
std::vector<std::string> terminal_ids(const Assembly& assembly, const Part& part);
/// The terminal that a wire's end names; unset, and a finding, when it names none.
TerminalId resolve_end(Assembly& assembly, const PlacedText& end);
void add_situation(Assembly& assembly, const SituationDraft& draft);
/// `after` must name a situation that does not come back to where it started.
void check_order_of_situations(Assembly& assembly);
/// Parts, terminals, splices and earths that no wire reaches, and terminals that too many reach.
void check_reach(Assembly& assembly);
/// The wishes of [layout] about what this build has.
void add_layout_wishes(Assembly& assembly);
/// Keeps the kinds that the build uses, in the order of their first use.
void keep_used_kinds(Build& build, const std::vector<Kind>& all);

}  // namespace loomfolio
