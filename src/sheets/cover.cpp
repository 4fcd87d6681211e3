// SPDX-License-Identifier: MIT
// The cover: what this is, the cautions that come first, where to find what, and what tools to lay out.
#include <algorithm>
#include <utility>

#include "base/text.h"
#include "sheets/columns.h"
#include "sheets/frame.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/reference.h"
#include "sheets/sheet_makers.h"
#include "sheets/tools_needed.h"

namespace loomfolio {
namespace {

constexpr Millimetres group_space(2.6), tool_box(3);

/// How far apart lines stand: as long as the cover holds all, the first.
struct Spacing {
  Millimetres entry;  ///< height of a line of the contents
  Millimetres tool;   ///< below a tool
};
constexpr Spacing roomy_spacing{Millimetres(4.8), Millimetres(1.1)}, tight_spacing{Millimetres(4.4), Millimetres(0.5)};

/// One after another, downwards.
class Stack {
 public:
  explicit Stack(Millimetres width) : block_{width, {}, {}} {}
  void put(Block part, Millimetres gap = {}) {
    const Millimetres y = block_.height + gap, height = part.height;
    place_block(block_.items, std::move(part), {{}, y});
    block_.height = y + height;
  }
  Block take() { return std::move(block_); }

 private:
  Block block_;
};

struct Fact {
  std::string_view head;
  std::string value;
};

/// Job, revision, date and who checked it, in a row between two rules.
Block fact_row(const PageFlow& flow) {
  const Document& document = flow.context().build().document;
  const Words& words = flow.context().words();
  const std::vector<Fact> facts{{"strip.job", document.job},
                                {"strip.revision", document.revision},
                                {"cover.date", print_date(document.date, words)},
                                {"strip.checked_by", document.checked_by}};
  Block block{flow.width(), Millimetres(13), {}};
  const Millimetres step = column_width(flow, 4) + look::gutter;
  const bool is_right_to_left = flow.setting().is_right_to_left;
  const Align align = is_right_to_left ? Align::right : Align::left;
  for (std::size_t i = 0; i < facts.size(); ++i) {
    const Millimetres offset = step * static_cast<double>(i);
    const Millimetres x = is_right_to_left ? flow.width() - offset : offset;
    block.items.push_back(TagOpenItem{"P", {}});
    add_text(block.items, {x, Millimetres(4.5)}, words(facts[i].head), look::small, look::grey, align);
    const FittedText value = fit_text(facts[i].value, look::text_bold, column_width(flow, 4), flow.setting().measure);
    add_text(block.items, {x, Millimetres(9.8)}, value.text, value.style, look::ink, align);
    block.items.push_back(TagCloseItem{});
  }
  block.items.push_back(TagOpenItem{"Artifact", {}});
  add_line(block.items, {}, {block.width, {}}, {look::ink, look::part_line});
  add_line(block.items, {{}, block.height}, {block.width, block.height}, {look::ink, look::part_line});
  block.items.push_back(TagCloseItem{});
  return block;
}

void add_title(PageFlow& flow) {
  const Document& document = flow.context().build().document;
  const auto line = [&](const std::string& text, const TextStyle& style, const char* tag) {
    return set_paragraph({{{text, style, look::ink, {}}}, Align::left, tag}, flow.width(), flow.setting());
  };
  if (!document.workshop.empty()) flow.add(line(document.workshop, look::text, "P"), {});
  flow.add(line(document.title, look::cover_title, "H1"), Millimetres(7));
  if (!document.subtitle.empty()) flow.add(line(document.subtitle, look::cover_subtitle, "P"), Millimetres(1));
  flow.add(fact_row(flow), Millimetres(6));
}

/// Title, a dotted leader, the sheet's number; the whole line leads there.
Block contents_line(const ContentsEntry& entry, Millimetres width, const PageFlow& flow, Millimetres height) {
  const TextMeasure& measure = flow.setting().measure;
  Block block{width, height, {}};
  const Millimetres baseline(3.6);
  const std::string number = sheet_mark(entry.id);
  const Millimetres number_width = measure.measure(widest(number), look::text).width;
  const FittedText title = fit_text(entry.title, look::text, width - number_width - Millimetres(6), measure);
  const Millimetres title_width = measure.measure(title.text, title.style).width;
  const bool is_right_to_left = flow.setting().is_right_to_left;
  const auto x = [&](Millimetres from_near) { return is_right_to_left ? width - from_near : from_near; };
  block.items.push_back(TagOpenItem{"TOCI", {}});
  block.items.push_back(LinkItem{{{}, {}, width, height}, entry.id, {}});
  add_text(block.items, {x({}), baseline}, title.text, title.style, look::ink,
           is_right_to_left ? Align::right : Align::left);
  add_text(block.items, {x(width), baseline}, number, look::text, look::accent,
           is_right_to_left ? Align::left : Align::right);
  block.items.push_back(TagCloseItem{});
  block.items.push_back(TagOpenItem{"Artifact", {}});
  const Pen dots{look::grey, Millimetres(0.3), {Millimetres(0), Millimetres(1.6)}, Cap::round};
  const Millimetres from = title_width + Millimetres(2), to = width - number_width - Millimetres(1.5);
  if (to > from)
    add_line(block.items, {x(to), baseline - Millimetres(0.3)}, {x(from), baseline - Millimetres(0.3)}, dots);
  block.items.push_back(TagCloseItem{});
  return block;
}

Block contents_group(const std::string& group, Millimetres width, const PageFlow& flow) {
  Block text = set_paragraph({{{group, look::text_bold, look::ink, {}}}, Align::left, "P"}, width, flow.setting());
  Block block{width, group_space + text.height + Millimetres(0.4), {}};
  place_block(block.items, std::move(text), {{}, group_space});
  return block;
}

/// All sheets of one hook-up in a few lines: 'How it works 64, Situations 66'.
Block hook_up_lines(const std::vector<ContentsEntry>& entries, Millimetres width, const PageFlow& flow) {
  Paragraph paragraph{{}, Align::left, "P"};
  for (const ContentsEntry& entry : entries) {
    const LinkTarget target{entry.id, {}};
    std::string title = entry.title;
    for (std::size_t at = title.find(' '); at != std::string::npos; at = title.find(' ', at + 2))
      title.replace(at, 1, "\u00a0");
    if (!paragraph.spans.empty()) paragraph.spans.push_back({"  ", look::table, look::ink, {}});
    paragraph.spans.push_back({title + "\u00a0", look::table, look::ink, target});
    paragraph.spans.push_back({sheet_mark(entry.id), look::table, look::accent, target});
  }
  const FittedText group = fit_text(entries.front().group, look::text_bold, width, flow.setting().measure);
  Stack stack(width);
  stack.put({width, Millimetres(1.6), {}});
  stack.put(set_paragraph({{{group.text, group.style, look::ink, {}}}, Align::left, "P"}, width, flow.setting()));
  stack.put(set_paragraph(paragraph, width, flow.setting()));
  return stack.take();
}

std::vector<Block> contents_blocks(const PageFlow& flow, Millimetres width, const Spacing& spacing) {
  std::vector<Block> blocks;
  std::string group;
  bool ends_hook_ups = false;  // the line before is the last of a hook-up's own
  const std::vector<ContentsEntry>& contents = flow.context().contents;
  for (std::size_t i = 0; i < contents.size(); ++i) {
    const ContentsEntry& entry = contents[i];
    // A group's name is no line of its own but the head of its first line, so that the two are never parted.
    const bool opens_group = entry.group != group && !entry.group.empty();
    group = entry.group;
    const bool is_of_hook_up = entry.id.find('/') != std::string::npos && group != flow.context().words()("hook_up.compared");
    if (opens_group && is_of_hook_up) {
      std::vector<ContentsEntry> own;
      for (; i < contents.size() && contents[i].group == group; ++i) own.push_back(contents[i]);
      --i;
      blocks.push_back(hook_up_lines(own, width, flow));
      ends_hook_ups = true;
      continue;
    }
    Stack stack(width);
    if (opens_group) stack.put(contents_group(entry.group, width, flow));
    if (!opens_group && ends_hook_ups) stack.put({width, group_space, {}});
    ends_hook_ups = false;
    stack.put(contents_line(entry, width, flow, spacing.entry));
    blocks.push_back(stack.take());
  }
  return blocks;
}

/// A heading over rules, then the blocks.
Block head_block(const std::string& text, Millimetres width, const PageFlow& flow) {
  Block block = set_paragraph({{{text, look::heading, look::ink, {}}}, Align::left, "H2"}, width, flow.setting());
  block.height += Millimetres(2);
  return block;
}

Block tool_line(const std::string& tool, Millimetres width, const PageFlow& flow, Millimetres space) {
  const Millimetres indent = tool_box + Millimetres(2.5);
  Block text =
      set_paragraph({{{tool, look::text, look::ink, {}}}, Align::left, "LBody"}, width - indent, flow.setting());
  Block block{width, text.height + space, {}};
  const bool is_right_to_left = flow.setting().is_right_to_left;
  block.items.push_back(TagOpenItem{"LI", {}});
  add_rect(block.items, {is_right_to_left ? width - tool_box : Millimetres(0), Millimetres(0.8), tool_box, tool_box},
           {look::ink, look::line});
  place_block(block.items, std::move(text), {is_right_to_left ? Millimetres(0) : indent, {}});
  block.items.push_back(TagCloseItem{});
  return block;
}

Block tools_block(const PageFlow& flow, Millimetres width, const Spacing& spacing) {
  const Words& words = flow.context().words();
  std::vector<const Build*> builds;
  for (const SolvedBuild& solved : flow.context().input.builds) builds.push_back(&solved.build);
  Stack stack(width);
  stack.put(head_block(words("cover.tools"), width, flow));
  Block open{width, {}, {TagOpenItem{"L", {}}}}, close{width, {}, {TagCloseItem{}}};
  stack.put(open);
  for (const std::string& tool : tools_needed(builds, words)) stack.put(tool_line(tool, width, flow, spacing.tool));
  stack.put(close);
  return stack.take();
}

/// Lines of the contents below the tools, as many as there is room for.
Block continue_below(const PageFlow& flow, Block tools, std::vector<Block>& lines, std::size_t& placed,
                     Millimetres room) {
  constexpr Millimetres gap(6);
  Block head = head_block(flow.context().words()("cover.contents") + ", " + flow.context().words()("page.continued"),
                          tools.width, flow);
  if (tools.height + gap + head.height + lines[placed].height > room) return tools;
  Stack column(tools.width);
  Millimetres used = tools.height + gap + head.height;
  column.put(std::move(tools));
  column.put(std::move(head), gap);
  for (; placed < lines.size() && used + lines[placed].height <= room; ++placed) {
    used += lines[placed].height;
    column.put(std::move(lines[placed]));
  }
  return column.take();
}

/// Contents at the near side, tools at the other and contents below them.
struct CoverColumns {
  Block contents, tools;
  std::vector<Block> left;  ///< lines that found no room
};

CoverColumns set_columns(const PageFlow& flow, const Spacing& spacing) {
  const Millimetres width = column_width(flow, 2);
  std::vector<Block> lines = contents_blocks(flow, width, spacing);
  CoverColumns columns{{}, tools_block(flow, width, spacing), {}};
  const Millimetres room = flow.room() - Millimetres(6.5);
  Stack column(width);
  Block head = head_block(flow.context().words()("cover.contents"), width, flow);
  std::size_t placed = 0;
  Millimetres used = head.height;
  column.put(std::move(head));
  for (; placed < lines.size() && used + lines[placed].height <= room; ++placed) {
    used += lines[placed].height;
    column.put(std::move(lines[placed]));
  }
  columns.contents = column.take();
  if (placed < lines.size()) columns.tools = continue_below(flow, std::move(columns.tools), lines, placed, room);
  lines.erase(lines.begin(), lines.begin() + static_cast<std::ptrdiff_t>(placed));
  columns.left = std::move(lines);
  return columns;
}

/// What does not fit, however tight, goes on the next page in two columns.
void add_contents_and_tools(PageFlow& flow) {
  CoverColumns columns = set_columns(flow, roomy_spacing);
  if (!columns.left.empty())
    if (CoverColumns closer = set_columns(flow, tight_spacing); closer.left.empty()) columns = std::move(closer);
  Block both{flow.width(), std::max(columns.contents.height, columns.tools.height), {}};
  const bool is_right_to_left = flow.setting().is_right_to_left;
  const Millimetres far = column_width(flow, 2) + look::gutter;
  place_block(both.items, std::move(columns.contents), {is_right_to_left ? far : Millimetres(0), {}});
  place_block(both.items, std::move(columns.tools), {is_right_to_left ? Millimetres(0) : far, {}});
  flow.add(std::move(both), Millimetres(6));
  if (columns.left.empty()) return;
  flow.new_page();
  add_columns(flow, std::move(columns.left), {2, Millimetres(0)}, {});
}

}  // namespace

std::vector<Sheet> make_cover(const SheetContext& context) {
  const Words& words = context.words();
  PageFlow flow(context, {"cover", words("cover.title"), {}, {}, TitleLine::none});
  add_title(flow);
  const std::string key = context.build().document.scope == Scope::kit ? "cover.kit" : "cover.machine";
  flow.add(make_panel(panel_from_words(words, Signal::warning, key), flow.width(), words, flow.setting()),
           Millimetres(6));
  add_contents_and_tools(flow);
  return flow.take();
}

}  // namespace loomfolio
