// SPDX-License-Identifier: MIT
// Text pages filled from top to bottom with blocks; a block that does not fit starts a new page, and no block is cut.
#pragma once

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
  /// A heading that stays with at least `following` of what comes after it.
  void add_heading(const std::string& text, Millimetres following = Millimetres(15));
  /// Starts a new page unless that much is left, or the page is empty.
  void keep(Millimetres height);
  void new_page();
  /// Items at places of the page itself; for what is drawn around blocks.
  Items& items() { return sheets_.back().items; }
  Point cursor() const { return {page_.body.x, y_}; }

  std::vector<Sheet> take();

 private:
  bool begins_low() const { return sheets_.size() == 1 && sheets_.back().begins.number() > 0; }
  void start_page();
  void draw_title();
  void draw_foot();

  const SheetContext& context_;
  FlowStart start_;
  FreeSpace below_;  ///< where the first page may begin on the page before it
  PageShape page_;
  std::vector<Sheet> sheets_;
  Millimetres y_, top_, bottom_;
};

}  // namespace loomfolio
