// Units of the trade and what they are in the international system.
#pragma once

#include <optional>
#include <string_view>

namespace fogsheet {

inline constexpr double k_metres_per_nm = 1852.0;    // international nautical mile, Monaco 1929; exact
inline constexpr double k_metres_per_foot = 0.3048;  // agreement of 1959; exact
inline constexpr double k_metres_per_cable = k_metres_per_nm / 10;
inline constexpr double k_metres_per_second_per_knot = k_metres_per_nm / 3600;

inline constexpr double k_pi = 3.14159265358979323846;
inline constexpr double k_degree_rad = k_pi / 180;

/// One of `unit`, in the unit `in`; empty for names unknown here or units of different kinds. Names are those of the
/// SI Brochure and common usage, in full or as symbols: "nautical mile", "nm", "cable (US customary)", "kn", "m/s".
std::optional<double> unit_in(std::string_view unit, std::string_view in);

}  // namespace fogsheet
