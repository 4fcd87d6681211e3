// SPDX-License-Identifier: MIT
#include <algorithm>
#include <cmath>

#include "render/font_set.h"
#include "render/paint.h"

namespace loomfolio {
std::string render_png(const Sheet& sheet, const FontSet& fonts, double dots_per_inch, Colouring colouring) {
  const auto& shaper = fonts.inside().shaper;
  if (!shaper) return {};
  const double scale = std::clamp(dots_per_inch, 36.0, 600.0) / 72;
  const auto dots = [&](Millimetres length) { return static_cast<int>(std::ceil(to_points(length) * scale - 1e-6)); };
  const CairoSurface surface(cairo_image_surface_create(CAIRO_FORMAT_RGB24, dots(sheet.width), dots(sheet.height)));
  const CairoContext cairo(cairo_create(surface.get()));
  paint_ground(cairo.get());
  cairo_scale(cairo.get(), scale, scale);
  const Painter painter{cairo.get(), *shaper, colouring};
  for (const Item& item : sheet.items)
    std::visit(
        [&](const auto& i) {
          if constexpr (requires { paint(painter, i); }) paint(painter, i);
        },
        item);
  std::string png;
  const bool is_drawn = cairo_status(cairo.get()) == CAIRO_STATUS_SUCCESS &&
                        cairo_surface_write_to_png_stream(surface.get(), append_bytes, &png) == CAIRO_STATUS_SUCCESS;
  return is_drawn ? png : std::string();
}

}  // namespace loomfolio
