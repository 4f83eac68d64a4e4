// How small things may be and still be read, in paper millimetres: the screen's camera fills it from its zoom, print from
// constants. All figures are built by it, so that screen, print and export thin out by one rule.
#pragma once

namespace fogsheet {

/// @param least_line_mm   the weight of a line of one pixel (a stroke's own least weight is a multiple of it)
/// @param least_text_mm   the least height (em) of the smallest text; larger texts have multiples of it
/// @param least_gap_mm    graduations closer than this are left out
struct Legibility {
  double least_line_mm = 0;
  double least_text_mm = 0;
  double least_gap_mm = 0;
  double line_scale = 1;  // 1.5 where bold lines are on
  bool ring_tens = true;  // figures at each 10 degrees of a ring where they don't touch; else at each 30 alone

  bool operator==(const Legibility&) const = default;
};

/// A 600 dpi printer and a reader at arm's length: hairlines of 0.1 mm, text of 1.9 mm (5.4 pt), gaps of 0.3 mm.
inline constexpr Legibility k_print_legibility{.least_line_mm = 0.1, .least_text_mm = 1.9, .least_gap_mm = 0.3};

/// On a screen of that many CSS pixels a paper millimetre.
constexpr Legibility screen_legibility(double px_per_mm) {
  return {.least_line_mm = 1 / px_per_mm, .least_text_mm = 10.5 / px_per_mm, .least_gap_mm = 2 / px_per_mm};
}

}  // namespace fogsheet
