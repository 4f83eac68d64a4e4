// What lies above the sheet and moves: signs of selection and snapping, handles, the straight-edge, previews of drags.
#pragma once

#include "shell/canvas/brush.h"

namespace fogsheet {

class Overlay {
 public:
  explicit Overlay(Brush& brush) : brush_(brush) {}

  Brush& brush() { return brush_; }

  void dashed_line(ScreenPoint a, ScreenPoint b, Ink ink, double width_px) { brush_.dashed(a, b, ink, width_px, 6, 4); }
  void dotted_line(ScreenPoint a, ScreenPoint b, Ink ink, double width_px) { brush_.dotted(a, b, ink, width_px, 5); }

  /// Four upright ticks about what has been snapped to.
  void snap_ticks(ScreenPoint at);

  /// A handle: a plain disc with two grip bars along the direction.
  void grip(ScreenPoint at, double direction_deg, double radius_px);

  /// Where the edge lay when its slide began.
  void ghost(ScreenPoint a, ScreenPoint b) { brush_.dotted(a, b, Ink::edge, 1.6, 6); }

  /// Two short strokes across a line: lines so marked are parallel.
  void parallel_sign(ScreenPoint at, double direction_deg);

  /// A dot with a paper rim, where the edge cuts a ring.
  void cut_dot(ScreenPoint at);

  /// The edge has settled on a centre.
  void settle_mark(ScreenPoint at);

 private:
  /// A sign keeps its size in every view.
  ScreenPoint moved(ScreenPoint p, double direction_deg, double px) const;

  Brush& brush_;
};

}  // namespace fogsheet
