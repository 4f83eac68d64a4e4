// What a user would see is the same natively and as WebAssembly, to the last figure.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import path from "node:path";
import { it } from "node:test";
import { nativeBuild, webBuild } from "./calculator.mjs";

it("native and WebAssembly print the same figures", (t) => {
  const options = { encoding: "utf8", maxBuffer: 1 << 28 };
  const native = execFileSync(path.join(nativeBuild, "tests/figures"), [], options).split("\n");
  const web = execFileSync(process.execPath, [path.join(webBuild, "tests/figures.js")], options).split("\n");
  t.diagnostic(`${native.length - 1} lines, ${native.join("").length} characters`);
  assert.ok(native.length > 10_000);
  assert.equal(web.length, native.length);
  const different = native.findIndex((line, i) => line !== web[i]);
  assert.equal(different, -1, `line ${different}:\n${native[different]}\n${web[different]}`);
});
