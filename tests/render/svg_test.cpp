// SPDX-License-Identifier: MIT
#include <doctest/doctest.h>

#include "base/text.h"
#include "render/render_helper.h"

namespace loomfolio {
using test::at;
using test::box;
using test::fonts;

TEST_CASE("a small sheet as SVG") {
  Sheet sheet = test::small_folio().sheets[1];
  sheet.items.push_back(LinkItem{box(1, 2, 3, 4), "two", "relay"});
  const std::string width =
      shortest(fonts().measure().measure("Heading of two", {FaceName::sans, Weight::bold, 18}).width.number());
  const std::string code =
      shortest(fonts().measure().measure("87a", {FaceName::mono, Weight::bold, 7.5}).width.number());
  const std::string expected =
      R"svg(<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="420mm" height="297mm" viewBox="0 0 420 297" xml:space="preserve">
<title>Sheet two</title>
<rect width="420" height="297" fill="#ffffff"/>
<g role="heading" aria-level="1">
<text x="20" y="20" font-family="B612,'Noto Sans',sans-serif" font-weight="bold" font-size="6.35" textLength=")svg" +
      width +
      R"svg(" lengthAdjust="spacingAndGlyphs" fill="#1a1a1a">Heading of two</text>
</g>
<g role="img" aria-label="a relay on sheet two">
<rect x="20" y="40" width="50" height="30" rx="4" fill="#cc2222" stroke="#1a1a1a" stroke-width="0.35"/>
<text x="25" y="50" font-family="'B612 Mono','Noto Sans',monospace" font-weight="bold" font-size="2.646" textLength=")svg" +
      code +
      R"svg(" lengthAdjust="spacingAndGlyphs" fill="#005f73">87a</text>
</g>
<path id="relay" d="M20 40"/>
<a href="one.svg#relay"><rect x="20" y="40" width="50" height="30" fill="none" pointer-events="all"/></a>
<a href="#relay"><rect x="1" y="2" width="3" height="4" fill="none" pointer-events="all"/></a>
</svg>
)svg";
  CHECK(render_svg(sheet, fonts()) == expected);
}

TEST_CASE("SVG keeps what is special in XML, and is well formed whatever the text") {
  const Sheet sheet =
      test::sheet_of_lines("a&b", {"<tag> & \"quotes\" 'too'", "two\nlines", std::string("nul\0!", 5), "\xff\x01"});
  const std::string svg = render_svg(sheet, fonts());
  CHECK(svg.find(">&lt;tag&gt; &amp; &quot;quotes&quot; 'too'</text>") != std::string::npos);
  CHECK(svg.find(">two lines</text>") != std::string::npos);
  const std::string parsed = test::read_back(svg,
                                             "python3 -c 'import sys, xml.dom.minidom as m; "
                                             "print(len(m.parse(sys.argv[1]).getElementsByTagName(\"text\")))' FILE");
  CHECK(parsed == "4\n");
}

TEST_CASE("arcs, curves, dashes and caps in SVG") {
  Sheet sheet = test::sheet_of_lines("paths", {});
  PathItem path;
  path.pieces = {PathMove{at(0, 0)}, PathArc{at(10, 10), Millimetres(5), 90, 0},
                 PathCurve{at(1, 1), at(2, 2), at(3, 3)}, PathClose{}, PathArc{at(30, 30), Millimetres(2)}};
  path.stroke.pen.dashes = {Millimetres(3.2), Millimetres(1.6)};
  path.stroke.pen.cap = Cap::round;
  sheet.items = {path, TextItem{at(5, 6), "", {}, {}, Align::right, true}};
  path.stroke.is_drawn = false;
  path.pieces.resize(1);
  sheet.items.push_back(path);
  const std::string svg = render_svg(sheet, fonts(), Colouring::grey);
  CAPTURE(svg);
  const std::string expected =
      R"svg(<path d="M0 0L10 15A5 5 0 0 1 6.464 6.464A5 5 0 0 1 15 10C1 1 2 2 3 3ZM32 30A2 2 0 0 1 28 30A2 2 0 0 1 32 30")svg"
      R"svg( fill="none" stroke="#1a1a1a" stroke-width="0.35" stroke-linecap="round" stroke-linejoin="round" stroke-dasharray="3.2 1.6"/>
<text transform="translate(5 6) rotate(-90)" font-family="B612,'Noto Sans',sans-serif" font-size="3.528" text-anchor="end" fill="#000000"></text>
<path d="M0 0" fill="none"/>
)svg";
  CHECK(svg.find(expected) != std::string::npos);
}

TEST_CASE("text from right to left says so and keeps its side") {
  Sheet sheet = test::sheet_of_lines("rtl", {"שלום"});
  CHECK(render_svg(sheet, fonts()).find(" direction=\"rtl\" text-anchor=\"end\" textLength") != std::string::npos);
  std::get<TextItem>(sheet.items[0]).align = Align::right;
  CHECK(render_svg(sheet, fonts()).find(" direction=\"rtl\" textLength") != std::string::npos);
}

}  // namespace loomfolio
