// From a glyph's coverage to the distances from its outline.
#pragma once

#include <cstdint>
#include <vector>

namespace fogsheet {

/// @param coverage  width x height, 0 to 255, antialiased
/// @return as large: 128 on the outline, growing inwards by 127 over range_px.
/// Source of the method: Felzenszwalb and Huttenlocher, Distance transforms of sampled functions, Theory of Computing 8 (2012);
/// started from the coverage of edge texels, so that the outline lies between them where it should.
std::vector<std::uint8_t> distance_field(const std::vector<std::uint8_t>& coverage, int width, int height, int range_px);

}  // namespace fogsheet
