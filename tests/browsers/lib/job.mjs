// The job itself, done by a hand and checked against the world outside: lay the straight-edge along the demo's middle leg,
// slide it to the rose, read both rings.
import assert from 'node:assert/strict';

import { rhumb, turn_deg } from './geodesy_check.mjs';
import { place_of, where } from './hands.mjs';
import { read, text_of, until } from './sheet.mjs';

/// Sizes in CSS pixels and device pixels a CSS pixel, as a tablet, a phone and a desktop have them.
export const views = {
  'tablet across': { width: 1180, height: 820, scale: 1 },
  'tablet upright': { width: 820, height: 1180, scale: 2, touch: true },
  phone: { width: 390, height: 844, scale: 3, touch: true },
  'phone across': { width: 844, height: 390, scale: 3, touch: true },
  desktop: { width: 1440, height: 900, scale: 1 },
};

const lining_up_deg = 0.3;  // what a hand that snaps to marks may be out by

/// Direction figures as a sheet shows them: three, halves up, 360 is 000 (design's rule; common practice).
export const figures = (deg) => String(Math.floor(deg + 0.5) % 360).padStart(3, '0');

/// The ids of the marks that the demo's middle leg joins.
export async function middle_leg(page) {
  const { marks } = await read(page);
  return [`mark/#${marks[0].id}`, `mark/#${marks[1].id}`];
}

export async function lay_edge(page, hand) {
  const [from, to] = await middle_leg(page);
  if (!(await holds_tool(page, 'straight-edge'))) await hand.press('tool/straight-edge');
  await hand.press(from);
  await hand.press(to);
}

const holds_tool = (page, tool) => page.evaluate((name) => document.querySelector(`[data-name="tool/${name}"]`).getAttribute('aria-pressed') === 'true', tool);

/// Does the whole job and checks what is read.
export async function do_the_job(page, hand) {
  await lay_edge(page, hand);
  const laid = await read(page);
  assert.deepEqual(laid.edge.on, [laid.marks[0].id, laid.marks[1].id], 'both ends have snapped');
  assert.equal(laid.edge.settled_on, null);
  assert.deepEqual(laid.edge.shown, {}, 'nothing is read before the edge has settled');

  await hand.drag('edge/reading', 'rose/centre');
  const settled = await read(page);
  assert.equal(settled.edge.settled_on, settled.roses[0].id);
  assert.equal(settled.edge.locked, true);
  assert.ok(Math.abs(turn_deg(laid.edge.bearing_true_deg, settled.edge.bearing_true_deg)) < 1e-9, 'sliding leaves the angle as it was');
  check_reading(settled);
  await check_slip(page, settled);
  return settled;
}

/// The edge's bearing against the rhumb line worked out here, and the figures shown against the bearing.
export function check_reading({ marks, edge, variation }) {
  const { course_deg } = rhumb(marks[0], marks[1]);
  assert.ok(Math.abs(turn_deg(course_deg, edge.bearing_true_deg)) <= lining_up_deg, `${edge.bearing_true_deg} for ${course_deg}`);
  // East is positive, and is taken from true (common practice, no source).
  assert.ok(Math.abs(turn_deg(edge.bearing_true_deg - variation.used_deg, edge.bearing_magnetic_deg)) < 1e-9);
  assert.equal(edge.shown.true, `${figures(edge.bearing_true_deg)}°T`);
  assert.equal(edge.shown.magnetic, `${figures(edge.bearing_magnetic_deg)}°M`);
  assert.equal(edge.shown.back_true, `${figures((edge.bearing_true_deg + 180) % 360)}°T`);
}

/// The slip shows the reading, and its sum adds up as it stands there.
export async function check_slip(page, { edge }) {
  const rows = await until(page, 'the sum in the slip', () => {
    const shown = [...document.querySelectorAll('table[data-name=chain] tr')];
    const cell = (row, name) => row.querySelector(`.${name}`)?.textContent ?? '';
    return shown.length > 0 && shown.map((row) => ({ word: row.querySelector('th bdi').textContent, sign: cell(row, 'sign'), figures: cell(row, 'figures'), letter: cell(row, 'letter') }));
  });
  const row = (word) => rows.find((each) => each.word === word);
  const correction = Number(row('variation').figures) * { '+': 1, '−': -1, '': 0 }[row('variation').sign];
  assert.equal((Number(row('true').figures) + correction + 360) % 360, Number(row('magnetic').figures) % 360, 'the sum adds up');
  assert.equal(row('true').figures + row('true').letter, edge.shown.true);
  assert.equal(row('magnetic').figures + row('magnetic').letter, edge.shown.magnetic);
  // West is best: what stands west is added to true (common practice, no source).
  if (correction !== 0) assert.equal(row('variation').letter.at(-1), correction > 0 ? 'W' : 'E');
  const large = (await text_of(page, '[data-panel=straight-edge] .readings')).replace(/\s/g, '');
  assert.ok(large.includes(edge.shown.true) && large.includes(edge.shown.magnetic), `both rings are read out: ${large}`);
}

/// Fails unless each of these things can be pressed now.
export async function check_uncovered(page, ...names) {
  for (const name of names) {
    assert.ok(await where(page, name), `${name} is covered or off the screen`);
    const at = await place_of(page, name);
    const hit = await page.evaluate(({ x, y }) => document.elementFromPoint(x, y)?.localName, at);
    assert.equal(hit, 'canvas', `something lies over ${name}`);
  }
}
