// SPDX-License-Identifier: MIT
#include "sheets/diagram_pairs.h"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

namespace loomfolio {
namespace {

using Opposites = std::pair<std::string_view, std::string_view>;

/// As people write them in English, German and Spanish. Left and right first: of four lamps these two make a pair.
constexpr std::array<Opposites, 4> across_words{{{"left", "right"}, {"l", "r"}, {"lh", "rh"}, {"links", "rechts"}}};
constexpr std::array<Opposites, 4> more_across_words{
    {{"izquierda", "derecha"}, {"izquierdo", "derecho"}, {"linke", "rechte"}, {"linker", "rechter"}}};
constexpr std::array<Opposites, 5> along_words{
    {{"front", "rear"}, {"f", "r"}, {"vorn", "hinten"}, {"vorne", "hinten"}, {"delantero", "trasero"}}};

/// In small letters, parted at whatever is no letter.
std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words{{}};
  for (const char c : text) {
    const bool is_upper = c >= 'A' && c <= 'Z';
    const bool is_parting = c == ' ' || c == '-' || c == '_' || c == ',' || c == '.';
    if (!is_parting)
      words.back() += is_upper ? static_cast<char>(c - 'A' + 'a') : c;
    else if (!words.back().empty())
      words.emplace_back();
  }
  return words;
}

/// The words in which two texts differ, when it is one each at the same place.
std::optional<Opposites> find_difference(const std::vector<std::string>& one, const std::vector<std::string>& other) {
  if (one.size() != other.size()) return std::nullopt;
  std::optional<Opposites> found;
  for (std::size_t i = 0; i < one.size(); ++i) {
    if (one[i] == other[i]) continue;
    if (found) return std::nullopt;
    found = Opposites{one[i], other[i]};
  }
  return found;
}

template <std::size_t count>
bool holds(const std::array<Opposites, count>& list, const Opposites& words) {
  return std::any_of(list.begin(), list.end(),
                     [&](const Opposites& o) { return o == words || (o.second == words.first && o.first == words.second); });
}

enum class Lie : std::uint8_t { across, along };

bool are_opposite(const std::string& one, const std::string& other, Lie lie) {
  const std::vector<std::string> words = words_of(one), other_words = words_of(other);
  const auto difference = find_difference(words, other_words);
  if (!difference) return false;
  return lie == Lie::across ? holds(across_words, *difference) || holds(more_across_words, *difference)
                            : holds(along_words, *difference);
}

/// Terminals whose wires are drawn, in order, by their own names.
std::vector<std::string> wired_terminals(const DiagramGraph& diagram, std::size_t box) {
  std::vector<std::string> names;
  for (const GraphTerminal& terminal : diagram.graph.boxes[box].terminals)
    names.push_back(terminal.name.substr(terminal.name.find('.') + 1));
  for (const LocalEarth& earth : diagram.boxes[box].earths) names.push_back("earth at " + std::to_string(earth.tap.x));
  return names;
}

bool are_pair(const Build& build, const DiagramGraph& diagram, std::size_t a, std::size_t b, Lie lie) {
  if (diagram.boxes[a].content != BoxContent::part || diagram.boxes[b].content != BoxContent::part) return false;
  const Part& one = build.parts[static_cast<std::size_t>(diagram.boxes[a].index)];
  const Part& other = build.parts[static_cast<std::size_t>(diagram.boxes[b].index)];
  if (one.kind != other.kind || (lie == Lie::across && one.zone != other.zone)) return false;
  return (are_opposite(one.id, other.id, lie) || are_opposite(one.label, other.label, lie)) &&
         wired_terminals(diagram, a) == wired_terminals(diagram, b);
}

}  // namespace

void add_pairs(const Build& build, DiagramGraph& diagram) {
  std::vector<GraphBox>& boxes = diagram.graph.boxes;
  for (const Lie lie : {Lie::across, Lie::along})
    for (std::size_t a = 0; a < boxes.size(); ++a)
      for (std::size_t b = a + 1; b < boxes.size() && boxes[a].partner < 0; ++b)
        if (boxes[b].partner < 0 && are_pair(build, diagram, a, b, lie)) {
          boxes[a].partner = static_cast<int>(b);
          boxes[b].partner = static_cast<int>(a);
        }
}

}  // namespace loomfolio
