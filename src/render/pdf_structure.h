// SPDX-License-Identifier: MIT
#pragma once

#include <qpdf/QPDF.hh>
#include <string>
#include <vector>

namespace loomfolio {

/// Puts all that cairo tagged under one Document, and on each Figure, in the order drawn, the text that stands for it.
void finish_structure(QPDF& pdf, const std::vector<std::string>& figure_texts);

}  // namespace loomfolio
