// SPDX-License-Identifier: MIT
// The decimal sign of the language. Figures are laid out with a point; a finished folio then gets the language's sign,
// which is as wide in our faces.
#pragma once

#include <string>
#include <vector>

#include "model/build.h"
#include "sheets/sheet.h"

namespace loomfolio {

/// `text` with the point of each decimal number replaced by `sign`. A number is digits, a point, digits, perhaps a sign
/// before and a unit after: '2.5', '-0.12', '7.5A'. '43.13-1B', '2.11.2026', '1.2.a' and every word of `kept` stay.
std::string with_decimal_sign(const std::string& text, const std::string& sign, const std::vector<std::string>& kept);

/// Words of the spec that look like decimal numbers and are none: ids, job and revision marks.
std::vector<std::string> list_kept_words(const std::vector<Build>& builds);

/// Puts the sign into every text and alternative text of the folio.
void put_decimal_sign(Folio& folio, const std::string& sign, const std::vector<Build>& builds);

}  // namespace loomfolio
