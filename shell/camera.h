// How the paper lies on the screen: pixels a millimetre, and where its top left corner is. Pure geometry.
#pragma once

#include "core/sheet/paper.h"
#include "core/sheet/sheet_point.h"
#include "shell/pointer.h"

namespace fogsheet {

/// The part of the canvas that nothing covers, CSS pixels.
struct FreeArea {
  double width_px = 0;
  double height_px = 0;
  bool operator==(const FreeArea&) const = default;
};

struct Camera {
  double px_per_mm = 3;
  ScreenPoint origin;  // of the paper's top left corner

  bool operator==(const Camera&) const = default;
  ScreenPoint to_screen(SheetPoint p) const { return {origin.x_px + p.x_mm * px_per_mm, origin.y_px + p.y_mm * px_per_mm}; }
  SheetPoint to_sheet(ScreenPoint p) const { return {(p.x_px - origin.x_px) / px_per_mm, (p.y_px - origin.y_px) / px_per_mm}; }
};

inline constexpr double k_least_px_per_mm = 0.4;
inline constexpr double k_most_px_per_mm = 40;
inline constexpr double k_zoom_step = 1.25;  // of Closer and Wider

/// The same place under a screen point, that many times closer; within the bounds.
Camera zoomed(const Camera& camera, ScreenPoint about, double factor);

Camera panned(const Camera& camera, ScreenPoint by);

/// The whole paper in the free area.
Camera fitted(PaperSize paper, FreeArea area);

/// A first view: the whole paper where its figures can be read so, else as wide as they can, with `focus` in the free area.
Camera opening(PaperSize paper, FreeArea canvas, FreeArea area, SheetRect focus);

/// Brought back so that at least a part of the paper stays in the free area.
Camera held(const Camera& camera, PaperSize paper, FreeArea area);

}  // namespace fogsheet
