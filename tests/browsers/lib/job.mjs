// The main job, as a user does it: the straight-edge on two marks, slid to the rose, read on both rings.
import assert from 'node:assert/strict';
import { apart_deg, rhumb_course_deg } from './earth.mjs';
import { hand, middle_of, read } from './product.mjs';

const direction = (deg) => String(Math.floor(deg + 0.5) % 360).padStart(3, '0');

export async function do_the_job(page, { touch = false } = {}) {
  const finger = hand(page, { touch });
  const { marks: [from, to] } = await read(page);
  await finger.press(await middle_of(page, 'tool/straight-edge'));
  await finger.press(await middle_of(page, `mark/#${from.id}`));
  await finger.press(await middle_of(page, `mark/#${to.id}`));
  const laid = (await read(page)).edge;
  assert.deepEqual(laid.on, [from.id, to.id], 'both ends snapped to their marks');
  assert.equal(laid.settled_on, null);
  assert.deepEqual(laid.shown, {}, 'nothing is read before the edge lies on a rose');

  await finger.drag(await middle_of(page, 'edge/reading'), await middle_of(page, 'rose/centre'));
  const after = await read(page);
  assert.equal(after.edge.settled_on, after.roses[0].id, 'settled on the rose');
  assert.equal(after.edge.locked, true);
  assert.ok(Math.abs(after.edge.bearing_true_deg - laid.bearing_true_deg) < 1e-9, 'sliding leaves the angle alone');
  const course_deg = rhumb_course_deg(from, to);
  assert.ok(apart_deg(after.edge.bearing_true_deg, course_deg) <= 0.3, `${after.edge.bearing_true_deg} is the rhumb ${course_deg}`);
  assert.equal(after.edge.shown.true, `${direction(after.edge.bearing_true_deg)}°T`);

  const sum = await chain_of(page);
  assert.equal(sum.true, after.edge.shown.true);
  assert.equal(sum.magnetic, after.edge.shown.magnetic);
  const east = after.variation.used_deg;
  assert.equal(direction(parseInt(sum.true) - east + 360), sum.magnetic.slice(0, 3), 'the sum on screen adds up');
  return after;
}

/// The sum as it stands on the page: {true: '096°T', variation: '9°W', magnetic: '105°M', ...}.
export const chain_of = (page) => page.evaluate(() => {
  const rows = {};
  for (const row of document.querySelectorAll('[data-name="chain"] tr')) {
    const word = row.querySelector('th bdi').textContent;
    rows[word] = [...row.querySelectorAll('td:not(.sign)')].map((cell) => cell.textContent).join('');
  }
  return rows;
});
