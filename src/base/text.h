// SPDX-License-Identifier: MIT
// Text helpers that know nothing of motorcycles: characters, columns, likeness, numbers without a locale.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace loomfolio {

/// Unicode characters in UTF-8 text; a broken byte counts as one.
std::size_t count_characters(std::string_view utf8);

/// Columns a terminal shows: combining marks 0, wide East Asian characters 2, a tab goes to the next multiple of 8
/// counted from `start_column` (0-based).
std::size_t count_columns(std::string_view utf8, std::size_t start_column = 0);

/// The candidate most like `word` (edit distance with transpositions, at most a third of its length, at least 1);
/// empty when none is near. Ties go to the earlier candidate.
std::string find_nearest(std::string_view word, const std::vector<std::string>& candidates);

/// `number` with exactly `decimals` digits after the point; never '-0.00', never a locale's comma.
std::string fixed(double number, int decimals);

/// `number` with at most `decimals` digits after the point and no trailing zeros: 2.5, 10, 0.85.
std::string shortest(double number, int decimals = 3);

std::vector<std::string> split(std::string_view text, char separator);
std::string join(const std::vector<std::string>& words, std::string_view separator);
std::string trimmed(std::string_view text);
/// As people number things: runs of digits compare as numbers, the rest by bytes: 'C2' before 'C10', '9' before '10'.
bool is_numbered_before(std::string_view a, std::string_view b);
bool is_utf8(std::string_view text);

/// `pattern` with each `{name}` replaced by the value of that name; an unknown name stays as it is.
std::string fill(std::string_view pattern, const std::vector<std::pair<std::string, std::string>>& values);

/// FNV-1a, 64 bit, as 16 hex digits: the fingerprint of a text. Not for secrets.
std::string fingerprint(std::string_view text);

}  // namespace loomfolio
