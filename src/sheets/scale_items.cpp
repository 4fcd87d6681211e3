// SPDX-License-Identifier: MIT
#include "sheets/scale_items.h"

#include <variant>

namespace loomfolio {
namespace {

struct ItemScaler {
  Point fixed;
  double factor = 1;

  void point(Point& p) const { p = {fixed.x + (p.x - fixed.x) * factor, fixed.y + (p.y - fixed.y) * factor}; }
  void length(Millimetres& m) const { m = m * factor; }
  void pen(Pen& p) const {
    length(p.width);
    for (Millimetres& dash : p.dashes) length(dash);
  }
  void rect(Rect& r) const {
    Point corner{r.x, r.y};
    point(corner);
    r = {corner.x, corner.y, r.width * factor, r.height * factor};
  }

  void operator()(PathMove& piece) const { point(piece.to); }
  void operator()(PathLine& piece) const { point(piece.to); }
  void operator()(PathCurve& piece) const {
    point(piece.control_1);
    point(piece.control_2);
    point(piece.to);
  }
  void operator()(PathArc& piece) const {
    point(piece.centre);
    length(piece.radius);
  }
  void operator()(PathClose&) const {}

  void operator()(PathItem& item) const {
    for (PathPiece& piece : item.pieces) std::visit(*this, piece);
    pen(item.stroke.pen);
  }
  void operator()(RectItem& item) const {
    rect(item.rect);
    length(item.corner);
    pen(item.stroke.pen);
  }
  void operator()(TextItem& item) const {
    point(item.at);
    item.style.points *= factor;
  }
  void operator()(LinkItem& item) const { rect(item.rect); }
  void operator()(AnchorItem& item) const { point(item.at); }
  void operator()(TagOpenItem&) const {}
  void operator()(TagCloseItem&) const {}
};

}  // namespace

void scale_items(Items& items, Point fixed, double factor) {
  const ItemScaler scaler{fixed, factor};
  for (Item& item : items) std::visit(scaler, item);
}

}  // namespace loomfolio
