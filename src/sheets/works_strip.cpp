// SPDX-License-Identifier: MIT
#include "sheets/works_strip.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "sheets/diagram_part.h"
#include "sheets/situation_state.h"

namespace loomfolio {
namespace {

constexpr Millimetres frame_gap{5}, strip_head{12.8};

struct StripFrame {
  std::string title, action, coil;
  const SolvedState* state = nullptr;
  PartState drawn;
};

/// What leaks through filaments into a coil at rest is no figure to puzzle over.
std::string shown_volts(const InsideState& coil) {
  constexpr double trifle = 0.5;
  const double volts = std::abs(coil.volts.number());
  const bool is_trifle = volts < trifle && std::abs(coil.amperes.number()) < least_flow.number();
  return is_trifle ? "0 V" : print_terminal_volts(Volts(volts));
}

std::vector<StripFrame> frames_for(const Build& build, const CoilStory& story, const Words& words) {
  const auto coil_in = [&](const SolvedState& state) {
    return state.solution.insides[story.part.at()][static_cast<std::size_t>(story.coil)];
  };
  const auto make = [&](const char* title, const SolvedState& state, bool is_after) {
    std::vector<std::string> actions;
    for (const MovedSwitch& moved : story.pair.moved)
      actions.push_back(moved_text(build, moved, is_after ? moved.after : moved.before));
    const InsideState coil = coil_in(state);
    return StripFrame{
        words(title), join(actions, ", "),
        words("works.frame_coil", {{"amperes", print_flow(coil.amperes)},
                                   {"volts", shown_volts(coil)}}),
        &state, make_part_state(build, state.situation, state.solution, story.part)};
  };
  const bool holds = coil_in(story.released).is_on;
  return {make("works.frame_rest", story.pair.before, false), make("works.frame_worked", story.pair.after, true),
          make(holds ? "works.frame_holds" : "works.frame_let_go", story.released, false)};
}

}  // namespace

Block make_works_strip(const SheetContext& context, const CoilStory& story, Millimetres width) {
  const std::vector<StripFrame> frames = frames_for(context.build(), story, context.words());
  const PartDrawing drawing = draw_inside({context.build(), story.part, context.measure(), {}, inside_styles()});
  const Millimetres own = to_mm(drawing.width) + Millimetres(2), third = (width - frame_gap * 2) / 3;
  const auto columns = static_cast<int>(std::clamp(std::floor((width + frame_gap) / (own + frame_gap)), 1.0, 3.0));
  const Millimetres step = columns == 3 ? third + frame_gap : (width + frame_gap) / columns;
  const Millimetres row = strip_head + to_mm(drawing.height) + Millimetres(2);
  const int rows = (3 + columns - 1) / columns;
  Block block{width, row * rows + frame_gap * (rows - 1), {}};
  block.items.push_back(
      TagOpenItem{"Figure", context.words()("works.strip", {{"part", context.build().part(story.part).label}})});
  for (int f = 0; f < 3; ++f) {
    const StripFrame& frame = frames[static_cast<std::size_t>(f)];
    const Point at{step * (f % columns), (row + frame_gap) * (f / columns)};
    add_text(block.items, {at.x, at.y + Millimetres(3.4)}, frame.title, look::table_bold);
    const auto line = [&](const std::string& text, double down) {
      const FittedText fitted = fit_text(text, look::small, step - frame_gap, context.measure());
      add_text(block.items, {at.x, at.y + Millimetres(down)}, fitted.text, fitted.style);
    };
    line(frame.action, 7.2);
    line(frame.coil, 10.6);
    draw_part(block.items, drawing, {at.x + Millimetres(1), at.y + strip_head + Millimetres(1)}, context.measure(), frame.drawn);
  }
  block.items.push_back(TagCloseItem{});
  return block;
}

}  // namespace loomfolio
