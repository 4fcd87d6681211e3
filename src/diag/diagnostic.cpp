// SPDX-License-Identifier: MIT
#include "diag/diagnostic.h"

#include <algorithm>
#include <tuple>

namespace loomfolio {

const std::vector<DiagnosticRule>& all_diagnostic_rules() {
  static const std::vector<DiagnosticRule> rules = {
#define DIAGNOSTIC(name, text, severity, meaning) {DiagnosticId::name, text, Severity::severity, meaning},
#include "diag/ids.def"
#undef DIAGNOSTIC
  };
  return rules;
}

const DiagnosticRule& rule_of(DiagnosticId id) { return all_diagnostic_rules()[static_cast<std::size_t>(id)]; }

Diagnostic make_diagnostic(DiagnosticId id, Where where, std::string message, std::string hint) {
  Diagnostic d;
  d.severity = rule_of(id).severity;
  d.id = id;
  d.where = where;
  d.message = std::move(message);
  d.hint = std::move(hint);
  return d;
}

void sort_diagnostics(Diagnostics& diagnostics) {
  const auto key = [](const Diagnostic& d) {
    return std::tie(d.where.file, d.where.begin, d.where.end, d.id, d.message);
  };
  std::stable_sort(diagnostics.begin(), diagnostics.end(),
                   [&](const auto& a, const auto& b) { return key(a) < key(b); });
  const auto last = std::unique(diagnostics.begin(), diagnostics.end(),
                                [&](const auto& a, const auto& b) { return key(a) == key(b); });
  diagnostics.erase(last, diagnostics.end());
}

bool has_errors(const Diagnostics& diagnostics) {
  return std::any_of(diagnostics.begin(), diagnostics.end(),
                     [](const Diagnostic& d) { return d.severity == Severity::error; });
}

}  // namespace loomfolio
