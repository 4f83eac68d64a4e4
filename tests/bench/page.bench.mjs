// What the page weighs and how quick it is: printed in milliseconds and as ratios to a yardstick timed in the same run.
// A time is never asserted, since other work on the machine counts into it; the weight is, and that an idle page draws nothing.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

import { chromium } from 'playwright-core';
import { later } from '../../web/assemble.mjs';
import { serve } from '../../web/serve.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const site_folder = path.join(root, 'build/site');
const aims_kb = { first: 350, all: 450 };
const median = (list) => [...list].sort((a, b) => a - b)[list.length >> 1];
const yardstick_ms = parseFloat(execFileSync('node', [path.join(root, 'build/wasm/tests/bench_yardstick.js')], { encoding: 'utf8' }));
const say = (what, ms, more = '') => console.log(`${what}: ${ms.toFixed(2)} ms, ${(ms / yardstick_ms).toFixed(3)} of the yardstick ${more}`);

let browser;
before(async () => {
  browser = await chromium.launch({ executablePath: '/usr/bin/chromium', chromiumSandbox: false });
  console.log(`yardstick, a million std::sin as wasm: ${yardstick_ms.toFixed(2)} ms`);
});
after(() => browser?.close());

test('weight of the first use, and of all that offline use needs', () => {
  // The service worker's own list, and itself.
  const worker = fs.readFileSync(path.join(site_folder, 'sw.js'), 'utf8');
  const kept = JSON.parse(/const files = (\[[^\]]*\])/.exec(worker)[1]).map((name) => (name === './' ? 'index.html' : name));
  const weigh = (names) => names.map((name) => gzipSync(fs.readFileSync(path.join(site_folder, name)), { level: 9 }).length).reduce((a, b) => a + b) / 1000;
  const first_kb = weigh([...kept.filter((name) => !later.includes(path.basename(name))), 'sw.js']), all_kb = weigh([...kept, 'sw.js']);
  console.log(`gzip -9: ${first_kb.toFixed(1)} kB for the first use (aim ${aims_kb.first}), ${all_kb.toFixed(1)} kB in all (aim ${aims_kb.all})`);
  assert.ok(first_kb <= aims_kb.first && all_kb <= aims_kb.all);
});

/// The same page with the same module and fonts, which does no more than clear one frame.
function bare_site() {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'bare-site-'));
  fs.cpSync(site_folder, folder, { recursive: true });
  const version = fs.readdirSync(folder).find((name) => fs.existsSync(path.join(folder, name, 'boot.js')));
  fs.writeFileSync(path.join(folder, version, 'boot.js'), `
    const bytes_of = async (file) => (await fetch(new URL(file, import.meta.url))).arrayBuffer();
    const ready = (async () => {
      const [{ default: make }] = await Promise.all([import('./fogsheet.js'), ...['Regular', 'Bold', 'Italic'].map((face) => bytes_of('fonts/B612-' + face + '.otf'))]);
      await make({ page: {} });
      const gl = document.querySelector('#sheet canvas').getContext('webgl2', { alpha: false, antialias: false });
      await new Promise((drawn) => requestAnimationFrame(drawn));
      gl.clearColor(1, 1, 1, 1);
      gl.clear(gl.COLOR_BUFFER_BIT);
    })();
    navigator.serviceWorker?.register(new URL('../sw.js', import.meta.url), { updateViaCache: 'none' });
    window.fogsheet = { ready };`);
  return folder;
}

test('first frame from the cache, beside the same page clearing one frame', async () => {
  const folder = bare_site();
  const sites = { ours: await serve(site_folder), bare: await serve(folder) };
  const pages = {};
  const times = { ours: [], bare: [] };
  for (const name of Object.keys(sites)) {
    const context = await browser.newContext({ viewport: { width: 1180, height: 820 } });
    const page = await context.newPage();
    await page.addInitScript(() => addEventListener('DOMContentLoaded', () => window.fogsheet.ready.then(() => { window.ready_ms = performance.now(); })));
    await page.goto(sites[name].url);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await page.waitForTimeout(1000);
    pages[name] = page;
  }
  for (let start = 0; start < 20; ++start)
    for (const name of Object.keys(sites)) {
      await pages[name].reload();
      times[name].push(await (await pages[name].waitForFunction(() => window.ready_ms)).jsonValue());
    }
  say('first frame, bare page', median(times.bare));
  say('first frame, ours', median(times.ours), `= ${(median(times.ours) / median(times.bare)).toFixed(2)} of the bare page (aim 1.5)`);
  for (const name of Object.keys(sites)) {
    await pages[name].context().close();
    await sites[name].close();
  }
  fs.rmSync(folder, { recursive: true });
  assert.equal(times.ours.length, 20);
});

/// The milliseconds of script in each frame while `act` runs.
async function scripted_frames(page, act) {
  await browser.startTracing(page, { categories: ['devtools.timeline'] });
  await act();
  const { traceEvents } = JSON.parse(String(await browser.stopTracing()));
  return traceEvents.filter((event) => event.name === 'FireAnimationFrame' && event.dur > 0).map((event) => event.dur / 1000);
}

for (const count of [100, 1000, 10000])
  test(`script time a frame while panning ${count} marks and legs`, async () => {
    const site = await serve(site_folder);
    const context = await browser.newContext({ viewport: { width: 1180, height: 820 }, serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.goto(site.url);
    await page.evaluate(() => window.fogsheet.ready);
    await page.evaluate((marks) => {
      const { command } = window.fogsheet;
      command('new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 200000, paper: 'A3-across' });
      let seed = 7;  // Lehmer's generator (Park and Miller 1988): the same sheet in every run
      const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647 - 0.5;
      let last = null;
      for (let i = 0; i < marks; ++i) {
        const { id } = command('add-mark', { name: `Mark ${i}`, lat_deg: 44 + random() * 0.4, lon_deg: -31 + random() * 0.9, kind: i % 2 ? 'turn' : 'landmark' });
        if (last) command('add-leg', { from: last, to: id });
        last = id;
      }
    }, count);
    await page.waitForTimeout(1500);
    const start = await page.evaluate(() => window.fogsheet.frames());
    const panning = await scripted_frames(page, async () => {
      await page.mouse.move(500, 600);
      await page.mouse.down();
      for (let i = 1; i <= 30; ++i) await page.mouse.move(500 + 4 * i, 600 - 3 * i);
      await page.mouse.up();
    });
    assert.ok(panning.length > 0 && (await page.evaluate(() => window.fogsheet.frames())) > start);
    say(`panning ${count} marks and legs, script a frame (median of ${panning.length}, longest ${Math.max(...panning).toFixed(2)} ms)`, median(panning), '(aim 4 ms at 10 000)');

    const zooming = await scripted_frames(page, async () => {
      for (let i = 0; i < 4; ++i) {
        await page.evaluate(() => window.fogsheet.command('closer'));
        await page.waitForTimeout(400);
      }
    });
    say(`coming closer to ${count} marks and legs, script of the longest frame`, Math.max(...zooming));

    const idle = await page.evaluate(() => window.fogsheet.frames());
    await page.waitForTimeout(1000);
    assert.equal(await page.evaluate(() => window.fogsheet.frames()), idle, 'frames while idle for a second');
    await context.close();
    await site.close();
  });
