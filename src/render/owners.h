// SPDX-License-Identifier: MIT
// Move-only owners of cairo's, Pango's and fontconfig's handles.
#pragma once

#include <cairo.h>
#include <fontconfig/fontconfig.h>
#include <pango/pangocairo.h>

#include <memory>
#include <utility>

namespace loomfolio {

template <auto release>
struct Releases {
  template <class Handle>
  void operator()(Handle* handle) const {
    release(handle);
  }
};

using CairoSurface = std::unique_ptr<cairo_surface_t, Releases<cairo_surface_destroy>>;
using CairoContext = std::unique_ptr<cairo_t, Releases<cairo_destroy>>;
using CairoFontOptions = std::unique_ptr<cairo_font_options_t, Releases<cairo_font_options_destroy>>;
using CairoScaledFont = std::unique_ptr<cairo_scaled_font_t, Releases<cairo_scaled_font_destroy>>;
using FontConfig = std::unique_ptr<FcConfig, Releases<FcConfigDestroy>>;
using PangoMap = std::unique_ptr<PangoFontMap, Releases<g_object_unref>>;
using PangoShapeContext = std::unique_ptr<PangoContext, Releases<g_object_unref>>;
using PangoDescription = std::unique_ptr<PangoFontDescription, Releases<pango_font_description_free>>;
using PangoAttributes = std::unique_ptr<PangoAttrList, Releases<pango_attr_list_unref>>;
using PangoPiece = std::unique_ptr<PangoItem, Releases<pango_item_free>>;
using PangoGlyphs = std::unique_ptr<PangoGlyphString, Releases<pango_glyph_string_free>>;

}  // namespace loomfolio
