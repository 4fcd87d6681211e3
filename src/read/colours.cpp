// SPDX-License-Identifier: MIT
// Wire colours: the letters of IEC 60757. GNYE is left out: it marks a protective conductor, which no motorcycle has.
#include <algorithm>
#include <array>

#include "base/text.h"
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

/// The code in capitals, or of a colour's name; empty when the word is neither.
std::string find_code(std::string_view word) {
  const std::string name = lower_case(word);
  for (const Colour& colour : colours)
    if (lower_case(colour.code) == name || colour.name == name) return std::string(colour.code);
  return name == "purple" ? "VT" : name == "gray" ? "GY" : "";
}

/// The code that was probably meant, or how to write two colours.
std::string guess(const std::string& written, std::string_view key) {
  if (const std::string code = find_code(written); !code.empty()) return "write `" + code + "`";
  if (written.size() >= 4 && key == "colour") {
    const std::string base = find_code(written.substr(0, 2)), stripe = find_code(written.substr(written.size() - 2));
    if (!base.empty() && !stripe.empty()) return "write colour = \"" + base + "\", stripe = \"" + stripe + "\"";
  }
  std::vector<std::string> codes, named;
  for (const Colour& colour : colours) {
    codes.emplace_back(colour.code);
    named.push_back(std::string(colour.code) + " " + std::string(colour.name));
  }
  const std::string nearest = suggest(written, codes, "");
  return nearest + (nearest.empty() ? "" : " ") + "the codes are " + join(named, ", ");
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
