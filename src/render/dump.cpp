// SPDX-License-Identifier: MIT
// One item a line, so that a changed page shows as changed lines:
//
//   sheet "cover" "Cover" 210.00 x 297.00
//   text 20.00 30.00 "Starting circuit" sans bold 18 #1a1a1a
//   path M 10.00 10.00 L 40.00 10.00 stroke 0.35 #1a1a1a
//   H1 {
//   }
#include "base/text.h"
#include "render/colour.h"
#include "render/render.h"

namespace loomfolio {
namespace {

std::string mm(Millimetres length) { return fixed(length.number(), 2); }
std::string spot(Point p) { return mm(p.x) + " " + mm(p.y); }
std::string box(const Rect& r) {
  return mm(r.x) + " " + mm(r.y) + " " + mm(r.width) + " x " + mm(r.height);
}

/// In quotes, on one line whatever the text holds.
std::string quoted(const std::string& text) {
  std::string quotes = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') quotes += '\\';
    if (c == '\n')
      quotes += "\\n";
    else
      quotes += c;
  }
  return quotes + "\"";
}

std::string to_text(const Pen& pen) {
  std::string text = " stroke " + mm(pen.width) + " " + to_hex(pen.colour);
  if (!pen.dashes.empty()) text += " dashes";
  for (const Millimetres dash : pen.dashes) text += " " + mm(dash);
  if (pen.cap != Cap::butt) text += pen.cap == Cap::round ? " round" : " square";
  return text;
}

std::string to_text(const Stroke& stroke, const Fill& fill) {
  return (stroke.is_drawn ? to_text(stroke.pen) : "") + (fill.is_filled ? " fill " + to_hex(fill.colour) : "");
}

std::string to_text(const PathMove& p) { return " M " + spot(p.to); }
std::string to_text(const PathLine& p) { return " L " + spot(p.to); }
std::string to_text(const PathCurve& p) {
  return " C " + spot(p.control_1) + " " + spot(p.control_2) + " " + spot(p.to);
}
std::string to_text(const PathArc& p) {
  return " A " + spot(p.centre) + " " + mm(p.radius) + " " + shortest(p.from_degrees) + " " +
         shortest(p.to_degrees);
}
std::string to_text(const PathClose&) { return " Z"; }

std::string to_text(const PathItem& item) {
  std::string text = "path";
  for (const PathPiece& piece : item.pieces) text += std::visit([](const auto& p) { return to_text(p); }, piece);
  return text + to_text(item.stroke, item.fill);
}

std::string to_text(const RectItem& item) {
  const bool is_round = item.corner > Millimetres(0);
  return "rect " + box(item.rect) + (is_round ? " corner " + mm(item.corner) : "") +
         to_text(item.stroke, item.fill);
}

std::string to_text(const TextItem& item) {
  const TextStyle& style = item.style;
  std::string text = "text " + spot(item.at) + " " + quoted(item.text);
  text += style.face == FaceName::mono ? " mono" : " sans";
  if (style.weight == Weight::bold) text += " bold";
  text += " " + shortest(style.points) + " " + to_hex(item.colour);
  if (item.align != Align::left) text += item.align == Align::centre ? " centre" : " right";
  return text + (item.is_upright ? " upright" : "");
}

std::string to_text(const LinkItem& item) {
  return "link " + box(item.rect) + " " + quoted(item.sheet) + (item.anchor.empty() ? "" : " " + quoted(item.anchor));
}
std::string to_text(const AnchorItem& item) { return "anchor " + spot(item.at) + " " + quoted(item.name); }
std::string to_text(const TagOpenItem& item) {
  return item.tag + (item.alt.empty() ? "" : " " + quoted(item.alt)) + " {";
}
std::string to_text(const TagCloseItem&) { return "}"; }

}  // namespace

std::string render_dump(const Sheet& sheet) {
  std::string dump = "sheet " + quoted(sheet.id) + " " + quoted(sheet.title) + " " + mm(sheet.width) + " x " +
                     mm(sheet.height);
  if (!sheet.label.empty()) dump += " label " + quoted(sheet.label);
  if (!sheet.group.empty()) dump += " group " + quoted(sheet.group);
  for (const JoinedRun& run : sheet.joined) dump += " joined " + quoted(run.id) + " " + quoted(run.title);
  dump += "\n";
  for (const Item& item : sheet.items) dump += std::visit([](const auto& i) { return to_text(i); }, item) + "\n";
  return dump;
}

}  // namespace loomfolio
