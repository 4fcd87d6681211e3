// SPDX-License-Identifier: MIT
#pragma once

#include "render/pdf_finish.h"

class QPDF;

namespace loomfolio {

/// The outline (ISO 32000-1, 12.3.3): a line a sheet and a run that joins one, those of a group under a line of its own.
void set_outline(QPDF& pdf, const Folio& folio);

}  // namespace loomfolio
