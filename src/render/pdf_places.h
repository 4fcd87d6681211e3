// SPDX-License-Identifier: MIT
#pragma once

#include <qpdf/QPDF.hh>

#include "render/pdf_finish.h"

namespace loomfolio {

/// Names the places and gives each link that cairo began its area, its goal, and the title of the sheet it leads to.
void set_places(QPDF& pdf, const Folio& folio, const PdfExtras& extras);

}  // namespace loomfolio
