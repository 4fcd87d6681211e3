// SPDX-License-Identifier: MIT
// SVG in millimetres. cairo would turn text into outlines; here it stays text, set to the width that was measured, so
// that it can be searched, copied and corrected.
#include <cmath>
#include <numbers>
#include <optional>

#include "base/text.h"
#include "render/arc.h"
#include "render/colour.h"
#include "render/font_set.h"
#include "render/scripts.h"

namespace loomfolio {
namespace {

std::string number(double value) { return shortest(value, 3); }
std::string number(Millimetres length) { return number(length.number()); }
std::string place(Point p) { return number(p.x) + " " + number(p.y); }

std::string escaped(const std::string& text) {
  std::string safe;
  for (const char c : make_printable(text)) {
    if (c == '&')
      safe += "&amp;";
    else if (c == '<')
      safe += "&lt;";
    else if (c == '>')
      safe += "&gt;";
    else if (c == '"')
      safe += "&quot;";
    else
      safe += c;
  }
  return safe;
}

std::string attribute(const char* name, const std::string& value) {
  return std::string(" ") + name + "=\"" + escaped(value) + "\"";
}

/// Percent-encoded as in RFC 3986: letters, digits and -._~ stay.
std::string encoded(const std::string& text) {
  std::string url;
  for (const char c : text) {
    const bool is_plain = (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') ||
                          std::string_view("-._~").find(c) != std::string_view::npos;
    if (is_plain) {
      url += c;
      continue;
    }
    url += '%';
    url += "0123456789ABCDEF"[static_cast<unsigned char>(c) >> 4];
    url += "0123456789ABCDEF"[static_cast<unsigned char>(c) & 15];
  }
  return url;
}

Point on_circle(const PathArc& arc, double degrees) {
  const double angle = degrees * std::numbers::pi / 180;
  return arc.centre + Point{arc.radius * std::cos(angle), arc.radius * std::sin(angle)};
}

/// Path data; knows whether a figure has begun, as an arc leads on from one or begins one.
class PathText {
 public:
  void add(const PathMove& p) {
    text_ += "M" + place(p.to);
    has_begun_ = true;
  }
  void add(const PathLine& p) {
    text_ += "L" + place(p.to);
    has_begun_ = true;
  }
  void add(const PathCurve& p) {
    text_ += "C" + place(p.control_1) + " " + place(p.control_2) + " " + place(p.to);
    has_begun_ = true;
  }
  void add(const PathArc& arc) {
    const double sweep = sweep_of(arc);
    const bool leads_on = has_begun_ && !is_whole_circle(arc);
    text_ += (leads_on ? "L" : "M") + place(on_circle(arc, arc.from_degrees));
    // In two halves, so that neither is ever more than half a circle.
    for (const double share : {0.5, 1.0})
      text_ += "A" + number(arc.radius) + " " + number(arc.radius) + " 0 0 1 " +
               place(on_circle(arc, arc.from_degrees + sweep * share));
    has_begun_ = true;
  }
  void add(const PathClose&) { text_ += "Z"; }
  const std::string& text() const { return text_; }

 private:
  std::string text_;
  bool has_begun_ = false;
};

class SvgWriter {
 public:
  SvgWriter(const Sheet& sheet, const FontSet& fonts, Colouring colouring)
      : sheet_(sheet), fonts_(fonts), colouring_(colouring) {}

  std::string write() {
    const std::string width = number(sheet_.width), height = number(sheet_.height);
    svg_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width +
           "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height + "\" xml:space=\"preserve\">\n";
    svg_ += "<title>" + escaped(sheet_.title) + "</title>\n";
    svg_ += "<rect width=\"" + width + "\" height=\"" + height + "\" fill=\"#ffffff\"/>\n";
    for (const Item& item : sheet_.items) std::visit([this](const auto& i) { add(i); }, item);
    while (open_groups_ > 0) add(TagCloseItem{});
    return svg_ + "</svg>\n";
  }

 private:
  void add(const PathItem& item) {
    PathText path;
    for (const PathPiece& piece : item.pieces) std::visit([&](const auto& p) { path.add(p); }, piece);
    svg_ += "<path d=\"" + path.text() + "\"" + painted(item.stroke, item.fill) + "/>\n";
  }

  void add(const RectItem& item) {
    svg_ += "<rect" + box(item.rect);
    if (item.corner > Millimetres(0)) svg_ += " rx=\"" + number(item.corner) + "\"";
    svg_ += painted(item.stroke, item.fill) + "/>\n";
  }

  void add(const TextItem& item) {
    const TextStyle& style = item.style;
    const bool is_from_right = direction_of(make_printable(item.text)) == PANGO_DIRECTION_RTL;
    svg_ += "<text";
    if (item.is_upright)
      svg_ += " transform=\"translate(" + place(item.at) + ") rotate(-90)\"";
    else
      svg_ += " x=\"" + number(item.at.x) + "\" y=\"" + number(item.at.y) + "\"";
    svg_ += style.face == FaceName::mono ? " font-family=\"'B612 Mono','Noto Sans',monospace\""
                                         : " font-family=\"B612,'Noto Sans',sans-serif\"";
    if (style.weight == Weight::bold) svg_ += " font-weight=\"bold\"";
    svg_ += " font-size=\"" + number(style.points * 25.4 / 72) + "\"";
    if (is_from_right) svg_ += " direction=\"rtl\"";
    svg_ += anchor(item.align, is_from_right);
    // No longer and no shorter than measured, whichever face the reader has.
    const Millimetres width = fonts_.measure().measure(item.text, style).width;
    if (width > Millimetres(0)) svg_ += " textLength=\"" + number(width) + "\" lengthAdjust=\"spacingAndGlyphs\"";
    svg_ += " fill=\"" + to_hex(shown(item.colour, colouring_)) + "\">" + escaped(item.text) + "</text>\n";
  }

  void add(const LinkItem& item) {
    std::string to = item.sheet == sheet_.id ? "#" : encoded(item.sheet) + ".svg";
    if (!item.anchor.empty()) to += (to == "#" ? "" : "#") + encoded(item.anchor);
    svg_ += "<a" + attribute("href", to) + "><rect" + box(item.rect) + " fill=\"none\" pointer-events=\"all\"/></a>\n";
  }

  void add(const AnchorItem& item) {
    svg_ += "<path" + attribute("id", item.name) + " d=\"M" + place(item.at) + "\"/>\n";
  }

  void add(const TagOpenItem& item) {
    svg_ += "<g" + role(item) + ">\n";
    ++open_groups_;
  }

  void add(const TagCloseItem&) {
    if (open_groups_ == 0) return;
    svg_ += "</g>\n";
    --open_groups_;
  }

  static std::string role(const TagOpenItem& item) {
    if (item.tag == "Artifact") return " aria-hidden=\"true\"";
    if (item.tag == "Figure") return " role=\"img\"" + attribute("aria-label", item.alt);
    if (item.tag.size() == 2 && item.tag[0] == 'H')
      return " role=\"heading\"" + attribute("aria-level", item.tag.substr(1));
    for (const auto& [tag, name] : {std::pair{"Table", "table"},
                                    {"TR", "row"},
                                    {"TH", "columnheader"},
                                    {"TD", "cell"},
                                    {"L", "list"},
                                    {"LI", "listitem"}})
      if (item.tag == tag) return attribute("role", name);
    return {};
  }

  static std::string anchor(Align align, bool is_from_right) {
    if (align == Align::centre) return " text-anchor=\"middle\"";
    return (align == Align::right) != is_from_right ? " text-anchor=\"end\"" : "";
  }

  static std::string box(const Rect& r) {
    return " x=\"" + number(r.x) + "\" y=\"" + number(r.y) + "\" width=\"" + number(r.width) + "\" height=\"" +
           number(r.height) + "\"";
  }

  std::string painted(const Stroke& stroke, const Fill& fill) const {
    std::string text = " fill=\"" + (fill.is_filled ? to_hex(shown(fill.colour, colouring_)) : "none") + "\"";
    if (!stroke.is_drawn || stroke.pen.width <= Millimetres(0)) return text;
    const Pen& pen = stroke.pen;
    text += " stroke=\"" + to_hex(shown(pen.colour, colouring_)) + "\" stroke-width=\"" + number(pen.width) + "\"";
    if (pen.cap == Cap::round) text += " stroke-linecap=\"round\" stroke-linejoin=\"round\"";
    if (pen.cap == Cap::square) text += " stroke-linecap=\"square\"";
    std::string dashes;
    for (const Millimetres dash : pen.dashes) dashes += (dashes.empty() ? "" : " ") + number(dash);
    return dashes.empty() ? text : text + " stroke-dasharray=\"" + dashes + "\"";
  }

  const Sheet& sheet_;
  const FontSet& fonts_;
  Colouring colouring_;
  std::string svg_;
  int open_groups_ = 0;
};

}  // namespace

std::string render_svg(const Sheet& sheet, const FontSet& fonts, Colouring colouring) {
  return SvgWriter(sheet, fonts, colouring).write();
}

}  // namespace loomfolio
