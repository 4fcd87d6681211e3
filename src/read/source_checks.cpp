// SPDX-License-Identifier: MIT
#include "read/source_checks.h"

#include <optional>
#include <string>

#include "base/text.h"
#include "read/findings.h"
#include "read/toml_tree.h"

namespace loomfolio {
namespace {

Where at(std::int32_t file, std::size_t begin, std::size_t length) {
  return {file, static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(begin + length)};
}

/// Past the string that opens at `i`; an unclosed one ends at its line, or at the end of the text when it is
/// multi-line. A multi-line string may end in one or two quotes of its own before the closing three.
std::size_t skip_string(std::string_view text, std::size_t i) {
  const char quote = text[i];
  const bool has_escapes = quote == '"';
  const bool is_long = text.substr(i, 3) == std::string(3, quote);
  i += is_long ? 3 : 1;
  while (i < text.size()) {
    if (has_escapes && text[i] == '\\')
      i += 2;
    else if (is_long && text.substr(i, 3) == std::string(3, quote)) {
      i += 3;
      for (int own = 0; own < 2 && i < text.size() && text[i] == quote; ++own) ++i;
      return i;
    } else if (!is_long && text[i] == quote)
      return i + 1;
    else if (!is_long && text[i] == '\n')
      return i;
    else
      ++i;
  }
  return text.size();
}

struct Fault {
  DiagnosticId id{};
  std::size_t at = 0, length = 1;
};

/// The first thing outside texts and comments that TOML does not have there: a character beyond ASCII, or a dotted key
/// of more than `most_key_pieces`, which would make a tree too deep to walk.
std::optional<Fault> find_fault_outside_texts(std::string_view text) {
  int dots = 0;
  for (std::size_t i = text.starts_with("\xEF\xBB\xBF") ? 3 : 0; i < text.size();) {
    const char c = text[i];
    if (c == '"' || c == '\'') {
      i = skip_string(text, i);
      continue;
    }
    if (c == '#') {
      i = std::min(text.find('\n', i), text.size());
      continue;
    }
    if (c == '.' && ++dots >= most_key_pieces) return Fault{DiagnosticId::nested_too_deep, i};
    if (static_cast<unsigned char>(c) >= 0x80) {
      std::size_t end = i + 1;
      while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) ++end;
      return Fault{DiagnosticId::toml_syntax, i, end - i};
    }
    if (std::string_view("\n=,[]{}").find(c) != std::string_view::npos) dots = 0;
    ++i;
  }
  return std::nullopt;
}

/// The first byte at which the text stops being UTF-8.
std::size_t find_broken_byte(std::string_view text) {
  std::size_t sound = 0;
  while (sound < text.size()) {
    const std::size_t end = std::min(text.find('\n', sound), text.size());
    if (!is_utf8(text.substr(sound, end - sound))) break;
    sound = std::min(end + 1, text.size());
  }
  for (std::size_t length = 1; sound < text.size(); ++sound, length = 1) {
    while (length <= 4 && !is_utf8(text.substr(sound, length))) ++length;
    if (length > 4) return sound;
    sound += length - 1;
  }
  return sound;
}

}  // namespace

bool check_source(std::string_view text, std::int32_t file, Diagnostics& findings) {
  const auto refuse = [&](DiagnosticId id, Where where, std::string message, std::string hint = {}) {
    findings.push_back(make_diagnostic(id, where, std::move(message), std::move(hint)));
    return false;
  };
  if (text.size() > most_source_bytes)
    return refuse(DiagnosticId::file_too_large, at(file, 0, 0),
                  "the file holds " + std::to_string(text.size()) + " bytes; at most " +
                      std::to_string(most_source_bytes) + " are read");
  if (trimmed(text).empty())
    return refuse(DiagnosticId::file_empty, at(file, 0, 0), "the file is empty",
                  "`loomfolio new` writes a spec to start from");
  if (const auto nul = text.find('\0'); nul != std::string_view::npos)
    return refuse(DiagnosticId::nul_byte, at(file, nul, 1), "byte 0 stands in the text; a spec is plain text",
                  "save the file as UTF-8 text");
  if (!is_utf8(text)) {
    static constexpr char digits[] = "0123456789abcdef";
    const std::size_t broken = find_broken_byte(text);
    const auto byte = static_cast<unsigned char>(text[broken]);
    return refuse(DiagnosticId::broken_utf8, at(file, broken, 1),
                  std::string("byte 0x") + digits[byte >> 4] + digits[byte & 15] + " is not UTF-8 here",
                  "save the file as UTF-8 text");
  }
  const auto fault = find_fault_outside_texts(text);
  if (!fault) return true;
  const Where where = at(file, fault->at, fault->length);
  if (fault->id == DiagnosticId::nested_too_deep)
    return refuse(fault->id, where, "this key has more than " + std::to_string(most_key_pieces) + " pieces");
  return refuse(fault->id, where,
                "this is not TOML: " + quoted(text.substr(fault->at, fault->length)) + " stands outside quotes",
                "texts, and keys with such letters, are written in quotes");
}

}  // namespace loomfolio
