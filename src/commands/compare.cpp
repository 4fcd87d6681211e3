// SPDX-License-Identifier: MIT
// `compare`: what changed from one spec to another, as text; with -o the newer one's pages, a bar beside what the older one's
// did not say. Either may be a PDF: it carries its spec.
#include <algorithm>
#include <array>
#include <ostream>

#include "base/text.h"
#include "commands/command.h"
#include "commands/pages.h"
#include "commands/tables/compare_tables.h"
#include "commands/tables/table_makers.h"
#include "render/attachments.h"

namespace loomfolio {
namespace {

struct ComparedTable {
  const char* name;
  PlainTable (*make)(const SolvedBuild&, const Words&);
  std::size_t keys;  ///< columns that tell its rows apart
};

constexpr std::array<ComparedTable, 6> compared{{{"document", make_build_table, 1},
                                                 {"parts", make_parts_table, 1},
                                                 {"wires", make_wires_table, 1},
                                                 {"earths and splices", make_earths_table, 1},
                                                 {"fuses", make_fuses_table, 1},
                                                 {"situations", make_situations_table, 1}}};

/// The proof of a spec or of the one in a PDF; nothing, said on `err`, where there is none or it has errors, which sets `code`.
std::optional<Proof> prove_either(const std::string& path, Surroundings& surroundings, int& code) {
  code = 2;
  auto text = read_text(path, surroundings);
  if (!text) return std::nullopt;
  if (text->starts_with("%PDF")) {
    text = extract_attachment(*text, spec_attachment);
    if (!text) {
      surroundings.err << "loomfolio: `" << path << "` carries no spec: loomfolio has not printed it\n";
      return std::nullopt;
    }
  }
  auto proof = prove_text(path, std::move(*text), surroundings);
  if (!proof || !has_errors(proof->diagnostics)) return proof;
  report_findings(*proof, surroundings);
  surroundings.err << "loomfolio: nothing compared\n";
  code = 1;
  return std::nullopt;
}

std::string name_of(const Document& document) {
  std::string name = document.title;
  if (!document.revision.empty()) name += ", revision " + document.revision;
  if (!document.date.empty()) name += " of " + document.date;
  return name;
}

using SolvedBuilds = std::vector<SolvedBuild>;  ///< by Project::builds

SolvedBuilds solved_builds(const Proof& proof) {
  SolvedBuilds all;
  for (std::size_t b = 0; b < proof.project.builds.size(); ++b) {
    all.push_back(solved_build(proof, b));
    complete_figures(all.back());
  }
  return all;
}

bool has_variant(const Proof& proof, const std::string& variant) {
  return std::any_of(proof.project.builds.begin(), proof.project.builds.end(),
                     [&](const Build& build) { return build.variant == variant; });
}

/// A change and the hook-ups that have it.
struct Told {
  std::string line;
  std::vector<std::string> variants;
};

std::vector<Told> changes_of(const ComparedTable& table, const SolvedBuilds& older, const SolvedBuilds& newer, const Words& words) {
  std::vector<Told> told;
  for (const SolvedBuild& is : newer) {
    const std::string& variant = is.build.variant;
    const auto was = std::find_if(older.begin(), older.end(), [&](const SolvedBuild& one) { return one.build.variant == variant; });
    if (was == older.end()) continue;
    for (const std::string& line : compare_tables(table.make(*was, words), table.make(is, words), table.keys)) {
      const auto same = std::find_if(told.begin(), told.end(), [&](const Told& one) { return one.line == line; });
      if (same != told.end())
        same->variants.push_back(variant);
      else
        told.push_back({line, {variant}});
    }
  }
  return told;
}

/// Hook-ups that only one of the two has.
std::vector<std::string> changed_variants(const Proof& older, const Proof& newer) {
  std::vector<std::string> lines;
  for (const Build& build : newer.project.builds)
    if (!has_variant(older, build.variant)) lines.push_back("+ " + build.variant);
  for (const Build& build : older.project.builds)
    if (!has_variant(newer, build.variant)) lines.push_back("- " + build.variant);
  return lines;
}

std::string say_changes(const Proof& older, const Proof& newer, const Words& words) {
  std::string text;
  const auto add = [&](const std::string& head, const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    text += head + "\n";
    for (const std::string& line : lines) text += "  " + line + "\n";
  };
  add("variants", changed_variants(older, newer));
  const SolvedBuilds was = solved_builds(older), is = solved_builds(newer);
  for (const ComparedTable& table : compared) {
    std::vector<std::string> lines;
    for (const Told& one : changes_of(table, was, is, words)) {
      const bool is_in_all = one.variants.size() == newer.project.builds.size();
      lines.push_back(one.line + (is_in_all ? "" : " [" + join(one.variants, ", ") + "]"));
    }
    add(table.name, lines);
  }
  return text.empty() ? "no part, wire, joint, fuse or situation differs\n" : text;
}

/// The newer pages with bars beside what is new.
int print_marked(const Request& request, Proof& older, Proof& newer, Surroundings& surroundings) {
  Progress progress(surroundings);
  Request asked = request;
  const auto kit = gather_pages_kit(asked, older, surroundings);
  if (!kit) return 2;
  progress.step("making the older sheets");
  FolioInput input = kit->input_of(older);
  input.options.variant = has_variant(older, request.variant) ? request.variant : std::string();
  const Document& document = older.project.builds.front().document;
  const EarlierFolio earlier{gather_said(make_sheets(input), input.measure), document.revision, document.date};
  return print_pages(request, newer, &earlier, progress, surroundings);
}

}  // namespace

int run_compare(const Request& request, Surroundings& surroundings) {
  int code = 0;
  auto older = prove_either(request.earlier, surroundings, code);
  if (!older) return code;
  auto newer = prove_either(request.spec, surroundings, code);
  if (!newer) return code;
  const Document &was = older->project.builds.front().document, &is = newer->project.builds.front().document;
  // In English, as all that is no page.
  const Words words = read_words(newer->library, "en", surroundings.files, newer->sources, newer->diagnostics);
  surroundings.out << name_of(was) << " -> " << name_of(is) << "\n" << say_changes(*older, *newer, words);
  return request.output.empty() ? 0 : print_marked(request, *older, *newer, surroundings);
}

}  // namespace loomfolio
