// What came to be kept and shared, in each of three engines: the photograph of a chart lies where its points say, by day and by
// night, and comes back after a reload; the code on the screen is read back by another program's decoder (jsqr); a link that
// comes opens beside; all that is kept goes out as a file and comes in again, with its photographs.
import assert from 'node:assert/strict';
import { test } from 'node:test';

import read_code from 'jsqr';
import { PNG } from 'pngjs';

import { by_day, chart, shot, strong } from './lib/charts.mjs';
import { drop } from './lib/dropped.mjs';
import { engines, with_engine } from './lib/engines.mjs';
import { place_of } from './lib/hands.mjs';
import { distance } from './lib/pictures.mjs';
import { done, kept, link, open, read, ready, until } from './lib/sheet.mjs';
import { page_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const sheet = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across', name: 'Chart' };
const fragment = (of) => of.slice(of.indexOf('#'));

/// The bytes of the file that "Save all as one file" gives.
async function saved_all(page) {
  await page.evaluate(() => {
    const make = URL.createObjectURL;
    URL.createObjectURL = (blob) => { window.saved = blob; return make.call(URL, blob); };
  });
  await done(page, 'save-all');
  await until(page, 'the file of all', () => Boolean(window.saved));
  return page.evaluate(async () => [...new Uint8Array(await window.saved.arrayBuffer())]);
}

/// Pictures come some time after what they show.
async function until_ink(page, name, wanted) {
  let seen;
  for (let tries = 0; tries < 40; tries += 1) {
    seen = (await shot(page)).about(await place_of(page, name));
    if (distance(seen, wanted) <= 14) return;
  }
  assert.fail(`${name}: ${seen} for ${wanted.map(Math.round)}`);
}

for (const engine of engines) {
  test(`${engine}: a photograph lies where its points say, does after a reload, and goes with all that is kept`, with_engine(engine, 120_000), async (t) => {
    const { page, site } = await page_on_site(t, engine, size);
    await open(page, site.url);
    await done(page, 'new-sheet', sheet);
    const picture = await chart(page, { patches: [[200, 150, '#d02020'], [1000, 750, '#20a040']], side: 80 });
    await drop(page, ['chart.png', picture]);
    await until(page, 'the photograph to be read', () => /1 200 (×|x|by) 900/.test(document.querySelector('[data-panel=photograph]')?.innerText.replace(/\s/g, ' ')));
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    await done(page, 'add-photograph-point', { x_px: 200, y_px: 150, lat_deg: 44.055, lon_deg: -31.105 });
    await done(page, 'add-photograph-point', { x_px: 1000, y_px: 750, lat_deg: 43.955, lon_deg: -30.955 });
    await done(page, 'close-slip');
    const check = async () => {
      await until_ink(page, "sheet/44°03.3'N 031°06.3'W", by_day('#d02020', strong));
      await until_ink(page, "sheet/43°57.3'N 030°57.3'W", by_day('#20a040', strong));
    };
    await check();
    await done(page, 'set-palette', { palette: 'night' });
    const [, green, blue] = (await shot(page)).about(await place_of(page, "sheet/43°57.3'N 030°57.3'W"));
    assert.ok(green < 40 && blue < 40, `red alone by night: ${green}, ${blue}`);
    await done(page, 'set-palette', { palette: 'day' });
    await kept(page);
    await page.reload();
    await ready(page);
    await check();

    // Out with all that is kept, taken away, in again: where it lay. With a bit of it turned it stays out.
    const all = Buffer.from(await saved_all(page));
    assert.equal(all.indexOf(picture), all.length - picture.length);
    await done(page, 'remove-photograph');
    const take_in = async (bytes, said) => {
      await drop(page, ['all.fogsheets', bytes]);
      await until(page, 'what the file holds', () => document.querySelector('[data-panel=file] [data-name=take-in]') !== null);
      await done(page, 'take-in');
      await until(page, said, (text) => document.getElementById('margin').innerText.includes(text), said);
    };
    const damaged = Buffer.from(all);
    damaged[all.length - 100] ^= 1;
    await take_in(damaged, '1 photograph of a chart is damaged in the file');
    assert.ok(distance((await shot(page)).about(await place_of(page, "sheet/44°03.3'N 031°06.3'W")), by_day('#d02020', strong)) > 14);
    await take_in(all, '1 photograph of a chart has come with its sheet.');
    await done(page, 'close-slip');
    await check();
  });

  test(`${engine}: its code is read back, its link opens beside, all of it goes out and comes in`, with_engine(engine, 120_000), async (t) => {
    const { page, site } = await page_on_site(t, engine, size);
    await open(page, site.url);
    await done(page, 'new-sheet', { ...sheet, name: 'Sent' });
    await done(page, 'add-mark', { name: 'Gull Rock', lat_deg: 44.01, lon_deg: -31 });
    const sent = await link(page);
    await done(page, 'show-code');
    await until(page, 'a code', () => document.querySelector('[data-panel=code] svg.qr path') !== null);
    const { data, width, height } = PNG.sync.read(Buffer.from(await page.screenshot()));
    assert.equal(read_code(new Uint8ClampedArray(data), width, height)?.data, sent);
    await done(page, 'close-slip');

    await done(page, 'change-mark', { id: (await read(page)).marks[0].id, name: 'Tern Rock' });
    await page.evaluate((hash) => { location.hash = hash; }, fragment(sent));
    await until(page, 'the question, or the sheet', () => document.querySelector('[data-panel=link]') !== null || window.fogsheet.read().marks[0].name === 'Gull Rock');
    if ((await read(page)).marks[0].name !== 'Gull Rock') await done(page, 'open-arrived');
    const names = async () => (await read(page)).history.drawer.filter(({ removed }) => !removed).length;
    const sheets = await names();

    await kept(page);
    const bytes = await saved_all(page);
    await done(page, 'add-mark', { name: 'since', lat_deg: 44.02, lon_deg: -31 });
    await drop(page, ['all.fogsheets', bytes]);
    await until(page, 'what the file holds', () => document.querySelector('[data-panel=file] [data-name=take-in]') !== null);
    await done(page, 'take-in');
    await until(page, 'the copy', (count) => window.fogsheet.read().history.drawer.filter(({ removed }) => !removed).length === count, sheets + 1);
  });
}
