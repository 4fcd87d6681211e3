// SPDX-License-Identifier: MIT
// A whole folio: which sheets there are, in which order, and what their makers are given.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "model/build.h"
#include "model/paper.h"
#include "model/words.h"
#include "sheets/figures.h"
#include "sheets/sheet.h"

namespace loomfolio {

class PlacementBook;
struct EarlierFolio;

/// What is drawn over the diagrams beside what they always show.
enum class Overlay : std::uint8_t {
  none,
  costs,  ///< on each wire what its length, bends and crossings cost
};

struct FolioOptions {
  std::vector<std::string> sheets;  ///< names of sheet kinds wanted, as in sheet_kinds(); empty: all
  std::string variant;              ///< only this one; empty: all
  bool is_draft = false;            ///< the check found errors: every sheet says that it is a draft
  Overlay overlay = Overlay::none;
  const EarlierFolio* earlier = nullptr;  ///< what it did not say gets a bar in the margin (change_bars.h)
};

struct FolioInput {
  const Project& project;
  std::vector<SolvedBuild> builds;  ///< by Project::builds
  const Words& words;
  const Paper& text_paper;     ///< text pages, upright
  const Paper& drawing_paper;  ///< diagrams, across
  const TextMeasure& measure;
  FolioOptions options = {};
  const Paper* larger_paper =
      nullptr;  ///< drawings that do not fit on `drawing_paper` go on this; none: they are split
  PlacementBook* placements = nullptr;  ///< drawings of the print before, and where this one's are kept; none: all are made anew
};

/// A line of the contents.
struct ContentsEntry {
  std::string id, title, group;
};

/// Which part of a build a maker shows, where a folio holds several hook-ups.
enum class Extent : std::uint8_t {
  whole,   ///< all of it
  common,  ///< what is the same in all hook-ups
  own,     ///< what this hook-up has and others have not, or not so
};

struct HookUps;

/// What a maker of sheets is given. Sheet ids are `id_prefix` + kind + number where there are several: "wires",
/// "wires-2", "with-unit/wires".
struct SheetContext {
  const FolioInput& input;
  const SolvedBuild& solved;
  std::string id_prefix;
  std::string group;                         ///< outline heading; empty: top level
  std::vector<ContentsEntry> contents = {};  ///< of all other sheets; only for the sheet that opens the folio
  Extent extent = Extent::whole;
  const HookUps* hook_ups = nullptr;  ///< where there are several; hook_ups.h has what to ask of it
  std::size_t build_index = 0;        ///< of `solved` among them
  FreeSpace start = {};  ///< where on the page before its first page may begin; empty: on a page of its own

  const Build& build() const { return solved.build; }
  const Words& words() const { return input.words; }
  const TextMeasure& measure() const { return input.measure; }
};

/// Sheets without frame and title strip, which are put on when their number is known.
using SheetMaker = std::vector<Sheet> (*)(const SheetContext&);

/// Whether a folio of several hook-ups shows the sheet once or once a hook-up.
enum class SheetScope : std::uint8_t {
  opening,  ///< once, before all others, and made last, when the contents are known
  once,
  compared,      ///< once a hook-up, side by side: the first stands on a left page
  split,         ///< what all share once (Extent::common), what differs once a hook-up (Extent::own)
  each_variant,  ///< whole, once a hook-up
  last,          ///< once, behind all others
};

/// Whether a run of pages may begin below the one before it.
enum class Joining : std::uint8_t {
  follows,  ///< where there is room
  opens,    ///< on a page of its own; others may follow on its last
  drawn,    ///< where there is room; its last sheet is a drawing, so what comes after it need not wait for it
  alone,    ///< it shares no page
};

struct SheetKind {
  std::string_view name;
  SheetScope scope = SheetScope::each_variant;
  SheetMaker make = nullptr;
  Joining joining = Joining::follows;
};

/// All kinds of sheet, in the order they are bound.
const std::vector<SheetKind>& sheet_kinds();

/// A folio, and the targets of references that led nowhere (of all sheets, there should be none).
struct Composed {
  Folio folio;
  std::vector<std::string> lost_references;
};
Composed compose_with_report(const FolioInput& input);

/// Sheets as their makers leave them: without frames, references as marks.
std::vector<Sheet> make_sheets(const FolioInput& input);

/// All sheets with frames, links resolved, in order. Never fails; an empty choice gives an empty folio.
Folio compose_folio(const FolioInput& input);

/// The larger paper of a pair by name: drawings of an A4 document go on `larger` where the document asks for it.
/// Text pages of an A3 or Tabloid document go on A4 or Letter; the drawings of an A4 or Letter document stay on it.
struct PaperPair {
  Paper text, drawing;
  std::optional<Paper> larger;  ///< for drawings too large for `drawing`
};
/// Nothing when no paper has that id.
std::optional<PaperPair> choose_papers(const std::vector<Paper>& papers, const std::string& id);

}  // namespace loomfolio
