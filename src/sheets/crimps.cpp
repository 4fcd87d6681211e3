// SPDX-License-Identifier: MIT
// Crimps and connectors: for each kind of fitting that the build uses, which sizes go into it, how it is made, a figure
// a step, and good and bad ones side by side. First, how hard a spare must hold.
#include <algorithm>
#include <array>
#include <utility>

#include "base/text.h"
#include "sheets/crimp_figures.h"
#include "sheets/crimp_tables.h"
#include "sheets/fitting_uses.h"
#include "sheets/hook_up_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {
namespace {

struct Procedure {
  FittingShape shape;
  std::string_view title;  ///< of the words
};

constexpr std::array<Procedure, 9> procedures{{{FittingShape::sealed, "crimps.sealed_title"},
                                               {FittingShape::contact, "crimps.contact_title"},
                                               {FittingShape::blade, "crimps.blade_title"},
                                               {FittingShape::ring, "crimps.ring_title"},
                                               {FittingShape::bullet, "crimps.bullet_title"},
                                               {FittingShape::splice, "crimps.splice_title"},
                                               {FittingShape::lead, "crimps.lead_title"},
                                               {FittingShape::cap, "crimps.cap_title"},
                                               {FittingShape::bare, "crimps.bare_title"}}};

class CrimpPages {
 public:
  explicit CrimpPages(const SheetContext& context)
      : context_(context),
        build_(context.build()),
        words_(context.words()),
        flow_(context, {"crimps", words_("crimps.title"), words_("crimps.intro")}) {
    if (context.hook_ups == nullptr) builds_.push_back(&build_);
    if (context.hook_ups != nullptr)
      for (const SolvedBuild* solved : context.hook_ups->builds) builds_.push_back(&solved->build);
  }

  std::vector<Sheet> make() {
    const auto uses = find_fitting_uses(builds_, words_);
    flow_.add(
        make_panel(panel_from_words(words_, Signal::warning, "crimps.panel"), flow_.width(), words_, flow_.setting()),
        {});
    add_pull_table();
    for (const Procedure& procedure : procedures) {
      const auto found = uses.find(procedure.shape);
      if (found != uses.end()) add_procedure(procedure, found->second);
    }
    return flow_.take();
  }

 private:
  void add_procedure(const Procedure& procedure, const std::vector<FittingUse>& uses) {
    // Families follow each other; head, table and first pictures stay together.
    std::vector<Block> rows = step_rows(flow_, procedure.shape, uses);
    std::vector<Block> examples = example_rows(flow_, procedure.shape, *uses.front().wires.begin()->second.front());
    Block rulers = strip_rulers(flow_, uses);
    const bool is_splice = procedure.shape == FittingShape::splice;
    const Table table = is_splice ? barrel_table(context_, builds_) : fit_table(context_, procedure.shape, uses);
    Millimetres height = Millimetres(10) + rulers.height;
    height += look::line_step(look::table) * (2.5 * static_cast<double>(table.rows.size()));
    if (!rows.empty()) height += rows.front().height + look::gutter;
    flow_.keep(std::min(height, flow_.full_room() * 0.8));
    flow_.add_heading(words_(procedure.title));
    flow_.items().push_back(AnchorItem{fitting_anchor(procedure.shape), {}});
    add_table(flow_, table, look::paragraph_gap);
    if (rulers.height.number() > 0) flow_.add(std::move(rulers), look::paragraph_gap);
    for (Block& row : rows) flow_.add(std::move(row), look::gutter);
    add_rows(words_("crimps.examples_of", {{"fitting", words_(procedure.title)}}), {}, std::move(examples));
    add_rows(words_("crimps.shared_of", {{"fitting", words_(procedure.title)}}), shared_text(uses),
             shared_rows(flow_, procedure.shape, uses));
  }

  /// '5 + 14'; '5 + 14 (A, B)' where not all hook-ups have it.
  std::string wires_text(const SharedFitting& shared) const {
    std::vector<std::string> ids;
    for (const Wire* wire : shared.wires) ids.push_back(wire->id);
    const std::string text = join(ids, " + ");
    return shared.hook_ups.size() == builds_.size() ? text : text + " (" + letters_text(shared.hook_ups) + ")";
  }

  /// Where wires share a fitting, and whose practice the pictures show.
  std::string shared_text(const std::vector<FittingUse>& uses) const {
    std::vector<std::pair<std::string, std::string>> wires_at;  // by place
    for (const FittingUse& use : uses)
      for (const SharedFitting& shared : use.shared) {
        const auto same = std::find_if(wires_at.begin(), wires_at.end(), [&](const auto& at) { return at.first == shared.place; });
        if (same == wires_at.end())
          wires_at.emplace_back(shared.place, wires_text(shared));
        else
          same->second += ", " + wires_text(shared);
      }
    std::vector<std::string> places;
    for (const auto& [place, wires] : wires_at)
      places.push_back(words_("crimps.shared_at", {{"place", place}, {"wires", wires}}));
    return words_("crimps.shared_text", {{"list", join(places, "; ")}});
  }

  /// Rows of figures under a head of their own, all on one page.
  void add_rows(const std::string& title, const std::string& lead, std::vector<Block> rows) {
    if (rows.empty()) return;
    Block head = set_paragraph({{{title, look::text_bold, look::ink, {}}}, Align::left, "H3"}, flow_.width(),
                               flow_.setting());
    Block text = lead.empty() ? Block{} : set_text(lead, look::text, flow_.width(), flow_.setting());
    Millimetres height = head.height + look::block_gap + text.height + look::paragraph_gap;
    for (const Block& row : rows) height += row.height + look::paragraph_gap;
    flow_.keep(height);
    flow_.add(std::move(head), look::block_gap);
    if (text.height.number() > 0) flow_.add(std::move(text), look::paragraph_gap);
    for (Block& row : rows) flow_.add(std::move(row), look::paragraph_gap);
  }

  void add_pull_table() {
    const Table table = pull_table(context_, builds_);
    if (table.rows.empty()) return;
    flow_.add_heading(words_("crimps.pull_title"));
    flow_.add_lead(words_("crimps.pull_text"), look::paragraph_gap);
    add_table(flow_, table, look::paragraph_gap);
  }

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  std::vector<const Build*> builds_;  ///< all hook-ups
  PageFlow flow_;
};

}  // namespace

std::vector<Sheet> make_crimps(const SheetContext& context) {
  // The common pages show the fittings of every hook-up.
  if (context.build().wires.empty() || context.extent == Extent::own) return {};
  return CrimpPages(context).make();
}

}  // namespace loomfolio
