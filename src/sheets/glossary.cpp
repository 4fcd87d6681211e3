// SPDX-License-Identifier: MIT
// The words of the trade that the other pages use, explained. A term is on the page only when it is printed somewhere.
#include "sheets/glossary.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "base/text.h"
#include "sheets/characters.h"
#include "sheets/columns.h"
#include "sheets/page_flow.h"

namespace loomfolio {
namespace {

std::string lower_case(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

std::string text_of(const std::vector<Sheet>& sheets) {
  std::string all;
  for (const Sheet& sheet : sheets)
    for (const Item& item : sheet.items)
      if (const auto* text = std::get_if<TextItem>(&item)) all += text->text + " ";
  return lower_case(std::move(all));
}

struct Term {
  std::string term, meaning;
};

/// [glossary] holds pairs: `earth` is the term's words as printed, with others after commas; `earth_means` explains it.
std::vector<Term> printed_terms(const Words& words, const std::string& printed) {
  std::vector<Term> terms;
  const std::string table = "glossary.", suffix = "_means";
  for (const auto& [key, text] : words.texts()) {
    if (!key.starts_with(table) || key.ends_with(suffix) || !words.has(key + suffix)) continue;
    const std::vector<std::string> forms = glossary_forms(text);
    const auto is_used = [&](const std::string& form) { return is_printed(printed, form); };
    if (std::any_of(forms.begin(), forms.end(), is_used)) terms.push_back({forms.front(), words(key + suffix)});
  }
  std::sort(terms.begin(), terms.end(),
            [](const Term& a, const Term& b) { return lower_case(a.term) < lower_case(b.term); });
  return terms;
}

}  // namespace

std::vector<std::string> glossary_forms(const std::string& text) {
  std::vector<std::string> forms;
  for (const std::string& form : split(text, ',')) forms.push_back(trimmed(form));
  return forms;
}

bool is_printed(const std::string& lower_text, const std::string& form) {
  const std::string wanted = lower_case(form);
  for (std::size_t at = lower_text.find(wanted); at != std::string::npos; at = lower_text.find(wanted, at + 1)) {
    const std::size_t end = at + wanted.size();
    const bool begins = at == 0 || !is_letter_byte(lower_text[at - 1]);
    const bool ends = end == lower_text.size() || !is_letter_byte(lower_text[end]);
    if (begins && ends) return true;
  }
  return false;
}

std::vector<Sheet> make_glossary(const SheetContext& context, const std::vector<Sheet>& printed) {
  const Words& words = context.words();
  const std::vector<Term> terms = printed_terms(words, text_of(printed));
  if (terms.empty()) return {};
  PageFlow flow(context, {"glossary", words("glossary.title"), words("glossary.intro")});
  std::vector<Block> blocks;
  const Millimetres width = column_width(flow, 2);
  for (const Term& term : terms)
    blocks.push_back(
        set_paragraph({{{term.term + "  ", look::text_bold, look::ink, {}}, {term.meaning, look::text, look::ink, {}}},
                       Align::left,
                       "P"},
                      width, flow.setting()));
  // A term or two on a sheet of their own are looked for in vain: rather the terms stand closer.
  Millimetres gap = look::paragraph_gap;
  for (const double share : {0.8, 0.6, 0.45})
    if (!fit_in_columns(blocks, flow.room() - look::paragraph_gap, {2, gap})) gap = look::paragraph_gap * share;
  add_columns(flow, std::move(blocks), {2, gap}, look::paragraph_gap);
  return flow.take();
}

}  // namespace loomfolio
