// SPDX-License-Identifier: MIT
// A spec as a whole: its tables in the order in which they name one another, then one build a variant.
#include <algorithm>

#include "base/text.h"
#include "read/draft.h"
#include "read/kind_reader.h"

namespace loomfolio {
namespace {

bool is_same(const Diagnostic& a, const Diagnostic& b) {
  return a.id == b.id && a.where == b.where && a.message == b.message;
}

/// Findings of several builds: one that all share stands once as it is, any other says which variants it holds for.
void merge_findings(const std::vector<Build>& builds, const std::vector<Diagnostics>& found, Diagnostics& findings) {
  Diagnostics kept;
  std::vector<std::vector<std::string>> variants;
  for (std::size_t i = 0; i < builds.size(); ++i)
    for (const Diagnostic& finding : found[i]) {
      const auto same =
          std::find_if(kept.begin(), kept.end(), [&](const Diagnostic& k) { return is_same(k, finding); });
      if (same == kept.end()) {
        kept.push_back(finding);
        variants.push_back({builds[i].variant});
      } else if (auto& in = variants[static_cast<std::size_t>(same - kept.begin())]; in.back() != builds[i].variant) {
        in.push_back(builds[i].variant);
      }
    }
  for (std::size_t i = 0; i < kept.size(); ++i) {
    if (variants[i].size() < builds.size())
      kept[i].message += (variants[i].size() == 1 ? ", in variant " : ", in variants ") + list_words(variants[i]);
    add_finding(findings, std::move(kept[i]));
  }
}

}  // namespace

void read_own_kinds(SpecDraft& draft, TableReader& spec) {
  std::vector<Kind> own;
  for (const TomlValue* tree : spec.tables("kind", 500)) {
    Kind kind = read_kind(*tree, "[[kind]]", spec.findings());
    const auto same_id = [&](const Kind& other) { return !kind.id.empty() && other.id == kind.id; };
    if (const auto first = std::find_if(own.begin(), own.end(), same_id); first != own.end()) {
      spec.report(DiagnosticId::duplicate_id, kind.origin.key("id"), "there are two kinds `" + kind.id + "`", {},
                  {{first->origin.key("id"), "the first stands here"}});
    } else
      own.push_back(std::move(kind));
  }
  for (Kind& kind : own) {
    const auto same =
        std::find_if(draft.kinds.begin(), draft.kinds.end(), [&](const Kind& other) { return other.id == kind.id; });
    if (same != draft.kinds.end())
      *same = std::move(kind);
    else
      draft.kinds.push_back(std::move(kind));
  }
}

Project read_spec(const std::string& name, const std::string& text, const Library& library, Sources& sources,
                  Diagnostics& diagnostics) {
  Project project;
  project.fingerprint = fingerprint(text);
  const auto file = static_cast<std::int32_t>(sources.files.size());
  sources.files.push_back({name, text});
  const auto tree = parse_toml(sources, file, diagnostics);
  if (!tree) return project;
  TableReader spec(*tree, "the spec", diagnostics);
  SpecDraft draft;
  draft.kinds = library.kinds;
  draft.document = read_document(spec, library);
  draft.electrics = read_electrics(spec);
  draft.zones = read_zones(spec);
  read_own_kinds(draft, spec);
  read_items(draft.base, draft, spec, "");
  draft.variants = read_variants(draft, spec);
  draft.changes = read_changes(spec);
  draft.fuse_curves = read_fuse_curves(spec);
  draft.layout = read_layout(spec);
  spec.refuse_unknown_keys();
  number_wires(draft);
  std::vector<Diagnostics> found(std::max<std::size_t>(1, draft.variants.size()));
  for (std::size_t i = 0; i < found.size(); ++i)
    project.builds.push_back(assemble_build(draft, draft.variants.empty() ? nullptr : &draft.variants[i], found[i]));
  merge_findings(project.builds, found, diagnostics);
  sort_diagnostics(diagnostics);
  return project;
}

}  // namespace loomfolio
