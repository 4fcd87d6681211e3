// SPDX-License-Identifier: MIT
#include "sheets/folio.h"

#include <algorithm>
#include <utility>

#include "sheets/frame.h"
#include "sheets/reference.h"

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

class Composer {
 public:
  explicit Composer(const FolioInput& input) : input_(input), builds_(wanted_builds(input)) {}

  std::vector<Sheet> make_all() {
    if (builds_.empty()) return {};
    // What is common leads, each hook-up's own sheets follow together, and what closes the folio comes last.
    make_common(Part::front);
    for (const SolvedBuild& solved : builds_) make_own(solved);
    make_common(Part::back);
    make_opening();
    return std::move(sheets_);
  }

 private:
  enum class Part { front, back };

  void make_common(Part part) {
    bool is_past_own = false;
    for (const SheetKind& kind : sheet_kinds()) {
      if (kind.scope == SheetScope::each_variant)
        is_past_own = true;
      else if (kind.scope == SheetScope::once && is_past_own == (part == Part::back))
        make(kind, {input_, builds_.front(), {}, {}});
    }
  }

  void make_own(const SolvedBuild& solved) {
    const bool is_one_of_several = builds_.size() > 1;
    const std::string prefix = is_one_of_several ? solved.build.variant + "/" : "";
    const std::string group = is_one_of_several ? solved.build.variant_label : "";
    for (const SheetKind& kind : sheet_kinds())
      if (kind.scope == SheetScope::each_variant) make(kind, {input_, solved, prefix, group});
  }

  void make_opening() {
    SheetContext context{input_, builds_.front(), {}, {}};
    for (const Sheet& sheet : sheets_)
      if (first_of_run(sheet.id) == sheet.id) context.contents.push_back({sheet.id, sheet.title, sheet.group});
    std::vector<Sheet> others = std::exchange(sheets_, {});
    for (const SheetKind& kind : sheet_kinds())
      if (kind.scope == SheetScope::opening) make(kind, context);
    std::move(others.begin(), others.end(), std::back_inserter(sheets_));
  }

  void make(const SheetKind& kind, const SheetContext& context) {
    if (!is_wanted(input_.options, kind.name)) return;
    for (Sheet& sheet : kind.make(context)) {
      if (sheet.group.empty()) sheet.group = context.group;
      sheets_.push_back(std::move(sheet));
    }
  }

  const FolioInput& input_;
  std::vector<SolvedBuild> builds_;
  std::vector<Sheet> sheets_;
};

void frame_all(Folio& folio, const FolioInput& input, const Document& document) {
  TitleStrip strip = title_strip_of(document, input.project.fingerprint);
  strip.is_draft = input.options.is_draft;
  strip.of = static_cast<int>(folio.sheets.size());
  strip.sheet = 0;
  for (Sheet& sheet : folio.sheets) {
    ++strip.sheet;
    put_frame(sheet, page_of(sheet, input.text_paper, input.drawing_paper), strip, input.words, input.measure);
  }
}

}  // namespace

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
  folio.sheets = Composer(input).make_all();
  composed.lost_references = resolve_references(folio, input.text_paper, input.drawing_paper);
  frame_all(folio, input, document);
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
