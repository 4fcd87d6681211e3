// SPDX-License-Identifier: MIT
#include <algorithm>
#include <set>
#include <string>

#include "check/check.h"
#include "doctest/doctest.h"

using namespace loomfolio;

TEST_CASE("each rule has one finding of its name, so that a reader of a finding can open its rule") {
  std::set<std::string> ids, names;
  for (const DiagnosticRule& rule : all_diagnostic_rules()) ids.insert(std::string(rule.text));
  for (const NamedRule& rule : all_rules()) {
    std::string text(rule.name);
    std::replace(text.begin(), text.end(), '_', '-');
    CHECK_MESSAGE(ids.count(text) == 1, text);
    CHECK_MESSAGE(names.insert(text).second, text);
  }
}

TEST_CASE("an empty build has no findings") {
  const Build build;
  CHECK(check_build({build, {}}).empty());
}
