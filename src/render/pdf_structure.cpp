// SPDX-License-Identifier: MIT
#include "render/pdf_structure.h"

#include <algorithm>
#include <cassert>
#include <utility>

namespace loomfolio {
namespace {

/// Structure elements under `element`, in reading order, that are of kind `wanted`.
void collect_elements(QPDFObjectHandle element, const std::string& wanted, std::vector<QPDFObjectHandle>& found) {
  if (!element.isDictionary()) return;
  QPDFObjectHandle kind = element.getKey("/S");
  if (kind.isName() && kind.getName() == wanted) found.push_back(element);
  QPDFObjectHandle children = element.getKey("/K");
  if (children.isArray())
    for (int i = 0; i < children.getArrayNItems(); ++i) collect_elements(children.getArrayItem(i), wanted, found);
  else
    collect_elements(children, wanted, found);
}

void set_figure_texts(QPDFObjectHandle root, const std::vector<std::string>& texts) {
  if (texts.empty()) return;
  std::vector<QPDFObjectHandle> figures;
  collect_elements(root, "/Figure", figures);
  assert(figures.size() == texts.size());
  for (std::size_t i = 0; i < std::min(figures.size(), texts.size()); ++i)
    if (!texts[i].empty()) figures[i].replaceKey("/Alt", QPDFObjectHandle::newUnicodeString(texts[i]));
}

/// An element of `kind` under `parent`, and `children` under it.
QPDFObjectHandle make_element(QPDF& pdf, const char* kind, QPDFObjectHandle parent, const std::vector<QPDFObjectHandle>& children) {
  QPDFObjectHandle element = pdf.makeIndirectObject(QPDFObjectHandle::newDictionary());
  element.replaceKey("/Type", QPDFObjectHandle::newName("/StructElem"));
  element.replaceKey("/S", QPDFObjectHandle::newName(kind));
  element.replaceKey("/P", parent);
  element.replaceKey("/K", QPDFObjectHandle::newArray(children));
  for (QPDFObjectHandle child : children) child.replaceKey("/P", element);
  return element;
}

bool is_list_item(QPDFObjectHandle element) { return element.getKey("/S").getName() == "/LI"; }

/// ISO 32000-1, 14.8.4.2: the root has one child, the document; 14.8.4.3.3: points follow each other in a list, here over the ends of
/// pages, where sheets leave off.
void put_under_document(QPDF& pdf, QPDFObjectHandle root) {
  QPDFObjectHandle elements = root.getKey("/K");
  if (!elements.isArray()) elements = elements.wrapInArray();
  QPDFObjectHandle document = make_element(pdf, "/Document", root, {});
  std::vector<QPDFObjectHandle> children, points;
  const auto end_list = [&] {
    if (!points.empty()) children.push_back(make_element(pdf, "/L", document, std::exchange(points, {})));
  };
  for (QPDFObjectHandle element : elements.getArrayAsVector()) {
    if (is_list_item(element)) {
      points.push_back(element);
      continue;
    }
    end_list();
    element.replaceKey("/P", document);
    children.push_back(element);
  }
  end_list();
  document.replaceKey("/K", QPDFObjectHandle::newArray(children));
  root.replaceKey("/K", document);
}

}  // namespace

void finish_structure(QPDF& pdf, const std::vector<std::string>& figure_texts) {
  QPDFObjectHandle root = pdf.getRoot().getKey("/StructTreeRoot");
  if (!root.isDictionary()) return;
  set_figure_texts(root, figure_texts);
  put_under_document(pdf, root);
}

}  // namespace loomfolio
