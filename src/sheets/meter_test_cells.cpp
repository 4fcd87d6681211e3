// SPDX-License-Identifier: MIT
#include "sheets/meter_test_cells.h"

#include "base/text.h"
#include "sheets/draw.h"
#include "sheets/look.h"
#include "sheets/setting_text.h"

namespace loomfolio {

Cell test_tick_cell() {
  Cell cell = text_cell("", look::table);
  const Millimetres size(3.2);
  Block box{size, size, {}};
  add_rect(box.items, {{}, {}, size, size}, {look::ink, look::line});
  cell.picture = std::move(box);
  return cell;
}

Cell reading_blank_cell() {
  Cell cell = text_cell("", look::text);
  Block line{Millimetres(15), Millimetres(4.4), {}};
  add_line(line.items, {{}, line.height}, {line.width, line.height}, {look::grey, look::line});
  cell.picture = std::move(line);
  return cell;
}

std::string list_settings(const Build& build, const Words& words, const std::vector<Setting>& settings) {
  std::vector<std::string> texts;
  for (const Setting& setting : settings) texts.push_back(setting_text(build, setting));
  return texts.empty() ? words("situations.all_at_rest") : join(texts, "; ");
}

}  // namespace loomfolio
