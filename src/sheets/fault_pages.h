// SPDX-License-Identifier: MIT
// The fault pages, and how other pages call a chart.
#pragma once

#include <string>
#include <vector>

#include "sheets/fault_chart.h"
#include "sheets/fault_plan.h"
#include "sheets/fault_words.h"
#include "sheets/folio.h"
#include "sheets/table.h"

namespace loomfolio {

/// What may fail in one hook-up.
struct FaultEntry {
  SheetContext context;              ///< of the hook-up's own sheets
  FaultPlan plan;                    ///< empty where nothing was solved
  std::vector<std::size_t> numbers;  ///< by chart of the plan: its index in the book
};

/// A chart of the book; it holds for each of its hook-ups to the letter.
struct BookChart {
  std::vector<std::size_t> entries;  ///< into ChartBook::entries
  std::size_t chart = 0;             ///< of the first entry's plan
};

/// The charts of all hook-ups: the same trouble stands together, and what two have alike stands once.
struct ChartBook {
  std::vector<FaultEntry> entries;  ///< one a hook-up, or the one build
  std::vector<BookChart> charts;

  bool has_blows() const;
  bool has_odd() const;  ///< anything that may be on or weak and should not be
  /// Of the page of what is on or weak and should not be, and of what smokes; as fault_page_number counts.
  std::size_t odd_index() const;
};
ChartBook make_chart_book(const SheetContext& context);

/// The chart with at most that many questions, in words.
std::vector<DrawnBox> boxes_to_draw(const FaultPlan& plan, const FaultWords& say, const FaultChart& chart,
                                    std::size_t most);

/// 'F3' for the chart of index 2 in ChartBook::charts; also the anchor of that chart on the sheets "faults".
std::string fault_page_number(std::size_t index, const Words& words);

/// Whether a chart's number and its sheet stand beside each other or, in a narrow column, one below the other.
enum class ReferenceLines : std::uint8_t { one, two };
/// 'F3 sheet 60', which leads there; without a number the first of the fault pages.
/// `row`: a place on that page, where it is long; empty: its head.
Cell fault_page_cell(const SheetContext& context, const std::string& number, ReferenceLines lines,
                     const std::string& row = {});

/// A name for the row of what is on or weak and should not be.
std::string odd_anchor(const Build& build, const OddSymptom& odd);

/// Sheets "faults": the list of what a person may see, the charts, the tables. None when the book has no chart.
std::vector<Sheet> make_fault_finding(const SheetContext& context, const ChartBook& book);

}  // namespace loomfolio
