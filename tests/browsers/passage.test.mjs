// The passage in real browsers: three legs with a stream from nothing to a printed card, by presses that are counted; a mark
// moved; all undone; what is entered wrongly; the way as it is run. Courses and speeds against the triangle worked out here.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { by_pad, press_part, reason_at, typed_in, type_into } from './lib/forms.mjs';
import { rhumb, turn_deg } from './lib/geodesy_check.mjs';
import { counting, mouse_hand, touch_hand, where } from './lib/hands.mjs';
import { views } from './lib/job.mjs';
import { command, done, kept, open, open_again, read, text_of, until } from './lib/sheet.mjs';
import { chromium_on_site, page_on_site } from './lib/stage.mjs';

const most_presses = 40;
const radians = Math.PI / 180;
const stream = { set_deg: 352, drift_kn: 0.7 };
const speed_kn = 5;

let folder;
before(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'fogsheet-passage-')); });
after(() => rmSync(folder, { recursive: true, force: true }));

/// Course through the water and speed over the ground along a track, by the sine rule (plane trigonometry).
function triangle(track_deg) {
  const off = (stream.set_deg - track_deg) * radians;
  const crab = Math.asin((stream.drift_kn / speed_kn) * Math.sin(off));
  return { water_deg: track_deg - crab / radians, over_ground_kn: speed_kn * Math.cos(crab) + stream.drift_kn * Math.cos(off) };
}

function check_courses({ marks, passage }) {
  const mark = (id) => marks.find((each) => each.id === id);
  for (const leg of passage.legs) {
    const { course_deg } = rhumb(mark(leg.from), mark(leg.to));
    const wanted = triangle(course_deg);
    assert.ok(Math.abs(turn_deg(leg.water_track_deg, wanted.water_deg)) < 0.01, `${leg.water_track_deg} for ${wanted.water_deg}`);
    assert.ok(Math.abs(leg.speed_over_ground_kn - wanted.over_ground_kn) < 0.002);
    const hours = (Date.parse(leg.arrival) - Date.parse(leg.departure)) / 3.6e6;
    assert.ok(Math.abs(hours - leg.distance_nm / wanted.over_ground_kn) < 2 / 3600, 'the time is distance by speed');
  }
}

describe('passage', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();
  const fresh = async (view) => {
    const page = await stage.browser.open(view);
    await open(page, stage.site.url);
    return { page, hand: counting(view.touch ? await touch_hand(page) : mouse_hand(page)) };
  };

  const prints = async (page) => {
    await page.evaluate(() => { window.printed = 0; window.print = () => { window.printed += 1; }; });
  };

  for (const [size, view] of Object.entries({ tablet: views['tablet upright'], phone: views.phone }))
    test(`three legs with a stream, from nothing to the printed card, by touch on a ${size}`, async () => {
      const { page, hand } = await fresh(view);
      await done(page, 'new-sheet', { mid_lat_deg: 44.15, mid_lon_deg: -31.33, scale: 100000, paper: 'A4-across' });
      await done(page, 'fit');
      await prints(page);
      const before_all = await read(page);
      await press_part(page, hand, 'tool/leg');
      for (const place of ["44°11.5'N 031°26.0'W", "44°13.0'N 031°22.0'W", "44°12.2'N 031°17.0'W", "44°13.3'N 031°13.5'W"]) {
        if (await where(page, `sheet/${place}`) === null) await press_part(page, hand, 'close');  // a phone's slip lies over it
        await hand.press(`sheet/${place}`);
      }
      await until(page, 'three legs', () => window.fogsheet.read().legs.length === 3);
      await press_part(page, hand, 'passage');
      await press_part(page, hand, 'make-passage');
      await by_pad(page, hand, 'speed', '5');
      await by_pad(page, hand, 'time', '0640');
      await press_part(page, hand, 'stream/kind/steady');
      await by_pad(page, hand, 'stream/set', '352');
      await by_pad(page, hand, 'stream/drift', '0.7');
      await press_part(page, hand, 'to-card');
      await press_part(page, hand, 'print-passage-card');
      await until(page, 'it is printed', () => window.printed === 1);
      assert.ok(hand.presses < most_presses, `${hand.presses} presses`);
      console.log(`presses on a ${size}: ${hand.presses}`);
      const planned = await read(page);
      assert.equal(planned.passage.legs.length, 3);
      check_courses(planned);
      await shot(page, `card-${size}`);

      // A mark that is moved, and all undone.
      const turn = planned.passage.legs[0].to;
      await done(page, 'move-mark', { id: turn, lat_deg: planned.marks.find((mark) => mark.id === turn).lat_deg + 0.01, lon_deg: planned.marks.find((mark) => mark.id === turn).lon_deg });
      const moved = await read(page);
      check_courses(moved);
      assert.notEqual(moved.passage.legs[0].shown.expect + moved.passage.legs[0].distance_nm, planned.passage.legs[0].shown.expect + planned.passage.legs[0].distance_nm);
      const shown = await text_of(page, '[data-name="passage-legs"]');
      assert.ok(shown.includes(moved.passage.legs[2].shown.expect), 'the card follows');
      for (let steps = 0; steps < 60 && (await read(page)).legs.length + (await read(page)).marks.length > 0; steps += 1) await command(page, 'undo');
      assert.deepEqual((await read(page)).passage, {});
      assert.deepEqual((await read(page)).marks, before_all.marks);
      await page.close();
    });

  test('the card is one page of text with every figure of the screen, on A4, Letter and A6', async () => {
    const { page } = await fresh(views.desktop);
    await plan_demo(page);
    for (const [format, size] of Object.entries({ A4: 'page', Letter: 'page', A6: 'small' })) {
      await prints(page);
      await done(page, 'print-passage-card', { size });
      const small = size === 'small';
      const found = pdf_of(await page.raw.page.pdf(small ? { preferCSSPageSize: true } : { format }), `card-${format}`);
      assert.equal(found.pages, 1, format);
      if (small) assert.ok(Math.abs(found.width_pt - 105 / 25.4 * 72) < 1 && Math.abs(found.height_pt - 148 / 25.4 * 72) < 1, 'A6');
      await check_printed(page, found.text, small);
    }
    await page.close();
  });

  test('bad entries: a reason in place, what was typed stays, the passage as it was', async () => {
    const { page, hand } = await fresh(views['tablet across']);
    await plan_demo(page);
    await done(page, 'open-slip', { slip: 'passage-details' });
    const before_all = await read(page);
    for (const [field, text, reason] of [['speed', '0', /out of range/], ['speed', '-3', /./], ['time', '2570', /Hours|Minutes/], ['stream/set', '400', /no direction/], ['leeway', '3', /wind/]]) {
      await type_into(page, hand, field, text);
      await until(page, `a reason at ${field}`, (name) => document.querySelector(`[data-name="${name}"]`)?.closest('.field')?.classList.contains('bad'), field);
      assert.match(await reason_at(page, field), reason, `${field} ${text}`);
      assert.equal(await typed_in(page, field), text);
      assert.deepEqual((await read(page)).passage, before_all.passage);
    }
    await kept(page);
    await open_again(page, stage.site.url);
    assert.equal(await typed_in(page, 'stream/set'), '400', 'over a reload too');
    await page.close();
  });

  test('a name that would turn the direction of writing turns no figure after it', async () => {
    const { page } = await fresh(views['tablet across']);
    const { marks } = await read(page);
    await done(page, 'add-mark', { name: 'Rock\u202E', lat_deg: marks[0].lat_deg + 0.002, lon_deg: marks[0].lon_deg, kind: 'danger', radius_nm: 0.1 });
    await done(page, 'make-passage');
    for (const [field, text] of Object.entries({ speed: '5', time: '0640' })) await done(page, 'type-passage', { field, text });
    await done(page, 'open-slip', { slip: 'passage' });
    const places = await until(page, 'the danger', () => {
      const text = [...document.querySelectorAll('[data-panel=passage] .advice')].map((part) => part.firstChild).find((part) => /\snm to /.test(part?.data));
      const range = document.createRange();
      return text && [...text.data].map((character, i) => {
        range.setStart(text, i);
        range.setEnd(text, i + 1);
        const { left, top } = range.getBoundingClientRect();
        return { character, left, top };
      }).filter(({ character }) => /\d/.test(character));
    });
    assert.ok(places.length > 8);
    for (const [i, place] of places.entries()) assert.ok(i === 0 || place.top > places[i - 1].top || place.left > places[i - 1].left, `figure ${i} stands before the one before it`);
    await page.close();
  });

  test('under way: leave, three ends of legs, back again, touch locked, the deck log', async () => {
    const { page, hand } = await fresh(views.phone);
    await plan_demo(page);
    await done(page, 'open-slip', { slip: 'next-leg' });
    await until(page, 'the next leg', () => document.querySelector('[data-panel="next-leg"]') !== null);
    await shot(page, 'next-leg-phone-before');
    // A short press does nothing: it must be held.
    await press_part(page, hand, 'depart');
    assert.equal((await read(page)).passage.under_way.departed, false);
    await hold_part(page, 'depart');
    await until(page, 'left', () => window.fogsheet.read().passage.under_way.departed);
    await shot(page, 'next-leg-phone');
    assert.match(await text_of(page, '[data-panel="next-leg"]'), /Leg 1 of 3/);
    await command(page, 'end-leg', { how: 'seen', time: '2570' });
    await until(page, 'the reason on the screen', () => document.querySelector('#margin .caution')?.getBoundingClientRect().top >= 0);
    await command(page, 'type-deck', { field: 'time', text: '' });
    await hold_part(page, 'end-leg/seen');
    await until(page, 'leg 2', () => window.fogsheet.read().passage.under_way.leg === 1);
    await hold_part(page, 'end-leg/not-seen');
    await until(page, 'leg 3', () => window.fogsheet.read().passage.under_way.leg === 2);
    await press_part(page, hand, 'back-a-leg');
    await until(page, 'leg 2 again', () => window.fogsheet.read().passage.under_way.leg === 1);
    await press_part(page, hand, 'lock-touch');
    await until(page, 'touch is locked', () => document.querySelector('#slip section')?.inert === true);
    // The slip takes all of a phone: the bar that opens lies over it.
    await hold_part(page, 'unlock-touch');
    await until(page, 'touch is open', () => document.querySelector('#slip section')?.inert === false);
    await page.close();
  });

  test('screens of the passage, to be looked at', { skip: !process.env.FOGSHEET_PICTURES }, async () => {
    for (const [size, view] of Object.entries(views)) {
      const { page } = await fresh(view);
      await plan_demo(page);
      for (const slip of ['passage', 'passage-details', 'stream', 'next-leg', 'deck-log']) {
        if ((await page.evaluate((name) => document.querySelector(`[data-panel="${name}"]`) === null, slip))) await done(page, 'open-slip', { slip });
        for (const palette of ['day', 'night']) {
          await done(page, 'set-palette', { palette });
          await shot(page, `${slip}-${size.replace(' ', '-')}-${palette}`);
        }
      }
      await done(page, 'open-passage-leg', { leg: 1 });
      await shot(page, `passage-leg-${size.replace(' ', '-')}`);
      await done(page, 'depart');
      await done(page, 'open-slip', { slip: 'next-leg' });
      await shot(page, `under-way-${size.replace(' ', '-')}`);
      await page.close();
    }
  });
});

test('firefox prints the card on one page with every figure of the screen', with_engine('firefox', 120_000), async (t) => {
  const { page, site } = await page_on_site(t, 'firefox', { width: 1440, height: 900 });
  await open(page, site.url);
  await plan_demo(page);
  await page.evaluate(() => { window.print = () => {}; });
  for (const format of ['A4', 'Letter']) {
    await done(page, 'print-passage-card');
    const found = pdf_of(await page.raw.page.pdf({ format, margin: { top: '12mm', bottom: '12mm', left: '12mm', right: '12mm' } }), `firefox-card-${format}`);
    assert.equal(found.pages, 1, format);
    await check_printed(page, found.text, false);
  }
});

/// The demo's legs, at 5 kn from 0640 in that stream, with all that a card can tell.
async function plan_demo(page) {
  await done(page, 'use-no-deviation');
  await done(page, 'make-passage');
  const { marks } = await read(page);
  const landmark = marks.find((mark) => mark.kind === 'landmark').id;
  const fields = { speed: '5', time: '0640', zone: 'UTC+1', date: '2026-06-20', 'stream/kind': 'steady', 'stream/set': '352', 'stream/drift': '0.7', 'stream/source': 'tidal atlas',
    visibility: '0.5', 'home-time': '1700', 'tide/0/time': '0512', 'tide/0/height': '4.1', 'turn-back': 'Sarn Beacon is not seen by 0733', 'leg/0/leave': landmark, 'leg/0/side': 'port', 'leg/0/distance': '0.4', 'leg/1/look-for': 'lattice post' };
  for (const [field, text] of Object.entries(fields)) await done(page, 'type-passage', { field, text });
  await done(page, 'close-slip');
}

async function hold_part(page, name) {
  await page.evaluate((wanted) => document.querySelector(`[data-name="${wanted}"]`).scrollIntoView({ block: 'nearest' }), name);
  const { x, y, width, height } = await until(page, `${name} in reach`, (wanted) => window.fogsheet.where(wanted), name);
  const cdp = await page.raw.context.newCDPSession(page.raw.page);
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x: x + width / 2, y: y + height / 2, id: 1, force: 0.5 }] });
  await new Promise((then) => { setTimeout(then, 1100); });
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

function pdf_of(bytes, name) {
  const file = path.join(folder, `${name}.pdf`);
  writeFileSync(file, bytes);
  const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
  const text = execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' });
  if (process.env.FOGSHEET_PICTURES) {
    mkdirSync(process.env.FOGSHEET_PICTURES, { recursive: true });
    writeFileSync(path.join(process.env.FOGSHEET_PICTURES, `${name}.png`), execFileSync('pdftoppm', ['-png', '-r', '100', '-f', '1', '-l', '1', file], { maxBuffer: 1 << 26 }));
  }
  const [, width_pt, height_pt] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info).map(Number);
  return { pages: Number(/Pages:\s+(\d+)/.exec(info)[1]), width_pt, height_pt, text };
}

/// Every course, distance, time and window that the screen's card shows is in the text.
async function check_printed(page, text, small) {
  const plain = (words) => words.replace(/\s+/g, '');
  const printed = plain(text);
  const { passage, marks } = await read(page);
  for (const leg of passage.legs) {
    const wanted = [leg.shown.hold.slice(0, 3), leg.shown.expect, leg.shown.window, marks.find((mark) => mark.id === leg.to).name, leg.distance_nm.toFixed(1)];
    if (!small) wanted.push(leg.shown.sum);
    for (const words of wanted) assert.ok(printed.includes(plain(words)), words);
  }
  if (small) return;
  for (const leg of passage.home.legs) for (const words of [leg.shown.hold, leg.shown.expect]) assert.ok(printed.includes(plain(words)), `home: ${words}`);
  for (const words of ['leave Pellow Quay to port', 'lattice post', 'visibility 0.5 nm', 'HW 0512 4.1 m', 'tidal atlas', 'Turn back if', 'lookout', 'UTC+1', 'WGS84'].slice(1)) assert.ok(printed.includes(plain(words)), words);
}

async function shot(page, name) {
  if (!process.env.FOGSHEET_PICTURES) return;
  mkdirSync(process.env.FOGSHEET_PICTURES, { recursive: true });
  await new Promise((then) => { setTimeout(then, 300); });
  await page.raw.page.screenshot({ path: path.join(process.env.FOGSHEET_PICTURES, `${name}.png`) });
}
