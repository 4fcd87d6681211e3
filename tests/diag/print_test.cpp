// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "diag/diagnostic.h"

using namespace loomfolio;

namespace {

const Sources sources = {{{"bike.toml", "[[part]]\nid   = \"headlamp\"\n\n[[wire]]\nto   = \"headlamp.dipp\"\n"}}};

Diagnostic unknown_terminal() {
  Diagnostic finding = make_diagnostic(DiagnosticId::unknown_terminal, {0, 44, 59}, "unknown terminal `headlamp.dipp`",
                                       "did you mean `headlamp.dip`?");
  finding.notes.push_back({{0, 16, 26}, "part `headlamp` declared here"});
  return finding;
}

}  // namespace

TEST_CASE("a finding is printed with its line, caret, notes and hint") {
  CHECK(print_diagnostics({unknown_terminal()}, sources, Paint::plain) ==
        "bike.toml:5:8: error: unknown terminal `headlamp.dipp` [unknown-terminal]\n"
        "    5 | to   = \"headlamp.dipp\"\n"
        "      |        ^~~~~~~~~~~~~~~\n"
        "bike.toml:2:8: note: part `headlamp` declared here\n"
        "    2 | id   = \"headlamp\"\n"
        "      |        ^~~~~~~~~~\n"
        "hint: did you mean `headlamp.dip`?\n");
}

TEST_CASE("the one-line form holds place, severity, message and id") {
  CHECK(print_diagnostics_short({unknown_terminal()}, sources) ==
        "bike.toml:5:8: error: unknown terminal `headlamp.dipp` [unknown-terminal]\n");
  CHECK(print_diagnostics_short({make_diagnostic(DiagnosticId::file_unreadable, {}, "`x` cannot be read")}, sources) ==
        "error: `x` cannot be read [file-unreadable]\n");
}

TEST_CASE("colour is added only when asked for, and changes nothing else") {
  std::string coloured = print_diagnostics({unknown_terminal()}, sources, Paint::coloured);
  CHECK(coloured.find("\x1b[1;31merror:\x1b[0m") != std::string::npos);
  for (std::size_t at = coloured.find('\x1b'); at != std::string::npos; at = coloured.find('\x1b', at))
    coloured.erase(at, coloured.find('m', at) - at + 1);
  CHECK(coloured == print_diagnostics({unknown_terminal()}, sources, Paint::plain));
}

TEST_CASE("two findings are parted by an empty line") {
  const Diagnostics two = {make_diagnostic(DiagnosticId::missing_key, {0, 0, 8}, "a"),
                           make_diagnostic(DiagnosticId::missing_key, {0, 28, 36}, "b")};
  CHECK(print_diagnostics(two, sources, Paint::plain) ==
        "bike.toml:1:1: error: a [missing-key]\n    1 | [[part]]\n      | ^~~~~~~~\n\n"
        "bike.toml:4:1: error: b [missing-key]\n    4 | [[wire]]\n      | ^~~~~~~~\n");
}

TEST_CASE("JSON has every field, escaped") {
  CHECK(print_diagnostics_json({}, sources) == "[]\n");
  Diagnostic finding = unknown_terminal();
  finding.message = "a \"b\" \\ \x1b";
  CHECK(print_diagnostics_json({finding}, sources) ==
        "[\n  {\"severity\": \"error\", \"id\": \"unknown-terminal\", \"message\": \"a \\\"b\\\" \\\\ \xEF\xBF\xBD\",\n"
        "   \"file\": \"bike.toml\", \"line\": 5, \"column\": 8, \"end_line\": 5, \"end_column\": 23,\n"
        "   \"notes\": [{\"message\": \"part `headlamp` declared here\", \"file\": \"bike.toml\", \"line\": 2, "
        "\"column\": 8, \"end_line\": 2, "
        "\"end_column\": 18}],\n   \"hint\": \"did you mean `headlamp.dip`?\"}\n]\n");
}

TEST_CASE("findings sort by place and equal ones are kept once") {
  Diagnostics findings = {make_diagnostic(DiagnosticId::unknown_key, {1, 5, 6}, "c"),
                          make_diagnostic(DiagnosticId::unknown_key, {0, 9, 10}, "b"),
                          make_diagnostic(DiagnosticId::unknown_key, {0, 2, 3}, "a"),
                          make_diagnostic(DiagnosticId::unknown_key, {0, 9, 10}, "b")};
  sort_diagnostics(findings);
  REQUIRE(findings.size() == 3);
  CHECK(findings[0].message == "a");
  CHECK(findings[1].message == "b");
  CHECK(findings[2].message == "c");
}
