// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include <set>

#include "diag/diagnostic.h"

using namespace loomfolio;

TEST_CASE("every finding's id is unique, lower case with hyphens, and says what to do in one sentence") {
  std::set<std::string_view> seen;
  for (const DiagnosticRule& rule : all_diagnostic_rules()) {
    CAPTURE(rule.text);
    CHECK(seen.insert(rule.text).second);
    CHECK(rule.text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") == std::string_view::npos);
    CHECK(rule.meaning.ends_with("."));
    CHECK(rule_of(rule.id).text == rule.text);
  }
}
