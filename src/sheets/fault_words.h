// SPDX-License-Identifier: MIT
// What the fault pages say: the trouble in the words of who has it, what to measure, where each reading leads, what to
// mend.
#pragma once

#include <string>
#include <vector>

#include "sheets/fault_plan.h"
#include "sheets/folio.h"
#include "sheets/text_flow.h"

namespace loomfolio {

class FaultWords {
 public:
  FaultWords(const SheetContext& context, const FaultPlan& plan);

  /// 'The horn does not sound', 'Nothing happens when I press start'.
  std::string symptom(const Symptom& symptom) const;
  /// 'Key switch: on; engine stopped'.
  std::string settings(SituationId situation) const;
  /// What the box asks, and in small print where that is.
  std::vector<Paragraph> question(const FaultChart& chart, const ChartBox& box) const;
  /// '11.9 to 12.5 V', 'it lights', 'beep'.
  std::string reading(const FaultChart& chart, const ChartBox& box, const ChartExit& exit) const;
  /// What an end says: what to mend, or which few may be it.
  std::vector<Paragraph> end(const ChartExit& exit) const;
  /// The suspects, most likely first, wires with one remedy together.
  std::string list_mends(const std::vector<int>& suspects) const;

 private:
  using Places = std::vector<std::pair<std::string, std::string>>;
  std::string element(InsideRef what) const;
  std::string place(TerminalId at) const;
  std::string ask_of(const FaultChart& chart, const Probe& probe) const;
  std::string ask_ohms(const Probe& probe) const;
  Paragraph where(const FaultChart& chart, const Probe& probe) const;
  std::string changed_settings(SituationId from, SituationId to) const;
  std::string mend_part(const Mend& mend) const;

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  const FaultPlan& plan_;
  std::vector<std::pair<std::string, std::string>> poles_;
};

}  // namespace loomfolio
