// The instruments in each of three engines, by the engine's own mouse and keys: dividers between two marks, the edge set to a
// direction and slid to a mark, a reading written on its leg, the rose moved and sized, rough readings, a note; and each of
// them undone. By finger in Chromium.
import assert from 'node:assert/strict';
import { test } from 'node:test';

import { engines, launch, open_chromium, with_engine } from './lib/engines.mjs';
import { press_part, reason_at, show, typed_in } from './lib/forms.mjs';
import { rhumb, turn_deg } from './lib/geodesy_check.mjs';
import { mouse_hand, place_of, touch_hand, where } from './lib/hands.mjs';
import { figures } from './lib/job.mjs';
import { done, open, read, sheet_of, until } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';

const size = { width: 1180, height: 820 };
const course_deg = 0.1;  // what a drawn leg may be out by: its end is rounded to 0.0001'

const leg_between = ({ legs }, from, to) => legs.find((leg) => leg.from === from && leg.to === to);
const mark_of = ({ marks }, id) => marks.find((mark) => mark.id === id);

/// Undo brings the sheet back as it was, redo as it became.
async function check_undo(page, hand, before) {
  const made = sheet_of(await read(page));
  assert.notDeepEqual(made, sheet_of(before));
  await hand.press('undo');
  assert.deepEqual(sheet_of(await read(page)), sheet_of(before));
  await done(page, 'redo');
  assert.deepEqual(sheet_of(await read(page)), made);
}

/// Types in place of what stands in a field, as a user does, and leaves it.
async function fill(page, hand, name, text) {
  await press_part(page, hand, name);
  await until(page, `${name} has the focus`, (wanted) => document.activeElement?.dataset.name === wanted, name);
  await page.evaluate(() => document.activeElement.select());
  await page.keys(`${text}\n`);
}

async function dividers_read_a_leg(page, hand) {
  const { marks, legs } = await read(page);
  await press_part(page, hand, 'tool/dividers');
  await hand.press(`mark/#${marks[0].id}`);
  await hand.press(`mark/#${marks[1].id}`);
  const { dividers } = await read(page);
  assert.deepEqual(dividers.on, [marks[0].id, marks[1].id], 'both points have snapped');
  const leg = leg_between({ legs }, marks[0].id, marks[1].id);
  assert.equal(dividers.shown.distance, leg.shown.distance, 'to the last figure');
  assert.ok(Math.abs(dividers.distance_nm - rhumb(marks[0], marks[1]).distance_nm) < 0.001, String(dividers.distance_nm));

  // A leg that is dragged takes another mark; the hinge carries both, as they are open.
  await hand.drag('dividers/leg-b', 'mark/Morna Perch');
  const perch = (await read(page)).marks.find((mark) => mark.name === 'Morna Perch');
  const moved = (await read(page)).dividers;
  assert.ok(Math.abs(moved.distance_nm - rhumb(marks[0], perch).distance_nm) < 0.001);
  const hinge = await place_of(page, 'dividers/hinge');
  await hand.drag(hinge, { x: hinge.x + 30, y: hinge.y + 60 });
  const carried = (await read(page)).dividers;
  assert.ok(Math.abs(carried.distance_nm - moved.distance_nm) < 0.01);
  assert.deepEqual(carried.on, []);

  await press_part(page, hand, 'walk-dividers');
  assert.equal((await read(page)).dividers.on_scale, true);
  assert.ok(await where(page, 'dividers/leg-a'), 'they can be seen on the scale');
  await press_part(page, hand, 'walk-dividers');
  await press_part(page, hand, 'lift-dividers');
  assert.equal((await read(page)).dividers, undefined);
}

async function edge_set_and_line_drawn(page, hand) {
  await press_part(page, hand, 'tool/straight-edge');
  await press_part(page, hand, 'begin-direction');
  await press_part(page, hand, 'direction-ring/magnetic');
  await fill(page, hand, 'direction', '360');
  await until(page, 'the reason in place', () => document.querySelector('[data-name=direction]')?.getAttribute('aria-invalid') === 'true');
  assert.ok((await reason_at(page, 'direction')).length > 10);
  assert.equal(await typed_in(page, 'direction'), '360');
  assert.equal((await read(page)).edge, null);
  await fill(page, hand, 'direction', '095');
  const set = await read(page);
  assert.equal(set.edge.shown.magnetic, '095°M');
  assert.equal(set.edge.settled_on, set.roses[0].id);

  // By its body to the mark, not quite: it is to stop there.
  const [start] = set.marks;
  const at = await place_of(page, 'edge/reading');
  const mark = await place_of(page, `sheet/${start.lat_deg.toFixed(6)} ${start.lon_deg.toFixed(6)}`);
  await hand.drag(at, { x: mark.x + 4, y: mark.y + 4 });
  await show(page, 'draw-line');
  assert.ok(Math.abs(turn_deg(set.edge.bearing_true_deg, (await read(page)).edge.bearing_true_deg)) < 1e-9, 'sliding leaves the angle as it was');
  const before = await read(page);
  await press_part(page, hand, 'draw-line');
  const drawn = await read(page);
  const leg = drawn.legs.at(-1);
  assert.equal(leg.from, start.id);
  const course = rhumb(start, mark_of(drawn, leg.to)).course_deg;
  // East is positive: true is magnetic and variation (common practice, no source).
  assert.ok(Math.abs(turn_deg(course, 95 + drawn.variation.used_deg)) < course_deg, String(course));
  await check_undo(page, hand, before);
  await hand.press('undo');
  await done(page, 'lift-edge');
}

async function reading_written_and_stale(page, hand) {
  const { marks, roses } = await read(page);
  await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
  await done(page, 'slide-edge-to', { rose: roses[0].id });
  const before = await read(page);
  await press_part(page, hand, 'write-on-leg');
  const now = await read(page);
  const { written } = leg_between(now, marks[0].id, marks[1].id);
  assert.equal(`${String(written.bearing_deg).padStart(3, '0')}°T`, now.edge.shown.true);
  assert.equal(figures(rhumb(marks[0], marks[1]).course_deg), String(written.bearing_deg).padStart(3, '0'));
  assert.equal(written.stale, false);
  await check_undo(page, hand, before);
  await done(page, 'lift-edge');
  await press_part(page, hand, 'tool/mark');
  const end = await place_of(page, `mark/#${marks[1].id}`);
  await hand.drag(end, { x: end.x + 24, y: end.y - 30 });
  assert.equal(leg_between(await read(page), marks[0].id, marks[1].id).written.stale, true);
  await hand.press('undo');
  assert.equal(leg_between(await read(page), marks[0].id, marks[1].id).written.stale, false);
  await hand.press('undo');
}

async function rose_moved_and_sized(page, hand) {
  await press_part(page, hand, 'tool/rose');
  const before = await read(page);
  const centre = await place_of(page, 'rose/centre');
  await hand.drag(centre, { x: centre.x - 60, y: centre.y - 20 });
  const there = await place_of(page, 'rose/centre');
  assert.ok(Math.hypot(there.x - centre.x + 60, there.y - centre.y + 20) < 2, 'it lies where it was let go');
  await check_undo(page, hand, before);
  const moved = await read(page);
  const handle = await place_of(page, 'rose/size');
  await hand.drag(handle, { x: handle.x - 20, y: handle.y - 20 });
  assert.ok((await read(page)).roses[0].radius_mm < moved.roses[0].radius_mm - 2);
  await check_undo(page, hand, moved);
  await hand.press('undo');
  await hand.press('undo');
}

async function rough_readings(page, hand) {
  await press_part(page, hand, 'more');
  await press_part(page, hand, 'rough-method');
  await press_part(page, hand, 'rough-reading');
  await until(page, 'the field in hand', () => document.activeElement?.dataset.name === 'rough-reading');
  // Three figures are a reading, and the next follows with no other key.
  for (const reading of ['357', '001', '005']) {
    await page.keys(reading);
    await until(page, 'an empty field', () => document.activeElement?.dataset.name === 'rough-reading' && document.activeElement.value === '');
  }
  await until(page, 'three readings', () => document.querySelectorAll('[data-name^="rough-reading/"]').length === 3);
  await until(page, 'their mean', () => document.querySelector('[data-panel=rough-method] .readings')?.innerText.replace(/\s/g, '').startsWith('001°T'));
  await fill(page, hand, 'rough-run', '4.1');
  // The spread is sqrt((16 + 0 + 16) / 2) = 4 degrees: 4.1 sin 4 = 0.29.
  await until(page, 'what that means', () => document.querySelector('[data-panel=rough-method]').innerText.includes('0.3\u00A0nm to either side'));
  await press_part(page, hand, 'close');
}

async function note_written(page, hand) {
  await press_part(page, hand, 'more');
  await press_part(page, hand, 'tool/note');
  const before = await read(page);
  await hand.press("sheet/44°11.6'N 031°18.5'W");
  await press_part(page, hand, 'words');
  await until(page, 'the words in hand', () => document.activeElement?.dataset.name === 'words');
  await page.keys('tide rips');
  await press_part(page, hand, 'write-note');
  await until(page, 'the note', () => window.fogsheet.read().notes.length === 1);
  assert.equal((await read(page)).notes[0].text, 'tide rips');
  await check_undo(page, hand, before);
}

for (const engine of engines) {
  test(`${engine}: the instruments under the mouse`, with_engine(engine, 240_000), async (t) => {
    const site = await open_site();
    const page = await launch(engine, size);
    t.after(async () => {
      await page.close();
      await site.close();
    });
    await open(page, site.url);
    const hand = mouse_hand(page);
    for (const step of [dividers_read_a_leg, edge_set_and_line_drawn, reading_written_and_stale, rose_moved_and_sized, rough_readings, note_written])
      await t.test(step.name.replaceAll('_', ' '), () => step(page, hand));
  });
}

test('chromium: the instruments under the finger', with_engine('chromium', 240_000), async (t) => {
  const site = await open_site();
  const browser = await open_chromium();
  t.after(async () => {
    await browser.close();
    await site.close();
  });
  const page = await browser.open({ width: 820, height: 1180, scale: 2, touch: true, serviceWorkers: 'block' });
  await open(page, site.url);
  const hand = await touch_hand(page);
  for (const step of [dividers_read_a_leg, edge_set_and_line_drawn, reading_written_and_stale, rose_moved_and_sized])
    await t.test(step.name.replaceAll('_', ' '), () => step(page, hand));
});
