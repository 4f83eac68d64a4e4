// The photograph of a chart under the sheet: read, turned, placed, dimmed, kept. Where the patches of a chart (lib/charts.mjs) must
// come to lie is asked of the page by position (`where`), and looked up in its screenshots. Chromium.
import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import { setTimeout as sleep } from 'node:timers/promises';

import { by_day, chart, paper, shot, strong, turned } from './lib/charts.mjs';
import { with_engine } from './lib/engines.mjs';
import { mouse_hand, place_of } from './lib/hands.mjs';
import { brightest, distance, same_ink } from './lib/pictures.mjs';
import { done, kept, kept_offline, link, note_violations, open, open_again, read, ready, text_of, until, watch } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const sheet = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across', name: 'Chart' };
const slip = '[data-panel=photograph]';
/// Opens it whatever is open: what lay open before a reload does so again.
async function open_slip(page) {
  if (!(await text_of(page, slip))) await done(page, 'open-slip', { slip: 'photograph' });
  await until(page, 'the slip', (panel) => Boolean(document.querySelector(panel)), slip);
}

async function choose(page, name, content) {
  await open_slip(page);
  await until(page, 'the button that chooses one', () => window.fogsheet.where('choose-photograph') ?? (document.querySelector('[data-name=choose-photograph]')?.scrollIntoView(), null));
  const [chooser] = await Promise.all([page.raw.page.waitForEvent('filechooser'), mouse_hand(page).press('choose-photograph')]);
  await chooser.setFiles({ name, mimeType: '', buffer: content });
}

/// Until it has been read, and is drawn.
async function chosen(page, name, content) {
  await choose(page, name, content);
  await shown(page);
}

async function shown(page) {
  await until(page, 'the photograph to be read', (panel) => /Press|places on it/.test(document.querySelector(panel)?.innerText ?? ''), slip);
  for (let i = 0; i < 200 && page.raw.page.workers().length > 0; i += 1) await sleep(40);
  assert.equal(page.raw.page.workers().length, 0, 'the worker goes when it is done');
  await page.evaluate(() => new Promise((drawn) => { requestAnimationFrame(() => requestAnimationFrame(drawn)); }));
}

const near = (got, wanted, what, within = 12) => assert.ok(distance(got, wanted) <= within, `${what}: ${got} for ${wanted.map(Math.round)}`);

const text = (lat, lon) => `sheet/${lat}'N ${lon}'W`;

describe('photograph', with_engine('chromium', 300_000), () => {
  const stage = chromium_on_site();

  async function fresh(view = {}) {
    const page = await stage.browser.open({ ...size, ...view });
    await open(page, stage.site.url);
    await done(page, 'new-sheet', sheet);
    return page;
  }

  // On the ground: middles of patches, half a sheet from each other, away from lines and names.
  const places = [['44°03.3', '031°06.3'], ['44°03.3', '030°57.3'], ['43°57.3', '031°06.3']];
  const degrees = (text_of_angle) => Number(text_of_angle.slice(0, -5)) + Number(text_of_angle.slice(-4)) / 60;
  const position = ([lat, lon]) => ({ lat_deg: degrees(lat), lon_deg: -degrees(lon) });
  const red = '#d02020', green = '#20a040', blue = '#2040d0';

  test('placed by typing, what is known on it lies where it belongs, and lines stay on top', async () => {
    const page = await fresh({ prepare: note_violations });
    const watched = watch(page, stage.site.origin);
    const before = await link(page);
    const file = await chart(page, { patches: [[200, 150, red], [1000, 150, green], [200, 750, blue]] });
    await chosen(page, 'chart.png', file);
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    // The chart is narrower from north to south than the sheet: an affine fit stretches it.
    for (const [i, [x_px, y_px]] of [[200, 150], [1000, 150], [200, 750]].entries()) await done(page, 'add-photograph-point', { x_px, y_px, ...position(places[i]) });
    await done(page, 'close-slip');
    const seen = await shot(page);
    for (const [i, ink] of [red, green, blue].entries()) near(seen.at(await place_of(page, text(...places[i]))), by_day(ink, strong), ink);
    near(seen.at(await place_of(page, text('44°00.3', '031°02.3'))), paper, 'its white is the paper');
    assert.equal(await link(page), before, 'nothing of it is in the link');
    assert.equal((await read(page)).history.undo_label, 'new sheet', 'nor in the past of the sheet');
    await watched.check();
    await page.close();
  });

  test('placed by hand: pressed on the photograph, entered as a position, taken from a mark', async () => {
    const page = await fresh();
    await done(page, 'add-mark', { name: 'Gull Rock', ...position(places[1]) });
    await chosen(page, 'chart.jpg', await chart(page, { patches: [[300, 200, red], [900, 200, green], [300, 700, blue]], type: 'image/jpeg' }));
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    // It lies across the sheet: patches are found by their colour, as an eye finds them.
    const find = async (ink) => {
      const seen = await shot(page);
      const wanted = by_day(ink, strong);
      const at = { x: 0, y: 0, count: 0 };
      for (let y = 20; y < 720; y += 2) for (let x = 20; x < 860; x += 2) if (distance(seen.at({ x, y }), wanted) < 14) { at.x += x; at.y += y; at.count += 1; }
      assert.ok(at.count > 20, `${ink} is seen`);
      return { x: at.x / at.count, y: at.y / at.count };
    };
    const hand = mouse_hand(page);
    await hand.press(await find(red));
    await until(page, 'the fields of point 1', (panel) => document.querySelector(panel).innerText.includes('Point 1'), slip);
    await done(page, 'type-photograph', { field: 'position', text: `${places[0][0]}'N ${places[0][1]}'W` });
    await hand.press(await find(green));
    const mark = (await read(page)).marks.find(({ name }) => name === 'Gull Rock');
    await done(page, 'type-photograph', { field: 'mark', text: mark.id });
    assert.match(await text_of(page, slip), /Placed by 2 points/);
    await done(page, 'type-photograph', { field: 'datum', text: 'WGS84' });
    await hand.press(await find(blue));
    await done(page, 'type-photograph', { field: 'fit', text: 'similarity' });
    await done(page, 'type-photograph', { field: 'position', text: `${places[2][0]}'N ${places[2][1]}'W` });
    assert.match(await text_of(page, slip), /Standard error [\d ]+ m; the farthest off is point \d/);
    await done(page, 'type-photograph', { field: 'fit', text: 'affine' });
    await done(page, 'close-slip');
    const seen = await shot(page);
    const green_at = await place_of(page, text(...places[1]));  // beside the mark's own sign
    near(seen.at({ x: green_at.x - 9, y: green_at.y + 6 }), by_day(green, strong), 'green', 26);
    near(seen.at(await place_of(page, text(...places[0]))), by_day(red, strong), 'red', 26);
    near(seen.at(await place_of(page, text(...places[2]))), by_day(blue, strong), 'blue', 26);
    await page.close();
  });

  test('a photograph lies the way up that its camera says, in all eight', async () => {
    const page = await fresh();
    const plain = await chart(page, { width: 1200, height: 900, patches: [[150, 150, red], [1050, 150, green], [150, 750, blue]], side: 240, type: 'image/jpeg' });
    // Where the file's first row and column come to lie: Exif 2.32, tag 274.
    const sides = { 1: 'top left', 2: 'top right', 3: 'bottom right', 4: 'bottom left', 5: 'left top', 6: 'right top', 7: 'right bottom', 8: 'left bottom' };
    for (const [orientation, named] of Object.entries(sides)) {
      await chosen(page, `turned-${orientation}.jpg`, turned(plain, Number(orientation)));
      await done(page, 'type-photograph', { field: 'strength', text: '3' });
      const on_its_side = orientation >= 5;
      const [width, height] = on_its_side ? [900, 1200] : [1200, 900];
      assert.match(await text_of(page, slip), new RegExp(`${width === 900 ? '900' : '1 200'} by ${height === 900 ? '900' : '1 200'} pixels`));
      const [row, column] = named.split(' ');
      const at = (sides_of) => ({ x_px: sides_of.includes('right') ? width - 100 : 100, y_px: sides_of.includes('bottom') ? height - 100 : 100 });
      const other = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' };
      for (const [ink, corner] of [[red, [row, column]], [green, [row, other[column]]], [blue, [other[row], column]]]) {
        await done(page, 'add-photograph-point', at(corner));
        const place = await place_of(page, 'photograph/#1');
        await done(page, 'place-photograph-anew');
        near((await shot(page)).about(place), by_day(ink, strong), `${orientation}: ${ink}`, 30);
      }
    }
    await page.close();
  });

  test('it does not glare at night, is red alone there, and lies fainter by the dimmer', async () => {
    const page = await fresh();
    await chosen(page, 'chart.png', await chart(page, { patches: [[600, 450, '#000000']], side: 300 }));
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    await done(page, 'add-photograph-point', { x_px: 600, y_px: 330 });
    const place = await place_of(page, 'photograph/#1');
    await done(page, 'close-slip');
    for (const palette of ['day', 'dusk', 'night', 'high-contrast']) {
      await done(page, 'set-palette', { palette });
      const seen = await shot(page);
      const shown_there = seen.about(place);
      if (palette === 'night') {
        const [, most_green, most_blue] = brightest(seen);
        assert.ok(most_green <= 0x6a && most_blue <= 0x52, `${most_green}, ${most_blue}`);  // the focus ring's, look.md
        assert.ok(shown_there[0] > 0x30 && shown_there[0] <= 0x70, `${shown_there}`);
        await done(page, 'set-dimmer', { step: '3' });
        assert.ok((await shot(page)).about(place)[0] < shown_there[0] / 2);
        await done(page, 'set-dimmer', { step: '0' });
      }
      if (palette === 'dusk') assert.ok(Math.max(...shown_there) <= 0x60, `${shown_there}`);
      if (palette === 'day') near(shown_there, by_day('#000000', strong), 'by day');
    }
    await page.close();
  });

  test('what is no picture shows a reason and nothing else', async () => {
    const page = await fresh({ prepare: note_violations });
    const watched = watch(page, stage.site.origin);
    const good = await chart(page, { patches: [[200, 200, red]] });
    const huge = Buffer.from(good);
    huge.writeUInt32BE(60_000, 16);
    huge.writeUInt32BE(60_000, 20);
    const deep = Buffer.from(good);
    deep.writeUInt32BE(7_000, 16);  // says more than is there
    deep.writeUInt32BE(7_000, 20);
    for (const [name, content, why] of [
      ['chart.png', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><script>alert(1)</script></svg>'), /This is SVG by its bytes/],
      ['chart.jpg', Buffer.from('<!doctype html><img src=x onerror=alert(1)>'), /This is HTML by its bytes/],
      ['<img src=x onerror=alert(1)>.png', Buffer.from('GIF89a'), /This is GIF/],
      ['chart.png', Buffer.alloc(0), /no picture that is read here/],
      ['chart.png', huge, /too large: 3\s?600 million pixels, at most 64/],
      ['chart.png', deep, /broken/],
      ['chart.png', good.subarray(0, good.length / 2), /broken/],
    ]) {
      await choose(page, name, content);
      const said = await until(page, 'the reason', (panel) => /can't be used[^]*/.exec(document.querySelector(panel)?.innerText ?? '')?.[0], slip);
      assert.match(said, why, name);
      assert.equal(await page.evaluate((panel) => document.querySelectorAll(`${panel} img`).length, slip), 0);
      assert.equal(page.raw.page.workers().length, 0);
    }
    await chosen(page, 'chart.dat', good);  // whatever its name is
    await watched.check();
    await page.close();
  });

  test('it is there after a reload, gone after it was taken away, and the sheet is kept either way', async () => {
    const page = await fresh();
    await chosen(page, 'chart.png', await chart(page, { patches: [[200, 150, red], [1000, 150, green], [200, 750, blue]] }));
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    for (const [i, [x_px, y_px]] of [[200, 150], [1000, 150], [200, 750]].entries()) await done(page, 'add-photograph-point', { x_px, y_px, ...position(places[i]) });
    await until(page, 'it to be kept', (panel) => document.querySelector(panel).innerText.includes('kept on this device with this sheet'), slip);
    await done(page, 'close-slip');
    await kept(page);
    const before = await shot(page);
    await open_again(page, stage.site.url);
    await open_slip(page);
    await shown(page);
    await done(page, 'close-slip');
    const after = await shot(page);
    for (const [i, ink] of [red, green, blue].entries()) near(after.at(await place_of(page, text(...places[i]))), by_day(ink, strong), ink);
    const spots = Array.from({ length: 600 }, (_, i) => ({ x: 60 + (i % 30) * 26, y: 60 + Math.floor(i / 30) * 30 }));
    const changed = spots.filter((spot) => distance(before.at(spot), after.at(spot)) > 24);
    assert.ok(changed.length < spots.length / 50, `the same picture, but for ${changed.length} of ${spots.length} places`);
    // Another sheet has none; and back.
    const { key } = (await read(page)).history.drawer.find(({ in_hand }) => in_hand);
    await done(page, 'new-sheet', { ...sheet, name: 'Another' });
    near((await shot(page)).at(await place_of(page, text(...places[0]))), paper, 'nothing under another sheet');
    await done(page, 'open-sheet', { key });
    await open_slip(page);
    await shown(page);
    await done(page, 'remove-photograph');
    await kept(page);
    await open_again(page, stage.site.url);
    await open_slip(page);
    assert.match(await text_of(page, slip), /Your own photograph or scan/);
    assert.equal(await page.evaluate(() => new Promise((resolve) => {
      const request = indexedDB.open('fogsheet-photographs', 1);
      request.onsuccess = () => {
        const count = request.result.transaction('files').objectStore('files').count();
        count.onsuccess = () => resolve(count.result);
      };
    })), 0);
    await page.close();
  });

  test('who goes to another sheet and back while it is being kept finds it there, and after a reload', async () => {
    const page = await fresh({ prepare: () => { navigator.storage.estimate = () => new Promise((answer) => { setTimeout(() => answer({ quota: 1e9, usage: 0 }), 1500); }); } });
    await chosen(page, 'chart.png', await chart(page, { patches: [[200, 150, red]] }));
    const { key } = (await read(page)).history.drawer.find(({ in_hand }) => in_hand);
    await done(page, 'new-sheet', { ...sheet, name: 'Another' });
    await done(page, 'open-sheet', { key });
    await open_slip(page);
    await shown(page);
    await kept(page);
    await open_again(page, stage.site.url);
    await open_slip(page);
    await shown(page);
    await page.close();
  });

  test('where there is too little room the sheet goes first, and it is said', async () => {
    const page = await fresh({ prepare: () => { navigator.storage.estimate = () => Promise.resolve({ quota: 60_000_000, usage: 20_000_000 }); } });
    await chosen(page, 'chart.png', await chart(page, { patches: [[200, 150, red]] }));
    await until(page, 'the caution', (panel) => document.querySelector(panel).innerText.includes('The photograph is not kept'), slip);
    await done(page, 'add-mark', { name: 'Rock', lat_deg: 44, lon_deg: -31 });
    await kept(page);
    await page.close();
  });

  test('a context that was lost brings it back', async () => {
    const page = await fresh();
    await chosen(page, 'chart.png', await chart(page, { patches: [[600, 450, red]], side: 200 }));
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    await done(page, 'close-slip');
    const before = await shot(page);
    await page.evaluate(() => {
      window.losing = document.querySelector('#sheet canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
      window.losing.loseContext();
    });
    await sleep(100);
    await page.evaluate(() => window.losing.restoreContext());
    let after;
    for (let i = 0; i < 50; i += 1) {
      after = await shot(page);
      if (same_ink(before, after)) break;
      await sleep(100);
    }
    assert.ok(same_ink(before, after));
    await page.close();
  });

  test('reading can be stopped, and takes its worker with it; 24 million pixels are drawn whole, more are made smaller', async () => {
    const page = await fresh();
    const large = await chart(page, { width: 6000, height: 4000, patches: [[200, 200, red], [5800, 3800, green], [4100, 2050, blue]], side: 300, type: 'image/jpeg' });
    await choose(page, 'large.jpg', large);
    await until(page, 'the button that stops it', () => Boolean(document.querySelector('[data-name=stop-photograph]')));
    await done(page, 'stop-photograph');
    for (let i = 0; i < 100 && page.raw.page.workers().length > 0; i += 1) await sleep(20);
    assert.equal(page.raw.page.workers().length, 0);
    assert.match(await text_of(page, slip), /Your own photograph or scan/);

    const began = performance.now();
    await choose(page, 'large.jpg', large);
    await shown(page);
    const took_ms = performance.now() - began;
    console.log(`24 million pixels, JPEG of ${(large.length / 1e6).toFixed(1)} MB: drawn after ${Math.round(took_ms)} ms`);
    assert.doesNotMatch(await text_of(page, slip), /larger than is drawn/);
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    for (const [x_px, y_px, ink] of [[200, 200, red], [5800, 3800, green], [4100, 2050, blue]]) {  // the last over the seams of four pieces
      await done(page, 'add-photograph-point', { x_px: x_px + 60, y_px: y_px + 60 });
      const place = await place_of(page, 'photograph/#1');
      await done(page, 'place-photograph-anew');
      near((await shot(page)).about(place), by_day(ink, strong), ink, 30);
    }

    await chosen(page, 'larger.jpg', await chart(page, { width: 6600, height: 4400, patches: [[6300, 4100, green]], side: 400, type: 'image/jpeg' }));
    assert.match(await text_of(page, slip), /6 600 by 4 400 pixels[^]*shown as 3 300 by 2 200 pixels/);
    await done(page, 'type-photograph', { field: 'strength', text: '3' });
    await done(page, 'add-photograph-point', { x_px: 6250, y_px: 4050 });
    const place = await place_of(page, 'photograph/#1');
    await done(page, 'place-photograph-anew');
    near((await shot(page)).about(place), by_day(green, strong), 'green', 30);
    await page.close();
  });

  test('what reads it comes when it is wanted, and works without a signal', async () => {
    const site = await open_site();
    const page = await stage.browser.open(size);
    const asked = [];
    page.raw.page.on('request', (request) => asked.push(request.url()));
    await open(page, site.url);
    assert.deepEqual(asked.filter((url) => /underlay(_layer|_store)?\.js|photograph/.test(url)), [], 'the first frame does not wait for it');
    await kept_offline(page);
    await page.reload();
    await ready(page);
    await site.close();
    await done(page, 'new-sheet', sheet);
    await chosen(page, 'chart.png', await chart(page, { patches: [[200, 150, red]] }));
    await page.close();
  });

  test('it is looked at on every device, by day and by night', async () => {
    const folder = new URL('../../build/pictures/photograph/', import.meta.url);
    mkdirSync(folder, { recursive: true });
    for (const [device, view] of Object.entries({ tablet: { width: 1180, height: 820 }, upright: { width: 820, height: 1180 }, phone: { width: 390, height: 844 }, desktop: { width: 1440, height: 900 } })) {
      const page = await stage.browser.open(view);
      await open(page, stage.site.url);
      const rings = Array.from({ length: 60 }, (_, i) => [150 + (i * 397) % 900, 120 + (i * 211) % 660, ['#7a9a60', '#c8b070', '#203040', '#8040a0'][i % 4]]);
      await chosen(page, 'chart.png', await chart(page, { patches: rings, side: 44 }));
      await done(page, 'add-photograph-point', { x_px: 200, y_px: 150, lat_deg: 44.25, lon_deg: -31.55 });
      await done(page, 'add-photograph-point', { x_px: 1000, y_px: 150, lat_deg: 44.25, lon_deg: -31.1 });
      await done(page, 'add-photograph-point', { x_px: 200, y_px: 750, lat_deg: 44.0, lon_deg: -31.551 });
      await done(page, 'add-photograph-point', { x_px: 1000, y_px: 740, lat_deg: 44.0, lon_deg: -31.1 });
      for (const palette of ['day', 'dusk', 'night', 'high-contrast']) {
        await done(page, 'set-palette', { palette });
        await shot(page);
        writeFileSync(new URL(`${device}-${palette}-slip.png`, folder), await page.screenshot());
      }
      await done(page, 'set-palette', { palette: 'day' });
      await done(page, 'close-slip');
      for (const palette of ['day', 'night']) {
        await done(page, 'set-palette', { palette });
        await shot(page);
        writeFileSync(new URL(`${device}-${palette}.png`, folder), await page.screenshot());
      }
      await page.close();
    }
  });
});
