// What of a figure can be seen through a rectangle: the rest is left out, so that a page of several neither carries nor says
// what lies on the others. Shapes that cross the rectangle's edge stay whole: whoever draws the part cuts it there.
#pragma once

#include "core/figure/figure.h"

namespace fogsheet {

Figure part_of(const Figure& figure, const SheetRect& window);

}  // namespace fogsheet
