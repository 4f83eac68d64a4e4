// The rhumb line on WGS84 by another road than the product's, which uses GeographicLib: closed formulas for the isometric
// latitude, and the meridian's length by Simpson's rule. Source: Snyder (1987), Map Projections: A Working Manual, USGS
// Professional Paper 1395, formulas 7-7 and 3-20; WGS84's axis and flattening from NGA.STND.0036.
const semi_major_m = 6378137;
const flattening = 1 / 298.257223563;
const eccentricity_2 = flattening * (2 - flattening);
const eccentricity = Math.sqrt(eccentricity_2);
const metres_a_mile = 1852;

const radians = (deg) => deg * Math.PI / 180;
const degrees = (rad) => rad * 180 / Math.PI;

/// The difference of two directions, degrees in [-180, 180).
export const turn_deg = (from_deg, to_deg) => ((to_deg - from_deg + 180) % 360 + 360) % 360 - 180;

function isometric_latitude(lat) {
  return Math.asinh(Math.tan(lat)) - eccentricity * Math.atanh(eccentricity * Math.sin(lat));
}

const meridian_radius_m = (lat) => semi_major_m * (1 - eccentricity_2) / (1 - eccentricity_2 * Math.sin(lat) ** 2) ** 1.5;

function meridian_arc_m(from, to) {
  const steps = 200;
  const step = (to - from) / steps;
  let sum = meridian_radius_m(from) + meridian_radius_m(to);
  for (let i = 1; i < steps; i += 1) sum += meridian_radius_m(from + i * step) * (i % 2 === 1 ? 4 : 2);
  return sum * step / 3;
}

/// @param from, to  {lat_deg, lon_deg}
/// @return {course_deg, distance_nm}; the way round that crosses fewer degrees of longitude
export function rhumb(from, to) {
  const [from_lat, to_lat] = [radians(from.lat_deg), radians(to.lat_deg)];
  const east = radians(turn_deg(from.lon_deg, to.lon_deg));
  const north = isometric_latitude(to_lat) - isometric_latitude(from_lat);
  const course = Math.atan2(east, north);
  const along_parallel_m = semi_major_m * Math.cos(from_lat) / Math.sqrt(1 - eccentricity_2 * Math.sin(from_lat) ** 2) * Math.abs(east);
  const distance_m = Math.abs(to_lat - from_lat) < 1e-12 ? along_parallel_m : meridian_arc_m(from_lat, to_lat) / Math.cos(course);
  return { course_deg: (degrees(course) + 360) % 360, distance_nm: Math.abs(distance_m) / metres_a_mile };
}
