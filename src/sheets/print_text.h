// SPDX-License-Identifier: MIT
// Values as a reader should see them: dates, lengths, sizes, figures, in the document's language and units.
#pragma once

#include <string>

#include "model/build.h"
#include "model/words.h"

namespace loomfolio {

/// '2 November 2026' for '2026-11-02'; any other text as it is.
std::string print_date(const std::string& iso_day, const Words& words);

/// The first eight digits, in two groups: '7f3a 91c0'.
std::string short_fingerprint(const std::string& fingerprint);

}  // namespace loomfolio
