// What came to be kept and shared, in each of three engines: the photograph of a chart lies where its points say, by day and by
// night, and comes back after a reload; the code on the screen is read back by another program's decoder (jsqr); a link that
// comes opens beside; all that is kept goes out as a file and comes in again.
import assert from 'node:assert/strict';
import { test } from 'node:test';

import read_code from 'jsqr';
import { PNG } from 'pngjs';

import { drop } from './lib/dropped.mjs';
import { engines, with_engine } from './lib/engines.mjs';
import { place_of } from './lib/hands.mjs';
import { colour, distance, picture } from './lib/pictures.mjs';
import { done, kept, link, open, read, ready, until } from './lib/sheet.mjs';
import { page_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const sheet = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across', name: 'Chart' };
const fragment = (of) => of.slice(of.indexOf('#'));
const paper = colour('#FCFAF4');  // by day, as the look's table of colours has it
const strong = 0.58;

/// A chart as a PNG: white, with patches {x, y, ink} of 80 pixels.
function chart(patches) {
  const png = new PNG({ width: 1200, height: 900 });
  png.data.fill(255);
  for (const { x, y, ink } of patches)
    for (let row = y - 40; row < y + 40; row += 1)
      for (let column = x - 40; column < x + 40; column += 1) png.data.set(colour(ink), (row * png.width + column) * 4);
  return PNG.sync.write(png);
}

/// The middle one of what lies about a place: a line of the sheet that crosses it does not count.
async function ink_at(page, name) {
  const place = await place_of(page, name);
  const { at } = picture(await page.screenshot());
  const around = Array.from({ length: 81 }, (_, i) => at({ x: place.x + i % 9 - 4, y: place.y + Math.floor(i / 9) - 4 }));
  return [0, 1, 2].map((channel) => around.map((pixel) => pixel[channel]).sort((a, b) => a - b)[40]);
}

/// Pictures come some time after what they show.
async function until_ink(page, name, wanted) {
  let seen;
  for (let tries = 0; tries < 40; tries += 1) {
    seen = await ink_at(page, name);
    if (distance(seen, wanted) <= 14) return;
  }
  assert.fail(`${name}: ${seen} for ${wanted.map(Math.round)}`);
}

const by_day = (ink) => colour(ink).map((channel, i) => paper[i] * (1 - strong + strong * channel / 255));

for (const engine of engines) {
  test(`${engine}: a photograph lies where its points say, and does after a reload`, with_engine(engine, 120_000), async (t) => {
    const { page, site } = await page_on_site(t, engine, size);
    await open(page, site.url);
    await done(page, 'new-sheet', sheet);
    await drop(page, ['chart.png', chart([{ x: 200, y: 150, ink: '#d02020' }, { x: 1000, y: 750, ink: '#20a040' }])]);
    await until(page, 'the photograph to be read', () => /1 200 (×|x|by) 900/.test(document.querySelector('[data-panel=photograph]')?.innerText.replace(/\s/g, ' ')));
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    await done(page, 'add-photograph-point', { x_px: 200, y_px: 150, lat_deg: 44.055, lon_deg: -31.105 });
    await done(page, 'add-photograph-point', { x_px: 1000, y_px: 750, lat_deg: 43.955, lon_deg: -30.955 });
    await done(page, 'close-slip');
    const check = async () => {
      await until_ink(page, "sheet/44°03.3'N 031°06.3'W", by_day('#d02020'));
      await until_ink(page, "sheet/43°57.3'N 030°57.3'W", by_day('#20a040'));
    };
    await check();
    await done(page, 'set-palette', { palette: 'night' });
    const [, green, blue] = await ink_at(page, "sheet/43°57.3'N 030°57.3'W");
    assert.ok(green < 40 && blue < 40, `red alone by night: ${green}, ${blue}`);
    await done(page, 'set-palette', { palette: 'day' });
    await kept(page);
    await page.reload();
    await ready(page);
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
    await page.evaluate(() => {
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob) => { window.saved = blob; return make.call(URL, blob); };
    });
    await done(page, 'save-all');
    await until(page, 'the file of all', () => Boolean(window.saved));
    const bytes = await page.evaluate(async () => [...new Uint8Array(await window.saved.arrayBuffer())]);
    await done(page, 'add-mark', { name: 'since', lat_deg: 44.02, lon_deg: -31 });
    await drop(page, ['all.fogsheets', bytes]);
    await until(page, 'what the file holds', () => document.querySelector('[data-panel=file] [data-name=take-in]') !== null);
    await done(page, 'take-in');
    await until(page, 'the copy', (count) => window.fogsheet.read().history.drawer.filter(({ removed }) => !removed).length === count, sheets + 1);
  });
}
