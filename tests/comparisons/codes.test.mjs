// QR codes of seeded links, read by another program's decoder (jsqr) from pictures with the quiet zone that the standard asks for.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

import read_code from 'jsqr';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const most_bytes = 858;  // ISO/IEC 18004:2015, table 7: version 20, level L
const quiet_zone = 4;
const px = 3;

function picture(side, modules) {
  const all = (side + 2 * quiet_zone) * px;
  const pixels = new Uint8ClampedArray(all * all * 4).fill(255);
  for (let y = 0; y < all; y += 1) {
    for (let x = 0; x < all; x += 1) {
      const [column, row] = [Math.floor(x / px) - quiet_zone, Math.floor(y / px) - quiet_zone];
      const dark = column >= 0 && row >= 0 && column < side && row < side && modules[row * side + column] === '1';
      if (dark) pixels.fill(0, (y * all + x) * 4, (y * all + x) * 4 + 3);
    }
  }
  return [pixels, all, all];
}

test('links come back out of their codes, up to the length that is stated', () => {
  const lines = execFileSync(path.join(root, 'build/native/tests/coded'), { encoding: 'utf8', maxBuffer: 1 << 26 }).trim().split('\n').map((line) => line.split(' '));
  let read = 0;
  for (const [link, side, modules] of lines) {
    assert.equal(Number(side) > 0, link.length <= most_bytes, `${link.length} characters`);
    if (!modules) continue;
    assert.equal(read_code(...picture(Number(side), modules))?.data, link);
    read += 1;
  }
  assert.ok(read > 20 && read < lines.length, `${read} of ${lines.length}`);
});
