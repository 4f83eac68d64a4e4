// The loupe: a round window beside the finger that shows, three times the sheet, what the finger hides. Its middle is the
// place that is aimed with; a faint cross marks it, open in the middle, and beneath stands the name of what it snaps to.
#pragma once

#include <string>

#include "shell/camera.h"
#include "shell/canvas/brush.h"

namespace fogsheet {

inline constexpr double k_loupe_scale = 3;
inline constexpr double k_loupe_radius_px = 84;
inline constexpr double k_loupe_clear_px = 96;  // between its rim and the finger

/// Where its middle stands: above the finger, and where the upper edge leaves no room for that, round to one side. Never out
/// of the area.
/// @param to_the_right  the side; turned where only the other one has room
ScreenPoint loupe_middle(ScreenPoint finger, FreeArea area, bool& to_the_right);

/// How the sheet is seen in it: `aimed`, a point of the canvas, lies in its middle.
View loupe_view(ScreenPoint middle, ScreenPoint aimed);

/// What lies under all that is seen in it, and over all that.
void draw_loupe_ground(ScreenPoint middle, Brush& brush);
void draw_loupe_rim(ScreenPoint middle, FreeArea area, const std::string& name, Brush& brush);

}  // namespace fogsheet
