// SPDX-License-Identifier: MIT
#include "render/pdf_places.h"

#include <cassert>
#include <map>
#include <qpdf/QPDFPageDocumentHelper.hh>

#include "base/text.h"
#include "render/paint.h"
#include "render/pdf_objects.h"

namespace loomfolio {
namespace {

using pdf::name;
using pdf::text;

QPDFObjectHandle real(double points) { return QPDFObjectHandle::newReal(shortest(points, 3)); }

/// PDF counts upwards from the foot of the sheet.
QPDFObjectHandle from_foot(const Sheet& sheet, Millimetres y) { return real(to_points(sheet.height - y)); }
QPDFObjectHandle from_left(Millimetres x) { return real(to_points(x)); }

QPDFObjectHandle make_goal(const PdfPlace& place, const Sheet& sheet, QPDFObjectHandle page) {
  QPDFObjectHandle goal = QPDFObjectHandle::newArray();
  goal.appendItem(page);
  goal.appendItem(name("XYZ"));
  goal.appendItem(from_left(place.at.x));
  goal.appendItem(from_foot(sheet, place.at.y));
  goal.appendItem(QPDFObjectHandle::newNull());  // keep the scale that the reader has chosen
  return goal;
}

QPDFObjectHandle make_rect(const Sheet& sheet, const Rect& rect) {
  QPDFObjectHandle corners = QPDFObjectHandle::newArray();
  corners.appendItem(from_left(rect.x));
  corners.appendItem(from_foot(sheet, rect.bottom()));
  corners.appendItem(from_left(rect.right()));
  corners.appendItem(from_foot(sheet, rect.y));
  return corners;
}

/// A name tree of one node (ISO 32000-1, 7.9.6). Put in one by one through qpdf's helper, some thousand names take a third of the
/// time of all finishing.
void set_names(QPDF& pdf, const Folio& folio, const std::vector<PdfPlace>& places,
               std::vector<QPDFPageObjectHelper>& pages) {
  std::map<std::string, const PdfPlace*> by_name;  // in the order of the bytes as written
  for (const PdfPlace& place : places) by_name.try_emplace(text(place.name).getStringValue(), &place);
  QPDFObjectHandle pairs = QPDFObjectHandle::newArray();
  for (const auto& [written, place] : by_name) {
    pairs.appendItem(QPDFObjectHandle::newString(written));
    pairs.appendItem(make_goal(*place, folio.sheets[place->sheet], pages[place->sheet].getObjectHandle()));
  }
  QPDFObjectHandle tree = QPDFObjectHandle::newDictionary();
  tree.replaceKey("/Names", pairs);
  QPDFObjectHandle names = QPDFObjectHandle::newDictionary();
  names.replaceKey("/Dests", pdf.makeIndirectObject(tree));
  pdf.getRoot().replaceKey("/Names", pdf.makeIndirectObject(names));
}

}  // namespace

void set_places(QPDF& pdf, const Folio& folio, const PdfExtras& extras) {
  auto pages = QPDFPageDocumentHelper(pdf).getAllPages();
  assert(pages.size() == folio.sheets.size());
  set_names(pdf, folio, extras.places, pages);
  auto link = extras.links.begin();
  for (QPDFPageObjectHelper& page : pages) {
    page.getObjectHandle().replaceKey("/Tabs", name("S"));
    for (QPDFAnnotationObjectHelper& annotation : page.getAnnotations("/Link")) {
      assert(link != extras.links.end());
      const PdfPlace& place = extras.places[link->place];
      QPDFObjectHandle dictionary = annotation.getObjectHandle();
      dictionary.replaceKey("/Rect", make_rect(folio.sheets[link->sheet], link->rect));
      dictionary.removeKey("/A");
      dictionary.replaceKey("/Dest", text(place.name));
      dictionary.replaceKey("/Contents", text(folio.sheets[place.sheet].title));
      ++link;
    }
  }
  assert(link == extras.links.end());
}

}  // namespace loomfolio
