// SPDX-License-Identifier: MIT
// What a person may see go wrong: each once, in the situation in which most faults show it.
#include <algorithm>
#include <map>

#include "solve/diagnose.h"
#include "solve/diagnose_probes.h"

namespace loomfolio {
namespace {

bool is_noticed(InsideType type) {
  return type == InsideType::lamp || type == InsideType::load || type == InsideType::motor ||
         type == InsideType::charger;
}

bool shows_one_of(const FaultBook& book, std::size_t fault, const std::vector<Symptom>& symptoms) {
  return std::any_of(symptoms.begin(), symptoms.end(), [&](const Symptom& symptom) {
    const auto& changes = book.effect(fault, symptom.situation.at()).changes;
    return std::any_of(changes.begin(), changes.end(), [&](const StateChange& change) {
      return change.what == symptom.what && change.after == symptom.seen;
    });
  });
}

// A fault that shows nothing of what is listed, but something: its first symptom is listed too, in its own situation.
void add_missed_symptoms(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book,
                         std::vector<Symptom>& symptoms) {
  for (std::size_t f = 0; f < book.faults.size(); ++f) {
    if (shows_one_of(book, f, symptoms)) continue;
    for (std::size_t s = 0; s < solutions.size(); ++s) {
      const auto& changes = book.effect(f, s).changes;
      const auto noticed = std::find_if(changes.begin(), changes.end(), [&](const StateChange& c) {
        return is_noticed(element_of(build, c.what).type);
      });
      if (noticed == changes.end()) continue;
      symptoms.push_back({solutions[s].situation, noticed->what, noticed->before, noticed->after});
      break;
    }
  }
}

}  // namespace

std::vector<Symptom> list_symptoms(const Build& build, const std::vector<Solution>& solutions, const FaultBook& book) {
  std::map<std::pair<InsideRef, std::pair<Expected, Expected>>, std::map<SituationId, int>> shown;
  for (std::size_t f = 0; f < book.faults.size(); ++f)
    for (std::size_t s = 0; s < solutions.size(); ++s)
      for (const StateChange& change : book.effect(f, s).changes)
        if (is_noticed(element_of(build, change.what).type))
          ++shown[{change.what, {change.before, change.after}}][solutions[s].situation];
  std::vector<Symptom> symptoms;
  for (const auto& [key, situations] : shown) {
    const auto most = std::max_element(situations.begin(), situations.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    symptoms.push_back({most->first, key.first, key.second.first, key.second.second});
  }
  add_missed_symptoms(build, solutions, book, symptoms);
  std::sort(symptoms.begin(), symptoms.end());
  return symptoms;
}

}  // namespace loomfolio
