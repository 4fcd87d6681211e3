// SPDX-License-Identifier: MIT
// A folio as PDF in two steps: cairo draws the pages with their structure; finish_pdf (qpdf) then adds what
// cairo cannot write, and takes out what would differ from run to run. Links are begun by cairo, which knows their
// place in the structure, and finished by qpdf: cairo rounds them to whole points and keeps no named place of an empty
// page.
#include <cairo-pdf.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <map>
#include <set>
#include <string_view>
#include <utility>

#include "base/side_by_side.h"
#include "render/folio_faults.h"
#include "render/font_set.h"
#include "render/paint.h"
#include "render/pdf_finish.h"
#include "render/pdf_join.h"

namespace loomfolio {
namespace {

std::string place_name(const std::string& sheet, const std::string& anchor) {
  return make_printable(anchor.empty() ? sheet : sheet + "#" + anchor);
}

using PlaceIndex = std::map<std::string, std::size_t>;  ///< by name, into PdfExtras::places

using Goal = std::pair<std::string_view, std::string_view>;  ///< sheet and anchor

std::set<Goal> gather_goals(const Folio& folio) {
  std::set<Goal> goals;
  for (const Sheet& sheet : folio.sheets)
    for (const Item& item : sheet.items)
      if (const auto* link = std::get_if<LinkItem>(&item)) goals.insert({link->sheet, link->anchor});
  return goals;
}

/// Every sheet, and the anchors that links lead to; of two of one name the first is kept.
PlaceIndex gather_places(const Folio& folio, PdfExtras& extras) {
  PlaceIndex index;
  const auto add = [&](const std::string& name, std::size_t sheet, Point at) {
    if (index.try_emplace(name, extras.places.size()).second) extras.places.push_back({name, sheet, at});
  };
  const std::set<Goal> goals = gather_goals(folio);
  for (std::size_t i = 0; i < folio.sheets.size(); ++i) {
    const Sheet& sheet = folio.sheets[i];
    add(place_name(sheet.id, {}), i, {});
    for (const Item& item : sheet.items) {
      const auto* anchor = std::get_if<AnchorItem>(&item);
      if (anchor != nullptr && goals.contains({sheet.id, anchor->name})) add(place_name(sheet.id, anchor->name), i, anchor->at);
    }
  }
  return index;
}

constexpr double least_gap = 0.15;  ///< between words, as a share of the type size; a space takes 0.25 to 0.6

/// The way through the items of each sheet; keeps the tags balanced whatever the items say.
class SheetWriter {
 public:
  SheetWriter(const Painter& painter, const PlaceIndex& places, PdfExtras& extras)
      : painter_(painter), places_(places), extras_(extras) {}

  void write(const Sheet& sheet, std::size_t number) {
    number_ = number;
    for (next_ = sheet.items.begin(), end_ = sheet.items.end(); next_ != end_;) std::visit([this](const auto& i) { add(i); }, *next_++);
    while (!open_.empty()) add(TagCloseItem{});
  }

 private:
  struct OpenTag {
    std::string tag;
    bool is_artifact, is_written;
  };

  void add(const PathItem& item) { paint(painter_, item); }
  void add(const RectItem& item) { paint(painter_, item); }
  void add(const TextItem& item) {
    if (goes_on(item))
      paint_with_space(painter_, item);
    else
      paint(painter_, item);
  }
  void add(const AnchorItem&) {}

  /// Whether the tag goes on with another word: on a further line, or beyond a gap. Readers that follow the structure join texts without
  /// regard to their places, and two words would become one. A word that is broken at its hyphen is one. For a figure another text stands.
  bool goes_on(const TextItem& item) const {
    if (open_.empty() || !open_.back().is_written || open_.back().tag == "Figure") return false;
    const TextItem* further = further_text();
    if (further == nullptr || item.is_upright || further->is_upright) return false;
    if (item.text.ends_with(' ') || further->text.starts_with(' ')) return false;
    if (further->at.y > item.at.y) return !item.text.ends_with('-');
    return further->at.y == item.at.y && along(*further, 0) - along(item, 1) > least_gap * item.style.points;
  }

  /// Where a share of its width ends, in points from the left of the sheet: 0 is its left end, 1 its right.
  double along(const TextItem& item, double share) const {
    return to_points(item.at.x) + painter_.shaper.shape(item.text, item.style).width * (share - share_before(item.align));
  }

  /// The next text of the tag that is open; null where the tag ends or another begins before.
  const TextItem* further_text() const {
    for (auto at = next_; at != end_; ++at) {
      if (const auto* text = std::get_if<TextItem>(&*at)) return text;
      if (std::holds_alternative<TagOpenItem>(*at) || std::holds_alternative<TagCloseItem>(*at)) return nullptr;
    }
    return nullptr;
  }

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
  std::vector<Item>::const_iterator next_, end_;  ///< the items that are still to come
};

/// Many sheets are drawn in parts side by side, however many processors there are: the same folio, the same bytes. While some are joined
/// others are drawn; the last are small, so that little is left to join when nothing is left to draw.
constexpr std::size_t most_in_one_part = 24;
constexpr std::array part_shares{0.38, 0.34, 0.14, 0.08, 0.06};  ///< of all items

/// Where each part ends, by the number of items.
std::vector<std::size_t> part_ends(const std::vector<Sheet>& sheets) {
  if (sheets.size() <= most_in_one_part) return {sheets.size()};
  std::size_t all = 0, so_far = 0;
  for (const Sheet& sheet : sheets) all += sheet.items.size();
  std::vector<std::size_t> ends;
  double wanted = part_shares.front();
  for (std::size_t i = 0; i + 1 < sheets.size() && ends.size() + 1 < part_shares.size(); ++i) {
    so_far += sheets[i].items.size();
    if (static_cast<double>(so_far) < wanted * static_cast<double>(all)) continue;
    ends.push_back(i + 1);
    wanted += part_shares[ends.size()];
  }
  ends.push_back(sheets.size());
  return ends;
}

/// Sheets as cairo draws them, and what it has met there.
struct DrawnPart {
  std::string pdf;  ///< empty when cairo failed
  PdfExtras extras;
};

/// The sheets from `first` to before `end`.
DrawnPart draw_part(const Folio& folio, std::size_t first, std::size_t end, const PlaceIndex& places, const Shaper& shaper, Colouring colouring) {
  DrawnPart part;
  const Sheet& opening = folio.sheets[first];
  const CairoSurface surface(
      cairo_pdf_surface_create_for_stream(append_bytes, &part.pdf, to_points(opening.width), to_points(opening.height)));
  const CairoContext cairo(cairo_create(surface.get()));
  const Painter painter{cairo.get(), shaper, colouring};
  SheetWriter writer(painter, places, part.extras);
  for (std::size_t i = first; i < end; ++i) {
    const Sheet& sheet = folio.sheets[i];
    cairo_pdf_surface_set_size(surface.get(), to_points(sheet.width), to_points(sheet.height));
    // Of each page cairo keeps a list of what is painted; a ground under everything keeps it short.
    paint_ground(cairo.get());
    writer.write(sheet, i);
    cairo_show_page(cairo.get());
  }
  const bool is_drawn = cairo_status(cairo.get()) == CAIRO_STATUS_SUCCESS;
  cairo_surface_finish(surface.get());
  if (!is_drawn || cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) part.pdf.clear();
  return part;
}

void append_extras(PdfExtras& all, PdfExtras&& own) {
  std::move(own.links.begin(), own.links.end(), std::back_inserter(all.links));
  std::move(own.figure_texts.begin(), own.figure_texts.end(), std::back_inserter(all.figure_texts));
  if (own.structure == Structure::tagged) all.structure = Structure::tagged;
}

}  // namespace

std::string render_pdf(const Folio& folio, const FontSet& fonts, Colouring colouring, Leftovers* leftovers) {
  const auto& shaper = fonts.inside().shaper;
  if (!shaper || folio.sheets.empty()) return {};
  PdfExtras extras;
  const PlaceIndex places = gather_places(folio, extras);
  const std::vector<std::size_t> ends = part_ends(folio.sheets);
  std::vector<DrawnPart> parts(ends.size());
  PartJoiner joiner(ends.size());
  work_side_by_side(ends.size(), [&](std::size_t p) {
    parts[p] = draw_part(folio, p == 0 ? 0 : ends[p - 1], ends[p], places, *shaper, colouring);
    joiner.bring(p, parts[p].pdf.empty() ? nullptr : read_part(parts[p].pdf));
  });
  for (DrawnPart& part : parts) append_extras(extras, std::move(part.extras));
  std::string pdf = joiner.whole() != nullptr ? finish_pdf(*joiner.whole(), folio, extras) : std::string();
  if (leftovers != nullptr) {
    leftovers->insert(leftovers->end(), joiner.parts().begin(), joiner.parts().end());
    leftovers->push_back(std::make_shared<std::vector<DrawnPart>>(std::move(parts)));  // qpdf reads its bytes where they are
  }
  return pdf;
}

}  // namespace loomfolio
