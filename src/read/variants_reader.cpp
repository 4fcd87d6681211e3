// SPDX-License-Identifier: MIT
#include "read/draft.h"

namespace loomfolio {

void read_items(ItemsDraft& items, const SpecDraft& draft, TableReader& owner, const std::string& prefix) {
  items.parts = read_parts(draft, owner, prefix);
  items.splices = read_splices(draft, owner, prefix);
  items.earths = read_earths(draft, owner, prefix);
  items.wires = read_wires(owner, prefix);
  items.situations = read_situations(owner, prefix);
  std::vector<Part> known = items.parts;
  if (&items != &draft.base) known.insert(known.end(), draft.base.parts.begin(), draft.base.parts.end());
  items.steps = read_steps(known, owner, prefix);
}

std::vector<VariantDraft> read_variants(const SpecDraft& draft, TableReader& spec) {
  std::vector<VariantDraft> variants;
  for (const TomlValue* tree : spec.tables("variant", 30)) {
    TableReader table(*tree, "[[variant]]", spec.findings());
    VariantDraft variant;
    variant.origin = table.origin();
    variant.name = table.id("name", Need::must);
    for (const VariantDraft& other : variants)
      if (!variant.name.empty() && other.name == variant.name) {
        table.report(DiagnosticId::duplicate_id, variant.origin.key("name"),
                     "there are two variants `" + variant.name + "`", {},
                     {{other.origin.key("name"), "the first stands here"}});
        break;
      }
    variant.label = table.line("label", Need::may);
    if (variant.label.empty()) variant.label = variant.name;
    variant.when = table.line("when", Need::may);
    variant.without = table.lines("without");
    read_items(variant.items, draft, table, "variant.");
    table.refuse_unknown_keys();
    variants.push_back(std::move(variant));
  }
  return variants;
}

}  // namespace loomfolio
