// The official coefficients of both magnetic models, embedded at build time from assets/magnetic.
#pragma once

#include "core/magnetic/harmonics.h"

namespace fogsheet {

inline constexpr double k_wmm2025_epoch = 2025.0;
inline constexpr double k_igrf14_first_epoch = 1900.0;
inline constexpr double k_igrf14_epoch_years = 5.0;
inline constexpr int k_igrf14_epochs = 26;  // 1900.0, 1905.0 ... 2025.0

/// Main field at 2025.0 and its change, degree 12.
HarmonicTable wmm2025();

/// Main field at an epoch, degree 13 (10 before 2000.0), and its change to the next one; after 2025.0 the model's own,
/// degree 8. @param epoch 0 to 25.
HarmonicTable igrf14(int epoch);

}  // namespace fogsheet
