// SPDX-License-Identifier: MIT
// How much longer render_pdf takes than cairo and Pango alone need to draw the same pages. Not a test: prints figures.
//
//   bench_render [pages] [texts a page] [paths a page] [texts tagged as table cells, of each page]
//
// Both start from nothing each time: faces are loaded and every text is shaped. The bare replay has what a plain
// program would do: one layout, given each text in turn, and paths; no links, no structure, no attachment, no second
// writing.
#include <cairo-pdf.h>
#include <pango/pangocairo.h>
#include <pango/pangofc-fontmap.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <functional>
#include <string>
#include <vector>

#include "render/faces.h"
#include "render/owners.h"
#include "render/paint.h"
#include "render/render.h"

using namespace loomfolio;

namespace {

struct Load {
  int pages = 20, texts = 300, paths = 300, tagged = 0;
};

/// Like our pages: wire numbers, codes and sizes, words of tables; most texts of a page are not on another.
Folio make_folio(const Load& load) {
  static const char* const words[] = {"Headlamp main beam", "Regulator", "to starter relay 87", "2.5 mm²",
                                      "Earth at tray bolt"};
  Folio folio;
  folio.info.title = "Bench";
  folio.attachments = {{"spec.toml", "application/toml", "", std::string(20000, '#')}};
  for (int page = 0; page < load.pages; ++page) {
    Sheet sheet;
    sheet.id = sheet.title = "sheet " + std::to_string(page);
    const auto place = [](int i) { return Point{Millimetres(20 + i % 10 * 17), Millimetres(20 + i / 10 * 8)}; };
    for (int i = 0; i < std::max(load.texts, load.paths); ++i) {
      if (i < load.texts) {
        const TextStyle style{i % 3 ? FaceName::sans : FaceName::mono, i % 4 ? Weight::regular : Weight::bold,
                              7.0 + i % 5};
        const bool is_cell = i < load.tagged;
        if (is_cell)
          for (const char* tag : {"Table", "TR", "TD"}) sheet.items.push_back(TagOpenItem{tag, ""});
        sheet.items.push_back(
            TextItem{place(i), std::string(words[i % 5]) + " " + std::to_string(page * 7 + i), style});
        if (is_cell)
          for (int close = 0; close < 3; ++close) sheet.items.push_back(TagCloseItem{});
      }
      if (i >= load.paths) continue;
      PathItem path;
      path.pieces = {PathMove{place(i)}, PathLine{place(i + 3)}, PathLine{place(i + 13)}};
      path.stroke.pen.width = Millimetres(1.4);
      if (i % 2) path.stroke.pen.dashes = {Millimetres(3.2), Millimetres(1.6)};
      sheet.items.push_back(path);
    }
    sheet.items.push_back(LinkItem{{Millimetres(20), Millimetres(20), Millimetres(20), Millimetres(5)}, "sheet 0", ""});
    folio.sheets.push_back(std::move(sheet));
  }
  return folio;
}

cairo_status_t append(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

void draw_bare(cairo_t* cairo, const PathItem& item) {
  for (const PathPiece& piece : item.pieces) {
    if (const auto* move = std::get_if<PathMove>(&piece))
      cairo_move_to(cairo, to_points(move->to.x), to_points(move->to.y));
    if (const auto* line = std::get_if<PathLine>(&piece))
      cairo_line_to(cairo, to_points(line->to.x), to_points(line->to.y));
  }
  double dashes[2];
  for (std::size_t i = 0; i < item.stroke.pen.dashes.size(); ++i) dashes[i] = to_points(item.stroke.pen.dashes[i]);
  cairo_set_dash(cairo, dashes, static_cast<int>(item.stroke.pen.dashes.size()), 0);
  cairo_set_line_width(cairo, to_points(item.stroke.pen.width));
  cairo_stroke(cairo);
}

void draw_bare(cairo_t* cairo, PangoLayout* layout, PangoFontDescription* description, const TextItem& item) {
  pango_font_description_set_family(description, item.style.face == FaceName::mono ? "B612 Mono" : "B612");
  pango_font_description_set_weight(description,
                                    item.style.weight == Weight::bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(description, item.style.points * PANGO_SCALE);
  pango_layout_set_font_description(layout, description);
  pango_layout_set_text(layout, item.text.data(), static_cast<int>(item.text.size()));
  cairo_move_to(cairo, to_points(item.at.x), to_points(item.at.y));
  pango_cairo_show_layout_line(cairo, pango_layout_get_line_readonly(layout, 0));
}

std::string replay_bare(const Folio& folio) {
  FaceList list;
  for (const char* file : {"B612-Regular.otf", "B612-Bold.otf", "B612Mono-Regular.otf", "B612Mono-Bold.otf"})
    list.faces.push_back({"B612", file, "opentype/b612", "fonts-b612", FaceUse::sans, {}});
  find_face_files(list, face_roots("."));
  const FontConfig config(FcConfigCreate()), nothing(FcConfigCreate());
  FcConfigSetCurrent(nothing.get());
  for (const TypeFace& face : list.faces)
    FcConfigAppFontAddFile(config.get(), reinterpret_cast<const FcChar8*>(face.path.c_str()));
  const PangoMap map(pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT));
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map.get()), config.get());
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map.get()), 72);
  const PangoShapeContext context(pango_font_map_create_context(map.get()));
  const std::unique_ptr<PangoLayout, Releases<g_object_unref>> layout(pango_layout_new(context.get()));
  const PangoDescription description(pango_font_description_new());
  std::string pdf;
  const CairoSurface surface(cairo_pdf_surface_create_for_stream(append, &pdf, 595, 842));
  const CairoContext cairo(cairo_create(surface.get()));
  for (const Sheet& sheet : folio.sheets) {
    for (const Item& item : sheet.items) {
      if (const auto* path = std::get_if<PathItem>(&item)) draw_bare(cairo.get(), *path);
      if (const auto* text = std::get_if<TextItem>(&item))
        draw_bare(cairo.get(), layout.get(), description.get(), *text);
    }
    cairo_show_page(cairo.get());
  }
  cairo_surface_finish(surface.get());
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map.get()), nullptr);
  return pdf;
}

/// The least of nine times, in milliseconds of processor time, so that other work on the machine counts little.
double time_of(const std::function<void()>& work) {
  double least = 1e9;
  for (int i = 0; i < 9; ++i) {
    const std::clock_t start = std::clock();
    work();
    least = std::min(least, 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  return least;
}

}  // namespace

int main(int count, char** values) {
  Load load;
  int* const figures[] = {&load.pages, &load.texts, &load.paths, &load.tagged};
  for (int i = 1; i < count && i < 5; ++i) *figures[i - 1] = std::max(i == 4 ? 0 : 1, std::atoi(values[i]));
  const Folio folio = make_folio(load);
  std::size_t bare_size = 0, size = 0;
  const double bare = time_of([&] { bare_size = replay_bare(folio).size(); });
  const double cold = time_of([&] { size = render_pdf(folio, FontSet(LOOMFOLIO_SOURCE_FOLDER "/fonts")).size(); });
  const FontSet fonts(LOOMFOLIO_SOURCE_FOLDER "/fonts");
  if (!fonts.error().empty()) return std::fprintf(stderr, "%s\n", fonts.error().c_str()), 1;
  const double warm = time_of([&] { size = render_pdf(folio, fonts).size(); });
  std::printf("%d pages of %d texts and %d paths\n", load.pages, load.texts, load.paths);
  std::printf("bare cairo and Pango       %8.1f ms  %8zu bytes\n", bare, bare_size);
  std::printf("render_pdf, from nothing   %8.1f ms  %8zu bytes  %.2f x\n", cold, size, cold / bare);
  std::printf("render_pdf, texts measured %8.1f ms            %.2f x\n", warm, warm / bare);
}
