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

/// A page in a context of its own, with what it takes to measure there.
async function page_on(browser, site) {
  const context = await browser.newContext({ viewport: { width: 1180, height: 820 }, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.addInitScript(() => addEventListener('DOMContentLoaded', () => window.fogsheet.ready.then(() => { window.ready_ms = performance.now(); })));
  await page.goto(site.url);
  await page.evaluate(() => window.fogsheet.ready);
  return page;
}

const all_kept = (page) => page.evaluate(async () => {
  while (window.fogsheet.read().history.kept.state !== 'kept') await new Promise((turn) => { setTimeout(turn, 20); });
});

test('from a commit to the store that has it', async () => {
  const site = await serve(path.join(root, 'build/site'));
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', chromiumSandbox: false });
  const page = await page_on(browser, site);
  const times = await page.evaluate(async () => {
    const { command, read } = window.fogsheet;
    command('new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' });
    const turn = () => new Promise((done) => { const { port1, port2 } = new MessageChannel(); port1.onmessage = done; port2.postMessage(0); });
    const taken = [];
    for (let i = 0; i < 200; i += 1) {
      const begin = performance.now();
      command('add-mark', { name: `Mark ${i}`, lat_deg: 44 + (i % 20) * 1e-3, lon_deg: -31 + Math.floor(i / 20) * 1e-3 });
      while (read().history.kept.step !== i + 1) await turn();
      taken.push(performance.now() - begin);
    }
    return taken;
  });
  const sorted = [...times].sort((a, b) => a - b);
  console.log(`commit to durable in Chromium: median ${median(times).toFixed(1)} ms, 19 in 20 under ${sorted[Math.floor(sorted.length * 0.95)].toFixed(1)} ms, most ${sorted.at(-1).toFixed(1)} ms, of ${times.length}`);
  assert.equal(times.length, 200);
  await browser.close();
  await site.close();
});

test('a drawer of a thousand sheets, beside one of ten', async () => {
  const site = await serve(path.join(root, 'build/site'));
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', chromiumSandbox: false });
  const counts = [10, 1000];
  const pages = [];
  const listed = counts.map(() => []), found = counts.map(() => []), ready = counts.map(() => []);
  for (const count of counts) {
    const page = await page_on(browser, site);
    await page.evaluate((sheets) => {
      const { command } = window.fogsheet;
      command('new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across', name: 'Gull' });
      const ids = Array.from({ length: 12 }, (_, i) => command('add-mark', { name: `Gull Rock ${i}`, lat_deg: 43.95 + i * 8e-3, lon_deg: -31 + (i % 3) * 0.02 }).id);
      for (let i = 1; i < ids.length; i += 1) command('add-leg', { from: ids[i - 1], to: ids[i] });
      for (let i = 2; i < sheets; i += 1) command('copy-sheet');
    }, count);
    await all_kept(page);
    pages.push(page);
  }
  const timed = (page, act) => page.evaluate(async (what) => {
    const { command } = window.fogsheet;
    command('close-slip');
    await new Promise((done) => { requestAnimationFrame(() => requestAnimationFrame(done)); });
    if (what === 'find') command('open-slip', { slip: 'drawer' });
    const begin = performance.now();
    if (what === 'find') command('search-drawer', { text: 'rock gull' });
    else command('open-slip', { slip: 'drawer' });
    document.querySelector('[data-name=sheets]').getBoundingClientRect();  // laid out
    return performance.now() - begin;
  }, act);
  for (let round = 0; round < 15; round += 1)
    for (const [i, page] of pages.entries()) {
      listed[i].push(await timed(page, 'list'));
      found[i].push(await timed(page, 'find'));
    }
  for (let round = 0; round < 5; round += 1)
    for (const [i, page] of pages.entries()) {
      await page.reload();
      ready[i].push(await (await page.waitForFunction(() => window.ready_ms, null, { timeout: 60_000 })).jsonValue());
    }
  const told = (times) => `${median(times[0]).toFixed(1)} ms of 10, ${median(times[1]).toFixed(1)} ms of 1000: ${(median(times[1]) / median(times[0])).toFixed(2)} times`;
  console.log(`listed: ${told(listed)} (aim 3)\nsearched: ${told(found)}\npage ready: ${told(ready)}`);
  assert.ok(median(listed[1]) < 3 * median(listed[0]), 'listed in under three times the time');
  await browser.close();
  await site.close();
});
