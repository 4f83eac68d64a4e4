// Core as WebAssembly beside the same work done otherwise: declination beside two JavaScript packages, rhumb lines and
// legs beside the native build. Medians of interleaved runs; ratios above 1 mean that core is faster. Aims are printed, nothing fails.
import { execFileSync } from "node:child_process";
import { createRequire } from "node:module";
import path from "node:path";
import { it } from "node:test";
import { loadCalculator, root, Seeded, webBuild } from "../comparisons/calculator.mjs";

const require = createRequire(import.meta.url);
const geomagnetism = require("geomagnetism");
const { calculateMagneticField } = require("magvar");

const pointCount = 4000;
const roundCount = 15;
const releaseBuild = path.join(root, process.env.FOGSHEET_RELEASE_BUILD ?? "build/release");

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

// Microseconds a point, by name, each the median of interleaved rounds.
function time(contestants, points) {
  const taken = Object.fromEntries(Object.keys(contestants).map((name) => [name, []]));
  let sum = 0;  // so that no engine leaves the work out
  for (let round = 0; round < roundCount; round += 1) {
    for (const [name, declination] of Object.entries(contestants)) {
      const begin = performance.now();
      for (const point of points) sum += declination(point);
      taken[name].push(((performance.now() - begin) * 1000) / points.length);
    }
  }
  if (!Number.isFinite(sum)) throw new Error("a declination that is not a number");
  return Object.fromEntries(Object.entries(taken).map(([name, values]) => [name, median(values)]));
}

// `whole` is core with all parts of the field and their yearly change, which is more than the packages give; it is printed.
function report(t, title, { whole, ...times }, aim) {
  t.diagnostic(`${title}: ${Object.entries(times).map(([name, us]) => `${name} ${us.toFixed(2)} us`).join(", ")}; core's whole field ${whole.toFixed(2)} us`);
  for (const name of Object.keys(times).filter((other) => other !== "core")) {
    const ratio = times[name] / times.core;
    t.diagnostic(`  ${ratio.toFixed(2)} times as fast as ${name} (aim ${aim})${ratio < aim ? ": short of it" : ""}`);
  }
}

const calculator = await loadCalculator();
const random = new Seeded(7);
const points = Array.from({ length: pointCount }, () => {
  const [lat, lon] = random.place(75);
  const date = new Date(Date.UTC(2025, 0, 1) + random.between(0, 4.8 * 365.25) * 86_400_000);
  return { lat, lon, date, year: 2025 + (date - Date.UTC(2025, 0, 1)) / (365.25 * 86_400_000) };
});

it("magnetic model, a point at one date", (t) => {
  const date = new Date(Date.UTC(2027, 0, 1));
  const model = geomagnetism.model(date);
  report(t, "one date", time({
    core: ({ lat, lon }) => calculator.declination(lat, lon, 2027),
    whole: ({ lat, lon }) => calculator.fieldAt(lat, lon, 2027).declinationDeg,
    geomagnetism: ({ lat, lon }) => model.point([lat, lon]).decl,
    magvar: ({ lat, lon }) => calculateMagneticField(2027, lat, lon).declination,
  }, points), 1.5);
});

it("magnetic model, a point with a new date each", (t) => {
  report(t, "a new date each", time({
    core: ({ lat, lon, year }) => calculator.declination(lat, lon, year),
    whole: ({ lat, lon, year }) => calculator.fieldAt(lat, lon, year).declinationDeg,
    geomagnetism: ({ lat, lon, date }) => geomagnetism.model(date).point([lat, lon]).decl,
    magvar: ({ lat, lon, year }) => calculateMagneticField(year, lat, lon).declination,
  }, points), 4);
});

// What a native program and its WebAssembly print first: medians of seven interleaved runs.
function bothBuilds(program) {
  const runs = { native: [], web: [] };
  for (let round = 0; round < 7; round += 1) {
    runs.native.push(Number(execFileSync(path.join(releaseBuild, "tests", program), { encoding: "utf8" }).split(" ")[0]));
    runs.web.push(Number(execFileSync(process.execPath, [path.join(webBuild, `tests/${program}.js`)], { encoding: "utf8" }).split(" ")[0]));
  }
  return { native: median(runs.native), web: median(runs.web) };
}

it("rhumb inverse as WebAssembly and natively", (t) => {
  const { native, web } = bothBuilds("rhumb_bench");
  const ratio = native / web;
  t.diagnostic(`native ${native.toFixed(0)} ns, WebAssembly ${web.toFixed(0)} ns: ${ratio.toFixed(2)} of native speed (aim 0.6)${ratio < 0.6 ? ": short of it" : ""}`);
});

it("a thousand legs run through the streams", (t) => {
  const { native, web } = bothBuilds("passage_bench");
  t.diagnostic(`native ${native.toFixed(2)} ms, WebAssembly ${web.toFixed(2)} ms (aim 2)${web > 2 ? ": short of it" : ""}`);
});

it("a passage of a thousand legs planned anew after an edit", (t) => {
  const { native, web } = bothBuilds("plan_bench");
  t.diagnostic(`native ${native.toFixed(2)} ms, WebAssembly ${web.toFixed(2)} ms (aim 2)${web > 2 ? ": short of it" : ""}`);
});
