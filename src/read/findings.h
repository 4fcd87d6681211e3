// SPDX-License-Identifier: MIT
// Findings as the reading rooms make them: names in backticks, suggestions, and an end to their number.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "diag/diagnostic.h"

namespace loomfolio {

constexpr std::size_t most_findings = 1000;  ///< of one reading; a file with more is no spec

/// Keeps the finding, or says once that there are too many.
void add_finding(Diagnostics& findings, Diagnostic finding);

/// The text in backticks, cut when it is longer than a name.
std::string quoted(std::string_view text);
/// A to Z as a to z; all else as it is.
std::string lower_case(std::string_view text);
/// The candidate that was probably meant; empty when none is near. Among thousands it is not looked for: the text is
/// then no slip of a pen.
std::string guess_word(std::string_view word, const std::vector<std::string>& candidates);
/// "`a`, `b`, `c`", cut after a dozen.
std::string list_words(const std::vector<std::string>& words);
/// "did you mean `x`?" when one is near; else "`a`, `b` ..." introduced by `introduction`.
std::string suggest(std::string_view word, const std::vector<std::string>& candidates, std::string_view introduction);
/// The same, with the list behind a suggestion too: for short lists.
std::string suggest_and_list(std::string_view word, const std::vector<std::string>& candidates,
                             std::string_view introduction);

}  // namespace loomfolio
