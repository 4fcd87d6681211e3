// SPDX-License-Identifier: MIT
#include "sheets/folio.h"

#include <algorithm>
#include <functional>
#include <future>
#include <optional>
#include <utility>

#include "base/side_by_side.h"
#include "sheets/change_bars.h"
#include "sheets/decimal_sign.h"
#include "sheets/frame.h"
#include "sheets/glossary.h"
#include "sheets/hook_ups.h"
#include "sheets/reference.h"
#include "sheets/right_to_left.h"
#include "sheets/sheet_makers.h"

namespace loomfolio {
namespace {

bool is_wanted(const FolioOptions& options, std::string_view kind) {
  return options.sheets.empty() ||
         std::find(options.sheets.begin(), options.sheets.end(), kind) != options.sheets.end();
}

/// The builds to print: one variant when it was asked for, else all; each with its wires' loads.
std::vector<SolvedBuild> wanted_builds(const FolioInput& input) {
  std::vector<SolvedBuild> builds;
  for (const SolvedBuild& solved : input.builds) {
    if (!input.options.variant.empty() && solved.build.variant != input.options.variant) continue;
    builds.push_back(solved);
    complete_figures(builds.back());
  }
  return builds;
}

/// Runs of several hook-ups side by side: the first page of each, then the second of each.
std::vector<Sheet> interleave(std::vector<std::vector<Sheet>> runs) {
  std::vector<Sheet> sheets;
  std::size_t most = 0;
  for (const std::vector<Sheet>& run : runs) most = std::max(most, run.size());
  for (std::size_t i = 0; i < most; ++i)
    for (std::vector<Sheet>& run : runs)
      if (i < run.size()) sheets.push_back(std::move(run[i]));
  return sheets;
}

/// 'Signals' for 'Signals (1)': a line of the contents stands for the whole run.
std::string title_of_run(const std::string& title, const Words& words) {
  const std::string blank = "\n", numbered = words("page.numbered", {{"title", blank}, {"number", "1"}});
  const std::size_t at = numbered.find(blank);
  if (at == std::string::npos) return title;
  const std::string before = numbered.substr(0, at), after = numbered.substr(at + blank.size());
  const bool is_first = title.size() > before.size() + after.size() && title.starts_with(before) && title.ends_with(after);
  return is_first ? title.substr(before.size(), title.size() - before.size() - after.size()) : title;
}

/// Puts the lower part of a sheet below what stands on `sheet`.
void join_run(Sheet& sheet, Sheet&& lower) {
  sheet.joined.push_back({std::move(lower.id), std::move(lower.title), lower.begins});
  std::move(lower.items.begin(), lower.items.end(), std::back_inserter(sheet.items));
  sheet.free = lower.free;
}

class Composer {
 public:
  explicit Composer(const FolioInput& input) : input_(input), builds_(wanted_builds(input)) {
    if (is_several()) hook_ups_ = compare_hook_ups(builds_);
    // The faults need solutions alone, and the tests ask for them late: they are thought out while sheets are drawn.
    if (is_wanted(input_.options, "tests"))
      for (SolvedBuild& solved : builds_)
        if (!solved.solutions.empty())
          solved.fault_plan = std::async(std::launch::async, plan_faults, std::cref(solved.build), std::cref(solved.solutions));
  }

  std::vector<Sheet> make_all() {
    if (builds_.empty()) return {};
    std::vector<Run> runs = list_runs();
    work_side_by_side(runs.size(), [&](std::size_t r) { make(runs[r], runs[r].sheets); });
    std::optional<std::size_t> own;  // the hook-up whose own sheets have begun
    for (Run& run : runs) {
      const std::size_t first = sheets_.size();
      bind(run);
      if (run.is_compared && first_compared_.empty() && first < sheets_.size()) first_compared_ = sheets_[first].id;
      if (!run.own || run.own == own || first == sheets_.size()) continue;
      own = run.own;
      sheets_[first].items.insert(sheets_[first].items.begin(), AnchorItem{"own", {}});
    }
    add_glossary();
    make_opening();
    if (is_several()) begin_compared_left();
    return std::move(sheets_);
  }

 private:
  struct Turn {
    const SheetKind* kind;
    SheetContext context;
  };

  /// Kinds that may share pages, one after the other. Runs are made side by side, as if nothing stood before them.
  struct Run {
    std::vector<Turn> turns;
    bool is_compared = false;  ///< one kind, its sheets of several hook-ups side by side
    std::optional<std::size_t> own = {};  ///< whose sheets, of several hook-ups
    std::vector<Sheet> sheets = {};
  };

  bool is_several() const { return builds_.size() > 1; }

  SheetContext context_of(std::size_t build) const {
    SheetContext context{input_, builds_[build], {}, {}};
    context.build_index = build;
    if (is_several()) context.hook_ups = &hook_ups_;
    return context;
  }

  SheetContext context_of_own(std::size_t build) const {
    SheetContext context = context_of(build);
    if (!is_several()) return context;
    context.id_prefix = context.build().variant + "/";
    context.group = hook_up_title(context);
    return context;
  }

  SheetContext context_of_common() const {
    SheetContext context = context_of(0);
    context.extent = Extent::common;
    context.group = input_.words("hook_up.common");
    return context;
  }

  /// What holds for all leads: first what tells the hook-ups apart, then what they share. Each hook-up's own sheets follow together, and
  /// what closes the folio comes last.
  std::vector<Run> list_runs() const {
    std::vector<Run> runs;
    const auto take = [&](SheetScope scope, const SheetContext& context) {
      for (const SheetKind& kind : sheet_kinds())
        if (kind.scope == scope) add_turn(runs, kind, context);
    };
    take(SheetScope::once, context_of(0));
    if (is_several()) {
      add_compared(runs);
      take(SheetScope::split, context_of_common());
    }
    for (std::size_t b = 0; b < builds_.size(); ++b) add_own(runs, b);
    take(SheetScope::last, context_of(0));
    return runs;
  }

  /// A kind whose sheets are drawings leaves no room on the last, so the next begins a run; so does one of another group.
  void add_turn(std::vector<Run>& runs, const SheetKind& kind, const SheetContext& context) const {
    if (!is_wanted(input_.options, kind.name)) return;
    const bool goes_on = !runs.empty() && !runs.back().is_compared && runs.back().turns.back().kind->joining != Joining::drawn &&
                         runs.back().turns.back().context.group == context.group;
    if (!goes_on) runs.push_back({});
    runs.back().turns.push_back({&kind, context});
  }

  void add_compared(std::vector<Run>& runs) const {
    for (const SheetKind& kind : sheet_kinds()) {
      if (kind.scope != SheetScope::compared || !is_wanted(input_.options, kind.name)) continue;
      runs.push_back({{}, true});
      for (std::size_t b = 0; b < builds_.size(); ++b) runs.back().turns.push_back({&kind, context_of_own(b)});
    }
  }

  void add_own(std::vector<Run>& runs, std::size_t build) const {
    SheetContext context = context_of_own(build);
    const std::size_t first = runs.size();
    for (const SheetKind& kind : sheet_kinds()) {
      const bool is_compared_alone = kind.scope == SheetScope::compared && !is_several();
      if (kind.scope != SheetScope::split && kind.scope != SheetScope::each_variant && !is_compared_alone) continue;
      context.extent = kind.scope == SheetScope::split && is_several() ? Extent::own : Extent::whole;
      add_turn(runs, kind, context);
    }
    for (std::size_t r = first; is_several() && r < runs.size(); ++r) runs[r].own = build;
  }

  void make(const Run& run, std::vector<Sheet>& sheets) const {
    if (run.is_compared) return make_compared(run, sheets);
    for (const Turn& turn : run.turns) make(turn, sheets);
  }

  void make_compared(const Run& run, std::vector<Sheet>& sheets) const {
    std::vector<std::vector<Sheet>> made;
    for (std::size_t b = 0; b < run.turns.size(); ++b) {
      made.push_back(run.turns[b].kind->make(run.turns[b].context));
      for (Sheet& sheet : made.back()) {
        sheet.title = input_.words("hook_up.titled", {{"letter", hook_up_letter(b)}, {"title", sheet.title}});
        sheet.group = input_.words("hook_up.compared");
      }
    }
    sheets = interleave(std::move(made));
  }

  /// Puts a run behind what there is; made anew where, against expectation, its first page may begin below what there is.
  void bind(Run& run) {
    const bool has_room = !run.is_compared && may_join(run.turns.front(), sheets_) && sheets_.back().free.bottom > sheets_.back().free.top;
    if (has_room) return make(run, sheets_);
    std::move(run.sheets.begin(), run.sheets.end(), std::back_inserter(sheets_));
  }

  static bool may_join(const Turn& turn, const std::vector<Sheet>& sheets) {
    return turn.kind->joining != Joining::opens && turn.kind->joining != Joining::alone && !sheets.empty() &&
           sheets.back().group == turn.context.group;
  }

  /// Of what all sheets say; so it is no kind among the others.
  void add_glossary() {
    if (!is_wanted(input_.options, "glossary")) return;
    std::vector<Sheet> glossary = make_glossary(context_of(0), sheets_);
    std::move(glossary.begin(), glossary.end(), std::back_inserter(sheets_));
  }

  void make_opening() {
    SheetContext context = context_of(0);
    for (const Sheet& sheet : sheets_) {
      if (first_of_run(sheet.id) == sheet.id) context.contents.push_back({sheet.id, title_of_run(sheet.title, input_.words), sheet.group});
      for (const JoinedRun& run : sheet.joined) context.contents.push_back({run.id, run.title, sheet.group});
    }
    std::vector<Sheet> others = std::exchange(sheets_, {});
    for (const SheetKind& kind : sheet_kinds())
      if (kind.scope == SheetScope::opening && is_wanted(input_.options, kind.name)) make({&kind, context}, sheets_);
    std::move(others.begin(), others.end(), std::back_inserter(sheets_));
  }

  /// Sheets side by side begin at the left, on an even number; the words used, or else a page for notes, make it so.
  void begin_compared_left() {
    const auto find_first = [this] {
      return std::find_if(sheets_.begin(), sheets_.end(), [this](const Sheet& sheet) { return sheet.id == first_compared_; });
    };
    const auto first = find_first();
    if (first == sheets_.end() || (first - sheets_.begin()) % 2 == 1) return;
    const auto is_word_list = [](const Sheet& sheet) { return first_of_run(sheet.id) == "glossary"; };
    std::vector<Sheet> between;
    if (std::count_if(sheets_.begin(), sheets_.end(), is_word_list) == 1) {
      const auto words = std::find_if(sheets_.begin(), sheets_.end(), is_word_list);
      between.push_back(std::move(*words));
      sheets_.erase(words);
    } else {
      between = make_notes(context_of(0));
    }
    sheets_.insert(find_first(), std::make_move_iterator(between.begin()), std::make_move_iterator(between.end()));
  }

  void make(const Turn& turn, std::vector<Sheet>& sheets) const {
    SheetContext context = turn.context;
    if (may_join(turn, sheets)) context.start = sheets.back().free;
    for (Sheet& sheet : turn.kind->make(context)) {
      if (turn.kind->joining == Joining::alone) sheet.free = {};
      if (sheet.begins.number() > 0) {
        join_run(sheets.back(), std::move(sheet));
        continue;
      }
      if (sheet.group.empty()) sheet.group = context.group;
      sheets.push_back(std::move(sheet));
    }
  }

  const FolioInput& input_;
  std::vector<SolvedBuild> builds_;
  HookUps hook_ups_;  ///< of `builds_`, where there are several
  std::vector<Sheet> sheets_;
  std::string first_compared_;  ///< id of the first sheet that is to stand at the left
};

void frame_all(Folio& folio, const FolioInput& input, const Document& document) {
  TitleStrip every = title_strip_of(document, input.project.fingerprint);
  every.is_draft = input.options.is_draft;
  every.of = static_cast<int>(folio.sheets.size());
  work_side_by_side(folio.sheets.size(), [&](std::size_t i) {
    TitleStrip strip = every;
    strip.sheet = static_cast<int>(i) + 1;
    Sheet& sheet = folio.sheets[i];
    put_frame(sheet, page_of(sheet, input.text_paper, input.drawing_paper), strip, input.words, input.measure);
  });
}

}  // namespace

std::vector<Sheet> make_sheets(const FolioInput& input) { return Composer(input).make_all(); }

Composed compose_with_report(const FolioInput& input) {
  Composed composed;
  if (input.builds.empty()) return composed;
  Folio& folio = composed.folio;
  const Document& document = input.builds.front().build.document;
  folio.info.title = document.title;
  folio.info.author = document.workshop;
  folio.info.subject = document.subtitle;
  folio.info.language = input.words.language();
  folio.info.date = document.date;
  folio.info.fingerprint = input.project.fingerprint;
  folio.sheets = make_sheets(input);
  if (input.options.earlier != nullptr) put_change_bars(folio.sheets, *input.options.earlier, input.words, input.measure);
  composed.lost_references = resolve_references(folio, input.text_paper, input.drawing_paper);
  frame_all(folio, input, document);
  if (input.words.is_right_to_left()) put_reading_marks(folio);
  put_decimal_sign(folio, input.words("number.decimal"), input.project.builds);
  return composed;
}

Folio compose_folio(const FolioInput& input) { return compose_with_report(input).folio; }

std::optional<PaperPair> choose_papers(const std::vector<Paper>& papers, const std::string& id) {
  const auto named = std::find_if(papers.begin(), papers.end(), [&](const Paper& p) { return p.id == id; });
  if (named == papers.end()) return std::nullopt;
  const auto smaller = std::find_if(papers.begin(), papers.end(), [&](const Paper& p) { return p.larger == id; });
  PaperPair pair{smaller == papers.end() ? *named : *smaller, *named, std::nullopt};
  const auto larger = std::find_if(papers.begin(), papers.end(), [&](const Paper& p) { return p.id == named->larger; });
  if (larger != papers.end()) pair.larger = *larger;
  return pair;
}

}  // namespace loomfolio
