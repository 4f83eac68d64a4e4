// What the device says of where it is: allowed, refused, missing; drawn where it is to scale, marked, and never kept by itself.
// Chromium, whose position can be set.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { mouse_hand, where } from './lib/hands.mjs';
import { colour, distance, picture } from './lib/pictures.mjs';
import { done, kept, link, open, open_again, read, text_of, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const place = { latitude: 44.02, longitude: -31.03, accuracy: 800 };
const slip = '[data-panel=own-position]';
const blue = colour('#0E5186');  // by day, as the look's table of colours has it

describe('own position', with_engine('chromium', 120_000), () => {
  const stage = chromium_on_site();

  async function asked(view) {
    const page = await stage.browser.open({ ...size, ...view });
    await open(page, stage.site.url);
    await done(page, 'new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across', name: 'Here' });
    const hand = mouse_hand(page);
    await done(page, 'open-slip', { slip: 'more' });
    await hand.press('own-position');
    await hand.press('ask-own-position');
    return { page, hand };
  }

  test('it is shown with its doubt, marked by a press, followed, and let go', async () => {
    const { page, hand } = await asked({ geolocation: place, permissions: ['geolocation'] });
    await until(page, 'the position', (wanted) => document.querySelector(wanted).innerText.includes("44°01.200′N 031°01.800′W"), slip);
    assert.match(await text_of(page, slip), /within 800 m, 19 times in 20/);
    const before = await link(page);

    await done(page, 'fit');
    await until(page, 'a frame', () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(() => drawn(true)))));
    const at = await where(page, `sheet/44°01.2'N 031°01.8'W`);
    const north = await where(page, `sheet/44°03.2'N 031°01.8'W`);
    const centre = { x: at.x + at.width / 2, y: at.y + at.height / 2 };
    const px_per_nm = (at.y - north.y) / 2;
    const radius = px_per_nm * (place.accuracy / 1852);
    const shot = picture(await page.screenshot());
    const nearest = (x, y) => Math.min(...[-2, -1, 0, 1, 2].flatMap((dx) => [-2, -1, 0, 1, 2].map((dy) => distance(shot.at({ x: x + dx, y: y + dy }), blue))));
    for (const [dx, dy] of [[0, -1], [-1, 0], [0, 1]]) assert.ok(nearest(centre.x + dx * radius, centre.y + dy * radius) < 60, `the circle at ${dx} ${dy}`);
    assert.ok(nearest(centre.x, centre.y - radius / 2) > 60, 'and nothing within');

    await page.raw.context.setGeolocation({ ...place, latitude: 44.03 });
    await until(page, 'the next position', (wanted) => document.querySelector(wanted).innerText.includes("44°01.800′N"), slip);
    await kept(page);
    assert.equal(await link(page), before, 'it is no part of the sheet');

    await hand.press('mark-own-position');
    const { marks } = await read(page);
    assert.match(marks.at(-1).name, /^Here \d{4}$/);
    assert.ok(Math.abs(marks.at(-1).lat_deg - 44.03) < 1e-5);

    await done(page, 'open-slip', { slip: 'own-position' });
    await hand.press('let-own-position-go');
    assert.match(await text_of(page, slip), /Ask the device/);
    await open_again(page, stage.site.url);
    await done(page, 'open-slip', { slip: 'own-position' });
    assert.doesNotMatch(await text_of(page, slip), /°/, 'not kept');
    await page.close();
  });

  test('refused, and missing', async () => {
    const refused = await asked({ permissions: [] });
    await until(refused.page, 'why', (wanted) => /may not ask/.test(document.querySelector(wanted).innerText), slip);
    await refused.page.close();
    const missing = await asked({ prepare: () => { Object.defineProperty(Navigator.prototype, 'geolocation', { get: () => undefined }); } });
    await until(missing.page, 'why', (wanted) => /gives no position/.test(document.querySelector(wanted).innerText), slip);
    await missing.page.close();
  });
});
