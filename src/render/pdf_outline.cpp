// SPDX-License-Identifier: MIT
#include "render/pdf_outline.h"

#include <map>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageDocumentHelper.hh>

#include "base/text.h"
#include "render/paint.h"
#include "render/pdf_objects.h"
#include "render/shaper.h"

namespace loomfolio {
namespace {

struct Line {
  std::string title;
  std::size_t sheet = 0;
  Millimetres top;
  std::vector<Line> below;
};

/// A group's line stands where its first sheet does and leads there.
std::vector<Line> gather_lines(const std::vector<Sheet>& sheets) {
  std::vector<Line> lines;
  std::map<std::string, std::size_t> groups;  // index of their line
  for (std::size_t s = 0; s < sheets.size(); ++s) {
    const Sheet& sheet = sheets[s];
    const auto add = [&](const std::string& title, Millimetres top) {
      if (sheet.group.empty()) return lines.push_back({title, s, top, {}});
      const auto [group, is_new] = groups.try_emplace(sheet.group, lines.size());
      if (is_new) lines.push_back({sheet.group, s, {}, {}});
      lines[group->second].below.push_back({title, s, top, {}});
    };
    add(sheet.title, {});
    for (const JoinedRun& run : sheet.joined) add(run.title, run.top);
  }
  return lines;
}

class OutlineWriter {
 public:
  OutlineWriter(QPDF& pdf, const std::vector<Sheet>& sheets)
      : pdf_(pdf), sheets_(sheets), pages_(QPDFPageDocumentHelper(pdf).getAllPages()) {}

  /// Puts the lines under `parent`, as a chain.
  void add(QPDFObjectHandle parent, const std::vector<Line>& lines) {
    QPDFObjectHandle before = QPDFObjectHandle::newNull();
    for (const Line& line : lines) {
      QPDFObjectHandle item = make_item(line);
      item.replaceKey("/Parent", parent);
      if (before.isNull()) {
        parent.replaceKey("/First", item);
      } else {
        before.replaceKey("/Next", item);
        item.replaceKey("/Prev", before);
      }
      before = item;
    }
    if (!before.isNull()) parent.replaceKey("/Last", before);
  }

 private:
  QPDFObjectHandle make_item(const Line& line) {
    QPDFObjectHandle item = pdf_.makeIndirectObject(QPDFObjectHandle::newDictionary());
    item.replaceKey("/Title", pdf::text(make_printable(line.title)));
    item.replaceKey("/Dest", make_goal(line));
    if (line.below.empty()) return item;
    add(item, line.below);
    item.replaceKey("/Count", QPDFObjectHandle::newInteger(static_cast<long long>(line.below.size())));  // open
    return item;
  }

  QPDFObjectHandle make_goal(const Line& line) {
    const auto place = [](double points) { return QPDFObjectHandle::newReal(shortest(points, 3)); };
    QPDFObjectHandle goal = QPDFObjectHandle::newArray();
    goal.appendItem(pages_[line.sheet].getObjectHandle());
    goal.appendItem(pdf::name("XYZ"));
    goal.appendItem(place(0));
    goal.appendItem(place(to_points(sheets_[line.sheet].height - line.top)));
    goal.appendItem(QPDFObjectHandle::newNull());  // keep the scale that the reader has chosen
    return goal;
  }

  QPDF& pdf_;
  const std::vector<Sheet>& sheets_;
  std::vector<QPDFPageObjectHelper> pages_;
};

}  // namespace

void set_outline(QPDF& pdf, const Folio& folio) {
  const std::vector<Line> lines = gather_lines(folio.sheets);
  std::size_t count = lines.size();
  for (const Line& line : lines) count += line.below.size();
  QPDFObjectHandle outline = pdf.makeIndirectObject(QPDFObjectHandle::newDictionary());
  outline.replaceKey("/Type", pdf::name("Outlines"));
  outline.replaceKey("/Count", QPDFObjectHandle::newInteger(static_cast<long long>(count)));
  OutlineWriter(pdf, folio.sheets).add(outline, lines);
  pdf.getRoot().replaceKey("/Outlines", outline);
}

}  // namespace loomfolio
