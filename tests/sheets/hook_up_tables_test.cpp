// SPDX-License-Identifier: MIT
// One table of several hook-ups.
#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "sheets/hook_up_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/sample_sheets.h"
#include "sheets/situation_gather.h"
#include "sheets/situation_paths.h"
#include "sheets/situation_sharing.h"

using namespace loomfolio;

namespace {

Table table_of(const std::vector<std::pair<std::string, std::string>>& rows) {
  Table table;
  table.columns = {{"what"}, {"else"}};
  for (const auto& [what, other] : rows) table.rows.push_back({{text_cell(what), text_cell(other)}});
  return table;
}

std::string text_of(const Cell& cell) {
  std::string text;
  for (const Paragraph& line : cell.lines) {
    if (&line != &cell.lines.front()) text += "/";
    for (const Span& span : line.spans) text += span.text;
  }
  return text;
}

std::vector<std::string> texts_of(const Table& table) {
  std::vector<std::string> rows;
  for (const Row& row : table.rows) {
    std::string text;
    for (const Cell& cell : row.cells) text += (text.empty() && &cell == &row.cells.front() ? "" : "|") + text_of(cell);
    rows.push_back(text);
  }
  return rows;
}

/// The context of the common pages of a kit of four hook-ups.
struct Kit {
  const SampleFolio& sample = shared_sample("electric-start-kit");
  FixedTextMeasure measure;
  FolioInput input = sample.input(measure);
  HookUps hook_ups = compare_hook_ups(sample.solved());
  SheetContext context{input, sample.solved().front(), {}, {}};

  Kit() {
    context.hook_ups = &hook_ups;
    context.extent = Extent::common;
  }
};

SituationId named(const Build& build, const std::string& name) {
  for (std::size_t s = 0; s < build.situations.size(); ++s)
    if (build.situations[s].name == name) return {static_cast<std::int32_t>(s)};
  return {};
}

}  // namespace

TEST_CASE("rows of all hook-ups stand once; others say by letter for which they hold, before the next that is shared") {
  const Kit kit;
  const auto all = table_of({{"fuse", ""}, {"lamp", ""}});
  const auto other = table_of({{"fuse", ""}, {"unit", ""}, {"lamp", ""}});
  CHECK(texts_of(merge_tables(kit.context, {{0, all}, {1, other}, {2, other}, {3, all}}, {0})) ==
        std::vector<std::string>{"|fuse|", "B,\u00a0C|unit|", "|lamp|"});
  CHECK(texts_of(merge_tables(kit.context, {{0, all}, {1, all}, {2, all}, {3, all}}, {0})) ==
        std::vector<std::string>{"fuse|", "lamp|"});
  CHECK(texts_of(merge_tables(kit.context, {{0, all}, {1, all}, {2, all}}, {0})) ==
        std::vector<std::string>{"A,\u00a0B,\u00a0C|fuse|", "A,\u00a0B,\u00a0C|lamp|"});
}

TEST_CASE("a free column may differ in rows that are else alike, and then says for whom it holds") {
  const Kit kit;
  const auto first = table_of({{"lamp", "F1"}}), second = table_of({{"lamp", "F2"}});
  CHECK(texts_of(merge_tables(kit.context, {{0, first}, {1, first}, {2, second}, {3, first}}, {0, 1})) ==
        std::vector<std::string>{"lamp|A,\u00a0B,\u00a0D:\u00a0F1/C:\u00a0F2"});
  CHECK(texts_of(merge_tables(kit.context, {{0, first}, {1, first}, {2, first}, {3, first}}, {0, 1})) ==
        std::vector<std::string>{"lamp|F1"});
}

TEST_CASE("in the start kit a number means one wire, whichever hook-up has it") {
  const Kit kit;
  std::map<std::string, std::string> meaning;
  for (const SolvedBuild& solved : kit.sample.solved())
    for (const Wire& wire : solved.build.wires) {
      const std::string text = describe_wire(solved.build, wire);
      CHECK_MESSAGE(meaning.try_emplace(wire.id, text).first->second == text, wire.id);
    }
}

TEST_CASE("hook-ups tell a situation alike when its wires and figures are, and only then") {
  const Kit kit;
  const auto alike = [&](const std::string& name, std::size_t a, std::size_t b) {
    const SolvedBuild &one = kit.sample.solved()[a], &other = kit.sample.solved()[b];
    const auto pair_a = find_told_pair(one, named(one.build, name)), pair_b = find_told_pair(other, named(other.build, name));
    REQUIRE((pair_a && pair_b));
    return tells_same(one.build, *pair_a, other.build, *pair_b);
  };
  for (std::size_t b = 1; b < 4; ++b) CHECK(alike("take-off-in-use", 0, b));  // none of its wires goes to the controls
  CHECK(alike("start-in-gear", 0, 1));        // the control unit gives nothing, by one output or by two
  CHECK_FALSE(alike("start-in-neutral", 0, 1));
  CHECK_FALSE(alike("start-in-gear", 2, 3));  // the button stands on the other side of the coil
  for (std::size_t b = 0; b < 4; ++b) CHECK(alike("start-in-neutral", b, b));
}

TEST_CASE("a refused start stands beside the start that works, so that the break shows in its whole circuit") {
  const SolvedBuild& solved = shared_sample("street-single").solved().front();
  for (const char* refused : {"start-refused", "start-refused-stand"}) {
    CAPTURE(refused);
    const auto pair = find_told_pair(solved, named(solved.build, refused));
    REQUIRE(pair);
    CHECK(pair->before.situation.name == "start-with-clutch");
    CHECK(pair->moved.size() == 1);
    const std::vector<WireId> story = find_story(solved.build, *pair, StoryWidth::waiting);
    // From the battery's cable to the starter's.
    for (const char* wire : {"1", "2"})
      CHECK(std::any_of(story.begin(), story.end(), [&](WireId id) { return solved.build.wire(id).id == wire; }));
  }
}

TEST_CASE("small pairs share a sheet that says both numbers") {
  const SampleFolio& sample = shared_sample("street-single");
  const FixedTextMeasure measure;
  const FolioInput input = sample.input(measure);
  const SolvedBuild& solved = sample.solved().front();
  const SheetContext context{input, solved, {}, {}};
  const auto state_of = [&](const char* name) {
    const SituationId id = named(solved.build, name);
    return SolvedState{solved.build.situations[id.at()], solved.solutions[id.at()], id.index};
  };
  const SolvedState one = state_of("start-refused"), other = state_of("start-refused-stand");
  std::vector<LaidPair> laid;
  for (const auto& [before, after] : {std::pair(other, one), std::pair(one, other)})
    laid.push_back(lay_out_pair(
        context, {before, after, find_moved(solved.build, before.situation, after.situation)}, StoryWidth::waiting));
  for (const LaidPair& pair : laid) REQUIRE(pair.arrangement == Arrangement::gathered);
  const std::vector<GatheredSheet> sheets = gather_pairs(context, {&laid[0], &laid[1]});
  REQUIRE(sheets.size() == 1);
  CHECK(sheets.front().sheet.title == sample.words()("live.title_several", {{"numbers", "5, 6"}}));
}
