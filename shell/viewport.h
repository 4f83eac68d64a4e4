// What the page tells of the room there is.
#pragma once

namespace fogsheet {

/// The canvas in CSS pixels, the device's pixels a CSS pixel, and what the page's own parts cover of it.
struct Viewport {
  double width_px = 0;
  double height_px = 0;
  double pixel_ratio = 1;
  double covered_right_px = 0;
  double covered_bottom_px = 0;
  bool operator==(const Viewport&) const = default;
};

}  // namespace fogsheet
