// A track of 100 000 points read as wasm, beside one of 10 000 and beside the yardstick of the same run. Times are printed with
// their aims; that it stays in proportion to its length, give or take what else the machine does, is asserted with room.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const run = (name) => execFileSync('node', [path.join(root, `build/wasm/tests/${name}.js`)], { encoding: 'utf8' });

test('a track of 100 000 points', () => {
  const yardstick_ms = parseFloat(run('bench_yardstick'));
  const told = run('exchange_bench');
  console.log(told.trim());
  const ms = (points) => Number(new RegExp(`^${points} points: ([\\d.]+)`, 'm').exec(told)[1]);
  const ratio = ms(100000) / ms(10000);
  console.log(`${ratio.toFixed(1)} times as long as 10 000 points (aim 12), ${(ms(100000) / yardstick_ms).toFixed(1)} of the yardstick`);
  assert.ok(ratio < 30, 'the time grows faster than the track');
});
