// A full sheet with a long past: what a commit takes as wasm, what ten thousand steps weigh, and what it takes to open the
// sheet with its past beside opening it without; in core, and as a page. Times are printed with their aims; only the weight,
// which nothing else on the machine changes, is asserted.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { chromium } from 'playwright-core';
import { serve } from '../../web/serve.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const median = (list) => [...list].sort((a, b) => a - b)[list.length >> 1];

test('ten thousand steps of ten thousand marks, as wasm', () => {
  const told = execFileSync('node', [path.join(root, 'build/wasm/tests/history_bench.js')], { encoding: 'utf8' });
  console.log(told.trim());
  const number = (what) => Number(new RegExp(`^${what}: ([\\d.]+)`, 'm').exec(told)[1]);
  console.log(`aims: commit 2 ms (${number('commit, with its record')}), opened with its past 3 times (${number('with its past beside without')})`);
  assert.ok(number('heap of 10000 steps') <= 100);
});

test('a page that opens a sheet of ten thousand marks with ten thousand steps, beside one without', async () => {
  const site = await serve(path.join(root, 'build/site'));
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', chromiumSandbox: false });
  const times = {};
  const pages = {};
  let text = '';
  for (const name of ['with', 'without']) {
    const context = await browser.newContext({ viewport: { width: 1180, height: 820 }, serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.addInitScript(() => addEventListener('DOMContentLoaded', () => window.fogsheet.ready.then(() => { window.ready_ms = performance.now(); })));
    await page.goto(site.url);
    await page.evaluate(() => window.fogsheet.ready);
    text = await page.evaluate(async (made) => {
      const { command, link, read } = window.fogsheet;
      if (made) command('open-text', { text: made });  // from its text it has no past
      else command('new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 200000, paper: 'A3-across' });
      for (let i = 0; i < 10000 && !made; i += 1) command('add-mark', { name: `Mark ${i}`, lat_deg: 44 + (i % 100) * 1e-3, lon_deg: -31 + Math.floor(i / 100) * 1e-3 });
      while (read().history.kept.state !== 'kept') await new Promise((turn) => { setTimeout(turn, 50); });
      return link();
    }, text);
    await page.waitForTimeout(4000);  // its journal is taken up
    pages[name] = page;
    times[name] = [];
  }
  for (let start = 0; start < 7; start += 1)
    for (const [name, page] of Object.entries(pages)) {
      await page.reload();
      times[name].push(await (await page.waitForFunction(() => window.ready_ms, null, { timeout: 60_000 })).jsonValue());
      assert.equal(await page.evaluate(() => window.fogsheet.read().history.last_step), name === 'with' ? 10000 : 0);
    }
  console.log(`page ready: without a past ${median(times.without).toFixed(0)} ms, with it ${median(times.with).toFixed(0)} ms: ${(median(times.with) / median(times.without)).toFixed(2)} times (aim 3)`);
  await browser.close();
  await site.close();
});
