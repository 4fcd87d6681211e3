// SPDX-License-Identifier: MIT
// A folio of many sheets is drawn in parts side by side; here they become one PDF.
#pragma once

#include <memory>
#include <string>
#include <vector>

class QPDF;

namespace loomfolio {

/// `drawn` as objects, all of them read; it must live as long. Nothing when qpdf cannot read it.
std::shared_ptr<QPDF> read_part(const std::string& drawn);

/// Puts the pages and the structure of all parts, in their order, into the first. The others must live until it is written.
void join_parts(const std::vector<std::shared_ptr<QPDF>>& parts);

}  // namespace loomfolio
