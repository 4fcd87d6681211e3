// SPDX-License-Identifier: MIT
// A folio as PDF in two steps: cairo draws the pages with their outline, labels, links and structure; finish_pdf (qpdf)
// then adds what cairo cannot write, and takes out what would differ from run to run.
#include <cairo-pdf.h>

#include <map>
#include <set>

#include "base/text.h"
#include "render/font_set.h"
#include "render/paint.h"
#include "render/pdf_finish.h"

namespace loomfolio {
namespace {

std::string quoted(const std::string& text) {
  std::string quotes = "'";
  for (const char c : text) {
    if (c == '\'' || c == '\\') quotes += '\\';
    quotes += c;
  }
  return quotes + "'";
}

std::string place_name(const std::string& sheet, const std::string& anchor) {
  return anchor.empty() ? sheet : sheet + "#" + anchor;
}

std::set<std::string> all_places(const Folio& folio) {
  std::set<std::string> places;
  for (const Sheet& sheet : folio.sheets) {
    places.insert(sheet.id);
    for (const Item& item : sheet.items)
      if (const auto* anchor = std::get_if<AnchorItem>(&item)) places.insert(place_name(sheet.id, anchor->name));
  }
  return places;
}

/// One sheet's way through the items; keeps the tags balanced whatever the items say.
class SheetWriter {
 public:
  SheetWriter(const Painter& painter, const Sheet& sheet, const std::set<std::string>& places, PdfExtras& extras)
      : painter_(painter), sheet_(sheet), places_(places), extras_(extras) {}

  void write() {
    write_place(sheet_.id, {});
    for (const Item& item : sheet_.items) std::visit([this](const auto& i) { add(i); }, item);
    while (!open_.empty()) add(TagCloseItem{});
  }

 private:
  void add(const PathItem& item) { paint(painter_, item); }
  void add(const RectItem& item) { paint(painter_, item); }
  void add(const TextItem& item) { paint(painter_, item); }
  void add(const AnchorItem& item) { write_place(place_name(sheet_.id, item.name), item.at); }

  void add(const LinkItem& item) {
    std::string place = place_name(item.sheet, item.anchor);
    if (!places_.contains(place)) place = item.sheet;
    if (!places_.contains(place)) return;  // a sheet that is not printed this time
    const Rect& r = item.rect;
    const std::string rect = join({shortest(to_points(r.x)), shortest(to_points(r.y)), shortest(to_points(r.width)),
                                   shortest(to_points(r.height))}, " ");
    write_tag(CAIRO_TAG_LINK, "rect=[" + rect + "] dest=" + quoted(place));
  }

  void add(const TagOpenItem& item) {
    // An artifact is what readers skip: it has no place in the structure, nor has what is inside it.
    const bool is_skipped = item.tag == "Artifact" || (!open_.empty() && open_.back().empty());
    open_.push_back(is_skipped ? std::string() : item.tag);
    if (is_skipped) return;
    extras_.structure = Structure::tagged;
    if (item.tag == "Figure") extras_.figure_texts.push_back(item.alt);
    cairo_tag_begin(painter_.cairo, item.tag.c_str(), "");
  }

  void add(const TagCloseItem&) {
    if (open_.empty()) return;
    if (!open_.back().empty()) cairo_tag_end(painter_.cairo, open_.back().c_str());
    open_.pop_back();
  }

  void write_place(const std::string& name, Point at) {
    write_tag(CAIRO_TAG_DEST, "name=" + quoted(name) + " x=" + shortest(to_points(at.x)) + " y=" + shortest(to_points(at.y)));
  }

  void write_tag(const char* tag, const std::string& attributes) {
    cairo_tag_begin(painter_.cairo, tag, attributes.c_str());
    cairo_tag_end(painter_.cairo, tag);
  }

  const Painter& painter_;
  const Sheet& sheet_;
  const std::set<std::string>& places_;
  PdfExtras& extras_;
  std::vector<std::string> open_;  ///< '' for an artifact
};

void write_outline(cairo_surface_t* surface, const Folio& folio) {
  std::map<std::string, int> headings;
  for (const Sheet& sheet : folio.sheets) {
    const std::string place = "dest=" + quoted(sheet.id);
    int parent = CAIRO_PDF_OUTLINE_ROOT;
    if (!sheet.group.empty()) {
      auto [heading, is_new] = headings.try_emplace(sheet.group, 0);
      if (is_new)
        heading->second = cairo_pdf_surface_add_outline(surface, CAIRO_PDF_OUTLINE_ROOT, sheet.group.c_str(), place.c_str(),
                                                        CAIRO_PDF_OUTLINE_FLAG_OPEN);
      parent = heading->second;
    }
    cairo_pdf_surface_add_outline(surface, parent, sheet.title.c_str(), place.c_str(), cairo_pdf_outline_flags_t{});
  }
}

cairo_status_t append(void* text, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(text)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

/// The pages as cairo writes them; empty when it failed.
std::string draw_pages(const Folio& folio, const Shaper& shaper, Colouring colouring, PdfExtras& extras) {
  std::string pdf;
  const std::set<std::string> places = all_places(folio);
  const Sheet& first = folio.sheets.front();
  const CairoSurface surface(
      cairo_pdf_surface_create_for_stream(append, &pdf, to_points(first.width), to_points(first.height)));
  const CairoContext cairo(cairo_create(surface.get()));
  const Painter painter{cairo.get(), shaper, colouring};
  write_outline(surface.get(), folio);
  for (const Sheet& sheet : folio.sheets) {
    cairo_pdf_surface_set_size(surface.get(), to_points(sheet.width), to_points(sheet.height));
    SheetWriter(painter, sheet, places, extras).write();
    cairo_show_page(cairo.get());
  }
  const bool is_drawn = cairo_status(cairo.get()) == CAIRO_STATUS_SUCCESS;
  cairo_surface_finish(surface.get());
  return is_drawn && cairo_surface_status(surface.get()) == CAIRO_STATUS_SUCCESS ? pdf : std::string();
}

}  // namespace

std::string render_pdf(const Folio& folio, const FontSet& fonts, Colouring colouring) {
  const auto& shaper = fonts.inside().shaper;
  if (!shaper || folio.sheets.empty()) return {};
  PdfExtras extras;
  const std::string drawn = draw_pages(folio, *shaper, colouring, extras);
  return drawn.empty() ? drawn : finish_pdf(drawn, folio, extras);
}

}  // namespace loomfolio
