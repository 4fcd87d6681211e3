// SPDX-License-Identifier: MIT
// Wire colours: the letters of IEC 60757. GNYE is left out: it marks a protective conductor, which no motorcycle has.
#include <algorithm>
#include <array>

#include "read/draft.h"

namespace loomfolio {
namespace {

struct Colour {
  std::string_view code, name;
};
constexpr std::array<Colour, 14> colours = {{{"BK", "black"},
                                             {"BN", "brown"},
                                             {"RD", "red"},
                                             {"OG", "orange"},
                                             {"YE", "yellow"},
                                             {"GN", "green"},
                                             {"BU", "blue"},
                                             {"VT", "violet"},
                                             {"GY", "grey"},
                                             {"WH", "white"},
                                             {"PK", "pink"},
                                             {"GD", "gold"},
                                             {"TQ", "turquoise"},
                                             {"SR", "silver"}}};

bool is_code(std::string_view text) {
  return std::any_of(colours.begin(), colours.end(), [&](const Colour& c) { return c.code == text; });
}

std::string upper(std::string_view text) {
  std::string made(text);
  for (char& c : made)
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  return made;
}

/// The code that was probably meant, or how to write two colours.
std::string guess(const std::string& written, std::string_view key) {
  const std::string capitals = upper(written);
  if (is_code(capitals)) return "write `" + capitals + "`";
  for (const Colour& colour : colours)
    if (upper(colour.name) == capitals || (capitals == "PURPLE" && colour.code == "VT") ||
        (capitals == "GRAY" && colour.code == "GY"))
      return "write `" + std::string(colour.code) + "`";
  if (capitals.size() >= 4 && key == "colour" && is_code(capitals.substr(0, 2)) &&
      is_code(capitals.substr(capitals.size() - 2)))
    return "write colour = \"" + capitals.substr(0, 2) + "\", stripe = \"" + capitals.substr(capitals.size() - 2) +
           "\"";
  std::vector<std::string> codes;
  for (const Colour& colour : colours) codes.push_back(std::string(colour.code) + " " + std::string(colour.name));
  std::string list = "the codes are ";
  for (const std::string& code : codes) list += (code == codes.front() ? "" : ", ") + code;
  std::vector<std::string> bare;
  for (const Colour& colour : colours) bare.emplace_back(colour.code);
  return suggest(capitals, bare, "").starts_with("did") ? suggest(capitals, bare, "") + " " + list : list;
}

std::string read_code(TableReader& table, std::string_view key, Need need) {
  const PlacedText written = table.placed_line(key, need);
  if (!written.where.is_set() || written.text.empty()) return {};
  if (!is_code(written.text))
    table.report(DiagnosticId::unknown_colour, written.where, "`" + written.text + "` is no colour of IEC 60757",
                 guess(written.text, key));
  return written.text;
}

}  // namespace

WireColour read_colour(TableReader& table) {
  WireColour colour;
  colour.base = read_code(table, "colour", Need::must);
  colour.stripe = read_code(table, "stripe", Need::may);
  return colour;
}

}  // namespace loomfolio
