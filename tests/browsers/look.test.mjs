// The design's pictures beside ours, written to build/look/index.html with every difference and its reason
// (tests/look/differences.json). Ours are made anew in each run; a picture without one of ours, a difference without a
// reason or one told of a picture that is not there fails. Whether the two look alike is for eyes. Chromium.
import assert from 'node:assert/strict';
import { copyFileSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { PNG } from 'pngjs';

import { with_engine } from './lib/engines.mjs';
import { press_part, type_into } from './lib/forms.mjs';
import { mouse_hand, place_of, touch_hand } from './lib/hands.mjs';
import { resting_picture } from './lib/pictures.mjs';
import { done, open, read, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const folder = here('../../build/look/');
const plates = here('../look/plates/');
const told = JSON.parse(readFileSync(here('../look/differences.json'), 'utf8'));

const tablet = { width: 1180, height: 820 };

async function lay(page) {
  const { marks } = await read(page);
  await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
}
async function settle(page) {
  await lay(page);
  await done(page, 'slide-edge-to', { rose: (await read(page)).roses[0].id });
}
const middle_leg_end = async (page, i) => `mark/#${(await read(page)).marks[i].id}`;
const in_palette = (palette) => async (page) => {
  await settle(page);
  await done(page, 'set-palette', { palette });
};

// How ours come about: by the plate's name, one or more.
const ours = {
  'sheet-by-day': [{ ...tablet, make: settle }],
  'sheet-at-dusk': [{ ...tablet, make: in_palette('dusk') }],
  'sheet-by-night': [{ ...tablet, make: in_palette('night') }],
  'sheet-in-high-contrast': [{ ...tablet, make: in_palette('high-contrast') }],
  'blank-sheet': [{ width: 924, height: 1385, make: async (page) => {
    await done(page, 'new-sheet', { mid_lat_deg: 59, mid_lon_deg: -28, scale: 1000000, paper: 'A4-upright', name: '' });
    await done(page, 'close-slip');
    await done(page, 'fit');
  } }],
  'signs-and-lines': [{ ...tablet, height: 1000, make: (page) => done(page, 'open-slip', { slip: 'legend' }) }],
  'steps-entry-loupe': [
    { ...tablet, make: async (page) => {
      await done(page, 'close-slip');
      await done(page, 'tool', { tool: 'straight-edge' });
      await mouse_hand(page).press(await middle_leg_end(page, 0));
    } },
    { ...tablet, make: lay },
    { ...tablet, make: async (page) => {
      await lay(page);
      await mouse_hand(page).hold('edge/reading', 'rose/centre');
    } },
    { ...tablet, make: settle },
    { ...tablet, touch: true, make: async (page) => {
      await lay(page);
      const at = await place_of(page, 'edge/end-b');
      await (await touch_hand(page)).hold(at, { x: at.x + 30, y: at.y + 40 });
    } },
    { ...tablet, touch: true, make: async (page) => {
      await settle(page);
      await done(page, 'begin-direction');
      await press_part(page, await touch_hand(page), 'direction');
      await until(page, 'a keypad', () => document.querySelector('.keypad') !== null);
      for (const key of ['1', '0']) await press_part(page, await touch_hand(page), `pad/${key}`);
    } },
    { ...tablet, make: async (page) => {
      const { marks } = await read(page);
      await done(page, 'select-mark', { id: marks[1].id });
      await type_into(page, mouse_hand(page), 'position', "44°10.9'N 031°72.4'W");
    } },
  ],
  'first-run-on-a-phone': [{ width: 390, height: 844, scale: 2, touch: true, make: async () => {} }],
  'tablet-upright': [{ width: 820, height: 1180, make: settle }],
  'edge-set-to-a-direction': [{ ...tablet, make: async (page) => {
    await settle(page);
    for (const { id } of (await read(page)).legs.slice(1)) await done(page, 'remove-leg', { id });
    await done(page, 'begin-direction');
    await done(page, 'type-direction', { text: '095 M' });
    await done(page, 'slide-edge-to', { mark: (await read(page)).marks[0].id });
  } }],
  'new-sheet': [{ ...tablet, make: async (page) => {
    await done(page, 'open-slip', { slip: 'new-sheet' });
    await done(page, 'fill-new-sheet', { field: 'middle', text: '44 10 N 31 20 W' });
  } }],
  'marks-list': [
    { ...tablet, make: (page) => done(page, 'open-slip', { slip: 'lists' }) },
    { ...tablet, make: async (page) => done(page, 'select-mark', { id: (await read(page)).marks[1].id }) },
  ],
};

describe('the look', with_engine('chromium', 280_000), () => {
  const stage = chromium_on_site();
  before(async () => {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
  });

  for (const [plate, views] of Object.entries(ours)) {
    test(plate, async () => {
      copyFileSync(path.join(plates, `${plate}.png`), path.join(folder, `${plate}.png`));
      for (const [i, { make, ...view }] of views.entries()) {
        const page = await stage.browser.open({ ...view, reducedMotion: 'reduce', serviceWorkers: 'block' });
        await open(page, stage.site.url);
        await make(page);
        writeFileSync(path.join(folder, `${plate}-ours-${i + 1}.png`), PNG.sync.write(await resting_picture(page, view.scale)));
        await page.close();
      }
    });
  }

  test('every picture of the design is beside ours, with each difference and its reason', () => {
    const drawn = readdirSync(plates).map((file) => path.basename(file, '.png')).sort();
    assert.deepEqual(Object.keys(ours).sort(), drawn);
    assert.deepEqual(Object.keys(told).sort(), drawn);
    for (const [plate, differences] of Object.entries(told)) {
      for (const { seen, reason } of differences) assert.ok(seen?.length > 3 && reason?.length > 3, `${plate}: ${JSON.stringify({ seen, reason })}`);
    }
    writeFileSync(path.join(folder, 'index.html'), index());
  });
});

function index() {
  const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  const row = ({ seen, reason }) => `<tr><td>${escaped(seen)}</td><td>${escaped(reason)}</td></tr>`;
  const picture = (name, words) => `<figure><a href="${name}.png"><img src="${name}.png" alt="${words}" loading="lazy"></a><figcaption>${words}</figcaption></figure>`;
  const section = (plate) => `<h2>${plate.replaceAll('-', ' ')}</h2>
<div>${picture(plate, 'as designed')}${ours[plate].map((_, i) => picture(`${plate}-ours-${i + 1}`, 'ours')).join('')}</div>
<table><tr><th>difference</th><th>reason</th></tr>${told[plate].map(row).join('')}</table>`;
  return `<!doctype html><html lang="en"><meta charset="utf-8"><title>The look: as designed, and ours</title>
<style>body{font:15px sans-serif;background:#999;margin:16px}div{display:flex;flex-wrap:wrap;gap:12px;align-items:start}figure{margin:0}img{width:620px}table{background:#fff;border-collapse:collapse;margin:8px 0 32px}td,th{border:1px solid #bbb;padding:4px 8px;text-align:left;vertical-align:top}</style>
${Object.keys(ours).map(section).join('\n')}\n`;
}
