// SPDX-License-Identifier: MIT
// A line is cut into stretches of one face, script and direction (Pango's items), the stretches are put into the order
// seen, and each is shaped by itself. That is what a Pango layout does too, but without looking for line ends, and with
// the result kept as bare glyphs that cairo can draw any number of times.
//
//   text    "12 V אור"   ->  items  [12 V ][אור]   ->  seen  [12 V ][רוא]   ->  glyphs at x, clusters back to the text
#include "render/shaper.h"

#include <pango/pangofc-fontmap.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "base/text.h"
#include "base/type_size.h"
#include "render/scripts.h"
#include "render/word_faces.h"

namespace loomfolio {
namespace {

constexpr double missing_width_em = 0.6;

double to_points(int pango_units) { return pango_units / double{PANGO_SCALE}; }

/// Families of these uses in this order, each once.
std::string order_families(const FaceList& list, std::initializer_list<FaceUse> uses) {
  std::vector<std::string> families;
  for (const FaceUse use : uses)
    for (const TypeFace& face : list.faces)
      if (face.use == use && std::find(families.begin(), families.end(), face.family) == families.end())
        families.push_back(face.family);
  return join(families, ",");
}

/// The characters of the first face of that file; null when there is none.
const FcCharSet* find_characters(FcConfig* config, const std::string& path) {
  const FcFontSet* faces = FcConfigGetFonts(config, FcSetApplication);
  for (int i = 0; faces && i < faces->nfont; ++i) {
    FcChar8* file = nullptr;
    FcCharSet* characters = nullptr;
    if (FcPatternGetString(faces->fonts[i], FC_FILE, 0, &file) == FcResultMatch &&
        path == reinterpret_cast<const char*>(file) &&
        FcPatternGetCharSet(faces->fonts[i], FC_CHARSET, 0, &characters) == FcResultMatch)
      return characters;
  }
  return nullptr;
}

bool is_plain(char c) { return c >= 0x20 && c < 0x7f; }

bool has_all_plain(const FcCharSet* characters) {
  for (char c = 0x20; is_plain(c); ++c)
    if (!FcCharSetHasChar(characters, static_cast<FcChar32>(c))) return false;
  return true;
}

struct ItemList {
  GList* head = nullptr;
  explicit ItemList(GList* items) : head(items) {}
  ItemList(const ItemList&) = delete;
  ItemList& operator=(const ItemList&) = delete;
  ~ItemList() {
    g_list_free_full(head, [](gpointer item) { pango_item_free(static_cast<PangoItem*>(item)); });
  }
};

/// Pango's items, in the order of the text. Words with a letter that `own` lacks are set in `fallback`; without `own` no word is.
ItemList cut(PangoContext* context, const std::string& text, const FcCharSet* own, const std::string& fallback) {
  const PangoAttributes marks = mark_languages(text);
  if (own) mark_words(marks.get(), text, own, fallback);
  return ItemList(pango_itemize_with_base_dir(context, direction_of(text), text.c_str(), 0, static_cast<int>(text.size()), marks.get(), nullptr));
}

/// Cuts the text of a shaped item into clusters, the glyphs and characters that belong together, from left to right.
/// For a run from right to left that is last character first: readers of PDF expect glyphs in the order seen and turn
/// their text round themselves.
void gather_clusters(ShapedRun& run, PangoItem* item, PangoGlyphString* glyphs, const std::string& text) {
  PangoGlyphItem pair{item, glyphs, 0, 0, 0};
  PangoGlyphItemIter at;
  const auto is_drawn = [&](int glyph) {
    const PangoGlyph id = glyphs->glyphs[glyph].glyph;
    return id != PANGO_GLYPH_EMPTY && !(id & PANGO_GLYPH_UNKNOWN_FLAG);
  };
  const bool is_from_right = item->analysis.level % 2;
  for (gboolean more = is_from_right ? pango_glyph_item_iter_init_end(&at, &pair, text.c_str())
                                     : pango_glyph_item_iter_init_start(&at, &pair, text.c_str());
       more; more = is_from_right ? pango_glyph_item_iter_prev_cluster(&at) : pango_glyph_item_iter_next_cluster(&at)) {
    const int first = is_from_right ? at.end_glyph + 1 : at.start_glyph;
    const int last = is_from_right ? at.start_glyph + 1 : at.end_glyph;
    int drawn = 0;
    for (int glyph = first; glyph < last; ++glyph) drawn += is_drawn(glyph);
    const int bytes = at.end_index - at.start_index;
    run.utf8.append(text, static_cast<std::size_t>(at.start_index), static_cast<std::size_t>(bytes));
    run.clusters.push_back({bytes, drawn});
  }
}

/// Adds a shaped item at `line.width` and moves on by its width.
void add_run(ShapedLine& line, PangoItem* item, PangoGlyphString* glyphs, const std::string& text) {
  ShapedRun run;
  cairo_scaled_font_t* font = pango_cairo_font_get_scaled_font(PANGO_CAIRO_FONT(item->analysis.font));
  run.font.reset(cairo_scaled_font_reference(font));
  gather_clusters(run, item, glyphs, text);
  cairo_font_extents_t face;
  cairo_scaled_font_extents(font, &face);
  line.ascent = std::max(line.ascent, face.ascent);
  line.descent = std::max(line.descent, face.descent);
  const double em = face.ascent + face.descent;
  for (int i = 0; i < glyphs->num_glyphs; ++i) {
    const PangoGlyphInfo& glyph = glyphs->glyphs[i];
    if (glyph.glyph & PANGO_GLYPH_UNKNOWN_FLAG && glyph.glyph != PANGO_GLYPH_EMPTY) {
      const double width = missing_width_em * em / 1.2;
      line.missing.push_back({line.width, width});
      line.width += width;
      continue;
    }
    if (glyph.glyph != PANGO_GLYPH_EMPTY)
      run.glyphs.push_back(
          {glyph.glyph, line.width + to_points(glyph.geometry.x_offset), to_points(glyph.geometry.y_offset)});
    line.width += to_points(glyph.geometry.width);
  }
  line.runs.push_back(std::move(run));
}

}  // namespace

std::string make_printable(std::string_view text) {
  if (std::all_of(text.begin(), text.end(), is_plain)) return std::string(text);
  const std::unique_ptr<char, Releases<g_free>> valid(g_utf8_make_valid(text.data(), static_cast<gssize>(text.size())));
  std::string printable;
  for (const char* at = valid.get(); *at; at = g_utf8_next_char(at)) {
    const gunichar c = g_utf8_get_char(at);
    if (g_unichar_iscntrl(c) || c == 0x2028 || c == 0x2029)
      printable += ' ';
    else
      printable.append(at, static_cast<const char*>(g_utf8_next_char(at)));
  }
  return printable;
}

Shaper::Shaper(FontConfig config, const FaceList& list) : config_(std::move(config)) {
  // A font map starts fontconfig when it is made, which would read the machine's own set-up and, where it has no cache
  // yet, every face it has. An empty set-up in its place ends that before it begins.
  const FontConfig nothing(FcConfigCreate());
  FcConfigSetCurrent(nothing.get());
  map_.reset(pango_cairo_font_map_new_for_font_type(CAIRO_FONT_TYPE_FT));
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map_.get()), config_.get());
  pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map_.get()), 72);
  families_[0] = gather_families(list, FaceUse::sans);
  families_[1] = gather_families(list, FaceUse::mono);
}

Shaper::Families Shaper::gather_families(const FaceList& list, FaceUse use) const {
  const FaceUse other = use == FaceUse::sans ? FaceUse::mono : FaceUse::sans;
  Families families{order_families(list, {use, FaceUse::fallback, other}),
                    order_families(list, {FaceUse::fallback, use, other}), nullptr};
  const auto own = std::find_if(list.faces.begin(), list.faces.end(), [&](const TypeFace& f) { return f.use == use; });
  if (own != list.faces.end()) families.own = find_characters(config_.get(), own->path);
  families.is_plain_own = families.own && has_all_plain(families.own);
  return families;
}

Shaper::~Shaper() {
  lines_.clear();
  plain_items_.clear();
  contexts_.clear();
  // A font map forgets its list of faces when it gets another set-up, but not when it goes.
  pango_fc_font_map_set_config(PANGO_FC_FONT_MAP(map_.get()), nullptr);
}

PangoContext* Shaper::context_for(const TextStyle& style) const {
  PangoShapeContext& context = contexts_[style];
  if (context) return context.get();
  context.reset(pango_font_map_create_context(map_.get()));
  const CairoFontOptions options(cairo_font_options_create());
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context.get(), options.get());
  pango_cairo_context_set_resolution(context.get(), 72);
  pango_context_set_round_glyph_positions(context.get(), FALSE);
  pango_context_set_language(context.get(), pango_language_from_string("en"));
  const PangoDescription description(pango_font_description_new());
  pango_font_description_set_family(description.get(), families_of(style).all.c_str());
  const bool is_bold = style.weight == Weight::bold;
  pango_font_description_set_weight(description.get(), is_bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size(description.get(), std::clamp(style.points, 0.5, 2000.0) * PANGO_SCALE);
  pango_context_set_font_description(context.get(), description.get());
  return context.get();
}

/// Printable ASCII is one item of the use's own face, whatever it says; only whether there is a letter decides its script. So Pango is
/// asked once for each style, and the item made to fit the text. Null for other text.
PangoPiece Shaper::plain_item(const std::string& text, const TextStyle& style) const {
  const Families& families = families_of(style);
  if (!families.is_plain_own || !std::all_of(text.begin(), text.end(), is_plain)) return nullptr;
  const bool has_letter = std::any_of(text.begin(), text.end(), [](char c) { return g_ascii_isalpha(c); });
  PangoPiece& kept = plain_items_[{style, has_letter}];
  if (!kept) {
    const ItemList items = cut(context_for(style), has_letter ? "a" : "1", families.own, families.fallback);
    kept.reset(pango_item_copy(static_cast<PangoItem*>(items.head->data)));
  }
  PangoPiece item(pango_item_copy(kept.get()));
  item->length = item->num_chars = static_cast<int>(text.size());
  return item;
}

ShapedLine Shaper::make_line(const std::string& text, const TextStyle& style) const {
  const int length = static_cast<int>(text.size());
  const PangoGlyphs glyphs(pango_glyph_string_new());
  ShapedLine line;
  const auto add = [&](PangoItem* item) {
    pango_shape_item(item, text.c_str(), length, nullptr, glyphs.get(), PANGO_SHAPE_NONE);
    add_run(line, item, glyphs.get(), text);
  };
  if (const PangoPiece plain = plain_item(text, style)) {
    add(plain.get());
    return line;
  }
  const Families& families = families_of(style);
  const ItemList logical = cut(context_for(style), text, families.own, families.fallback);
  const std::unique_ptr<GList, Releases<g_list_free>> seen(pango_reorder_items(logical.head));
  for (GList* at = seen.get(); at; at = at->next) add(static_cast<PangoItem*>(at->data));
  return line;
}

const ShapedLine& Shaper::shape(std::string_view text, const TextStyle& style) const {
  const std::lock_guard asking(asking_);
  if (const auto found = lines_.find(KeyView{text, style}); found != lines_.end()) return found->second;
  // An empty text still has a height: that of a space.
  ShapedLine line = make_line(text.empty() ? " " : make_printable(text), style);
  if (text.empty()) line.runs.clear(), line.width = 0;
  return lines_.emplace(Key{std::string(text), style}, std::move(line)).first->second;
}

TextSize Shaper::measure(std::string_view text, const TextStyle& style) const {
  const ShapedLine& line = shape(text, style);
  const double hundredths = line.width * mm_per_point * 100;
  return {Millimetres(std::ceil(hundredths - 1e-6) / 100), Millimetres(line.ascent * mm_per_point),
          Millimetres(line.descent * mm_per_point)};
}

std::size_t Shaper::Hash::operator()(const KeyView& key) const {
  const auto style = static_cast<std::size_t>(std::lround(key.style.points * 100)) * 4 +
                     static_cast<std::size_t>(key.style.face) * 2 + static_cast<std::size_t>(key.style.weight);
  return std::hash<std::string_view>{}(key.text) ^ (style * 0x9e3779b97f4a7c15u);
}

}  // namespace loomfolio
