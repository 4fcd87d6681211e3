// SPDX-License-Identifier: MIT
// Text pages filled from top to bottom with blocks; a block that does not fit starts a new page, and no block is cut.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "sheets/draw.h"
#include "sheets/folio.h"
#include "sheets/frame.h"
#include "sheets/text_flow.h"

namespace loomfolio {

/// Whether a run prints its title on its first page; the cover has one of its own.
enum class TitleLine : std::uint8_t { printed, none };

/// What a run of text pages is called. Sheet ids are the context's prefix + `id`, then `id`-2, `id`-3.
struct FlowStart {
  std::string id;
  std::string title;  ///< printed large on the first page, smaller with 'continued' on the others
  std::string intro;  ///< what the page is for, under the title; may be empty
  Block foot = {};    ///< stands at the foot of every page of the run
  TitleLine title_line = TitleLine::printed;
};

class PageFlow {
 public:
  PageFlow(const SheetContext& context, FlowStart start);

  Millimetres width() const { return page_.body.width; }
  /// What is left below the last block.
  Millimetres room() const { return bottom_ - y_; }
  /// The height of an empty continuation page.
  Millimetres full_room() const;
  bool is_at_top() const { return y_ == top_; }
  /// A new page would give more room: something stands on this one, or it begins below another run.
  bool may_turn() const { return !is_at_top() || begins_low(); }
  TypeSetting setting() const;
  const SheetContext& context() const { return context_; }

  /// Puts the block below what is there, after a gap that falls away at the top of a page; on a new page if it does not
  /// fit.
  void add(Block block, Millimetres gap);
  /// Text in running style.
  void add_text(const std::string& text, const TextStyle& style, Millimetres gap);
  /// A heading. With the leads after it, it stays with what comes next: a block, or the first rows of a table. Where that
  /// finds no room, they go to the new page with it.
  void add_heading(const std::string& text);
  /// What says something of the table or the block after it, and stays with that.
  void add_lead(Block block, Millimetres gap);
  void add_lead(const std::string& text, Millimetres gap);
  /// Starts a new page unless that much is left, or the page is empty.
  void keep(Millimetres height);
  /// As keep(), for what is not to be cut, with a gap above it; what no page holds whole begins where it can.
  void keep_whole(Millimetres height, Millimetres gap = {});
  void new_page();
  /// Items at places of the page itself; for what is drawn around blocks.
  Items& items() { return sheets_.back().items; }
  Point cursor() const { return {page_.body.x, y_}; }

  std::vector<Sheet> take();

 private:
  /// A heading, and the leads after it, that wait for what they belong to: everything on the page from there on.
  struct Held {
    std::size_t item;   ///< the first of them
    Millimetres y, gap;  ///< where the page was filled to before them, and the gap above them
  };

  bool begins_low() const { return sheets_.size() == 1 && sheets_.back().begins.number() > 0; }
  /// What is held would stand better on the next page.
  bool carries() const { return held_ && (held_->y > top_ || begins_low()); }
  void place(Block block, Millimetres gap);
  void next_page();
  void start_page();
  void draw_title();
  void draw_foot();

  const SheetContext& context_;
  FlowStart start_;
  FreeSpace below_;  ///< where the first page may begin on the page before it
  PageShape page_;
  std::vector<Sheet> sheets_;
  std::optional<Held> held_;
  Millimetres y_, top_, bottom_;
};

}  // namespace loomfolio
