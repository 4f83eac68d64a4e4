// The legend of a sheet: each sign beside what it means.
#pragma once

#include <array>
#include <string>

#include "core/document/document.h"
#include "core/figure/figure.h"

namespace fogsheet {

enum class LegendRow {
  landmark, light, turn, danger, other, leg, position_line, water_track, ground_track, stream, dead_reckoning, estimated_position, fix, running_fix
};
inline constexpr int k_legend_rows = 14;

/// What each row means, in the order of LegendRow; made by shell.
using LegendWords = std::array<std::string, k_legend_rows>;

// The legend's own size. Units are CSS pixels at text scale 1, not paper: a panel stretches it to its width.
inline constexpr double k_legend_width = 300;
inline constexpr double k_legend_row_height = 34;
inline constexpr double k_legend_height = k_legend_rows * k_legend_row_height;

Figure legend_figure(SignSet set, const LegendWords& words);

}  // namespace fogsheet
