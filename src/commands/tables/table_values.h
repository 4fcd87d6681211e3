// SPDX-License-Identifier: MIT
// Cells that several tables have.
#pragma once

#include "commands/tables/plain_table.h"
#include "model/build.h"
#include "sheets/names.h"

namespace loomfolio {

/// Empty text is nothing.
inline PlainValue plain_text(std::string text) {
  return text.empty() ? PlainValue() : PlainValue(std::move(text));
}

inline PlainValue plain_length(const std::optional<Metres>& length) {
  return length ? plain_number(length->number() * 1000, 0) : PlainValue();
}

/// Where the terminal says how much insulation comes off.
inline PlainValue plain_strip(const Build& build, TerminalId id) {
  const KindTerminal* terminal = kind_terminal_of(build, id);
  return terminal != nullptr && terminal->strip ? plain_number(terminal->strip->number(), 1) : PlainValue();
}

/// As the spec says it; nothing where it says nothing.
inline PlainValue plain_plugs(PlugSource plugs) {
  switch (plugs) {
    case PlugSource::unsaid:
      return {};
    case PlugSource::bag:
      return std::string("bag");
    case PlugSource::fitted:
      return std::string("fitted");
    case PlugSource::nowhere:
      return std::string("none");
  }
  return {};
}
inline PlainValue plain_provider(Provider provided) { return std::string(provided == Provider::kit ? "kit" : "machine"); }

inline PlainValue plain_situation(const Build& build, SituationId id) {
  return id.is_set() ? plain_text(build.situations[id.at()].name) : PlainValue();
}

/// `part.fuse`, as the spec names it; the part alone where it holds one element.
inline PlainValue plain_inside(const Build& build, InsideRef ref) {
  if (!ref.part.is_set()) return {};
  const Part& part = build.part(ref.part);
  const std::string id = ref.inside < 0 ? std::string() : part.insides[static_cast<std::size_t>(ref.inside)].id;
  return id.empty() || part.insides.size() == 1 ? part.id : part.id + "." + id;
}

inline PlainValue plain_rating(const Inside& fuse) {
  return fuse.rating ? plain_number(fuse.rating->number(), 1) : PlainValue();
}

}  // namespace loomfolio
