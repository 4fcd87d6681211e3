// SPDX-License-Identifier: MIT
#include <algorithm>
#include <ostream>

#include "base/text.h"
#include "commands/command.h"
#include "commands/pages.h"
#include "read/languages.h"
#include "render/attachments.h"
#include "render/render.h"
#include "sheets/folio.h"
#include "sheets/placement_book.h"

namespace loomfolio {
namespace {

const char* const placement_name = "placement.json";

enum class Form : std::uint8_t { pdf, svg, png, text };

std::string ending_of(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  const std::size_t dot = path.find_last_of('.');
  return dot == std::string::npos || (slash != std::string::npos && dot < slash) ? "" : path.substr(dot);
}

std::string without_ending(const std::string& path) { return path.substr(0, path.size() - ending_of(path).size()); }

std::string choose_output(const Request& request) {
  if (!request.output.empty()) return request.output;
  return request.spec == "-" ? "-" : without_ending(request.spec) + ".pdf";
}

/// Nothing when the ending names no form that we write.
std::optional<Form> choose_form(const std::string& output) {
  const std::string ending = ending_of(output);
  if (output == "-" || ending == ".pdf") return Form::pdf;
  if (ending == ".svg") return Form::svg;
  if (ending == ".png") return Form::png;
  if (ending == ".txt") return Form::text;
  return std::nullopt;
}

/// What the command line says stands above what the spec says.
void apply_wishes(const Request& request, Project& project) {
  for (Build& build : project.builds) {
    if (!request.language.empty()) build.document.language = request.language;
    if (!request.paper.empty()) build.document.paper = request.paper;
  }
}

bool has_wrong_wish(const Request& request, const Proof& proof, Surroundings& surroundings) {
  std::vector<std::string> papers;
  for (const Paper& paper : proof.library.papers) papers.push_back(paper.id);
  return complain_unknown_variant(request, proof.project, surroundings) ||
         complain_unknown("paper", request.paper, papers, surroundings) ||
         complain_unknown("language", request.language, proof.library.languages, surroundings);
}

/// Sheets named by number or id; an id also names the kind of sheet it starts with.
bool choose_sheets(const Request& request, Folio& folio, Surroundings& surroundings) {
  if (request.sheets.empty()) return true;
  std::vector<bool> is_wanted(folio.sheets.size(), false);
  // A short run stands on the last sheet of the one before it.
  std::vector<std::vector<std::string>> ids_on;
  std::vector<std::string> ids;
  for (const Sheet& sheet : folio.sheets) {
    ids_on.push_back({sheet.id});
    for (const JoinedRun& run : sheet.joined) ids_on.back().push_back(run.id);
    ids.insert(ids.end(), ids_on.back().begin(), ids_on.back().end());
  }
  const auto is_named = [](const std::string& wish, const std::string& id) {
    const std::string last = split(id, '/').back();
    return wish == id || wish == last || last.starts_with(wish + "-");
  };
  for (const std::string& wish : request.sheets) {
    bool is_found = false;
    for (std::size_t i = 0; i < ids_on.size(); ++i) {
      const bool is_meant =
          wish == std::to_string(i + 1) || std::any_of(ids_on[i].begin(), ids_on[i].end(), [&](const std::string& id) {
            return is_named(wish, id);
          });
      if (is_meant) is_wanted[i] = is_found = true;
    }
    if (!is_found) {
      complain_unknown("sheet", wish, ids, surroundings);
      return false;
    }
  }
  std::vector<Sheet> kept;
  for (std::size_t i = 0; i < is_wanted.size(); ++i)
    if (is_wanted[i]) kept.push_back(std::move(folio.sheets[i]));
  folio.sheets = std::move(kept);
  return true;
}

/// Characters that no face can draw are findings, at the place in the spec that holds them.
void find_missing_glyphs(const Folio& folio, const FontSet& fonts, const Proof& proof, Diagnostics& findings) {
  std::string all;
  for (const Sheet& sheet : folio.sheets)
    for (const Item& item : sheet.items)
      if (const auto* text = std::get_if<TextItem>(&item)) all.append(text->text).append(1, '\n');
  for (const std::string& glyph : fonts.missing_glyphs(all)) {
    Where where;
    for (std::size_t i = 0; i < proof.sources.files.size(); ++i) {
      const std::size_t at = proof.sources.files[i].text.find(glyph);
      if (proof.sources.files[i].name != proof.spec_name || at == std::string::npos) continue;
      where = {static_cast<std::int32_t>(i), static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at + glyph.size())};
    }
    findings.push_back(make_diagnostic(DiagnosticId::missing_glyph, where, "no face has the character `" + glyph + "`",
                                       "write it in other words, or in a script that the faces of fonts/ have"));
  }
}

std::string render_sheet(const Sheet& sheet, Form form, const FontSet& fonts, const Request& request) {
  const Colouring colouring = request.is_mono ? Colouring::grey : Colouring::full;
  if (form == Form::svg) return render_svg(sheet, fonts, colouring);
  if (form == Form::png) return render_png(sheet, fonts, request.dots_per_inch, colouring);
  return render_dump(sheet);
}

/// Pictures are one file a sheet: out.png for one, out-01.png, out-02.png ... for several.
bool write_pictures(const Folio& folio, const std::string& output, Form form, const FontSet& fonts, const Request& request,
                    Surroundings& surroundings) {
  for (std::size_t i = 0; i < folio.sheets.size(); ++i) {
    std::string number = std::to_string(i + 1);
    if (number.size() < 2) number.insert(0, "0");
    const std::string path = folio.sheets.size() == 1 ? output : without_ending(output) + "-" + number + ending_of(output);
    if (!write_out(path, render_sheet(folio.sheets[i], form, fonts, request), surroundings)) return false;
  }
  return true;
}

/// The drawings of the print before: from the side file that is asked for, else from the PDF that will be written over.
PlacementBook open_book(const Request& request, const std::string& output, Form form, Surroundings& surroundings) {
  if (request.is_fresh) return {};
  const bool is_aside = !request.placement.empty();
  if (!is_aside && (form != Form::pdf || output == "-")) return {};
  const std::string& path = is_aside ? request.placement : output;
  std::string why;
  const auto file = surroundings.files.read(path, why);
  if (!file) return {};
  const auto text = is_aside ? file : extract_attachment(*file, placement_name);
  if (!text) return {};  // a PDF without one: of something else, or of an older print
  if (auto placements = read_placements(*text)) return PlacementBook(std::move(*placements));
  surroundings.err << "loomfolio: the drawings' places in `" << path << "` cannot be read; all is drawn anew\n";
  return {};
}

int complain_ending(const std::string& output, Surroundings& surroundings) {
  surroundings.err << "loomfolio: cannot tell what to write from `" << output << "`\nhint: end it with .pdf, .svg, .png or .txt\n";
  return 2;
}

int refuse(const Proof& proof, Surroundings& surroundings) {
  report_findings(proof, surroundings);
  surroundings.err << "loomfolio: nothing printed\n";
  if (!proof.solutions.empty()) surroundings.err << "hint: --draft prints all the same and marks every sheet\n";
  return 1;
}

}  // namespace

SolvedBuild solved_build(const Proof& proof, std::size_t build) {
  return {proof.project.builds[build], proof.solutions[build], proof.studies[build]};
}

std::unique_ptr<PagesKit> gather_pages_kit(const Request& request, Proof& proof, Surroundings& surroundings) {
  apply_wishes(request, proof.project);
  const Document& document = proof.project.builds.front().document;
  Words words = read_words(proof.library, document.language, surroundings.files, proof.sources, proof.diagnostics);
  translate_kinds(proof.project, words);
  set_minus_signs(proof.project);
  const auto papers = choose_papers(proof.library.papers, document.paper);
  if (!papers) {
    surroundings.err << "loomfolio: no paper `" << document.paper << "`\n";
    return nullptr;
  }
  auto kit = std::make_unique<PagesKit>(std::move(words), *papers, surroundings.share_folder + "/fonts");
  if (!kit->fonts.error().empty()) {
    surroundings.err << "loomfolio: " << kit->fonts.error() << "\n";
    return nullptr;
  }
  return kit;
}

FolioInput PagesKit::input_of(const Proof& proof) const {
  FolioInput input{proof.project, {}, words, papers.text, papers.drawing, fonts.measure(), {}};
  for (std::size_t i = 0; i < proof.project.builds.size(); ++i)
    input.builds.push_back(solved_build(proof, i));
  if (papers.larger) input.larger_paper = &*papers.larger;
  return input;
}

int print_pages(const Request& request, Proof& proof, const EarlierFolio* earlier, Progress& progress, Surroundings& surroundings) {
  const std::string output = choose_output(request);
  const auto form = choose_form(output);
  if (!form) return complain_ending(output, surroundings);
  const bool may_print = !proof.solutions.empty() && (request.is_draft || !has_errors(proof.diagnostics));
  if (!may_print) return refuse(proof, surroundings);
  if (has_wrong_wish(request, proof, surroundings)) return 2;
  auto kit = gather_pages_kit(request, proof, surroundings);
  if (!kit) return 2;

  progress.step("drawing the sheets");
  FolioInput input = kit->input_of(proof);
  input.options.variant = request.variant;
  if (request.overlay == "costs") input.options.overlay = Overlay::costs;
  input.options.is_draft = has_errors(proof.diagnostics);
  input.options.earlier = earlier;
  PlacementBook book = open_book(request, output, *form, surroundings);
  input.placements = &book;
  Folio folio = compose_folio(input);
  const bool is_kept = *form == Form::pdf || !request.placement.empty();
  const std::string places = is_kept ? write_placements(book.take(request.variant)) : std::string();
  folio.attachments.push_back({spec_attachment, "application/toml", kit->words("file.spec"), proof.spec_text});
  folio.attachments.push_back({placement_name, "application/json", kit->words("file.placement"), places});
  if (!choose_sheets(request, folio, surroundings)) return 2;
  find_missing_glyphs(folio, kit->fonts, proof, proof.diagnostics);
  sort_diagnostics(proof.diagnostics);
  if (!request.is_draft && has_errors(proof.diagnostics)) return refuse(proof, surroundings);

  progress.step("writing");
  const Colouring colouring = request.is_mono ? Colouring::grey : Colouring::full;
  const bool is_written = *form == Form::pdf ? write_out(output, render_pdf(folio, kit->fonts, colouring, &surroundings.leftovers), surroundings)
                                             : write_pictures(folio, output, *form, kit->fonts, request, surroundings);
  progress.wipe();
  report_findings(proof, surroundings);
  surroundings.leftovers.push_back(std::make_shared<Folio>(std::move(folio)));
  surroundings.leftovers.push_back(std::shared_ptr<PagesKit>(std::move(kit)));
  if (!is_written || (!request.placement.empty() && !write_out(request.placement, places, surroundings))) return 2;
  return has_errors(proof.diagnostics) ? 1 : 0;
}

int run_print(const Request& request, Surroundings& surroundings) {
  const std::string output = choose_output(request);
  if (!choose_form(output)) return complain_ending(output, surroundings);
  Progress progress(surroundings);
  progress.step("reading and solving");
  auto proof = prove_spec(request, surroundings);
  return proof ? print_pages(request, *proof, nullptr, progress, surroundings) : 2;
}

}  // namespace loomfolio
