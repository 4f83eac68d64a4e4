// A smoke test in each of three engines: the page starts, the sheet is drawn, the job's arithmetic stands, and it starts
// again with the server gone. An engine that is not installed fails where CI is set, and is named as skipped elsewhere.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { PNG } from 'pngjs';
import { launch, missing } from './lib/engines.mjs';
import { serve_product } from './lib/product.mjs';

// What a pixel shows, though a line a pixel thin covers it by half: a ring is redder than green by far, paper by nothing.
const kind_of = ([red, green, blue]) => (red - green > 60 && blue > green ? 'ring' : Math.min(red, green, blue) > 235 ? 'paper' : 'other');

for (const name of ['chromium', 'firefox', 'webkit']) {
  const why = missing(name);
  test(`${name}: the sheet is drawn, read, and starts again without its server`, { skip: !process.env.CI && why, timeout: 120_000 }, async (t) => {
    assert.equal(why, undefined);
    const site = await serve_product();
    const page = await launch(name, { width: 1180, height: 820 });
    t.after(async () => { await page.close(); await site.close().catch(() => {}); });
    await page.goto(site.url);
    await page.evaluate(() => window.fogsheet.ready.then(() => 1));

    const centre = await page.evaluate(() => window.fogsheet.where('rose/centre'));
    const reading = await page.evaluate(() => {
      const { marks, roses } = window.fogsheet.read();
      window.fogsheet.command('lay-edge', { from: marks[0].id, to: marks[1].id });
      window.fogsheet.command('slide-edge-to', { rose: roses[0].id });
      const { edge } = window.fogsheet.read();
      window.fogsheet.command('lift-edge');
      return edge;
    });
    assert.equal(reading.shown.true, '096°T');
    assert.equal(reading.shown.magnetic, '105°M');
    await new Promise((done) => setTimeout(done, 400));

    // Along a ray from the rose's centre both rings are crossed: magenta twice, with paper between.
    const png = PNG.sync.read(await page.screenshot());
    const at = (x, y) => [...png.data.subarray((Math.round(y) * png.width + Math.round(x)) * 4, (Math.round(y) * png.width + Math.round(x)) * 4 + 3)];
    const x0 = centre.x + centre.width / 2;
    const y0 = centre.y + centre.height / 2;
    const crossings = [];
    for (let r = 40; r < 180; r += 0.5) {
      const kind = kind_of(at(x0 + r * Math.sin(0.82), y0 - r * Math.cos(0.82)));
      if (kind !== 'other' && crossings.at(-1) !== kind) crossings.push(kind);
    }
    assert.ok(crossings.filter((kind) => kind === 'ring').length >= 2, `${name}: rings met along a ray: ${crossings.join(' ')}`);

    const drawn = await page.evaluate(() => window.fogsheet.frames());
    await new Promise((done) => setTimeout(done, 1500));
    assert.equal(await page.evaluate(() => window.fogsheet.frames()), drawn, 'no frame while idle');

    await page.evaluate(() => navigator.serviceWorker.ready.then(() => 1));
    await new Promise((done) => setTimeout(done, 500));
    await site.close();
    await page.reload();
    assert.equal(await page.evaluate(() => window.fogsheet.ready.then(() => window.fogsheet.read().marks[0].name)), 'Off Sarn');
  });
}
