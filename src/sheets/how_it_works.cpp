// SPDX-License-Identifier: MIT
// How it works: for each acting kind of part, its inside as a diagram beside its face, and what happens in which order.
#include <algorithm>
#include <optional>
#include <utility>

#include "base/text.h"
#include "sheets/hook_ups.h"
#include "sheets/inside_sentences.h"
#include "sheets/page_flow.h"
#include "sheets/sheet_makers.h"
#include "sheets/works_pictures.h"
#include "sheets/works_strip.h"

namespace loomfolio {
namespace {

constexpr Millimetres text_indent(6), use_gap(3);
constexpr std::size_t look_ahead = 6;  // how far a part may be drawn forward to fill a page

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
    std::vector<Told> waiting;
    for (const KindUse& use : uses)
      waiting.push_back({kind_block(use), context_.extent != Extent::common ? use_block(use) : Block{}});
    while (!waiting.empty()) {
      const std::size_t next = choose_next(waiting);
      flow_.add(std::move(waiting[next].kind), look::heading_gap);
      add_use(std::move(waiting[next].use));
      waiting.erase(waiting.begin() + static_cast<std::ptrdiff_t>(next));
    }
    if (context_.extent == Extent::own) add_shared_uses();
    return flow_.take();
  }

 private:
  /// A kind as it is built, and what happens in it in this machine; neither is cut by a page's end.
  struct Told {
    Block kind, use;
  };

  /// The first of the next few that still fits on the page, so that pages are full; rather one that fits whole.
  std::size_t choose_next(const std::vector<Told>& waiting) const {
    const std::size_t end = std::min(waiting.size(), look_ahead);
    for (std::size_t i = 0; i < end; ++i)
      if (look::heading_gap + waiting[i].kind.height + use_gap + waiting[i].use.height <= flow_.room()) return i;
    for (std::size_t i = 0; i < end; ++i)
      if (look::heading_gap + waiting[i].kind.height <= flow_.room()) return i;
    return 0;
  }

  Block kind_block(const KindUse& use) const {
    const Kind& kind = build_.kind(use.kind);
    Block block{flow_.width(), {}, {}};
    const auto put = [&block](Block part, Millimetres gap) {
      const Millimetres y = block.height + gap, height = part.height;
      place_block(block.items, std::move(part), {{}, y});
      block.height = y + height;
    };
    put(head(use), {});
    put(set_text(kind.about, look::text, flow_.width(), flow_.setting()), Millimetres(2));
    put(make_works_pictures(context_, use.parts.front(), flow_.width(), flow_.setting()), Millimetres(3.5));
    std::vector<std::string> sentences = inside_sentences(build_, use.parts.front(), words_);
    for (std::size_t i = 0; i < sentences.size(); ++i)
      put(event(i + 1, sentences.size(), sentences[i]), i == 0 ? Millimetres(2.5) : Millimetres(0.6));
    const std::string unused = unused_text(use);
    if (!unused.empty()) put(set_text(unused, look::text, flow_.width(), flow_.setting()), Millimetres(1.6));
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
      if (is_told_as_shared(context_, id)) add_use(use_block({build_.part(id).kind, {id}}));
    }
  }

  void add_use(Block use) {
    if (use.height.number() > 0) flow_.add(std::move(use), use_gap);
  }

  /// The first part of the kind that a situation works: three frames and what happens, in this machine's figures. Empty
  /// where no situation works any.
  Block use_block(const KindUse& use) const {
    if (context_.solved.solutions.empty()) return {};
    std::optional<CoilStory> story;
    for (std::size_t p = 0; p < use.parts.size() && !story; ++p) story = find_coil_story(context_.solved, use.parts[p]);
    const PartId part = story ? story->part : use.parts.front();
    std::vector<std::string> told;
    if (story) told = tell_coil_story(build_, *story, words_);
    for (std::string& sentence : tell_use(context_.solved, part, words_)) told.push_back(std::move(sentence));
    if (told.empty()) return {};
    Block block{flow_.width(), {}, {}};
    const auto put = [&block](Block part_of, Millimetres gap) {
      const Millimetres y = block.height + gap, height = part_of.height;
      place_block(block.items, std::move(part_of), {{}, y});
      block.height = y + height;
    };
    if (story || told.size() > 1) {
      // Named, as the list may stand on the next sheet.
      const std::string head = words_("works.in_use") + ": " + build_.part(part).label;
      put(set_text(head, look::text_bold, flow_.width(), flow_.setting()), {});
      if (story) put(make_works_strip(context_, *story, flow_.width()), Millimetres(1));
    }
    for (std::size_t i = 0; i < told.size(); ++i)
      put(event(i + 1, told.size(), told[i]), Millimetres(block.height.number() == 0 ? 0 : i == 0 ? 1.5 : 0.6));
    return block;
  }

  Block head(const KindUse& use) const {
    std::vector<std::string> labels;
    for (const PartId part : use.parts) labels.push_back(build_.part(part).label);
    const std::string& name = build_.kind(use.kind).name;
    std::vector<Span> spans{{name, look::heading, look::ink, {}}};
    if (labels.size() > 1 || labels.front() != name)
      spans.push_back({"   " + join(labels, ", "), look::table, look::grey, {}});
    Block block = set_paragraph({spans, Align::left, "H2"}, flow_.width(), flow_.setting());
    block.height += Millimetres(0.8);
    add_line(block.items, {{}, block.height}, {block.width, block.height}, {look::ink, look::part_line});
    return block;
  }

  /// One of `count` events in order; one alone needs no number.
  Block event(std::size_t number, std::size_t count, const std::string& sentence) const {
    if (count == 1) return set_text(sentence, look::text, flow_.width(), flow_.setting());
    const Millimetres width = flow_.width() - text_indent;
    Block text = set_text(sentence, look::text, width, flow_.setting());
    Block block{flow_.width(), text.height, {}};
    const bool is_right_to_left = flow_.setting().is_right_to_left;
    const Millimetres x = is_right_to_left ? flow_.width() : Millimetres(0);
    add_text(block.items, {x, look::line_step(look::text) * look::baseline_share}, std::to_string(number),
             look::text_bold, look::ink, is_right_to_left ? Align::right : Align::left);
    place_block(block.items, std::move(text), {is_right_to_left ? Millimetres(0) : text_indent, {}});
    return block;
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
