// A leg's triangle in words: how it is laid off with the instruments, and what the edge reads beside what was worked out.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/figure/passage_plot.h"

namespace fogsheet::words {

std::string triangle_by_hand();
std::string triangles_hour_by_hour();

/// Step by step, in the order of the hands.
/// @param from  the mark it starts at.
std::vector<std::string> laying_off(const LaidTriangle& triangle, const std::string& from, Rounding rounding);

/// "The edge reads 103°T, worked out 104.3°T: 1.3° less." Nothing for an edge that lies some other way.
std::optional<std::string> edge_beside_worked_out(const LaidTriangle& triangle, TrueDirection edge, Rounding rounding);

}  // namespace fogsheet::words
