// SPDX-License-Identifier: MIT
// How it works: for each acting kind of part, its inside as a diagram beside its face, and what happens in which order.
#include <algorithm>
#include <optional>
#include <utility>

#include "base/text.h"
#include "sheets/columns.h"
#include "sheets/hook_ups.h"
#include "sheets/inside_sentences.h"
#include "sheets/page_flow.h"
#include "sheets/packed_blocks.h"
#include "sheets/put_below.h"
#include "sheets/sheet_makers.h"
#include "sheets/works_pictures.h"
#include "sheets/works_strip.h"

namespace loomfolio {
namespace {

constexpr Millimetres text_indent(6), use_gap(3);

/// Parts of one kind; the first stands for all.
struct KindUse {
  KindId kind;
  std::vector<PartId> parts;
};

std::vector<KindUse> acting_kinds(const SheetContext& context) {
  const Build& build = context.build();
  std::vector<KindUse> uses;
  for (std::size_t p = 0; p < build.parts.size(); ++p) {
    const Part& part = build.parts[p];
    if (!build.kind_of(part).is_acting || !shows_part(context, PartId{static_cast<std::int32_t>(p)})) continue;
    auto same = std::find_if(uses.begin(), uses.end(), [&](const KindUse& use) { return use.kind == part.kind; });
    if (same == uses.end()) same = uses.insert(uses.end(), {part.kind, {}});
    same->parts.push_back(PartId{static_cast<std::int32_t>(p)});
  }
  return uses;
}

bool is_told_as_shared(const SheetContext& context, PartId part) {
  return !shows_part(context, part) && find_coil_story(context.solved, part).has_value();
}

bool tells_shared(const SheetContext& context) {
  if (context.extent != Extent::own) return false;
  for (std::size_t p = 0; p < context.build().parts.size(); ++p)
    if (is_told_as_shared(context, PartId{static_cast<std::int32_t>(p)})) return true;
  return false;
}

class WorksPages {
 public:
  explicit WorksPages(const SheetContext& context)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        flow_(context, {"works", words_("works.title"),
                        words_(context.extent == Extent::own ? "works.own_intro" : "works.intro")}) {}

  std::vector<Sheet> make(const std::vector<KindUse>& uses) {
    std::vector<Told> rows;
    for (const KindUse& use : uses) rows.push_back(tell(use));
    // What is higher than a page is cut between the kind and what happens in it, and stands first.
    const auto whole = std::stable_partition(rows.begin(), rows.end(), [](const Told& row) { return row.use.height.number() > 0; });
    for (auto row = rows.begin(); row != whole; ++row) {
      flow_.add(std::move(row->kind), look::heading_gap);
      flow_.add(std::move(row->use), use_gap);
    }
    std::vector<FreeBlock> blocks;
    for (auto row = whole; row != rows.end(); ++row) blocks.push_back({std::move(row->kind), std::move(row->narrow)});
    add_packed(flow_, std::move(blocks), look::heading_gap);
    if (context_.extent == Extent::own) add_shared_uses();
    return flow_.take();
  }

 private:
  /// A kind as it is built, and what happens in it in this machine: one block, where a page can hold it.
  struct Told {
    Block kind, use;
    Block narrow = {};  ///< both, for one of two columns; empty: it needs the page's width
  };

  Told tell(const KindUse& use) const {
    const bool is_used = context_.extent != Extent::common;
    const std::optional<CoilStory> story = is_used ? find_story_of(use) : std::nullopt;
    Told told{*kind_block(use, flow_.width(), Wanted::always), is_used ? use_block(use, story, flow_.width()) : Block{}};
    if (told.kind.height + use_gap + told.use.height <= flow_.full_room()) put_below(told.kind, std::exchange(told.use, {}), use_gap);
    if (story) return told;  // three frames side by side need the page's width
    const Millimetres column = column_width(flow_, 2);
    if (auto narrow = kind_block(use, column, Wanted::if_roomy)) {
      told.narrow = std::move(*narrow);
      if (is_used) put_below(told.narrow, use_block(use, story, column), use_gap);
    }
    return told;
  }

  enum class Wanted : std::uint8_t { always, if_roomy };

  /// That wide; nothing where its pictures would be too small, and they are wanted only with room.
  std::optional<Block> kind_block(const KindUse& use, Millimetres width, Wanted wanted) const {
    const Kind& kind = build_.kind(use.kind);
    WorksPictures pictures = make_works_pictures(context_, use.parts.front(), width, flow_.setting());
    if (wanted == Wanted::if_roomy && !pictures.is_roomy) return std::nullopt;
    Block block{width, {}, {}};
    const auto put = [&block](Block part, Millimetres gap) { put_below(block, std::move(part), gap); };
    put(head(use, width), {});
    put(set_text(kind.about, look::text, width, flow_.setting()), Millimetres(2));
    put(std::move(pictures.block), Millimetres(3.5));
    std::vector<std::string> sentences = inside_sentences(build_, use.parts.front(), words_);
    for (std::size_t i = 0; i < sentences.size(); ++i)
      put(event(i + 1, sentences.size(), sentences[i], width), i == 0 ? Millimetres(2.5) : Millimetres(0.6));
    const std::string unused = unused_text(use);
    if (!unused.empty()) put(set_text(unused, look::text, width, flow_.setting()), Millimetres(1.6));
    return block;
  }

  /// 'No wire of these pages goes to 2, 57a.': terminals that none of the parts uses, unless it uses none at all.
  std::string unused_text(const KindUse& use) const {
    std::vector<std::string> marks;
    const Kind& kind = build_.kind(use.kind);
    for (std::size_t t = 0; t < kind.terminals.size(); ++t)
      if (kind.terminals[t].form != TerminalForm::body &&
          std::all_of(use.parts.begin(), use.parts.end(),
                      [&](PartId part) { return is_left_open(build_, part, static_cast<int>(t)); }))
        marks.push_back(kind.terminals[t].id);
    if (marks.empty() || marks.size() == kind.terminals.size()) return {};
    const bool is_machines = std::all_of(use.parts.begin(), use.parts.end(),
                                         [&](PartId part) { return build_.part(part).provided == Provider::machine; });
    return words_(is_machines ? "works.not_used_machine" : "works.not_used", {{"terminals", join(marks, ", ")}});
  }

  /// Parts that all hook-ups share are explained once, but what flows in them differs from one hook-up to the next.
  void add_shared_uses() {
    for (std::size_t p = 0; p < build_.parts.size(); ++p) {
      const PartId id{static_cast<std::int32_t>(p)};
      const KindUse use{build_.part(id).kind, {id}};
      if (is_told_as_shared(context_, id)) add_use(use_block(use, find_story_of(use), flow_.width()));
    }
  }

  void add_use(Block use) {
    if (use.height.number() > 0) flow_.add(std::move(use), use_gap);
  }

  std::optional<CoilStory> find_story_of(const KindUse& use) const {
    std::optional<CoilStory> story;
    if (context_.solved.solutions.empty()) return story;
    for (std::size_t p = 0; p < use.parts.size() && !story; ++p) story = find_coil_story(context_.solved, use.parts[p]);
    return story;
  }

  /// The first part of the kind that a situation works: three frames and what happens, in this machine's figures. Empty
  /// where no situation works any.
  Block use_block(const KindUse& use, const std::optional<CoilStory>& story, Millimetres width) const {
    if (context_.solved.solutions.empty()) return {};
    const PartId part = story ? story->part : use.parts.front();
    std::vector<std::string> told;
    if (story) told = tell_coil_story(build_, *story, words_);
    const std::size_t in_order = story ? told.size() : SIZE_MAX;  // what else the part carries is no step of it
    for (std::string& sentence : tell_use(context_.solved, part, words_)) told.push_back(std::move(sentence));
    if (told.empty()) return {};
    Block block{width, {}, {}};
    const auto put = [&block](Block part_of, Millimetres gap) { put_below(block, std::move(part_of), gap); };
    if (story || told.size() > 1) {
      // Named, as the list may stand on the next sheet.
      const std::string head = words_("works.in_use") + ": " + build_.part(part).label;
      put(set_text(head, look::text_bold, width, flow_.setting()), {});
      if (story) put(make_works_strip(context_, *story, width), Millimetres(1));
    }
    for (std::size_t i = 0; i < told.size(); ++i) {
      const bool begins = i == 0 || i == in_order;
      const Millimetres gap(block.height.number() == 0 ? 0 : begins ? 1.5 : 0.6);
      put(event(i + 1, i < in_order ? told.size() : 1, told[i], width), gap);
    }
    return block;
  }

  Block head(const KindUse& use, Millimetres width) const {
    std::vector<std::string> labels;
    for (const PartId part : use.parts) labels.push_back(build_.part(part).label);
    const std::string& name = build_.kind(use.kind).name;
    std::vector<Span> spans{{name, look::heading, look::ink, {}}};
    if (labels.size() > 1 || labels.front() != name)
      spans.push_back({"   " + join(labels, ", "), look::table, look::grey, {}});
    Block block = set_paragraph({spans, Align::left, "H2"}, width, flow_.setting());
    block.height += Millimetres(0.8);
    add_line(block.items, {{}, block.height}, {block.width, block.height}, {look::ink, look::part_line});
    return block;
  }

  /// One of `count` events in order; one alone needs no number.
  Block event(std::size_t number, std::size_t count, const std::string& sentence, Millimetres width) const {
    if (count == 1) return set_text(sentence, look::text, width, flow_.setting());
    return set_list_item({std::to_string(number), look::text_bold}, {{sentence}}, text_indent, width, flow_.setting());
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  PageFlow flow_;
};

}  // namespace

std::vector<Sheet> make_how_it_works(const SheetContext& context) {
  const std::vector<KindUse> uses = acting_kinds(context);
  if (uses.empty() && !tells_shared(context)) return {};
  return WorksPages(context).make(uses);
}

}  // namespace loomfolio
