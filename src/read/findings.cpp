// SPDX-License-Identifier: MIT
#include "read/findings.h"

#include <algorithm>

#include "base/text.h"

namespace loomfolio {
namespace {

std::string list_behind(std::string_view introduction, const std::vector<std::string>& candidates) {
  return std::string(introduction) + " " + list_words(candidates);
}

}  // namespace

std::string lower_case(std::string_view text) {
  std::string made(text);
  for (char& c : made)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return made;
}

std::string guess_word(std::string_view word, const std::vector<std::string>& candidates) {
  constexpr std::size_t most_candidates = 2000;
  if (candidates.size() > most_candidates) return {};
  for (const std::string& candidate : candidates)
    if (lower_case(candidate) == lower_case(word)) return candidate;
  return find_nearest(word, candidates);
}

void add_finding(Diagnostics& findings, Diagnostic finding) {
  if (findings.size() > most_findings) return;
  if (findings.size() == most_findings)
    finding =
        make_diagnostic(DiagnosticId::too_many_findings, finding.where,
                        "there are more than " + std::to_string(most_findings) + " findings; the rest is left out");
  findings.push_back(std::move(finding));
}

std::string quoted(std::string_view text) {
  constexpr std::size_t most = 80;
  if (text.size() <= most) return "`" + std::string(text) + "`";
  std::size_t length = most - 3;
  while (length > 0 && (static_cast<unsigned char>(text[length]) & 0xC0) == 0x80) --length;
  return "`" + std::string(text.substr(0, length)) + "...`";
}

std::string list_words(const std::vector<std::string>& words) {
  constexpr std::size_t most = 12;
  std::vector<std::string> shown;
  for (std::size_t i = 0; i < words.size() && i < most; ++i) shown.push_back(quoted(words[i]));
  return join(shown, ", ") + (words.size() > most ? " and " + std::to_string(words.size() - most) + " more" : "");
}

std::string suggest(std::string_view word, const std::vector<std::string>& candidates, std::string_view introduction) {
  const std::string nearest = guess_word(word, candidates);
  if (!nearest.empty()) return "did you mean " + quoted(nearest) + "?";
  return candidates.empty() || introduction.empty() ? std::string() : list_behind(introduction, candidates);
}

std::string suggest_and_list(std::string_view word, const std::vector<std::string>& candidates,
                             std::string_view introduction) {
  if (candidates.empty()) return {};
  const std::string nearest = guess_word(word, candidates);
  return (nearest.empty() ? "" : "did you mean " + quoted(nearest) + "? ") + list_behind(introduction, candidates);
}

}  // namespace loomfolio
