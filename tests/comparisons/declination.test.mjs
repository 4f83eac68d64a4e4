// Declination beside two other programs of the World Magnetic Model 2025, the npm packages geomagnetism and magvar, over
// 10 000 seeded points where a compass works: to 0.012 degrees, and what of that is their rounding.
import assert from "node:assert/strict";
import { createRequire } from "node:module";
import { describe, it } from "node:test";
import { apart, loadCalculator, Seeded } from "./calculator.mjs";

const require = createRequire(import.meta.url);
const geomagnetism = require("geomagnetism");
const { calculateMagneticField } = require("magvar");
const calculator = await loadCalculator();

const seed = 2025;
const pointCount = 10_000;
const mostLatDeg = 75;
const leastHorizontalNt = 2000;
const millisecondsPerDay = 86_400_000;

// Days from 2025.0 to 2029.8; geomagnetism takes dates, and its decimal year is days / 365 in leap years too, so the
// same year is given to all three and only the synthesis is compared.
function seededPoints() {
  const random = new Seeded(seed);
  const points = [];
  while (points.length < pointCount) {
    const [lat, lon] = random.place(mostLatDeg);
    const date = new Date(Date.UTC(2025, 0, 1) + Math.floor(random.between(0, 4.8 * 365.25)) * millisecondsPerDay);
    const startOfYear = Date.UTC(date.getUTCFullYear(), 0, 1);
    const year = date.getUTCFullYear() + (date - startOfYear) / (365 * millisecondsPerDay);
    const field = calculator.fieldAt(lat, lon, year);
    if (field.horizontalNt >= leastHorizontalNt) points.push({ lat, lon, date, year, declinationDeg: field.declinationDeg });
  }
  return points;
}

describe(`declination at ${pointCount} points of seed ${seed}`, () => {
  const points = seededPoints();

  it("agrees with geomagnetism to 0.012 degrees", (t) => {
    let worst = 0;
    for (const { lat, lon, date, declinationDeg } of points) {
      const theirs = geomagnetism.model(date).point([lat, lon]).decl;
      worst = Math.max(worst, Math.abs(apart(declinationDeg, theirs)));
    }
    t.diagnostic(`largest difference ${worst.toExponential(2)} deg`);
    assert.ok(worst <= 0.012);
  });

  it("agrees with magvar to 0.012 degrees, nearly all of it its two decimals", (t) => {
    let worst = 0;
    let worstBeyondRounding = 0;
    for (const { lat, lon, year, declinationDeg } of points) {
      const theirs = calculateMagneticField(year, lat, lon).declination;
      const off = Math.abs(apart(declinationDeg, theirs));
      worst = Math.max(worst, off);
      worstBeyondRounding = Math.max(worstBeyondRounding, off - 0.005);
    }
    t.diagnostic(`largest difference ${worst.toFixed(6)} deg; beyond half of their last digit ${worstBeyondRounding.toExponential(2)} deg`);
    assert.ok(worst <= 0.012);
  });
});
