// SPDX-License-Identifier: MIT
// What the fault pages say: the trouble in the words of who has it, what to measure, where each reading leads, what to
// mend.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sheets/fault_plan.h"
#include "sheets/folio.h"
#include "sheets/text_flow.h"

namespace loomfolio {

/// 'Turn signal, front left' within a sentence: 'turn signal (front left)'. Abbreviations keep their capitals.
std::string name_in_sentence(const Words& words, std::string name);

/// What a generator gives without load at idle, at least, on 12 V: common practice, no source.
inline constexpr Volts generator_gives{15};

class FaultWords {
 public:
  /// `blown`: index of the page of fuses that blow.
  FaultWords(const SheetContext& context, const FaultPlan& plan, std::size_t blown);

  /// 'The horn does not sound', 'Nothing happens when I press start'.
  std::string symptom(const Symptom& symptom) const;
  /// 'Key switch: on; engine stopped'.
  std::string settings(SituationId situation) const;
  /// 'Riding by night', 'Riding by night, with the engine off' where a person with a meter has it so.
  std::string situation(SituationId situation) const;
  /// What the box asks, what goes back first, and in small print where that is.
  std::vector<Paragraph> question(const FaultChart& chart, const std::vector<ChartBox>& boxes, std::size_t box) const;
  /// '11.9 to 12.5 V', 'it lights', 'beep'.
  std::string reading(const FaultChart& chart, const ChartBox& box, const ChartExit& exit) const;
  /// What an end says: what to mend, or which few may be it, and what to do with them. `asked`: the box that leads
  /// there.
  std::vector<Paragraph> end(const FaultChart& chart, const ChartBox& asked, const ChartExit& exit) const;
  /// Which switches to try besides, and what is at fault when it works so.
  std::string other_way(const FaultChart& chart, const OtherWay& way) const;
  /// Parts of the chart's kind whose faults no reading shows; empty: none.
  std::string not_asked(const FaultChart& chart) const;
  /// The suspects, most likely first, things with one remedy together: '3, 7, 79 to 89'.
  std::string list_mends(const std::vector<int>& suspects) const;

 private:
  std::string reading_of(const Probe& probe, const ProbeOutcome& outcome) const;
  std::string ohms_reading(const Probe& probe, const ProbeOutcome& outcome) const;
  std::string ask_diode(const Probe& probe) const;
  std::string ask_windings(const Probe& probe) const;
  std::string wires_on(PartId part, const std::vector<int>& terminals) const;
  using Places = std::vector<std::pair<std::string, std::string>>;
  std::string element(InsideRef what) const;
  std::string place(TerminalId at) const;
  std::string ask_of(const Probe& probe) const;
  std::string ask_ohms(const Probe& probe) const;
  std::string ask_short(const Probe& probe) const;
  std::string ask_watch(const Probe& probe) const;
  /// Fuses between the charger and the battery, as they are called.
  std::vector<std::string> charging_fuses(const Probe& probe) const;
  std::string ask_alternating(const Probe& probe) const;
  std::string live_beside(const Probe& probe, const std::vector<int>& terminals) const;
  std::string engine_text(EngineState engine) const;
  std::string called(InsideRef what) const;
  bool is_tell_tale(InsideRef what) const;
  std::string put_back(const FaultChart& chart, const std::vector<ChartBox>& boxes, std::size_t box) const;
  SituationId set_before(const FaultChart& chart, const std::vector<ChartBox>& boxes, std::size_t box) const;
  Paragraph where(const Probe& probe) const;
  std::vector<Paragraph> next_question(const FaultChart& chart, const ChartBox& asked, const ChartExit& exit) const;
  std::vector<Span> next_action(const std::vector<Mend>& mends) const;
  std::string list_wires(const std::vector<WireId>& wires) const;
  std::string changed_settings(SituationId from, SituationId to) const;
  struct Remedy {
    std::string_view key;
    std::string part;
  };
  Remedy remedy_for(const Mend& mend) const;

  const SheetContext& context_;
  const Build& build_;
  const Words& words_;
  const FaultPlan& plan_;
  std::size_t blown_;
  const std::vector<Situation>& situations_;  // as on the bench
};

}  // namespace loomfolio
