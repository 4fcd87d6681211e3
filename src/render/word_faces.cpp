// SPDX-License-Identifier: MIT
#include "render/word_faces.h"

namespace loomfolio {

void mark_words(PangoAttrList* marks, const std::string& utf8, const FcCharSet* own, const std::string& families) {
  const char* const begin = utf8.data();
  const char* const end = begin + utf8.size();
  const char* word = begin;
  bool is_foreign = false;
  const auto finish_word = [&](const char* to) {
    if (is_foreign) {
      PangoAttribute* mark = pango_attr_family_new(families.c_str());
      mark->start_index = static_cast<guint>(word - begin);
      mark->end_index = static_cast<guint>(to - begin);
      pango_attr_list_insert(marks, mark);
    }
    is_foreign = false;
  };
  for (const char* at = begin; at < end; at = g_utf8_next_char(at)) {
    const gunichar c = g_utf8_get_char(at);
    if (g_unichar_isspace(c)) {
      finish_word(at);
      word = g_utf8_next_char(at);
    } else if (g_unichar_isalpha(c) && !FcCharSetHasChar(own, c)) {
      is_foreign = true;
    }
  }
  finish_word(end);
}

}  // namespace loomfolio
