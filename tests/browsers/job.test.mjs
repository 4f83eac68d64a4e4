// The heart of the product, done with real presses in Chromium: by mouse, by touch, offline, from a link.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { chain_of, do_the_job } from './lib/job.mjs';
import { command, equal_part, hand, launch_chromium, middle_of, open_page, read, serve_product, sizes, where } from './lib/product.mjs';

let browser;
let site;
before(async () => {
  browser = await launch_chromium();
  site = await serve_product();
});
after(async () => {
  await browser?.close();
  await site?.close();
});

async function on_page(size, work, url = site.url) {
  const opened = await open_page(browser, url, size);
  try {
    await work(opened.page, opened);
    assert.deepEqual(opened.noted.elsewhere, [], 'no request leaves the origin');
  } finally {
    await opened.context.close();
  }
}

for (const [name, size] of Object.entries(sizes))
  test(`the job by ${size.touch ? 'touch' : 'mouse'}: ${name}`, () => on_page(size, async (page, { noted }) => {
    await do_the_job(page, size);
    assert.deepEqual(noted.errors.filter((text) => !/service ?worker/i.test(text)), []);
  }));

for (const [name, size] of Object.entries(sizes))
  test(`the demo's work is on screen and uncovered: ${name}`, () => on_page(size, async (page) => {
    const seen = async (state) => {
      const { marks } = await read(page);
      for (const thing of [`mark/#${marks[0].id}`, `mark/#${marks[1].id}`, 'rose/centre']) assert.ok(await where(page, thing), `${thing} ${state}`);
    };
    await seen('with the first-run slip');
    await command(page, 'take-edge');
    await seen('with the straight-edge slip');
    const { marks } = await read(page);
    await command(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
    assert.ok(await where(page, 'edge/reading'), 'the middle of the edge');
    await command(page, 'slide-edge-to', { rose: (await read(page)).roses[0].id });
    assert.ok(await where(page, 'edge/reading'), 'the middle of the settled edge');
  }));

test('after a reload with the server gone the page starts and the job passes again', async () => {
  const gone = await serve_product();
  const { context, page } = await open_page(browser, gone.url, { ...sizes.tablet_across, workers: 'allow' });
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null || navigator.serviceWorker.ready, null, { timeout: 15000 });
  await page.waitForTimeout(500);
  await gone.close();
  await page.reload();
  await page.evaluate(() => window.fogsheet.ready);
  await do_the_job(page);
  await context.close();
});

test('the link opened in a fresh profile gives an equal sheet', () => on_page(sizes.tablet_across, async (page) => {
  await command(page, 'add-mark', { name: 'Ness <b>&amp; Skerry</b> ⛵', lat_deg: 44.1, lon_deg: -31.3, kind: 'other' });
  await command(page, 'set-printed-variation', { value_deg: -8.5, year: 2020, annual_change_min: 10 });
  const sheet = await read(page);
  const link = await page.evaluate(() => window.fogsheet.link());
  assert.ok(link.includes('#1:'));
  await on_page(sizes.phone, async (other) => assert.deepEqual(equal_part(await read(other)), equal_part(sheet)), link);
}));

test('marks and legs by press and by drag, each undone and redone', () => on_page(sizes.tablet_across, async (page) => {
  const mouse = hand(page);
  const first = equal_part(await read(page));
  await mouse.press(await middle_of(page, 'tool/mark'));
  await mouse.press(await middle_of(page, "sheet/44°07.0'N 031°12.0'W"));
  const with_mark = await read(page);
  assert.equal(with_mark.marks.length, first.marks.length + 1);
  const made = with_mark.marks.at(-1);
  assert.equal(made.kind, 'landmark');
  assert.ok(Math.abs(made.lat_deg - (44 + 7 / 60)) < 0.002 && Math.abs(made.lon_deg + 31 + 12 / 60) < 0.002);

  await mouse.press(await middle_of(page, 'tool/leg'));
  await mouse.drag(await middle_of(page, `mark/#${with_mark.marks[1].id}`), await middle_of(page, `mark/#${made.id}`));
  const with_leg = await read(page);
  assert.equal(with_leg.legs.length, first.legs.length + 1);
  assert.deepEqual([with_leg.legs.at(-1).from, with_leg.legs.at(-1).to], [with_mark.marks[1].id, made.id]);

  await mouse.press(await middle_of(page, 'undo'));
  await mouse.press(await middle_of(page, 'undo'));
  assert.deepEqual(equal_part(await read(page)), first);
  await command(page, 'redo');
  await command(page, 'redo');
  assert.deepEqual(equal_part(await read(page)), equal_part(with_leg));
}));

test('the edge: put on by one drag, turned by its end, turned round, put down by Esc', () => on_page(sizes.tablet_across, async (page) => {
  const mouse = hand(page);
  await mouse.press(await middle_of(page, 'tool/straight-edge'));
  await mouse.drag(await middle_of(page, "sheet/44°06.0'N 031°16.0'W"), await middle_of(page, "sheet/44°06.0'N 031°12.0'W"));
  const laid = (await read(page)).edge;
  assert.ok(Math.abs(laid.bearing_true_deg - 90) < 1);
  const end = await middle_of(page, 'edge/end-b');
  await mouse.drag(end, { x: end.x, y: end.y + 60 });
  const turned = (await read(page)).edge;
  assert.ok(turned.bearing_true_deg > 95 && turned.locked === false);
  await mouse.drag(await middle_of(page, 'edge/reading'), await middle_of(page, 'rose/centre'));
  const settled = (await read(page)).edge;
  assert.ok(settled.settled_on);
  assert.ok(Math.abs(settled.bearing_true_deg - turned.bearing_true_deg) < 1e-9);
  await mouse.press(await middle_of(page, 'edge/arrow'));
  const round = (await read(page)).edge;
  assert.ok(Math.abs(Math.abs(round.bearing_true_deg - settled.bearing_true_deg) - 180) < 1e-9);
  await page.keyboard.press('Escape');
  assert.equal((await read(page)).edge, null);
}));

test('two fingers move the paper, and a second finger puts a drag back', () => on_page(sizes.tablet_upright, async (page) => {
  const fingers = hand(page, { touch: true });
  const { marks } = await read(page);
  await command(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
  const edge = (await read(page)).edge;
  const grip = await middle_of(page, 'edge/reading');
  await fingers.send('touchStart', [grip]);
  await fingers.send('touchMove', [{ x: grip.x, y: grip.y + 60 }]);
  assert.equal((await read(page)).edge.locked, true);
  await fingers.send('touchStart', [{ x: grip.x, y: grip.y + 60 }, { x: grip.x + 120, y: grip.y + 60 }]);
  assert.deepEqual((await read(page)).edge, edge, 'the edge lies where it lay');
  await fingers.send('touchEnd', []);

  const before_zoom = [await middle_of(page, 'mark/The Kettle'), await middle_of(page, 'rose/centre')];
  const spread = (half) => [{ x: 400 - half, y: 300 }, { x: 400 + half, y: 300 }];
  await fingers.two_fingers([spread(50), spread(60), spread(75)]);
  const after_zoom = [await middle_of(page, 'mark/The Kettle'), await middle_of(page, 'rose/centre')];
  const far = ([a, b]) => Math.hypot(a.x - b.x, a.y - b.y);
  assert.ok(Math.abs(far(after_zoom) / far(before_zoom) - 1.5) < 0.05, 'the paper grew with the fingers');
}));

// Common practice, no source: magnetic is true less east, more west.
for (const [true_deg, variation_deg, magnetic] of [[200, 10, '190°M'], [100, 8, '092°M'], [100, -3, '103°M']])
  test(`${true_deg}°T with ${variation_deg}° is ${magnetic}`, () => on_page(sizes.tablet_across, async (page) => {
    await command(page, 'set-printed-variation', { value_deg: variation_deg, year: 2026, annual_change_min: 0 });
    await command(page, 'turn-edge', { bearing_deg: true_deg, reference: 'true' });
    assert.equal((await read(page)).edge.shown.magnetic, magnetic);
    assert.equal((await chain_of(page)).magnetic, magnetic);
  }));
