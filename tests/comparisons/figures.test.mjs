// What a user would see is the same natively and as WebAssembly, to the last figure.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { closeSync, mkdtempSync, openSync, readFileSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { it } from "node:test";
import { nativeBuild, webBuild } from "./calculator.mjs";

// What a program prints, by way of a file: a pipe that is read late loses what a WebAssembly program writes to it.
function printed(program, args) {
  const folder = mkdtempSync(path.join(os.tmpdir(), "figures-"));
  try {
    const file = path.join(folder, "printed.txt");
    const out = openSync(file, "w");
    execFileSync(program, args, { stdio: ["ignore", out, "inherit"] });
    closeSync(out);
    return readFileSync(file, "utf8").split("\n");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

it("native and WebAssembly print the same figures", (t) => {
  const native = printed(path.join(nativeBuild, "tests/figures"), []);
  const web = printed(process.execPath, [path.join(webBuild, "tests/figures.js")]);
  t.diagnostic(`${native.length - 1} lines, ${native.join("").length} characters`);
  assert.ok(native.length > 10_000);
  assert.equal(web.length, native.length);
  const different = native.findIndex((line, i) => line !== web[i]);
  assert.equal(different, -1, `line ${different}:\n${native[different]}\n${web[different]}`);
});
