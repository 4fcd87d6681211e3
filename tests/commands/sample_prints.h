// SPDX-License-Identifier: MIT
// The samples and their prints: each is printed once for all tests of this program.
#pragma once

#include <string>

namespace loomfolio {

/// What samples/NAME.toml says.
std::string sample_text(const std::string& name);

/// Its PDF, drawn afresh: what a print over nothing gives.
const std::string& sample_pdf(const std::string& name);

}  // namespace loomfolio
