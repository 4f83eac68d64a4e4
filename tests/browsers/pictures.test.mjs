// Pictures of every palette on every device, written to build/pictures with an index to look at them by, and checked for
// what a picture alone can tell: each ring there with its graduations, turned as it should be; each role in its colour; at
// night nothing but red, from the first pixel; no part of the page over another. Chromium.
import assert from 'node:assert/strict';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { with_engine } from './lib/engines.mjs';
import { place_of } from './lib/hands.mjs';
import { check_layout } from './lib/layout_check.mjs';
import { along_circle, brightest, circles, colour, distance, picture, rhythm } from './lib/pictures.mjs';
import { done, open, read, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const folder = fileURLToPath(new URL('../../build/pictures/', import.meta.url));

const devices = {
  'tablet-across-1x': { width: 1180, height: 820, scale: 1 },
  'tablet-across-2x': { width: 1180, height: 820, scale: 2, touch: true },
  'tablet-upright-2x': { width: 820, height: 1180, scale: 2, touch: true },
  'phone-3x': { width: 390, height: 844, scale: 3, touch: true },
  'desktop-1x': { width: 1440, height: 900, scale: 1 },
};

// The look's table of colours.
const palettes = {
  day: { table: '#E6E1D6', paper: '#FCFAF4', ink: '#13202A', magenta: '#9A1A63' },
  dusk: { table: '#12171B', paper: '#1E262C', ink: '#E9E1CF', magenta: '#E69AC6' },
  night: { table: '#000000', paper: '#0B0000', ink: '#FF3B22', magenta: '#FF3B22' },
  'high-contrast': { table: '#FFFFFF', paper: '#FFFFFF', ink: '#000000', magenta: '#7A0050' },
};

// What the look shows of each state, by the plates' names.
const states = {
  'first-run': { plates: 'l-first-run-phone, a-sheet-tablet', make: async () => {} },
  edge: { plates: 'a-sheet-tablet, b-sheet-night, b2-sheet-dusk, b3-sheet-high-contrast, m-tablet-portrait', make: settle_edge },
  'new-sheet': { plates: 'o-new-sheet', make: fill_new_sheet },
  lists: { plates: 'p-marks-list', make: (page) => done(page, 'open-slip', { slip: 'lists' }) },
  more: { plates: 'none', make: (page) => done(page, 'open-slip', { slip: 'more' }) },
};

async function settle_edge(page) {
  const { marks, roses } = await read(page);
  await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
  await done(page, 'slide-edge-to', { rose: roses[0].id });
}

async function fill_new_sheet(page) {
  await done(page, 'open-slip', { slip: 'new-sheet' });
  await done(page, 'fill-new-sheet', { field: 'middle', text: '44 10 N 31 20 W' });
}

const night_most = [0xff, 0x6a, 0x52];  // the focus ring's: the brightest that the night has

describe('pictures', with_engine('chromium', 280_000), () => {
  const stage = chromium_on_site();
  const taken = [];
  before(async () => {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
  });
  after(async () => {
    writeFileSync(path.join(folder, 'index.html'), index_of(taken));
  });

  for (const [device, view] of Object.entries(devices)) {
    test(device, async (t) => {
      const page = await stage.browser.open({ ...view, reducedMotion: 'reduce', serviceWorkers: 'block' });
      t.after(page.close);
      await open(page, stage.site.url);
      for (const [state, { plates, make }] of Object.entries(states)) {
        await make(page);
        for (const [palette, colours] of Object.entries(palettes)) {
          await wear(page, palette);
          const png = await page.screenshot();
          const name = `${state}-${palette}-${device}`;
          writeFileSync(path.join(folder, `${name}.png`), png);
          taken.push({ name, state, palette, device, plates, width: view.width });
          const shot = picture(png, view.scale);
          const inks = Object.fromEntries(Object.entries(colours).map(([role, text]) => [role, colour(text)]));
          if (palette === 'night') check_night(shot, name);
          if (state === 'first-run') await check_rose(page, shot, inks, name);
          if (state === 'first-run' && device === 'tablet-across-2x') await check_halo(page, shot, inks, name);
        }
        await check_layout(page, `${state} on ${device}`);
      }
    });
  }

  test('night from the first pixel on, however slowly the page arrives', async (t) => {
    const page = await stage.browser.open({ width: 820, height: 1180, serviceWorkers: 'block' });
    t.after(page.close);
    await open(page, stage.site.url);
    await wear(page, 'night');
    let arrive;
    const held_back = new Promise((resolve) => { arrive = resolve; });
    await page.raw.page.route('**/*.wasm', async (route) => { await held_back; await route.continue(); });

    const frames = await screencast(page, async () => {
      await page.raw.page.reload({ waitUntil: 'commit' });
      await page.raw.page.waitForTimeout(600);
      check_night(picture(await page.screenshot()), 'before the program has come');
      arrive();
      await page.evaluate(() => window.fogsheet.ready);
      await page.raw.page.waitForTimeout(300);
    });
    assert.ok(frames.length >= 2, `${frames.length} frames seen while loading`);
    frames.forEach((frame, i) => check_night(frame, `frame ${i} of loading`));
  });

  test('the palette that the system asks for, until one is chosen: dusk for dark, high contrast for more contrast', async () => {
    for (const [asked, palette] of [[{ colorScheme: 'dark' }, 'dusk'], [{ contrast: 'more' }, 'high-contrast'], [{ colorScheme: 'dark', contrast: 'more' }, 'high-contrast'], [{}, 'day']]) {
      const page = await stage.browser.open({ width: 820, height: 1180, serviceWorkers: 'block', ...asked });
      await open(page, stage.site.url);
      const free = await place_of(page, "sheet/44°06.0'N 031°27.0'W");
      const shot = picture(await page.screenshot());
      assert.ok(distance(shot.at(free), colour(palettes[palette].paper)) < 6, `${JSON.stringify(asked)}: ${shot.at(free)}`);
      await page.close();
    }
  });

  async function wear(page, palette) {
    await done(page, 'set-palette', { palette });
    await until(page, `the ${palette} palette`, (name) => document.documentElement.dataset.palette === name, palette);
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
  }
});

function check_night(shot, name) {
  const most = brightest(shot);
  assert.ok(most.every((value, channel) => value <= night_most[channel]), `${name}: as bright as ${most}, at most ${night_most}`);
}

/// Both rings are there; the outer one graduated about true north, the inner one turned by the variation as used. Figures of
/// the design: true circle at 0.885 of the radius, graduations 0.052 of it long, 0.72 of that each 5°, 0.46 each degree; the
/// magnetic circle at 0.665. Single degrees are left out where they would stand closer than 2 px.
async function check_rose(page, shot, inks, name) {
  const centre = await place_of(page, 'rose/centre');
  const look = { ink: inks.magenta, paper: inks.paper };
  const rings = circles(shot, centre, { ...look, from_px: 30, to_px: 260 });
  assert.equal(rings.length, 2, `${name}: two rings, found ${rings}`);
  const [true_px, magnetic_px] = rings;
  assert.ok(Math.abs(magnetic_px / true_px - 0.665 / 0.885) < 0.02, `${name}: rings of ${true_px} and ${magnetic_px} px`);

  const long = true_px / 0.885 * 0.052;
  const beat = (ring_px, part, count) => rhythm(along_circle(shot, centre, ring_px + part * long, { ...look, steps: 7200 }), count);
  for (const [ring_px, north_deg, ring] of [[true_px, 0, 'true'], [magnetic_px, (await read(page)).variation.used_deg, 'magnetic']]) {
    // Where only the tens reach, 36 strokes and not 18; where the fives reach too, 72 and not 36. What crosses the ring
    // besides (graticule, north sign, figures) adds little to any of them.
    const tens = beat(ring_px, 0.86, 36);
    assert.ok(tens.strength > 0.9 && beat(ring_px, 0.86, 18).strength < 0.5, `${name}: graduations of 10° on the ${ring} ring: ${tens.strength}`);
    const off_deg = ((tens.phase_deg - north_deg + 15) % 10 + 10) % 10 - 5;
    assert.ok(Math.abs(off_deg) < 0.3, `${name}: the ${ring} ring is ${off_deg}° out of its place`);
    const [fives, alternate] = [72, 36].map((count) => beat(ring_px, 0.6, count).strength);
    assert.ok(fives > 0.9 && alternate < fives / 2, `${name}: graduations of 5° on the ${ring} ring: ${fives}, ${alternate}`);
    if (ring === 'magnetic') continue;  // its degrees are drawn by the same rule, but stand closer
    // With single degrees the fives' rhythm drowns in theirs.
    const drawn = beat(ring_px, 0.3, 72).strength < 1 && beat(ring_px, 0.3, 360).strength > 0.45;
    const least_px = 2, margin_px = 0.05;
    const apart_px = ring_px * Math.PI / 180;
    if (Math.abs(apart_px - least_px) > margin_px) assert.equal(drawn, apart_px > least_px, `${name}: single degrees ${apart_px} px apart`);
  }
}

/// Text stands clear of what it crosses: the meridian that runs through the title's lines is broken there by paper, and is
/// whole where nothing is written on it.
async function check_halo(page, shot, inks, name) {
  const broken = async (from_lat, to_lat) => {
    const [from, to] = [await place_of(page, `sheet/44°${from_lat}'N 031°25.0'W`), await place_of(page, `sheet/44°${to_lat}'N 031°25.0'W`)];
    const rows = Array.from({ length: Math.floor((to.y - from.y) * shot.scale) }, (_, i) => from.y + i / shot.scale);
    const is_paper = (y) => [-0.5, 0, 0.5].every((aside) => distance(shot.at({ x: from.x + aside, y }), inks.paper) < 24);
    return rows.filter(is_paper).length / rows.length;
  };
  const [written, bare] = [await broken('13.5', '12.7'), await broken('08.0', '07.2')];
  assert.ok(written > 0.08 && bare < 0.03, `${name}: the meridian is broken over ${written} of the title's height, over ${bare} elsewhere`);
}

/// What the browser showed while `act` ran, frame by frame.
async function screencast(page, act) {
  const cdp = await page.raw.context.newCDPSession(page.raw.page);
  const frames = [];
  cdp.on('Page.screencastFrame', ({ data, sessionId }) => {
    frames.push(picture(Buffer.from(data, 'base64')));
    cdp.send('Page.screencastFrameAck', { sessionId }).catch(() => {});
  });
  await cdp.send('Page.startScreencast', { format: 'png', everyNthFrame: 1 });
  await act();
  await cdp.send('Page.stopScreencast');
  return frames;
}

function index_of(taken) {
  const plates = (state) => `<p>plates: ${states[state].plates}</p>`;
  const figure = ({ name, palette, device, width }) =>
    `<figure><a href="${name}.png"><img src="${name}.png" width="${Math.round(width * 0.45)}" alt="${name}" loading="lazy"></a><figcaption>${palette}, ${device}</figcaption></figure>`;
  const section = (state) => `<h2>${state}</h2>${plates(state)}${taken.filter((each) => each.state === state).map(figure).join('\n')}`;
  return `<!doctype html><meta charset="utf-8"><title>Pictures</title><style>body{font:15px sans-serif;background:#888}figure{display:inline-block;margin:8px}</style>
${Object.keys(states).map(section).join('\n')}\n`;
}
