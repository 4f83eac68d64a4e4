// The official coefficients of both magnetic models, embedded at build time from assets/magnetic.
#pragma once

#include "core/earth/geodesy.h"

namespace fogsheet {

inline constexpr double k_magnetic_radius_m = 6'371'200.0;  // reference radius of both models
inline constexpr double k_wmm2025_epoch = 2025.0;
inline constexpr double k_igrf14_first_epoch = 1900.0;
inline constexpr double k_igrf14_epoch_years = 5.0;
inline constexpr int k_igrf14_epochs = 26;  // 1900.0, 1905.0 ... 2025.0

/// Main field at 2025.0, nT, degree 12; and its change, nT a year.
HarmonicTable wmm2025_main();
HarmonicTable wmm2025_change();

/// Main field at an epoch, nT, degree 13 (10 before 2000.0). @param epoch 0 to 25.
HarmonicTable igrf14_main(int epoch);

/// Change from 2025.0 to 2030.0, nT a year, degree 8.
HarmonicTable igrf14_change();

}  // namespace fogsheet
