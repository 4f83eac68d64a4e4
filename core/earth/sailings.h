// The sailings as the books do them: a minute of latitude is a mile, the earth a sphere but for the meridional parts. For
// practice and as a check beside the ellipsoidal truth of rhumb.h, from which they differ by up to half a percent.
// Source of all: Bowditch, The American Practical Navigator (NGA Pub. 9), chapter The Sailings.
#pragma once

#include <span>

#include "core/base/result.h"
#include "core/directions/directions.h"
#include "core/positions/position.h"

namespace fogsheet {

/// North and east positive.
struct PlaneRun {
  double dlat_arcmin = 0;   // difference of latitude: minutes, which are miles
  double departure_nm = 0;  // miles made to the east
};

struct CourseDistance {
  TrueDirection course;
  double distance_nm = 0;
};

/// dlat = distance x cos course, departure = distance x sin course.
PlaneRun plane_run(CourseDistance leg);

/// The same backwards. No run: distance 0, course 0.
CourseDistance plane_course(PlaneRun run);

/// Distance along a course that changes the latitude by that much: dlat / cos course. Faults: course_never_there where
/// the course has no part along the meridian (within 1e-9 deg of east or west) or leads away from the second latitude.
Result<double> plane_distance_nm(double lat1_deg, double lat2_deg, TrueDirection course);

/// Sum of plane legs.
PlaneRun traverse(std::span<const CourseDistance> legs);

/// Parallel sailing: departure = difference of longitude x cos latitude. @param lat_deg in (-90, 90).
double parallel_departure_nm(double lat_deg, double dlon_arcmin);
double parallel_dlon_arcmin(double lat_deg, double departure_nm);

/// The latitude, north, at which that difference of longitude is that departure, deg. Faults: number_out_of_range when the
/// departure is the longer one, or there is no difference of longitude.
Result<double> parallel_latitude_deg(double departure_nm, double dlon_arcmin);

/// Difference of longitude, the short way, east positive; from opposite meridians eastward.
double dlon_arcmin(double lon1_deg, double lon2_deg);

/// Longitude arrived at, [-180, 180).
double parallel_longitude_deg(double lat_deg, double lon1_deg, double departure_nm);

/// Mid-latitude sailing: plane sailing with departure = dlon x cos(mean latitude). For both latitudes on one side of the
/// equator. Faults of the position: latitude_out_of_range past a pole.
Result<Position> mid_latitude_position(Position from, CourseDistance leg);
CourseDistance mid_latitude_course(Position from, Position to);

/// Mercator sailing: tan course = dlon / difference of meridional parts (WGS84); distance = dlat / cos course, and along a
/// parallel, where that says nothing, dlon x cos latitude. Faults of the position: latitude_out_of_range past a pole.
CourseDistance mercator_course(Position from, Position to);
Result<Position> mercator_position(Position from, CourseDistance leg);

}  // namespace fogsheet
