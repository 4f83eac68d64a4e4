// What a fitted curve says of the compass, for words: how large the deviation gets, which cause its shape points to, whether
// handbooks would have it adjusted.
// Source: Handbook of Magnetic Compass Adjustment (NGA 2004): A constant (lubber line, or an error in the reference), B and C
// semicircular (permanent magnetism, vertical soft iron), D and E quadrantal (horizontal soft iron). What counts as found:
// Draper and Smith, Applied Regression Analysis (3rd ed. 1998), chapter 5 (t of one coefficient, F of two together).
#pragma once

#include <vector>

#include "core/compass/swing_fit.h"

namespace fogsheet {

enum class DeviationShape { constant, semicircular, quadrantal };

struct ShapeFound {
  DeviationShape shape;
  double amplitude_deg = 0;  // |A|; the greatest of B sin z + C cos z; of D sin 2z + E cos 2z
  double sd_deg = 0;         // one sigma of the amplitude
};

struct SwingFindings {
  Deviation largest;             // on the covered part of the curve, to the whole degree of heading
  CompassDirection largest_at;
  bool adjust = false;           // over k_adjust_from_deg (compass_check.h) by more than the curve there is worth (one_sigma_factor)
  std::vector<ShapeFound> shapes;  // that chance alone makes 1 time in 20 at the most, the largest first
  std::vector<Coefficient> missing;  // not supported by the headings, or not to be found
  double largest_slope = 0;      // of the curve, deg a deg: from 1 on a magnetic heading may have two compass headings
};

SwingFindings findings_of(const SwingFit& fit);

}  // namespace fogsheet
