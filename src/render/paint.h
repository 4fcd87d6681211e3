// SPDX-License-Identifier: MIT
// Items onto a cairo context whose unit is the point (1/72 inch). Shared by PDF and PNG.
#pragma once

#include "render/owners.h"
#include "render/render.h"
#include "render/shaper.h"

namespace loomfolio {

inline double to_points(Millimetres length) { return length.number() * 72 / 25.4; }

struct Painter {
  cairo_t* cairo;
  const Shaper& shaper;
  Colouring colouring;
};

/// The whole surface in white.
void paint_ground(cairo_t* cairo);
void paint(const Painter& painter, const PathItem& item);
void paint(const Painter& painter, const RectItem& item);
void paint(const Painter& painter, const TextItem& item);
/// The text, and a space where it ends.
void paint_with_space(const Painter& painter, const TextItem& item);

/// What cairo writes, behind what the std::string at `text` holds: a cairo_write_func_t.
cairo_status_t append_bytes(void* text, const unsigned char* bytes, unsigned int count);

}  // namespace loomfolio
