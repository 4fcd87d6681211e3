// SPDX-License-Identifier: MIT
#include "render/picture.h"

#include <cairo.h>

#include <algorithm>
#include <cstdio>

#include "render/owners.h"
#include "render/render_helper.h"

namespace loomfolio::test {

Colour Picture::at(double x, double y) const {
  const int column = static_cast<int>(x * dots_per_inch / 25.4), row = static_cast<int>(y * dots_per_inch / 25.4);
  if (column < 0 || row < 0 || column >= width || row >= height) return {};
  return dots[static_cast<std::size_t>(row * width + column)];
}

Picture read_png(const std::string& png, double dots_per_inch) {
  std::string rest = png;
  const auto take = [](void* from, unsigned char* to, unsigned int count) {
    auto& bytes = *static_cast<std::string*>(from);
    if (bytes.size() < count) return CAIRO_STATUS_READ_ERROR;
    std::copy_n(bytes.begin(), count, to);
    bytes.erase(0, count);
    return CAIRO_STATUS_SUCCESS;
  };
  const CairoSurface surface(cairo_image_surface_create_from_png_stream(take, &rest));
  Picture picture;
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) return picture;
  picture.dots_per_inch = dots_per_inch;
  picture.width = cairo_image_surface_get_width(surface.get());
  picture.height = cairo_image_surface_get_height(surface.get());
  const unsigned char* row = cairo_image_surface_get_data(surface.get());
  for (int y = 0; y < picture.height; ++y, row += cairo_image_surface_get_stride(surface.get()))
    for (int x = 0; x < picture.width; ++x) {
      const auto dot = reinterpret_cast<const std::uint32_t*>(row)[x];
      picture.dots.push_back({std::uint8_t(dot >> 16), std::uint8_t(dot >> 8), std::uint8_t(dot)});
    }
  return picture;
}

Picture read_pdf(const std::string& pdf, double dots_per_inch) {
  const std::string ppm = read_back(pdf, "pdftoppm -l 1 -r " + std::to_string(dots_per_inch) + " FILE");
  Picture picture;
  int head = 0;
  if (std::sscanf(ppm.c_str(), "P6 %d %d 255%n", &picture.width, &picture.height, &head) != 2 || head == 0) return {};
  picture.dots_per_inch = dots_per_inch;
  for (std::size_t i = static_cast<std::size_t>(head) + 1; i + 2 < ppm.size(); i += 3)
    picture.dots.push_back({std::uint8_t(ppm[i]), std::uint8_t(ppm[i + 1]), std::uint8_t(ppm[i + 2])});
  return picture;
}

}  // namespace loomfolio::test
