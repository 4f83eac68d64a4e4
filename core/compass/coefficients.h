// The five coefficients of a boat's deviation: deviation = A + B sin z + C cos z + D sin 2z + E cos 2z, z the heading by
// compass. A is constant; B and C are semicircular (permanent magnetism and vertical soft iron, fore and aft and athwart); D and
// E are quadrantal (horizontal soft iron).
// Source: Handbook of Magnetic Compass Adjustment (NGA 2004, formerly Pub. 226), chapter V.
#pragma once

#include <array>
#include <cstddef>

#include "core/directions/directions.h"

namespace fogsheet {

enum class Coefficient { a, b, c, d, e };
inline constexpr std::size_t k_coefficient_count = 5;
inline constexpr std::array<Coefficient, k_coefficient_count> k_coefficients = {Coefficient::a, Coefficient::b, Coefficient::c, Coefficient::d, Coefficient::e};

/// One number for each coefficient: values in degrees, east positive, or what goes with them.
using ByCoefficient = std::array<double, k_coefficient_count>;

inline double& of(ByCoefficient& values, Coefficient which) { return values[static_cast<std::size_t>(which)]; }
inline double of(const ByCoefficient& values, Coefficient which) { return values[static_cast<std::size_t>(which)]; }

/// 1, sin z, cos z, sin 2z, cos 2z: what each coefficient is multiplied by on a heading.
ByCoefficient coefficient_factors(CompassDirection heading);

/// @param coefficients_deg A to E, deg.
Deviation deviation_by(const ByCoefficient& coefficients_deg, CompassDirection heading);

/// How steep that curve is, deg a deg: the derivative of deviation_by.
double deviation_slope(const ByCoefficient& coefficients_deg, CompassDirection heading);

/// The books' hand method: from the deviations (deg) on N, NE, E, SE, S, SW, W, NW by compass. A is their mean, B half the
/// difference E - W, C half N - S, D a quarter of NE + SW - SE - NW, E a quarter of N + S - E - W.
ByCoefficient coefficients_by_hand(const std::array<double, 8>& deviations_deg);

}  // namespace fogsheet
