// Graticule and border of a sheet: lines of latitude and longitude, the chequered border with its graduations, and the
// figures outside it. The border's sides are the latitude scale, which is the distance scale, and grow as Mercator's does.
#pragma once

#include "core/figure/figure.h"
#include "core/figure/legibility.h"
#include "core/sheet/projection.h"

namespace fogsheet {

/// The steps of a sheet's graduation, minutes of arc.
struct Graduation {
  double tick_arcmin = 0.1;       // finest graduations
  double bar_arcmin = 1;          // alternate bars of the border; whole graduations
  double label_arcmin = 1;        // minute figures
  double major_arcmin = 5;        // degree and minute figures, and the lines of the graticule
};

/// @param scale the number after 1:.
Graduation graduation_for(double scale);

void add_graticule(Figure& figure, const Projection& projection, const Graduation& graduation, const Legibility& legibility);

/// @param paper the whole paper; what lies between it and the neat line is covered, so that nothing drawn before runs over it.
void add_border(Figure& figure, const Projection& projection, PaperSize paper, const Graduation& graduation, const Legibility& legibility);

}  // namespace fogsheet
