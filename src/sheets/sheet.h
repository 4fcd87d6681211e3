// SPDX-License-Identifier: MIT
// A page as finished data: a size and a list of items at fixed places, in drawing order. It decides nothing.
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "base/geometry.h"
#include "base/text_measure.h"

namespace loomfolio {

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  friend constexpr auto operator<=>(Colour, Colour) = default;
};

enum class Cap : std::uint8_t { butt, round, square };

struct Pen {
  Colour colour{0x1a, 0x1a, 0x1a};
  Millimetres width{0.35};
  std::vector<Millimetres> dashes;  ///< on, off, ...; empty: solid
  Cap cap = Cap::butt;
};

/// Outline and fill of a figure; either may be absent.
struct Stroke {
  bool is_drawn = true;
  Pen pen;
};
struct Fill {
  bool is_filled = false;
  Colour colour{0xff, 0xff, 0xff};
};

/// A piece of a path: straight lines and circular arcs. Angles in degrees, clockwise from the right, as y runs down.
struct PathMove {
  Point to;
};
struct PathLine {
  Point to;
};
struct PathCurve {
  Point control_1, control_2, to;
};
/// Drawn clockwise. A straight line leads from what was drawn before to its start; a whole circle is a figure of its
/// own.
struct PathArc {
  Point centre;
  Millimetres radius;
  double from_degrees = 0, to_degrees = 360;
};
struct PathClose {};
using PathPiece = std::variant<PathMove, PathLine, PathCurve, PathArc, PathClose>;

struct PathItem {
  std::vector<PathPiece> pieces;
  Stroke stroke;
  Fill fill;
};

struct RectItem {
  Rect rect;
  Millimetres corner;  ///< corner radius
  Stroke stroke;
  Fill fill;
};

enum class Align : std::uint8_t { left, centre, right };
/// Share of a text's width that stands to the left of its place.
constexpr double share_before(Align align) { return align == Align::left ? 0 : align == Align::centre ? 0.5 : 1; }

/// One line of text. `at` is on the baseline, at the left, centre or right of the text by `align`.
struct TextItem {
  Point at;
  std::string text;
  TextStyle style;
  Colour colour{0x1a, 0x1a, 0x1a};
  Align align = Align::left;
  bool is_upright = false;  ///< turned 90 degrees, reading from the right edge of the sheet
};

/// An area that leads to another sheet, by its id, and to an anchor on it ('' for the top).
struct LinkItem {
  Rect rect;
  std::string sheet, anchor;
};

/// A named place others may link to.
struct AnchorItem {
  std::string name;
  Point at;
};

/// Structure for readers: PDF tags (H1, H2, H3, P, Sect, Div, Span, Note, Caption; Table, TR, TH, TD; L, LI, Lbl,
/// LBody; TOC, TOCI; Figure with alt text; Artifact for what readers skip). Opened and closed in pairs around items,
/// properly nested: rows in tables, cells in rows, list items in lists, contents items in a TOC.
struct TagOpenItem {
  std::string tag;
  std::string alt;  ///< alternative text of a Figure
};
struct TagCloseItem {};

using Item = std::variant<PathItem, RectItem, TextItem, LinkItem, AnchorItem, TagOpenItem, TagCloseItem>;

/// A further run of pages that begins lower down on a sheet: short kinds share one.
struct JoinedRun {
  std::string id, title;
  Millimetres top;
};

/// What a text page has left below its content; empty: nothing may be put there.
struct FreeSpace {
  Millimetres top, bottom;
};

struct Sheet {
  std::string id;     ///< unique in the folio: "cover", "diagram-starting"
  std::string title;  ///< for outline and contents
  std::string label;  ///< page label; empty: its number
  std::string group;  ///< outline heading it stands under; empty: at the top level
  Millimetres width{210}, height{297};
  std::vector<Item> items;
  std::vector<JoinedRun> joined;  ///< from top to bottom
  FreeSpace free;                 ///< while sheets are made
  Millimetres begins;  ///< while sheets are made: above 0, only the lower part of a sheet, to be put on another
};

struct FolioInfo {
  std::string title, author, subject, keywords, language = "en";
  std::string date;  ///< ISO 8601 day from the spec, or empty; never the clock's
  std::string fingerprint;
};

/// A file to carry inside the PDF: the spec, the placement.
struct Attachment {
  std::string name, mime, description, content;
};

struct Folio {
  FolioInfo info;
  std::vector<Sheet> sheets;
  std::vector<Attachment> attachments;
};

}  // namespace loomfolio
