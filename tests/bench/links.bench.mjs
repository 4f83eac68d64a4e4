// Length of links beside the least there is to tell (link_routes.h) and beside what the same marks take as GPX, gzipped, in
// base64url. Lengths are those of the text after the page's own address. Means of twenty seeded routes; aims are printed, nothing fails.
import { execFileSync } from "node:child_process";
import path from "node:path";
import { it } from "node:test";
import { gzipSync } from "node:zlib";
import { webBuild } from "../comparisons/calculator.mjs";

function* routes(printed) {
  for (let at = 0; at < printed.length;) {
    const end = printed.indexOf(10, at);
    const [marks, characters, least, gpx_bytes] = printed.subarray(at, end).toString().split(" ").map(Number);
    at = end + 1 + gpx_bytes;
    yield { marks, characters, least, packed_gpx: gzipSync(printed.subarray(end + 1, at), { level: 9 }).toString("base64url").length };
  }
}

const mean = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;

it("links of seeded routes", (t) => {
  const all = [...routes(execFileSync(process.execPath, [path.join(webBuild, "tests/link_bench.js")], { maxBuffer: 1 << 26 }))];
  for (const marks of new Set(all.map((route) => route.marks))) {
    const some = all.filter((route) => route.marks === marks);
    const of_least = some.map((route) => route.characters / route.least);
    const of_gpx = mean(some.map((route) => route.characters / route.packed_gpx));
    t.diagnostic(`${marks} marks: ${mean(some.map((route) => route.characters)).toFixed(0)} characters, ${mean(of_least).toFixed(2)} of the least (aim 1.8, longest ${Math.max(...of_least).toFixed(2)}), ${of_gpx.toFixed(2)} of packed GPX (aim 0.55)`);
  }
});
