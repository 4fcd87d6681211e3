// SPDX-License-Identifier: MIT
#pragma once

#include <string>

#include "render/owners.h"

namespace loomfolio {

/// Where a word has a letter that `own` lacks, the whole word is marked for `families`: one letter of another face in
/// the middle of a word reads badly. Words without such a letter, and signs, stay as they are.
void mark_words(PangoAttrList* marks, const std::string& utf8, const FcCharSet* own, const std::string& families);

}  // namespace loomfolio
