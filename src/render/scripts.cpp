// SPDX-License-Identifier: MIT
#include "render/scripts.h"

namespace loomfolio {
namespace {

constexpr gunichar left_to_right_mark = 0x200E, right_to_left_mark = 0x200F;

/// Null for scripts that go with whatever surrounds them.
const char* language_of(GUnicodeScript script) {
  switch (script) {
    case G_UNICODE_SCRIPT_LATIN:
      return "en";
    case G_UNICODE_SCRIPT_GREEK:
      return "el";
    case G_UNICODE_SCRIPT_CYRILLIC:
      return "ru";
    case G_UNICODE_SCRIPT_ARABIC:
      return "ar";
    case G_UNICODE_SCRIPT_HEBREW:
      return "he";
    case G_UNICODE_SCRIPT_DEVANAGARI:
      return "hi";
    default:
      return nullptr;
  }
}

}  // namespace

PangoAttributes mark_languages(const std::string& utf8) {
  PangoAttributes marks(pango_attr_list_new());
  const char* const begin = utf8.data();
  const char* const end = begin + utf8.size();
  const char* current = nullptr;
  const char* from = begin;
  const auto mark_until = [&](const char* to) {
    if (current && from != to) {
      PangoAttribute* mark = pango_attr_language_new(pango_language_from_string(current));
      mark->start_index = static_cast<guint>(from - begin);
      mark->end_index = static_cast<guint>(to - begin);
      pango_attr_list_insert(marks.get(), mark);
    }
    from = to;
  };
  for (const char* at = begin; at < end; at = g_utf8_next_char(at)) {
    const char* found = language_of(g_unichar_get_script(g_utf8_get_char(at)));
    if (!found || found == current) continue;
    if (current) mark_until(at);
    current = found;
  }
  mark_until(end);
  return marks;
}

PangoDirection direction_of(const std::string& utf8) {
  const char* const end = utf8.data() + utf8.size();
  for (const char* at = utf8.data(); at < end; at = g_utf8_next_char(at)) {
    const gunichar c = g_utf8_get_char(at);
    if (c == right_to_left_mark) return PANGO_DIRECTION_RTL;
    if (c == left_to_right_mark) return PANGO_DIRECTION_LTR;
    if (!g_unichar_isalpha(c)) continue;
    const GUnicodeScript script = g_unichar_get_script(c);
    const bool is_from_right = script == G_UNICODE_SCRIPT_ARABIC || script == G_UNICODE_SCRIPT_HEBREW;
    return is_from_right ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR;
  }
  return PANGO_DIRECTION_LTR;
}

}  // namespace loomfolio
