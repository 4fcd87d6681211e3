// SPDX-License-Identifier: MIT
// Values as a reader should see them: dates, lengths, sizes, figures, names, in the document's language and units.
#pragma once

#include <string>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// '2 November 2026' for '2026-11-02'; any other text as it is.
std::string print_date(const std::string& iso_day, const Words& words);

/// The first eight digits, in two groups: '7f3a 91c0'.
std::string short_fingerprint(const std::string& fingerprint);

/// The bare number of a length along the loom: whole millimetres, or inches to a tenth.
std::string print_length(Metres length, UnitSystem units);
/// The unit that print_length counts in.
std::string length_unit(UnitSystem units, const Words& words);

/// A length on a part or a wire's end, with its unit: '6 mm', '0.24 in'.
std::string print_small_length(Millimetres length, UnitSystem units, const Words& words);

/// '2.5 mm\u00b2' or '14 AWG'.
std::string print_wire_size(const Wire& wire);
std::string print_area(SquareMillimetres area);

/// Amperes to two significant places: 0.35, 4.2, 142. No unit.
std::string print_amperes(Amperes current);
/// Volts to 0.01 V. No unit.
std::string print_volts(Volts volts);
/// A rating with its unit: '7.5 A'.
std::string print_rating(Amperes rating);

/// 'thin wall', 'battery cable'.
std::string print_insulation(Insulation insulation, const Words& words);

/// A zone's label, or its id when it has none.
const std::string& zone_name(const Zone& zone);

}  // namespace loomfolio
