// SPDX-License-Identifier: MIT
#include "sheets/switch_positions.h"

#include <algorithm>

#include "base/text.h"
#include "check/paths.h"
#include "model/kind_text.h"
#include "model/spec_words.h"
#include "sheets/inside_sentences.h"

namespace loomfolio {
namespace {

const Inside::Node& node_of(const Build& build, InsideRef ref, int node) {
  return inside_of(build, ref).nodes[static_cast<std::size_t>(node)];
}

/// What people call a point that a switch joins: the terminal's mark; the part's own metal where it earths by that; of
/// a point inside, what is joined to it there.
std::string point_name(const Build& build, InsideRef ref, int node, const Words& words) {
  const Part& part = build.part(ref.part);
  const Inside::Node& point = node_of(build, ref, node);
  if (point.terminal >= 0) {
    const KindTerminal& terminal = build.kind_of(part).terminals[static_cast<std::size_t>(point.terminal)];
    return terminal.form == TerminalForm::body ? words("works.metal") : terminal.id;
  }
  for (const Inside& other : part.insides) {
    if (other.type == InsideType::switch_) continue;
    const auto at = std::find_if(other.nodes.begin(), other.nodes.end(),
                                 [&](const Inside::Node& own) { return own.terminal < 0 && own.inner == point.inner; });
    if (at == other.nodes.end()) continue;
    const std::string name = other.name.empty() ? translate_kind_text(other.id, words) : other.name;
    return words(at == other.nodes.begin() ? "works.first_end" : "works.other_end", {{"name", name}});
  }
  return {};
}

/// Whether anything of this machine is joined to the point: a wire, the machine's metal, or what is inside.
bool is_point_used(const Build& build, InsideRef ref, int node) {
  const Inside::Node& point = node_of(build, ref, node);
  return point.terminal < 0 || !is_left_open(build, ref.part, point.terminal);
}

/// '82 and 82a are joined'; several groups stand one after the other. A position may join what has no wire here.
std::string joined_text(const Build& build, InsideRef ref, const SwitchPosition& position, const Words& words) {
  if (position.joined.empty()) return words("works.none_joined");
  std::vector<std::string> groups;
  for (const auto& group : position.joined) {
    std::vector<std::string> names;
    for (const int node : group) {
      std::string name = point_name(build, ref, node, words);
      if (is_point_used(build, ref, node) && !name.empty()) names.push_back(std::move(name));
    }
    if (names.size() < 2) continue;
    const std::string last = names.back();
    names.pop_back();
    groups.push_back(words("works.joined", {{"terminals", join(names, ", ") + words("works.and") + last}}));
  }
  return groups.empty() ? words("works.no_wire_joined") : join(groups, "; ");
}

}  // namespace

bool has_several_switches(const Part& part) {
  return std::count_if(part.insides.begin(), part.insides.end(),
                       [](const Inside& inside) { return inside.type == InsideType::switch_; }) > 1;
}

std::vector<std::string> position_sentences(const Build& build, InsideRef ref, const Words& words) {
  const Inside& element = inside_of(build, ref);
  const bool springs_back = element.is_sprung && element.positions.size() == 2;
  std::vector<std::string> told;
  for (std::size_t p = 0; p < element.positions.size(); ++p) {
    if (springs_back && static_cast<int>(p) == element.rest_position) continue;
    const std::string joined = joined_text(build, ref, element.positions[p], words);
    const std::string name = position_words(element.positions[p].name);
    told.push_back(words("works.use_position", {{"position", name}, {"joined", joined}}));
  }
  return told;
}

}  // namespace loomfolio
