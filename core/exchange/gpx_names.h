// What our own GPX has in its extensions: what a mark is made of that GPX has no element for.
#pragma once

#include <string_view>

namespace fogsheet {

inline constexpr std::string_view k_extension_space = "urn:fogsheet:gpx:1";
inline constexpr std::string_view k_radius_element = "radius_nm";
inline constexpr std::string_view k_height_element = "height_m";

}  // namespace fogsheet
