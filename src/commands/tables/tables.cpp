// SPDX-License-Identifier: MIT
// `tables`: one table of the pages as CSV or JSON. Several hook-ups stand in one table, told apart by their first column.
#include <array>
#include <iterator>
#include <ostream>

#include "commands/command.h"
#include "commands/pages.h"
#include "commands/tables/table_makers.h"
#include "read/languages.h"

namespace loomfolio {
namespace {

struct TableKind {
  const char* name;
  PlainTable (*make)(const SolvedBuild&, const Words&);
};

constexpr std::array<TableKind, 5> kinds{{{"wires", make_wires_table},
                                          {"fuses", make_fuses_table},
                                          {"parts", make_parts_table},
                                          {"cuts", make_cuts_table},
                                          {"earths", make_earths_table}}};

const TableKind* find_kind(const Request& request, Surroundings& surroundings) {
  std::vector<std::string> names;
  for (const TableKind& kind : kinds) {
    if (request.table == kind.name) return &kind;
    names.emplace_back(kind.name);
  }
  complain_unknown("table", request.table, names, surroundings);
  return nullptr;
}

PlainTable make_table(const Request& request, const Proof& proof, const TableKind& kind, const Words& words) {
  PlainTable all;
  for (std::size_t b = 0; b < proof.project.builds.size(); ++b) {
    const Build& build = proof.project.builds[b];
    if (!request.variant.empty() && build.variant != request.variant) continue;
    SolvedBuild solved = solved_build(proof, b);
    complete_figures(solved);
    PlainTable one = kind.make(solved, words);
    if (all.columns.empty()) {
      all.columns = std::move(one.columns);
      all.columns.insert(all.columns.begin(), "variant");
    }
    for (auto& row : one.rows) {
      row.insert(row.begin(), build.variant.empty() ? PlainValue() : PlainValue(build.variant));
      all.rows.push_back(std::move(row));
    }
  }
  return all;
}

}  // namespace

int run_tables(const Request& request, Surroundings& surroundings) {
  const TableKind* kind = find_kind(request, surroundings);
  if (kind == nullptr) return 2;
  auto proof = prove_spec(request, surroundings);
  if (!proof) return 2;
  const bool is_faulty = has_errors(proof->diagnostics);
  if (!is_faulty && complain_unknown_variant(request, proof->project, surroundings)) return 2;
  report_findings(*proof, surroundings);
  if (is_faulty) return 1;
  const Words words = read_words(proof->library, proof->project.builds.front().document.language, surroundings.files,
                                 proof->sources, proof->diagnostics);
  translate_kinds(proof->project, words);
  const PlainTable table = make_table(request, *proof, *kind, words);
  const bool as_json = request.as_json || request.output.ends_with(".json");
  const std::string text = as_json ? write_json(table) : write_csv(table);
  return write_out(request.output.empty() ? "-" : request.output, text, surroundings) ? 0 : 2;
}

}  // namespace loomfolio
