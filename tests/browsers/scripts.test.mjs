// Names in any script on the sheet: each stands there as the browser itself writes it, in its own width where that is less
// than core counts and squeezed into that where it is more; never boxes. In each of three engines, by typefaces of Debian
// that assets/third-party/tools.sh names.
import assert from 'node:assert/strict';
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { PNG } from 'pngjs';

import { share_apart } from './lib/compare_pictures.mjs';
import { engines, with_engine } from './lib/engines.mjs';
import { place_of } from './lib/hands.mjs';
import { colour, crop, ink_extent, resting_picture } from './lib/pictures.mjs';
import { done, open, read } from './lib/sheet.mjs';
import { page_on_site } from './lib/stage.mjs';

const folder = fileURLToPath(new URL('../../build/engine-pictures/', import.meta.url));
mkdirSync(folder, { recursive: true });

const inks = { day: ['#FCFAF4', '#13202A'], night: ['#0B0000', '#FF3B22'] };  // paper and ink, the look's table of colours
const capitals = 'HHHHHHHHHH';
const capitals_em = 6.84;  // ten advances of 1400 in 2000 units of B612 Regular, less the first's left bearing and the last's right
const boxes = '\u{10FFFF}'.repeat(3);  // no typeface has it, ever: a noncharacter (Unicode Standard, chapter 23.7)

// What each shows beside its letters: order from the right, letters that join, a vowel written before the consonant it
// follows and two consonants in one sign, marks that stand on letters.
const names = {
  Greek: 'Ακρωτήριο',
  Cyrillic: 'Маяк Песчаный',
  Hebrew: 'סלע הכלב',
  Arabic: 'حجر البحر',
  Devanagari: 'निष्क्रिय',
  Han: '灯台石',
  emoji: '⚓⚓',
  'Latin and Arabic': 'Cape بحر 12',
};
const wide = '⟶⟶⟶';  // over an em each in DejaVu Sans

for (const engine of engines) {
  test(`${engine}: names in eight scripts`, with_engine(engine, 200_000), async (t) => {
    const { page, site } = await page_on_site(t, engine, { width: 1180, height: 820 });
    await open(page, site.url);
    await done(page, 'new-sheet', { mid_lat_deg: 44.15, mid_lon_deg: -31.3, scale: 100000, paper: 'A4-across', name: 'Names' });
    for (const { id } of (await read(page)).roses) await done(page, 'remove-rose', { id });
    await done(page, 'close-slip');

    const written = [capitals, wide, boxes, ...Object.values(names)];
    const places = written.map((text, i) => ({ text, lat_deg: 44 + (12.5 - i * 0.7) / 60, lon_deg: -(31 + 14.7 / 60) }));
    for (const place of places) await done(page, 'add-note', place);
    await done(page, 'finish-note');
    await done(page, 'tool', { tool: 'none' });
    await done(page, 'close-slip');
    await done(page, 'fit');

    for (const [palette, [paper, ink]] of Object.entries(inks)) {
      await done(page, 'set-palette', { palette });
      const shot = await resting_picture(page);
      writeFileSync(path.join(folder, `names-${palette}-${engine}.png`), PNG.sync.write(shot));
      const look = { paper: colour(paper), ink: colour(ink) };
      const starts = await Promise.all(places.map((place) => place_of(page, sheet_place(place))));
      const extent = (i, from = shot) => ink_extent(from, { left: starts[i].x - 12, top: starts[i].y - 17, right: starts[i].x + 200, bottom: starts[i].y + 8 }, look);

      const em_px = (extent(0).right - extent(0).left) / capitals_em;
      assert.ok(em_px > 8 && em_px < 30, `${palette}: letters of ${em_px} px`);
      const counted = (text) => text.replace(/\p{M}/gu, '').length * em_px;  // what is outside the typeface

      const squeezed = extent(1);
      const wide_em = await page.evaluate(natural_em, wide);
      assert.ok(wide_em > 3.3, `the arrows are ${wide_em} em wide: too little to tell`);
      assert.ok(Math.abs(squeezed.right - starts[1].x - 3 * em_px) < 0.12 * em_px + 1, `${palette}: 3 em are ${3 * em_px} px, drawn ${squeezed.right - starts[1].x}`);

      const by_browser = await drawn_by_browser(page, places, starts, em_px, paper, ink);
      for (const [script, text] of Object.entries(names)) {
        const i = written.indexOf(text);
        const [ours, theirs] = [extent(i), extent(i, by_browser)];
        assert.ok(ours.count > 8 * [...text].length, `${palette}, ${script}: ${ours.count} pixels of ink`);
        assert.ok(ours.left >= starts[i].x - 0.3 * em_px && ours.right <= starts[i].x + counted(text) + 1, `${palette}, ${script}: within its width: ${JSON.stringify(ours)}`);
        // A browser's own emoji may have colours; ours is its outline filled with ink.
        if (script === 'emoji') assert.ok(ours.right - ours.left > 1.4 * em_px && ours.bottom - ours.top > 0.7 * em_px, `${palette}, ${script}: ${JSON.stringify(ours)}`);
        else for (const side of ['left', 'right', 'top', 'bottom']) assert.ok(Math.abs(ours[side] - theirs[side]) <= 2, `${palette}, ${script}: ${side} ${ours[side]}, the browser's own ${theirs[side]}`);
        const box = (from, row = i) => crop(from, { left: Math.floor(starts[row].x) - 4, top: Math.floor(starts[row].y) - em_px, right: Math.floor(starts[row].x + counted(text)), bottom: Math.floor(starts[row].y) + 0.4 * em_px });
        const apart = share_apart(box(shot), box(by_browser), look.paper);
        assert.ok(script === 'emoji' || apart < 0.25, `${palette}, ${script}: ${apart} of its picture is not as the browser draws it`);
        const from_boxes = share_apart(box(shot), box(shot, written.indexOf(boxes)), look.paper);
        t.diagnostic(`${palette}, ${script}: ${(ours.right - ours.left).toFixed(0)} px wide, counted ${counted(text).toFixed(0)}; differs from the browser's own by ${apart.toFixed(3)}, from what it draws for none by ${from_boxes.toFixed(3)}`);
        assert.ok(from_boxes > 0.5, `${palette}, ${script}: as boxes are: ${from_boxes}`);
      }
    }
  });
}

const minutes = (deg) => `${String(Math.floor(Math.abs(deg))).padStart(2, '0')}°${(Math.abs(deg) % 1 * 60).toFixed(3)}'`;
const sheet_place = ({ lat_deg, lon_deg }) => `sheet/${minutes(lat_deg)}N 0${minutes(lon_deg)}W`;

/// How wide a text is that the browser draws by the page's own typefaces, em.
function natural_em(text) {
  const context = document.createElement('canvas').getContext('2d');
  context.font = '100px B612, sans-serif';
  return context.measureText(text).width / 100;
}

/// The same texts at the same places as the browser's own text, on paper.
async function drawn_by_browser(page, places, starts, em_px, paper, ink) {
  await page.evaluate((texts, at, px, background, ink_colour) => {
    const over = document.createElement('div');
    over.id = 'by-browser';
    Object.assign(over.style, { position: 'fixed', inset: '0', background, color: ink_colour, font: `${px}px B612, sans-serif`, whiteSpace: 'pre', zIndex: '99' });
    texts.forEach((text, i) => {
      const line = document.createElement('bdi');
      line.textContent = text;
      const foot = document.createElement('span');  // stands on the baseline
      Object.assign(foot.style, { display: 'inline-block', width: '0', height: '0' });
      const row = document.createElement('div');
      row.append(line, foot);
      Object.assign(row.style, { position: 'absolute', left: `${at[i].x}px`, top: '0', lineHeight: '2' });
      over.append(row);
      document.body.append(over);
      row.style.top = `${at[i].y - foot.getBoundingClientRect().bottom}px`;
    });
  }, places.map(({ text }) => text), starts, em_px, paper, ink);
  const shot = await resting_picture(page);
  await page.evaluate(() => document.getElementById('by-browser').remove());
  return shot;
}
