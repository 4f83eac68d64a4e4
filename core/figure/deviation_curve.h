// The deviation curve: heading by compass across, deviation upwards to the east and downwards to the west, with its band of one
// standard deviation and the readings it was made of. What one colour must tell alone is told by form: the band is hatched between
// two lines, a reading that counts is a ring, one left out a cross, one that does not belong a diamond on a dashed stalk.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <vector>

#include "core/boat/swing_record.h"
#include "core/figure/figure.h"

namespace fogsheet {

/// The curve on one heading.
struct CurvePoint {
  double deviation_deg = 0;  // east positive
  double sd_deg = 0;         // one sigma, at least 0; 0 where it is not known: no band there
};

enum class ReadingStanding { counted, left_out, does_not_belong };

struct CurveReading {
  CompassDirection heading;
  Deviation deviation;
  ReadingStanding standing = ReadingStanding::counted;
};

struct DeviationCurve {
  std::array<std::optional<CurvePoint>, 360> by_degree = {};  // none: not covered, the curve has a gap
  std::vector<CurveReading> readings = {};
};

/// As it was fitted. @param counted those of the fit, in its order.
DeviationCurve curve_of(const SwingFit& fit, std::span<const DeviationReading> counted, std::span<const DeviationReading> left_out);
/// Of the rows that tell a deviation. @param worked what work_out() made of that swing
DeviationCurve curve_of(const Swing& swing, const SwingWorked& worked);
/// Straight lines between the card's points, as courses are made by it; no readings, and no band where a point's sd is not known.
DeviationCurve curve_of(const KeptCard& card);

/// A drawing's own size, and of its text (em) and a line of usual weight, in its own units.
struct CurveFrame {
  double width = 0;
  double height = 0;
  double text = 0;
  double line = 0;
};
/// Units are CSS pixels at text scale 1: a panel stretches it to its width.
inline constexpr CurveFrame k_panel_curve{.width = 300, .height = 216, .text = 12, .line = 1.2};
/// Units are millimetres; it fits between the margins of A4 and of Letter.
inline constexpr CurveFrame k_printed_curve{.width = 186, .height = 62, .text = 3.1, .line = 0.25};

/// What the curve always has room for, deg to either side; and the most it shows. What is beyond stands at the edge, an
/// arrowhead behind it: one figure misread must not flatten all others.
inline constexpr double k_least_curve_reach_deg = 3;
inline constexpr double k_most_curve_reach_deg = k_most_card_deviation_deg;

/// Where things lie in the drawing: 000 at the left edge, 360 at the right one.
struct CurvePlot {
  SheetRect rect;
  double least_deg = 0;  // whole degrees, multiples of step_deg
  double most_deg = 0;
  double step_deg = 1;   // from line to line: 1, 2, 5, 10 or 20

  SheetPoint at(double heading_deg, double deviation_deg) const;
};

/// The scale fits the curve, its band and the readings that count.
CurvePlot curve_plot(const DeviationCurve& curve, const CurveFrame& frame);

Figure deviation_curve(const DeviationCurve& curve, const CurveFrame& frame);

}  // namespace fogsheet
