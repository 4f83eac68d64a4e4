// The rhumb course by another path than the product's: WGS84 isometric latitudes in closed form, nothing of core.
const flattening = 1 / 298.257223563;  // WGS84, NGA.STND.0036
const e = Math.sqrt(flattening * (2 - flattening));
const radians = (deg) => (deg * Math.PI) / 180;

const isometric = (lat_deg) => {
  const sine = Math.sin(radians(lat_deg));
  return Math.atanh(sine) - e * Math.atanh(e * sine);
};

/// Course of the rhumb line between two {lat_deg, lon_deg}, degrees true in [0, 360).
export function rhumb_course_deg(from, to) {
  const east = radians(((to.lon_deg - from.lon_deg + 540) % 360) - 180);
  const north = isometric(to.lat_deg) - isometric(from.lat_deg);
  return ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360;
}

/// Smallest difference of two directions, degrees.
export const apart_deg = (a, b) => Math.abs(((a - b + 540) % 360) - 180);
