// SPDX-License-Identifier: MIT
// A folio as PDF in two steps: cairo draws the pages with their outline and structure; finish_pdf (qpdf) then adds what
// cairo cannot write, and takes out what would differ from run to run. Links are begun by cairo, which knows their
// place in the structure, and finished by qpdf: cairo rounds them to whole points and keeps no named place of an empty
// page.
#include <cairo-pdf.h>

#include <cmath>
#include <map>

#include "render/folio_faults.h"
#include "render/font_set.h"
#include "render/paint.h"
#include "render/pdf_finish.h"

namespace loomfolio {
namespace {

std::string place_name(const std::string& sheet, const std::string& anchor) {
  return make_printable(anchor.empty() ? sheet : sheet + "#" + anchor);
}

using PlaceIndex = std::map<std::string, std::size_t>;  ///< by name, into PdfExtras::places

/// Every sheet and anchor; of two of one name the first is kept.
PlaceIndex gather_places(const Folio& folio, PdfExtras& extras) {
  PlaceIndex index;
  const auto add = [&](const std::string& name, std::size_t sheet, Point at) {
    if (index.try_emplace(name, extras.places.size()).second) extras.places.push_back({name, sheet, at});
  };
  for (std::size_t i = 0; i < folio.sheets.size(); ++i) {
    const Sheet& sheet = folio.sheets[i];
    add(place_name(sheet.id, {}), i, {});
    for (const Item& item : sheet.items)
      if (const auto* anchor = std::get_if<AnchorItem>(&item)) add(place_name(sheet.id, anchor->name), i, anchor->at);
  }
  return index;
}

/// The way through the items of each sheet; keeps the tags balanced whatever the items say.
class SheetWriter {
 public:
  SheetWriter(const Painter& painter, const PlaceIndex& places, PdfExtras& extras)
      : painter_(painter), places_(places), extras_(extras) {}

  void write(const Sheet& sheet, std::size_t number) {
    number_ = number;
    for (const Item& item : sheet.items) std::visit([this](const auto& i) { add(i); }, item);
    while (!open_.empty()) add(TagCloseItem{});
  }

 private:
  struct OpenTag {
    std::string tag;
    bool is_artifact, is_written;
  };

  void add(const PathItem& item) { paint(painter_, item); }
  void add(const RectItem& item) { paint(painter_, item); }
  void add(const TextItem& item) { paint(painter_, item); }
  void add(const AnchorItem&) {}

  void add(const LinkItem& item) {
    auto place = places_.find(place_name(item.sheet, item.anchor));
    if (place == places_.end()) place = places_.find(place_name(item.sheet, {}));
    if (place == places_.end()) return;  // a sheet that is not printed this time
    extras_.links.push_back({number_, item.rect, place->second});
    cairo_tag_begin(painter_.cairo, CAIRO_TAG_LINK, "rect=[0 0 1 1] page=1 pos=[0 0]");
    cairo_tag_end(painter_.cairo, CAIRO_TAG_LINK);
  }

  void add(const TagOpenItem& item) {
    // An artifact is what readers skip: it has no place in the structure, nor has what is inside it.
    const bool is_artifact = item.tag == "Artifact" || (!open_.empty() && open_.back().is_artifact);
    const bool is_written = !is_artifact && is_known_tag(item.tag);
    open_.push_back({item.tag, is_artifact, is_written});
    if (!is_written) return;
    extras_.structure = Structure::tagged;
    if (item.tag == "Figure") extras_.figure_texts.push_back(item.alt);
    cairo_tag_begin(painter_.cairo, item.tag.c_str(), "");
  }

  void add(const TagCloseItem&) {
    if (open_.empty()) return;
    if (open_.back().is_written) cairo_tag_end(painter_.cairo, open_.back().tag.c_str());
    open_.pop_back();
  }

  const Painter& painter_;
  const PlaceIndex& places_;
  PdfExtras& extras_;
  std::size_t number_ = 0;
  std::vector<OpenTag> open_;
};

void write_outline(cairo_surface_t* surface, const std::vector<Sheet>& sheets) {
  std::map<std::string, int> headings;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const auto add = [&](int parent, const std::string& title, cairo_pdf_outline_flags_t flags, Millimetres top = {}) {
      const std::string place =
          "page=" + std::to_string(i + 1) + " pos=[0 " + std::to_string(std::lround(to_points(top))) + "]";
      return cairo_pdf_surface_add_outline(surface, parent, make_printable(title).c_str(), place.c_str(), flags);
    };
    int parent = CAIRO_PDF_OUTLINE_ROOT;
    if (const std::string& group = sheets[i].group; !group.empty()) {
      const auto [heading, is_new] = headings.try_emplace(group, 0);
      if (is_new) heading->second = add(CAIRO_PDF_OUTLINE_ROOT, group, CAIRO_PDF_OUTLINE_FLAG_OPEN);
      parent = heading->second;
    }
    add(parent, sheets[i].title, {});
    for (const JoinedRun& run : sheets[i].joined) add(parent, run.title, {}, run.top);
  }
}

/// The pages as cairo writes them; empty when it failed.
std::string draw_pages(const Folio& folio, const Shaper& shaper, Colouring colouring, PdfExtras& extras) {
  std::string pdf;
  const PlaceIndex places = gather_places(folio, extras);
  const Sheet& first = folio.sheets.front();
  const CairoSurface surface(
      cairo_pdf_surface_create_for_stream(append_bytes, &pdf, to_points(first.width), to_points(first.height)));
  const CairoContext cairo(cairo_create(surface.get()));
  const Painter painter{cairo.get(), shaper, colouring};
  write_outline(surface.get(), folio.sheets);
  SheetWriter writer(painter, places, extras);
  for (std::size_t i = 0; i < folio.sheets.size(); ++i) {
    const Sheet& sheet = folio.sheets[i];
    cairo_pdf_surface_set_size(surface.get(), to_points(sheet.width), to_points(sheet.height));
    writer.write(sheet, i);
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
