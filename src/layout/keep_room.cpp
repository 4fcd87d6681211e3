// SPDX-License-Identifier: MIT
// The idea. The area is cut into small squares; a running sum over two directions of those that are taken tells at once
// how many are taken under any rectangle. All places on the raster are asked, and the free ones ordered by their
// distance.
#include "layout/keep_room.h"

#include <algorithm>
#include <tuple>

namespace loomfolio::laying {
namespace {

constexpr Grid square = 250;
constexpr Grid between_offers = 2000;  // between two places that are offered

class Raster {
 public:
  explicit Raster(GridBox area) : area_(area), columns_(area.width() / square + 2), rows_(area.height() / square + 2) {
    sum_.assign(static_cast<std::size_t>(columns_ + 1) * static_cast<std::size_t>(rows_ + 1), 0);
  }
  void take(GridBox box) {
    const int x0 = std::max(0, floor_of(box.x0 - area_.x0)), x1 = std::min(columns_ - 1, floor_of(box.x1 - area_.x0));
    const int y0 = std::max(0, floor_of(box.y0 - area_.y0)), y1 = std::min(rows_ - 1, floor_of(box.y1 - area_.y0));
    for (int y = y0; y <= y1; ++y)
      for (int x = x0; x <= x1; ++x) at(x + 1, y + 1) = 1;
  }
  void finish() {
    for (int y = 1; y <= rows_; ++y)
      for (int x = 1; x <= columns_; ++x) at(x, y) += at(x - 1, y) + at(x, y - 1) - at(x - 1, y - 1);
  }
  bool is_free(GridBox box) {
    const int x0 = std::clamp(floor_of(box.x0 - area_.x0), 0, columns_ - 1),
              x1 = std::clamp(floor_of(box.x1 - area_.x0), 0, columns_ - 1);
    const int y0 = std::clamp(floor_of(box.y0 - area_.y0), 0, rows_ - 1),
              y1 = std::clamp(floor_of(box.y1 - area_.y0), 0, rows_ - 1);
    return at(x1 + 1, y1 + 1) - at(x0, y1 + 1) - at(x1 + 1, y0) + at(x0, y0) == 0;
  }

 private:
  static int floor_of(Grid g) { return g >= 0 ? g / square : -((-g + square - 1) / square); }
  int& at(int x, int y) {
    return sum_[static_cast<std::size_t>(y) * static_cast<std::size_t>(columns_ + 1) + static_cast<std::size_t>(x)];
  }
  GridBox area_;
  int columns_, rows_;
  std::vector<int> sum_;
};

long distance_to(const std::vector<GridPoint>& partners, GridPoint middle) {
  long sum = 0;
  for (GridPoint p : partners) sum += std::abs(p.x - middle.x) + std::abs(p.y - middle.y);
  return sum;
}

}  // namespace

std::vector<GridPoint> find_room(const RoomRequest& request, const std::vector<GridBox>& taken, std::size_t most) {
  GridBox area = request.area;
  area.y1 += request.height + 4 * request.clear;
  Raster raster(area.grown(request.clear + square));
  for (GridBox box : taken) raster.take(box);
  raster.finish();
  std::vector<std::tuple<long, Grid, Grid>> found;
  for (Grid y = area.y0; y + request.height <= area.y1; y += square)
    for (Grid x = area.x0; x + request.width <= area.x1; x += square) {
      const GridBox box{x, y, x + request.width, y + request.height};
      if (!raster.is_free(box.grown(request.clear))) continue;
      found.push_back({distance_to(request.partners, {x + request.width / 2, y + request.height / 2}), y, x});
    }
  std::sort(found.begin(), found.end());
  std::vector<GridPoint> places;
  for (const auto& [distance, y, x] : found) {
    const bool is_near = std::any_of(places.begin(), places.end(), [&, fx = x, fy = y](GridPoint p) {
      return std::abs(p.x - fx) < between_offers && std::abs(p.y - fy) < between_offers;
    });
    if (!is_near) places.push_back({x, y});
    if (places.size() == most) break;
  }
  return places;
}

}  // namespace loomfolio::laying
