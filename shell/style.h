// Every colour and size of the sheet on screen has its name here; the page's style sheet is generated from the same table.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "core/figure/figure.h"
#include "core/figure/legibility.h"

namespace fogsheet {

enum class Palette : std::uint8_t { day, dusk, night, high_contrast };
inline constexpr int k_palette_count = 4;

std::string_view palette_name(Palette palette);  // "day", "dusk", "night", "high-contrast"
std::optional<Palette> palette_named(std::string_view name);

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Colour&) const = default;
};

/// @param ink any but none.
Colour colour_of(Palette palette, Ink ink);

// The dimmer's steps: at 0 all is shown, at the last one only what a course is steered by.
inline constexpr int k_dimmest = 3;

/// Whether light shines on dark: by day the paper is what is bright, and there is nothing that a dimmer could take away.
constexpr bool is_dark(Palette palette) { return palette == Palette::dusk || palette == Palette::night; }

/// Whether the dimmer still leaves what has that ink; and the figures of a rose's rings between each 30 degrees.
bool shown_at(int dim_step, Ink ink);
bool ring_tens_shown_at(int dim_step);

/// What can be read on a screen of that many CSS pixels a paper millimetre; high contrast always has bold lines.
Legibility legibility_of(Palette palette, bool bold_lines, int dim_step, double px_per_mm);

/// As ImGui packs colours; opacity in [0, 1].
std::uint32_t packed(Colour colour, double opacity = 1);

inline constexpr double k_edge_tint = 0.22;    // opacity of the straight-edge's body, under the rose's figures

// What the hand needs, CSS pixels.
inline constexpr double k_press_slack_px = 8;    // less movement is a press, from here on it is a drag
inline constexpr double k_mark_reach_px = 22;    // marks and handles
inline constexpr double k_line_reach_px = 16;    // edges and lines; nearest wins, points before lines
inline constexpr double k_hold_s = 0.3;          // before a mark moves with no tool in hand
inline constexpr double k_handle_radius_px = 13;
inline constexpr double k_wide_layout_px = 900;  // from here on the slip stands at the right
inline constexpr double k_low_layout_least_px = 600; // so does it from here on where there is little height,
inline constexpr double k_low_canvas_px = 404;       // as on a phone held across: 480 less the tray (slip.css)
inline constexpr double k_phone_layout_px = 480; // below it Closer and Wider are under More
inline constexpr double k_settle_s = 0.12;       // an edge's way onto the rose

}  // namespace fogsheet
