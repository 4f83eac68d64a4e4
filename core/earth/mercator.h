// The Mercator projection of the WGS84 ellipsoid, in its textbook quantities.
#pragma once

namespace fogsheet {

inline constexpr double k_wgs84_equatorial_radius_m = 6'378'137.0;
inline constexpr double k_wgs84_flattening = 1 / 298.257223563;

/// Isometric latitude, dimensionless (radians): artanh(sin lat) - e artanh(e sin lat). @param lat_deg in (-90, 90).
/// Source: Snyder, Map Projections, USGS PP 1395 (1987), eq. 3-1 in artanh form.
double isometric_latitude(double lat_deg);

/// The inverse, deg, to 1e-12 deg. @param psi any finite value.
double latitude_from_isometric_deg(double psi);

/// Meridional parts: isometric latitude in minutes of longitude. @param lat_deg in (-90, 90).
double meridional_parts_arcmin(double lat_deg);

/// Radius of the parallel, metres: N cos lat. A radian of longitude is this long at that latitude.
double parallel_radius_m(double lat_deg);

/// Radius of curvature of the meridian, metres: a(1 - e^2) / (1 - e^2 sin^2 lat)^(3/2).
double meridian_radius_m(double lat_deg);

/// Length of the meridian between two latitudes, metres, to a micrometre; negative southwards.
double meridian_arc_m(double from_lat_deg, double to_lat_deg);

/// Length of the minute of latitude (longitude) centred on that latitude, metres.
double latitude_minute_m(double lat_deg);
double longitude_minute_m(double lat_deg);

}  // namespace fogsheet
