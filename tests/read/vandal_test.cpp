// SPDX-License-Identifier: MIT
// A sound spec spoilt in every way that an editor, a bad disk or a cat on the keyboard can: reading must not fall over,
// what it finds must lie within the text, and a build that it gives must be sound in itself, errors or not.
#include <doctest/doctest.h>

#include <random>

#include "base/text.h"
#include "read/small_spec.h"
#include "read/test_files.h"

using namespace loomfolio;

namespace {

const std::string variants = R"(
[[splice]]
id = "S1"
zone = "bench"
[[wire]]
from = "S1"
to = "battery.+"
colour = "RD"
size = "auto"
[[wire]]
from = "S1"
to = "key.out"
colour = "RD"
size = "auto"
[[step]]
after = "fuses"
text = "Look twice."
[[change]]
revision = "A"
date = "2026-11-02"
what = "First."
[[variant]]
name = "bare"
without = ["S1", "5", "6"]
[[variant]]
name = "more"
[[variant.part]]
id = "second"
kind = "bulb"
zone = "bench"
power = "5 W"
[[variant.wire]]
from = "S1"
to = "second.56"
colour = "RD"
size = "auto"
[[variant.wire]]
from = "second.31"
to = "E1"
colour = "RD"
size = "auto"
)";

const Library& small_library() {
  static const Library library = [] {
    TestFiles files;
    files.in_memory["l/papers/A4.toml"] = "id = \"A4\"\nwidth = \"210 mm\"\nheight = \"297 mm\"\n";
    files.in_memory["l/words/en.toml"] = "a = \"b\"\n";
    Sources sources;
    Diagnostics findings;
    return read_library("l", files, sources, findings);
  }();
  return library;
}

template <class Id, class List>
bool is_within(Id id, const List& list) {
  return id.index >= 0 && id.at() < list.size();
}

/// Every id of the build leads somewhere.
bool is_sound(const Build& build) {
  for (const Terminal& terminal : build.terminals) {
    const auto owners = terminal.owner == OwnerType::part     ? build.parts.size()
                        : terminal.owner == OwnerType::splice ? build.splices.size()
                                                              : build.earths.size();
    if (terminal.owner_index < 0 || static_cast<std::size_t>(terminal.owner_index) >= owners) return false;
  }
  for (const Part& part : build.parts) {
    if (!is_within(part.kind, build.kinds) || !is_within(part.zone, build.zones)) return false;
    if (part.terminals.size() != build.kind_of(part).terminals.size() ||
        part.insides.size() != build.kind_of(part).insides.size())
      return false;
    for (const TerminalId terminal : part.terminals)
      if (!is_within(terminal, build.terminals)) return false;
  }
  for (const Splice& splice : build.splices)
    if (!is_within(splice.zone, build.zones) || !is_within(splice.terminal, build.terminals)) return false;
  for (const Earth& earth : build.earths)
    if (!is_within(earth.zone, build.zones) || !is_within(earth.terminal, build.terminals)) return false;
  for (const Wire& wire : build.wires)
    if (!is_within(wire.from, build.terminals) || !is_within(wire.to, build.terminals)) return false;
  for (const Situation& situation : build.situations)
    for (const Setting& setting : situation.settings) {
      if (!is_within(setting.actuator.part, build.parts)) return false;
      const auto& insides = build.part(setting.actuator.part).insides;
      const auto inside = static_cast<std::size_t>(setting.actuator.inside);
      if (inside >= insides.size() || static_cast<std::size_t>(setting.position) >= insides[inside].positions.size())
        return false;
    }
  return true;
}

/// Reads a spoilt text; the message says what is not in order, empty when all is.
std::string trial(const std::string& text) {
  Sources sources;
  Diagnostics findings;
  const Project project = read_spec("spoilt.toml", text, small_library(), sources, findings);
  for (const Diagnostic& finding : findings)
    if (finding.where.file != 0 || finding.where.begin > finding.where.end || finding.where.end > text.size())
      return "a finding lies outside the text: " + finding.message;
  if (!has_errors(findings) && project.builds.empty()) return "neither a build nor an error";
  for (const Build& build : project.builds)
    if (!is_sound(build)) return "a build is not sound";
  if (!findings.empty() && print_diagnostics(findings, sources, Paint::plain).empty()) return "nothing was printed";
  return {};
}

const std::string& whole() {
  static const std::string text = small_spec + variants;
  return text;
}

}  // namespace

TEST_CASE("the spec that is spoilt is sound to begin with") {
  Sources sources;
  Diagnostics findings;
  const Project project = read_spec("sound.toml", whole(), small_library(), sources, findings);
  CHECK(print_diagnostics_short(findings, sources) == "");
  CHECK(project.builds.size() == 2);
}

TEST_CASE("a spec cut off anywhere") {
  for (std::size_t length = 0; length < whole().size(); length += 3) {
    const std::string fault = trial(whole().substr(0, length));
    CHECK_MESSAGE(fault.empty(), "at byte ", length, ": ", fault);
  }
}

TEST_CASE("a spec without one line, or with one line twice") {
  const std::vector<std::string> lines = split(whole(), '\n');
  for (std::size_t i = 0; i < lines.size(); ++i) {
    std::vector<std::string> without = lines, twice = lines;
    without.erase(without.begin() + static_cast<std::ptrdiff_t>(i));
    twice.insert(twice.begin() + static_cast<std::ptrdiff_t>(i), lines[i]);
    for (const auto& spoilt : {without, twice}) {
      const std::string fault = trial(join(spoilt, "\n"));
      CHECK_MESSAGE(fault.empty(), "at line ", i + 1, ": ", fault);
    }
  }
}

TEST_CASE("a spec with two words changed for one another") {
  std::mt19937 dice(20261102);
  const auto is_word = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
  };
  std::vector<std::pair<std::size_t, std::size_t>> words;
  for (std::size_t i = 0; i < whole().size();) {
    std::size_t end = i;
    while (end < whole().size() && is_word(whole()[end])) ++end;
    if (end > i) words.emplace_back(i, end - i);
    i = end + 1;
  }
  for (int round = 0; round < 400; ++round) {
    auto a = words[dice() % words.size()], b = words[dice() % words.size()];
    if (b < a) std::swap(a, b);
    if (a == b) continue;
    std::string text = whole();
    const std::string first = text.substr(a.first, a.second), second = text.substr(b.first, b.second);
    text.replace(b.first, b.second, first);
    text.replace(a.first, a.second, second);
    const std::string fault = trial(text);
    CHECK_MESSAGE(fault.empty(), "words ", first, " and ", second, ": ", fault);
  }
}

TEST_CASE("a spec with bytes that do not belong") {
  std::mt19937 dice(7);
  constexpr std::string_view bytes = "\"'[]{}=.,#\n\\\t =-+0\xFF\xC3";
  for (int round = 0; round < 800; ++round) {
    std::string text = whole();
    for (int change = 0; change < 1 + round % 3; ++change) {
      const std::size_t at = dice() % text.size();
      if (round % 2)
        text[at] = bytes[dice() % bytes.size()];
      else
        text.insert(at, 1, bytes[dice() % bytes.size()]);
    }
    const std::string fault = trial(text);
    CHECK_MESSAGE(fault.empty(), "round ", round, ": ", fault);
  }
}

TEST_CASE("absurdly large tables end in a finding, soon") {
  std::string wires = "[document]\ntitle = \"x\"\n", keys = wires, zones = wires,
              terminals = wires + "[[kind]]\nid = \"k\"\n";
  for (int i = 0; i < 25'000; ++i) {
    wires += "[[wire]]\nfrom = \"a.b\"\n";
    keys += "k" + std::to_string(i) + " = 1\n";
    zones += "[[zone]]\nid = \"z" + std::to_string(i) + "\"\n";
    terminals += "[[kind.terminal]]\nid = \"z" + std::to_string(i) + "\"\n";
  }
  for (const std::string& text : {wires, keys, zones, terminals}) {
    CHECK(trial(text) == "");
    Sources sources;
    Diagnostics findings;
    read_spec("large.toml", text, small_library(), sources, findings);
    CHECK(has_errors(findings));
    CHECK(findings.size() <= 1001);
  }
}
