// SPDX-License-Identifier: MIT
#include "base/text.h"
#include "model/spec_words.h"
#include "read/draft.h"

namespace loomfolio {
namespace {

template <class T>
constexpr Choice<T> choice_of(T meaning) {
  return {spec_word(meaning), meaning};
}

constexpr Choice<EngineState> engines[] = {choice_of(EngineState::stopped), choice_of(EngineState::cranking),
                                           choice_of(EngineState::running)};
constexpr Choice<Expected> states[] = {choice_of(Expected::on), choice_of(Expected::off), choice_of(Expected::dim),
                                       choice_of(Expected::flashing), choice_of(Expected::charging)};

struct NamedText {
  PlacedText name, text;
};

/// Keys and texts of a table. `left-bar.dip = "main"` without quotes makes a table within the table: it is flattened.
void flatten(const TomlValue& tree, const std::string& prefix, TableReader& table, std::vector<NamedText>& made) {
  for (const TomlEntry& entry : tree.entries) {
    const std::string name = prefix + entry.key;
    if (entry.value.type == TomlType::table && prefix.empty())
      flatten(entry.value, name + ".", table, made);
    else if (table.expect_type(entry.value, TomlType::text, name))
      made.push_back({{name, entry.key_where}, {trimmed(entry.value.text), entry.value.where}});
  }
}

std::vector<NamedText> read_pairs(TableReader& table, std::string_view key) {
  std::vector<NamedText> pairs;
  if (const TomlValue* tree = table.table(key)) flatten(*tree, "", table, pairs);
  return pairs;
}

void read_expectations(SituationDraft& draft, TableReader& table) {
  for (const NamedText& pair : read_pairs(table, "expect")) {
    std::vector<std::string> words;
    bool is_known = false;
    for (const Choice<Expected>& state : states) {
      words.emplace_back(state.word);
      if (state.word != pair.text.text) continue;
      draft.expectations.push_back({pair.name, state.meaning});
      is_known = true;
    }
    if (!is_known)
      table.report(DiagnosticId::unknown_state, pair.text.where,
                   quoted(pair.text.text) + " is no state that could be expected",
                   suggest_and_list(pair.text.text, words, "a state is one of"));
  }
}

SituationDraft read_situation(const TomlValue& tree, const std::string& prefix, Diagnostics& findings) {
  TableReader table(tree, "[[" + prefix + "situation]]", findings);
  SituationDraft draft;
  Situation& situation = draft.situation;
  situation.origin = table.origin();
  situation.name = table.id("name", Need::must);
  situation.label = table.line("label", Need::may);
  if (situation.label.empty()) situation.label = situation.name;
  situation.engine = table.choice<EngineState>("engine", engines, Need::may).value_or(EngineState::stopped);
  draft.after = table.placed_line("after", Need::may);
  situation.after = draft.after.text;
  for (const NamedText& pair : read_pairs(table, "set")) draft.settings.push_back({pair.name, pair.text});
  read_expectations(draft, table);
  table.refuse_unknown_keys();
  return draft;
}

}  // namespace

std::vector<SituationDraft> read_situations(TableReader& owner, const std::string& prefix) {
  std::vector<SituationDraft> situations;
  for (const TomlValue* tree : owner.tables("situation", 500))
    situations.push_back(read_situation(*tree, prefix, owner.findings()));
  return situations;
}

}  // namespace loomfolio
