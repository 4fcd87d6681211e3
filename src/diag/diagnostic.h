// SPDX-License-Identifier: MIT
// A finding, and how it is printed.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "diag/source.h"

namespace loomfolio {

enum class Severity : std::uint8_t { error, warning, note };

/// Every finding's id, in the order of ids.def, which also says what each means.
enum class DiagnosticId : std::uint16_t {
#define DIAGNOSTIC(name, text, severity, meaning) name,
#include "diag/ids.def"
#undef DIAGNOSTIC
};

struct DiagnosticRule {
  DiagnosticId id;
  std::string_view text;     ///< as printed in brackets: `unknown-terminal`
  Severity severity;         ///< the severity a finding of this id has unless its maker says otherwise
  std::string_view meaning;  ///< one sentence that says what to do
};

/// All rules, in order of id.
const std::vector<DiagnosticRule>& all_diagnostic_rules();
const DiagnosticRule& rule_of(DiagnosticId id);

struct DiagnosticNote {
  Where where;  ///< may be unset
  std::string message;
};

struct Diagnostic {
  Severity severity = Severity::error;
  DiagnosticId id{};
  Where where;
  std::string message;  ///< lower case, no full stop, names in backticks; what was seen, then the rule
  std::vector<DiagnosticNote> notes;
  std::string hint;     ///< what to do about it; may be empty
};

using Diagnostics = std::vector<Diagnostic>;

/// A finding with its rule's severity.
Diagnostic make_diagnostic(DiagnosticId id, Where where, std::string message, std::string hint = {});

/// By file, place, then id, then message; equal findings are kept once.
void sort_diagnostics(Diagnostics& diagnostics);

bool has_errors(const Diagnostics& diagnostics);

enum class Paint : std::uint8_t { plain, coloured };

/// With source line, caret, notes and hint. Columns count what the reader sees.
std::string print_diagnostics(const Diagnostics& diagnostics, const Sources& sources, Paint paint);

/// One line a finding, for build logs: `file:line:column: severity: message [id]`.
std::string print_diagnostics_short(const Diagnostics& diagnostics, const Sources& sources);

/// A JSON array, one object a finding: severity, id, message, file, line, column, end_line, end_column, notes, hint.
std::string print_diagnostics_json(const Diagnostics& diagnostics, const Sources& sources);

}  // namespace loomfolio
