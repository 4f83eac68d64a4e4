// Core, as WebAssembly, for node: the functions of calculator.cpp with their results as objects.
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";
import path from "node:path";

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
export const webBuild = path.join(root, process.env.FOGSHEET_WEB_BUILD ?? "build/wasm");
export const nativeBuild = path.join(root, process.env.FOGSHEET_NATIVE_BUILD ?? "build/native");

export async function loadCalculator() {
  const create = createRequire(import.meta.url)(path.join(webBuild, "tests/core_calculator.js"));
  const module = await create();
  const at = module._results() / Float64Array.BYTES_PER_ELEMENT;
  const result = (i) => module.HEAPF64[at + i];
  return {
    geodesicBetween(lat1, lon1, lat2, lon2) {
      module._geodesic_between(lat1, lon1, lat2, lon2);
      return { departureDeg: result(0), arrivalDeg: result(1), metres: result(2) };
    },
    geodesicOnwards(lat1, lon1, azimuth, metres) {
      module._geodesic_onwards(lat1, lon1, azimuth, metres);
      return { latDeg: result(0), lonDeg: result(1), arrivalDeg: result(2) };
    },
    rhumbBetween(lat1, lon1, lat2, lon2) {
      module._rhumb_between(lat1, lon1, lat2, lon2);
      return { courseDeg: result(0), nm: result(1) };
    },
    rhumbOnwards(lat1, lon1, course, nm) {
      return module._rhumb_onwards(lat1, lon1, course, nm) ? { latDeg: result(0), lonDeg: result(1) } : null;
    },
    fieldAt(lat, lon, year) {
      return module._field_at(lat, lon, year) ? { declinationDeg: result(0), horizontalNt: result(1) } : null;
    },
    declination: (lat, lon, year) => module._declination_at(lat, lon, year),
  };
}

// Differences of angles, [-180, 180).
export const apart = (a, b) => ((((a - b + 180) % 360) + 360) % 360) - 180;

// The same numbers from the same seed on every machine (splitmix64).
export class Seeded {
  #state;

  constructor(seed) {
    this.#state = BigInt(seed);
  }

  between(least, most) {
    this.#state = (this.#state + 0x9e3779b97f4a7c15n) & 0xffffffffffffffffn;
    let z = this.#state;
    z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & 0xffffffffffffffffn;
    z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & 0xffffffffffffffffn;
    z ^= z >> 31n;
    return least + (Number(z >> 11n) / 2 ** 53) * (most - least);
  }

  // Even over the sphere's latitudes as sheets use them, not over its area.
  place(mostLatDeg) {
    return [this.between(-mostLatDeg, mostLatDeg), this.between(-180, 180)];
  }
}
