// SPDX-License-Identifier: MIT
// Lines between two pictures: none crosses where it need not, all start and end where they must.
#include "sheets/leader_lines.h"

#include <doctest/doctest.h>

#include <algorithm>

using namespace loomfolio;

namespace {

Point mm_point(double x, double y) { return {Millimetres(x), Millimetres(y)}; }

bool spans(double a, double b, double x) { return x > std::min(a, b) + 1e-9 && x < std::max(a, b) - 1e-9; }

/// Level pieces against upright ones.
int crossings(const std::vector<Point>& a, const std::vector<Point>& b) {
  int count = 0;
  for (std::size_t i = 1; i < a.size(); ++i)
    for (std::size_t k = 1; k < b.size(); ++k)
      for (const bool is_swapped : {false, true}) {
        const Point p = is_swapped ? b[k - 1] : a[i - 1], q = is_swapped ? b[k] : a[i];
        const Point r = is_swapped ? a[i - 1] : b[k - 1], s = is_swapped ? a[i] : b[k];
        if (p.y == q.y && r.x == s.x && spans(p.x.number(), q.x.number(), r.x.number()) &&
            spans(r.y.number(), s.y.number(), p.y.number()))
          ++count;
      }
  return count;
}

int all_crossings(const std::vector<std::vector<Point>>& lines) {
  int count = 0;
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (std::size_t k = i + 1; k < lines.size(); ++k) count += crossings(lines[i], lines[k]);
  return count;
}

const Rect picture{{}, {}, Millimetres(30), Millimetres(20)};
const std::vector<LeadEnd> around{{mm_point(5, 0), LabelSide::top},     {mm_point(20, 0), LabelSide::top},
                                  {mm_point(0, 6), LabelSide::left},    {mm_point(0, 14), LabelSide::left},
                                  {mm_point(30, 10), LabelSide::right}, {mm_point(8, 20), LabelSide::bottom},
                                  {mm_point(22, 20), LabelSide::bottom}};

}  // namespace

TEST_CASE("lines that go around a picture do not cross, whichever way they go") {
  for (const std::size_t over : {0, 1, 2})
    for (const LabelSide to : {LabelSide::left, LabelSide::right}) {
      CAPTURE(over);
      const LeadOut out = lead_out(picture, around, to, over);
      CHECK(all_crossings(out.lines) == 0);
      double last = -1e9;
      for (const std::size_t i : out.order) {
        CHECK(out.lines[i].front().x == around[i].at.x);
        CHECK(out.lines[i].front().y == around[i].at.y);
        CHECK(out.lines[i].back().x.number() == doctest::Approx(to == LabelSide::left ? 0 : 30));
        CHECK(out.lines[i].back().y.number() - last >= leader_pitch.number() - 1e-9);
        last = out.lines[i].back().y.number();
      }
      CHECK(out.order.size() == around.size());
    }
}

TEST_CASE("in the channel only lines cross that change places") {
  const auto route = [](const std::vector<double>& right) {
    std::vector<ChannelLine> lines;
    for (std::size_t i = 0; i < right.size(); ++i)
      lines.push_back({Millimetres(5.0 * static_cast<double>(i)), Millimetres(right[i])});
    LeadChannel channel = route_channel(lines, Millimetres(0), Millimetres(40));
    CHECK(channel.clashes == 0);
    CHECK(channel.crossings == all_crossings(channel.lines));
    return channel.crossings;
  };
  CHECK(route({0, 5, 10, 15}) == 0);
  CHECK(route({12, 14, 16, 18}) == 0);
  CHECK(route({-20, -10, 22, 40}) == 0);
  CHECK(route({7, 2, 12, 17}) == 1);
  CHECK(route({17, 12, 7, 2}) == 6);
}
