// SPDX-License-Identifier: MIT
// Every size, width and colour of our pages, in one place. Start values are explained in DEVELOPERS.md.
#pragma once

#include "sheets/sheet.h"

namespace loomfolio::look {

inline constexpr Colour ink{0x1a, 0x1a, 0x1a};
inline constexpr Colour grey{0x6b, 0x6b, 0x6b};  ///< names of zones, heads of the title strip
inline constexpr Colour dead_wire{0xa8, 0xa8, 0xa8};
inline constexpr Colour hairline_grey{0xbd, 0xbd, 0xb8};
inline constexpr Colour accent{0x00, 0x5f, 0x73};  ///< live figures, links, cross references; nothing depends on it
inline constexpr Colour paper{0xff, 0xff, 0xff};
inline constexpr Colour trunk{0xdd, 0xdd, 0xda};  ///< wires drawn as one thick course
inline constexpr Colour band{0xf4, 0xf4, 0xf2};  ///< zones, every fifth table row
inline constexpr Colour band_dark{0xe9, 0xe9, 0xe6};

inline constexpr TextStyle title{FaceName::sans, Weight::bold, 18};
inline constexpr TextStyle cover_title{FaceName::sans, Weight::bold, 30};
inline constexpr TextStyle cover_subtitle{FaceName::sans, Weight::regular, 13};
inline constexpr TextStyle heading{FaceName::sans, Weight::bold, 12};
inline constexpr TextStyle text{FaceName::sans, Weight::regular, 10};
inline constexpr TextStyle text_bold{FaceName::sans, Weight::bold, 10};
inline constexpr TextStyle part_name{FaceName::sans, Weight::bold, 10};
inline constexpr TextStyle part_value{FaceName::sans, Weight::regular, 8};
inline constexpr TextStyle table{FaceName::sans, Weight::regular, 8.5};
inline constexpr TextStyle table_head{FaceName::sans, Weight::bold, 8};
inline constexpr TextStyle table_mono{FaceName::mono, Weight::regular, 8.5};
inline constexpr TextStyle terminal_name{FaceName::sans, Weight::bold, 7.5};
inline constexpr TextStyle wire_number{FaceName::mono, Weight::bold, 7.5};
inline constexpr TextStyle wire_code{FaceName::mono, Weight::regular, 7.5};
inline constexpr TextStyle wire_size{FaceName::sans, Weight::regular, 7.5};
inline constexpr TextStyle small{FaceName::sans, Weight::regular, 7.5};
inline constexpr TextStyle least{FaceName::sans, Weight::regular, 7};

inline constexpr TextStyle strip_head{FaceName::sans, Weight::regular, 7};
inline constexpr TextStyle strip_value{FaceName::sans, Weight::bold, 9.5};
inline constexpr TextStyle draft{FaceName::sans, Weight::bold, 9};
inline constexpr TextStyle strip_value_small{FaceName::sans, Weight::bold, 7};
inline constexpr TextStyle face_text{FaceName::sans, Weight::regular, 7};
inline constexpr TextStyle step_note{FaceName::sans, Weight::regular, 10};
inline constexpr TextStyle step_number{FaceName::sans, Weight::bold, 14};
inline constexpr TextStyle label_number{FaceName::mono, Weight::bold, 10};
inline constexpr TextStyle fuse_on_face{FaceName::sans, Weight::bold, 7};
inline constexpr TextStyle fuse_rating{FaceName::sans, Weight::bold, 8};
inline constexpr double least_points = 7;

inline constexpr Millimetres thin_line{0.18}, line{0.25}, part_line{0.35}, heavy_line{0.5}, frame_line{0.7};

// The frame: grid fields are near 60 mm, an even count; their letters and figures stand outside the line.
inline constexpr Millimetres strip_height{10}, grid_field{60}, grid_tick{2}, frame_padding{5}, strip_gap{5};

// Text pages and tables.
inline constexpr TextStyle table_small{FaceName::sans, Weight::regular, 7.5};
inline constexpr TextStyle table_bold{FaceName::sans, Weight::bold, 8.5};
inline constexpr TextStyle table_mono_bold{FaceName::mono, Weight::bold, 8.5};
inline constexpr TextStyle running_head{FaceName::sans, Weight::bold, 9};
inline constexpr TextStyle group_label{FaceName::sans, Weight::bold, 8};
inline constexpr Millimetres mark_bar{1};  ///< beside what not all hook-ups have
inline constexpr Millimetres gutter{4}, paragraph_gap{2}, block_gap{5}, heading_gap{7};
inline constexpr Millimetres cell_pad{1.1}, column_gap{3}, group_space{3}, picture_gap{1.6};

// Diagrams.
inline constexpr TextStyle zone_name{FaceName::sans, Weight::bold, 7.5};
inline constexpr TextStyle flag{FaceName::sans, Weight::bold, 7.5};
/// A drawing may be made that much smaller to fit its sheet: 7.5 pt become 7.
inline constexpr double least_scale = 7.0 / 7.5;

// Situations.
inline constexpr TextStyle volts{FaceName::sans, Weight::regular, 7.5};
inline constexpr TextStyle flow_figure{FaceName::sans, Weight::bold, 7.5};
inline constexpr Millimetres live_line{0.7};                       ///< inside a part, where current passes
inline constexpr Millimetres arrow_length{3.0}, arrow_over{0.55};  ///< how far an arrowhead stands out of its wire
inline constexpr Millimetres arrow_rim{0.22}, hollow_edge{0.28};   ///< of a wire with volts but no current

// Signal words: safety colours as ANSI Z535.1 names them; the values are those of the RAL tones that ISO 3864 lists.
inline constexpr Colour safety_red{0x9b, 0x24, 0x23}, safety_orange{0xe8, 0x7a, 0x1e}, safety_yellow{0xf9, 0xa8, 0x00};
inline constexpr Colour safety_blue{0x00, 0x53, 0x87};
inline constexpr TextStyle signal_word{FaceName::sans, Weight::bold, 13};
inline constexpr Millimetres signal_bar{7.5}, panel_pad{3};

// Faces.
inline constexpr Millimetres leader_dot{0.45}, label_word_gap{1.4};

// Wires.
inline constexpr Millimetres wire_thin{1.0}, wire_medium{1.4}, wire_thick{1.8}, wire_cable{2.2}, wire_edge{0.18};
/// Of the width inside the outline. The base must win: a stripe that covers more than a third of it turns the colours round.
inline constexpr double stripe_share = 0.6;
inline constexpr Millimetres stripe_dash{2.2}, stripe_gap{2.4};
inline constexpr Millimetres swatch_extra{0.9},
    swatch_length{9};  ///< a swatch is shown a little thicker than the wire on a diagram

/// Baseline to baseline of running text of that type size: 4.5 mm at 10 pt.
constexpr Millimetres line_step(const TextStyle& style) { return Millimetres(style.points * 0.45); }
/// Where in a line step the baseline lies, from its top.
inline constexpr double baseline_share = 0.76;

}  // namespace loomfolio::look
