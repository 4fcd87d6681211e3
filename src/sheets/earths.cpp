// SPDX-License-Identifier: MIT
// Earths and splices: where they are, what meets there, how it is joined.
#include <algorithm>
#include <utility>

#include "sheets/anchors.h"
#include "sheets/hook_up_tables.h"
#include "sheets/hook_ups.h"
#include "sheets/page_flow.h"
#include "sheets/panel.h"
#include "sheets/print_text.h"
#include "sheets/right_to_left.h"
#include "sheets/sheet_makers.h"
#include "sheets/wire_star.h"

namespace loomfolio {
namespace {

/// Width of a joint's name and facts; the rest is its star's.
constexpr double text_share = 0.25;

struct Joint {
  std::string anchor, id, name;
  std::vector<std::string> lines;  ///< where it is and how it is joined
  Block star;
};

/// Name and facts at the near side, the star beside them. Laid out from the left, and turned round as a whole.
Block joint_block(const PageFlow& flow, Joint joint) {
  const TypeSetting setting{flow.context().measure()};
  const Millimetres text_width = flow.width() * text_share;
  Block block{flow.width(), {}, {}};
  block.items.push_back(AnchorItem{joint.anchor, {}});
  const auto put = [&](const Paragraph& paragraph) {
    Block text = set_paragraph(paragraph, text_width, setting);
    const Millimetres height = text.height;
    place_block(block.items, std::move(text), {{}, block.height});
    block.height += height;
  };
  put({{{joint.id, look::heading, look::ink, {}}, {"  " + joint.name, look::text_bold, look::ink, {}}},
       Align::left,
       "H3"});
  for (const std::string& line : joint.lines) put({{{line, look::table, look::ink, {}}}, Align::left, "P"});
  const Millimetres star_height = joint.star.height;
  const Millimetres height = std::max(block.height, star_height);
  place_block(block.items, std::move(joint.star), {text_width + look::gutter, (height - star_height) / 2});
  block.height = height + Millimetres(2.5);
  block.items.push_back(TagOpenItem{"Artifact", {}});
  add_line(block.items, {{}, block.height}, {flow.width(), block.height}, {look::hairline_grey, look::thin_line});
  block.items.push_back(TagCloseItem{});
  return mirrored_if(flow.setting().is_right_to_left, std::move(block));
}

Millimetres star_width(const PageFlow& flow) { return flow.width() * (1 - text_share) - look::gutter; }

void add_if_said(std::vector<std::string>& lines, const std::string& line) {
  if (!line.empty()) lines.push_back(line);
}

Joint earth_joint(const PageFlow& flow, const SheetContext& context, const Earth& earth) {
  const Words& words = context.words();
  Joint joint{earth_anchor(earth), earth.id, earth.label, {}, earth_star(context, earth, star_width(flow))};
  joint.lines.push_back(zone_name(context.build().zone(earth.zone)));
  if (!earth.place.empty()) joint.lines.push_back(earth.place);
  if (!earth.thread.empty()) joint.lines.push_back(words("earths.ring", {{"thread", earth.thread}}));
  return joint;
}

Joint splice_joint(const PageFlow& flow, const SheetContext& context, const Splice& splice) {
  const Words& words = context.words();
  const WireSides sides = sides_at(context.build(), splice.terminal);
  Joint joint{splice_anchor(splice), splice.id, splice.label, {}, splice_star(context, splice, star_width(flow))};
  joint.lines.push_back(zone_name(context.build().zone(splice.zone)));
  // All wires lie side by side in the one barrel.
  const SquareMillimetres area =
      total_area(context.build(), sides.left) + total_area(context.build(), sides.right);
  if (area.number() > 0) joint.lines.push_back(words("earths.barrel", {{"area", print_area(area)}}));
  add_if_said(joint.lines, splice.note);
  return joint;
}

template <class IdType>
IdType id_at(std::size_t index) {
  return IdType{static_cast<std::int32_t>(index)};
}

std::vector<const Earth*> earths_shown(const SheetContext& context) {
  std::vector<const Earth*> shown;
  const Build& build = context.build();
  for (std::size_t i = 0; i < build.earths.size(); ++i)
    if (has_wire(build, build.earths[i].terminal) && shows_earth(context, id_at<EarthId>(i)))
      shown.push_back(&build.earths[i]);
  return shown;
}

std::vector<const Splice*> splices_shown(const SheetContext& context) {
  std::vector<const Splice*> shown;
  const Build& build = context.build();
  for (std::size_t i = 0; i < build.splices.size(); ++i)
    if (has_wire(build, build.splices[i].terminal) && shows_splice(context, id_at<SpliceId>(i)))
      shown.push_back(&build.splices[i]);
  return shown;
}

/// A joint as drawn, for the hook-ups of those letters; all when there are none.
struct ToldJoint {
  Joint joint;
  std::string text;  ///< all that its block says
  std::vector<std::size_t> hook_ups;
};

std::string text_of(const Joint& joint) {
  std::string text = joint.id;
  for (const Item& item : joint.star.items)
    if (const auto* said = std::get_if<TextItem>(&item)) text += said->text + '\n';
  return text;
}

/// What the context shows; on the common pages also what differs from hook-up to hook-up, the same id together.
template <class Shown, class Make>
std::vector<ToldJoint> gather_joints(const PageFlow& flow, const Shown& shown, const Make& make) {
  const SheetContext& context = flow.context();
  std::vector<ToldJoint> told;
  for (const auto* one : shown(context)) told.push_back({make(flow, context, *one), {}, {}});
  if (context.extent != Extent::common) return told;
  for (SheetContext& own : own_contexts(context)) {
    own.extent = Extent::own;
    for (const auto* one : shown(own)) {
      ToldJoint next{make(flow, own, *one), {}, {own.build_index}};
      next.text = text_of(next.joint);
      const auto same = std::find_if(told.begin(), told.end(), [&](const ToldJoint& t) { return t.text == next.text; });
      if (same != told.end()) {
        same->hook_ups.push_back(own.build_index);
        continue;
      }
      const auto later =
          std::find_if(told.begin(), told.end(), [&](const ToldJoint& t) { return t.joint.id > next.joint.id; });
      told.insert(later, std::move(next));
    }
  }
  for (ToldJoint& one : told)
    if (!one.hook_ups.empty())
      one.joint.lines.insert(one.joint.lines.begin(), hook_ups_text(one.hook_ups, context.words()));
  return told;
}

void add_joints(PageFlow& flow, std::vector<ToldJoint> joints, const std::string& kind) {
  const Words& words = flow.context().words();
  if (joints.empty()) return;
  flow.add_heading(words("earths." + kind + "s"));
  flow.add_lead(words("earths." + kind + "_rule"), look::paragraph_gap);
  for (ToldJoint& one : joints) flow.add(joint_block(flow, std::move(one.joint)), Millimetres(3.5));
}

}  // namespace

std::vector<Sheet> make_earths(const SheetContext& context) {
  if (context.extent == Extent::own) return {};
  const Words& words = context.words();
  PageFlow flow(context, {"earths", words("earths.title"), words("earths.intro")});
  std::vector<ToldJoint> earths = gather_joints(flow, earths_shown, earth_joint),
                    splices = gather_joints(flow, splices_shown, splice_joint);
  if (earths.empty() && splices.empty()) return {};
  add_joints(flow, std::move(earths), "earth");
  add_joints(flow, std::move(splices), "splice");
  return flow.take();
}

}  // namespace loomfolio
