// Geodesics and rhumb lines beside other programs: GeodSolve and RhumbSolve of Debian's geographiclib-tools on seeded
// lines, and the test cases that the npm package geographiclib-geodesic brings along.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, it } from "node:test";
import vm from "node:vm";
import { apart, loadCalculator, root, Seeded } from "./calculator.mjs";

const calculator = await loadCalculator();
const seed = 20261125;
const lineCount = 10_000;

// A quarter long, a quarter within some miles, a quarter nearly east or west, a quarter nearly antipodal or over 180.
function seededLines(mostLatDeg) {
  const random = new Seeded(seed);
  return Array.from({ length: lineCount }, (_, i) => {
    const [lat1, lon1] = random.place(mostLatDeg);
    const clamp = (lat) => Math.max(-mostLatDeg, Math.min(mostLatDeg, lat));
    const [lat2, lon2] = [
      () => random.place(mostLatDeg),
      () => [clamp(lat1 + random.between(-0.2, 0.2)), lon1 + random.between(-0.2, 0.2)],
      () => [clamp(lat1 + random.between(-1e-3, 1e-3)), random.between(-180, 180)],
      () => [clamp(-lat1 + random.between(-2, 2)), lon1 + 180 + random.between(-2, 2)],
    ][i % 4]();
    return [lat1, lon1, lat2, lon2];
  });
}

function solve(program, options, lines) {
  const input = lines.map((line) => line.join(" ")).join("\n") + "\n";
  const output = execFileSync(program, options, { input, encoding: "utf8", maxBuffer: 1 << 26 });
  return output.trim().split("\n").map((line) => line.split(/\s+/).map(Number));
}

// The most of each difference over all lines, printed: what is asserted has room, what is printed is what was found.
class Worst {
  #worst = {};

  note(name, difference) {
    this.#worst[name] = Math.max(this.#worst[name] ?? 0, Math.abs(difference));
  }

  report(t) {
    for (const [name, value] of Object.entries(this.#worst)) t.diagnostic(`largest difference, ${name}: ${value.toExponential(2)}`);
    return this.#worst;
  }
}

const metresPerDegree = 111_320;

describe(`${lineCount} lines of seed ${seed}`, () => {
  it("geodesics agree with GeodSolve to its 15 nanometres", (t) => {
    const lines = seededLines(90);
    const expected = solve("GeodSolve", ["-i", "-p", "9"], lines);
    const worst = new Worst();
    lines.forEach((line, i) => {
      const [azi1, azi2, metres] = expected[i];
      const got = calculator.geodesicBetween(...line);
      worst.note("length (m)", got.metres - metres);
      const azimuthOff = Math.max(Math.abs(apart(got.departureDeg, azi1)), Math.abs(apart(got.arrivalDeg, azi2)));
      // The angle of a short line says little, and that of a line to nearly the antipodes hangs on the last digits of the
      // input: the one is taken as what it comes to sideways at the other end, the other as it is.
      if (metres > 1.9e7) worst.note("azimuth of near antipodes (deg)", azimuthOff);
      else worst.note("azimuth, sideways (m)", (azimuthOff * Math.PI / 180) * Math.min(metres, 6.4e6));
    });
    const found = worst.report(t);
    assert.ok(found["length (m)"] <= 30e-9);
    assert.ok(found["azimuth, sideways (m)"] <= 100e-9);
    assert.ok(found["azimuth of near antipodes (deg)"] <= 1e-9);
  });

  it("geodesics onwards agree with GeodSolve", (t) => {
    const random = new Seeded(seed + 1);
    const lines = Array.from({ length: lineCount }, () => [...random.place(90), random.between(0, 360), random.between(0, 2e7)]);
    const expected = solve("GeodSolve", ["-p", "9"], lines);
    const worst = new Worst();
    lines.forEach((line, i) => {
      const [lat2, lon2, azi2] = expected[i];
      const got = calculator.geodesicOnwards(...line);
      worst.note("latitude (deg)", got.latDeg - lat2);
      worst.note("longitude, as arc (deg)", apart(got.lonDeg, lon2) * Math.cos((lat2 * Math.PI) / 180));
      worst.note("azimuth, turned with the longitude (deg)", apart(apart(got.arrivalDeg, azi2), apart(got.lonDeg, lon2) * Math.sin((lat2 * Math.PI) / 180)));
    });
    const found = worst.report(t);
    for (const difference of Object.values(found)) assert.ok(difference * metresPerDegree <= 100e-9);
  });

  it("rhumb lines agree with RhumbSolve's exact formulas", (t) => {
    const lines = seededLines(75);
    const expected = solve("RhumbSolve", ["-i", "-p", "9"], lines);
    const worst = new Worst();
    lines.forEach((line, i) => {
      const [course, metres] = expected[i];
      const got = calculator.rhumbBetween(...line);
      const opposite = Math.abs(Math.abs(apart(line[1], line[3])) - 180) < 1e-9;  // which way round is a choice
      if (opposite) return;
      worst.note("length (m)", got.nm * 1852 - metres);
      worst.note("course (deg)", apart(got.courseDeg, course) * Math.min(1, metres / 1000));
    });
    const found = worst.report(t);
    assert.ok(found["length (m)"] <= 1e-6);
    assert.ok(found["course (deg)"] <= 1e-10);
  });

  it("rhumb lines onwards agree with RhumbSolve", (t) => {
    const random = new Seeded(seed + 2);
    const lines = Array.from({ length: lineCount }, () => [...random.place(75), random.between(0, 360), random.between(0, 1e7)]);
    const expected = solve("RhumbSolve", ["-p", "9"], lines);
    const worst = new Worst();
    let pastPole = 0;
    lines.forEach((line, i) => {
      const [lat2, lon2] = expected[i];
      const got = calculator.rhumbOnwards(line[0], line[1], line[2], line[3] / 1852);
      if (got === null) {
        assert.ok(Number.isNaN(lon2), `line ${line} ends before a pole`);
        pastPole += 1;
        return;
      }
      worst.note("latitude (deg)", got.latDeg - lat2);
      // Near a pole the longitude of a rhumb line runs round ever faster.
      if (Math.abs(lat2) < 85) worst.note("longitude (deg)", apart(got.lonDeg, lon2));
    });
    t.diagnostic(`${pastPole} lines end at a pole in both`);
    const found = worst.report(t);
    assert.ok(found["latitude (deg)"] <= 1e-11);
    assert.ok(found["longitude (deg)"] <= 1e-10);
  });
});

describe("the cases of geographiclib-geodesic", () => {
  // Its test files run as they are, on the package itself, but with what WGS84 gives for azimuths, lengths and positions
  // replaced by core's. What core does not compute (areas, reduced lengths, other ellipsoids) stays the package's own.
  const folder = path.join(root, "tests/node_modules/geographiclib-geodesic");
  const require = createRequire(path.join(folder, "test/geodesictest.js"));
  const library = require("../geographiclib-geodesic");
  const wgs84 = library.Geodesic.WGS84;
  let replaced = 0;

  const inverse = wgs84.Inverse.bind(wgs84);
  wgs84.Inverse = (lat1, lon1, lat2, lon2, mask) => {
    const answer = inverse(lat1, lon1, lat2, lon2, mask);
    if (![lat1, lon1, lat2, lon2].every(Number.isFinite) || Math.abs(lat1) > 90 || Math.abs(lat2) > 90) return answer;
    const ours = calculator.geodesicBetween(lat1, lon1, lat2, lon2);
    if (answer.s12 !== undefined) answer.s12 = ours.metres;
    if (answer.azi1 !== undefined) {
      answer.azi1 = signed(ours.departureDeg, answer.azi1);
      answer.azi2 = signed(ours.arrivalDeg, answer.azi2);
    }
    replaced += 1;
    return answer;
  };

  const direct = wgs84.Direct.bind(wgs84);
  wgs84.Direct = (lat1, lon1, azi1, s12, mask) => {
    const answer = direct(lat1, lon1, azi1, s12, mask);
    if (![lat1, lon1, azi1, s12].every(Number.isFinite)) return answer;
    const ours = calculator.geodesicOnwards(lat1, lon1, azi1, s12);
    if (answer.lat2 !== undefined) answer.lat2 = ours.latDeg;
    // Unrolled longitudes keep their turns.
    if (answer.lon2 !== undefined) answer.lon2 = ours.lonDeg + 360 * Math.round((answer.lon2 - ours.lonDeg) / 360);
    if (answer.azi2 !== undefined) answer.azi2 = signed(ours.arrivalDeg, answer.azi2);
    replaced += 1;
    return answer;
  };

  // Core's azimuths are [0, 360); the package's are signed, and at the seam it chooses the sign of 0 and 180.
  function signed(deg, like) {
    const azimuth = deg > 180 ? deg - 360 : deg;
    const atSeam = azimuth === 0 || azimuth === 180;
    return atSeam && Math.abs(like) === azimuth ? like : azimuth;
  }

  const assertions = { assert: require("assert") };
  const script = readFileSync(path.join(folder, "test/geodesictest.js"), "utf8");
  vm.runInThisContext(`(function (require, describe, it) { ${script}\n})`)(
    (name) => (name === "assert" ? assertions.assert : library), describe, it);

  it("went through core", (t) => {
    t.diagnostic(`${replaced} answers were core's`);
    assert.ok(replaced >= 80);
  });
});
