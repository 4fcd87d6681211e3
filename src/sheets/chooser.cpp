// SPDX-License-Identifier: MIT
// Which hook-up is yours: one row a variant, leading to its first sheet. Only where there is a choice.
#include <algorithm>
#include <utility>

#include "sheets/page_flow.h"
#include "sheets/reference.h"
#include "sheets/sheet_makers.h"
#include "sheets/table.h"

namespace loomfolio {
namespace {

/// Leads to the first sheet of the hook-up.
Cell link_cell(const SheetContext& context, const Build& build) {
  const std::string target = build.variant + "/";
  const std::string text = context.words()("chooser.sheet", {{"sheet", sheet_mark(target)}});
  return {{{{{text, look::text_bold, look::accent, {target, {}}}}, Align::left, {}}}};
}

/// A, B, C ...: how the second table names the hook-ups.
std::string letter_of(std::size_t index) { return std::string(1, static_cast<char>('A' + index % 26)); }

Row variant_row(const SheetContext& context, const Build& build, std::size_t index) {
  const std::string& label = build.variant_label.empty() ? build.variant : build.variant_label;
  return {{text_cell(letter_of(index), look::heading), text_cell(label, look::text_bold),
           text_cell(build.variant_when, look::text), link_cell(context, build)}};
}

struct UsedPart {
  std::string id, label;
  std::vector<bool> in;  ///< by build
};

/// Parts that some hook-ups have and others have not, in the order they first appear.
std::vector<UsedPart> differing_parts(const std::vector<SolvedBuild>& builds) {
  std::vector<UsedPart> parts;
  for (std::size_t b = 0; b < builds.size(); ++b)
    for (const Part& part : builds[b].build.parts) {
      auto same = std::find_if(parts.begin(), parts.end(), [&](const UsedPart& used) { return used.id == part.id; });
      if (same == parts.end())
        same = parts.insert(parts.end(), {part.id, part.label, std::vector<bool>(builds.size())});
      same->in[b] = true;
    }
  parts.erase(std::remove_if(parts.begin(), parts.end(),
                             [](const UsedPart& used) {
                               return std::find(used.in.begin(), used.in.end(), false) == used.in.end();
                             }),
              parts.end());
  return parts;
}

/// A filled disc; its place in the row says which hook-up.
Block used_mark() {
  const Millimetres size(3);
  Block block{size, size, {}};
  add_circle(block.items, {size / 2, size / 2}, size * 0.4, {false, {}}, {true, look::ink});
  return block;
}

void add_differences(PageFlow& flow, const std::vector<SolvedBuild>& builds) {
  const std::vector<UsedPart> parts = differing_parts(builds);
  if (parts.empty()) return;
  const Words& words = flow.context().words();
  Table table;
  table.columns.push_back({words("chooser.part"), CellAlign::near, Wrapping::wraps, 1});
  for (std::size_t b = 0; b < builds.size(); ++b)
    table.columns.push_back({letter_of(b), CellAlign::near, Wrapping::keeps, 0.12});
  for (const UsedPart& part : parts) {
    Row row{{text_cell(part.label, look::text)}};
    for (const bool is_in : part.in) {
      Cell cell = text_cell("", look::text);
      if (is_in) cell.picture = used_mark();
      row.cells.push_back(std::move(cell));
    }
    table.rows.push_back(std::move(row));
  }
  flow.add_heading(words("chooser.differences"), Millimetres(30));
  flow.add_text(words("chooser.differences_text"), look::text, look::paragraph_gap);
  add_table(flow, table, look::paragraph_gap * 2);
}

}  // namespace

std::vector<Sheet> make_chooser(const SheetContext& context) {
  const FolioInput& input = context.input;
  if (input.builds.size() < 2 || !input.options.variant.empty()) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"chooser", words("chooser.title"), words("chooser.intro")});
  Table table;
  table.columns = {{"", CellAlign::near, Wrapping::keeps, 0},
                   {words("chooser.hook_up"), CellAlign::near, Wrapping::wraps, 1},
                   {words("chooser.when"), CellAlign::near, Wrapping::wraps, 2},
                   {words("chooser.go_to"), CellAlign::near, Wrapping::keeps, 0}};
  for (std::size_t b = 0; b < input.builds.size(); ++b)
    table.rows.push_back(variant_row(context, input.builds[b].build, b));
  add_table(flow, table);
  flow.add_text(words("chooser.unsure"), look::text_bold, look::block_gap);
  add_differences(flow, input.builds);
  return flow.take();
}

}  // namespace loomfolio
