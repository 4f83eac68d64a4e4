// What each tool does under a real mouse, and that every act on the sheet can be taken back and done again (look.md's table
// of presses; Chromium).
import assert from 'node:assert/strict';
import { before, beforeEach, describe, test } from 'node:test';

import { turn_deg } from './lib/geodesy_check.mjs';
import { with_engine } from './lib/engines.mjs';
import { mouse_hand, place_of, where } from './lib/hands.mjs';
import { do_the_job, lay_edge } from './lib/job.mjs';
import { open, read, sheet_of, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const empty_place = "sheet/44°11.50'N 031°22.50'W";
const other_empty_place = "sheet/44°12.50'N 031°17.50'W";

describe('gestures', with_engine('chromium', 120_000), () => {
  const stage = chromium_on_site();
  let page;
  let hand;
  before(async () => {
    page = await stage.browser.open({ width: 1180, height: 820, serviceWorkers: 'block' });
    hand = mouse_hand(page);
  });
  beforeEach(() => open(page, stage.site.url));  // the sheet to try, as at the first visit

  const key = (name) => page.raw.page.keyboard.press(name);

  /// Undo brings the sheet back as it was, redo as it became: by the tray, and by keys.
  async function check_undo(before_act) {
    const made = await read(page);
    assert.notDeepEqual(sheet_of(made), sheet_of(before_act));
    await hand.press('undo');
    assert.deepEqual(sheet_of(await read(page)), sheet_of(before_act));
    await hand.press('redo');
    assert.deepEqual(sheet_of(await read(page)), sheet_of(made));
    await key('Control+z');
    assert.deepEqual(sheet_of(await read(page)), sheet_of(before_act));
    await key('Control+y');
    assert.deepEqual(sheet_of(await read(page)), sheet_of(made));
  }

  test('a mark by a press', async () => {
    const fresh = await read(page);
    await hand.press('tool/mark');
    await hand.press(empty_place);
    const made = await read(page);
    assert.equal(made.marks.length, fresh.marks.length + 1);
    // A CSS pixel is some 0.016' of latitude at this size, and where() gives whole hundredths of a minute.
    const added = made.marks.at(-1);
    assert.ok(Math.abs(added.lat_deg - (44 + 11.5 / 60)) < 0.02 / 60, String(added.lat_deg));
    assert.ok(Math.abs(added.lon_deg + 31 + 22.5 / 60) < 0.03 / 60, String(added.lon_deg));
    await check_undo(fresh);
  });

  test('a mark is dragged with the mark tool', async () => {
    const fresh = await read(page);
    await hand.press('tool/mark');
    await hand.drag('mark/Sarn Beacon', empty_place);
    const moved = (await read(page)).marks.find((mark) => mark.name === 'Sarn Beacon');
    assert.ok(Math.abs(moved.lat_deg - (44 + 11.5 / 60)) < 0.02 / 60, String(moved.lat_deg));
    await check_undo(fresh);
  });

  test('with no tool a mark moves only after a hold; else the sheet pans', async () => {
    const fresh = await read(page);
    const start = await place_of(page, 'mark/Morna Perch');
    await hand.drag(start, { x: start.x + 40, y: start.y + 30 });
    assert.deepEqual(sheet_of(await read(page)), sheet_of(fresh));
    const panned = await place_of(page, 'mark/Morna Perch');
    assert.ok(Math.hypot(panned.x - start.x - 40, panned.y - start.y - 30) < 2, 'the sheet came along');

    await page.down(panned);
    await page.raw.page.waitForTimeout(380);  // a hold is 0.3 s
    await page.move({ x: panned.x + 60, y: panned.y + 60 });
    await page.up({ x: panned.x + 60, y: panned.y + 60 });
    await check_undo(fresh);
  });

  test('a leg by a drag from a mark, and by presses', async () => {
    const fresh = await read(page);
    await hand.press('tool/leg');
    await hand.drag('mark/Off Pellow', 'mark/Morna Perch');
    const { legs, marks } = await read(page);
    const id_of = (name) => marks.find((mark) => mark.name === name).id;
    assert.equal(legs.at(-1).from, id_of('Off Pellow'));
    assert.equal(legs.at(-1).to, id_of('Morna Perch'));
    await check_undo(fresh);
    const with_leg = await read(page);
    await hand.press(other_empty_place);
    const grown = await read(page);
    assert.equal(grown.legs.length, with_leg.legs.length + 1);
    assert.equal(grown.legs.at(-1).from, id_of('Morna Perch'), 'a press goes on from the last turn');
    assert.equal(grown.marks.length, with_leg.marks.length + 1);
    await check_undo(with_leg);
  });

  test('the edge by one drag; each end snaps', async () => {
    await hand.press('tool/straight-edge');
    await hand.drag('mark/Off Sarn', other_empty_place);
    const { edge, marks } = await read(page);
    assert.deepEqual(edge.on, [marks[0].id]);
    await key('Escape');
    assert.equal((await read(page)).edge, null);
    await hand.drag('mark/Off Sarn', 'mark/Off Gannet');
    assert.deepEqual((await read(page)).edge.on, [marks[0].id, marks[1].id]);
  });

  test('the edge starts on nothing as well', async () => {
    await hand.press('tool/straight-edge');
    await hand.drag(empty_place, other_empty_place);
    const { edge } = await read(page);
    assert.deepEqual(edge.on, []);
    assert.equal(edge.locked, false);
  });

  test('a dragged end turns the edge, and a second rose reading follows only after it has settled again', async () => {
    await do_the_job(page, hand);
    const settled = await read(page);
    const end = await place_of(page, 'edge/end-b');
    await hand.drag('edge/end-b', { x: end.x - 20, y: end.y + 70 });
    const turned = await read(page);
    assert.ok(turn_deg(settled.edge.bearing_true_deg, turned.edge.bearing_true_deg) > 5, 'dragged down at its right end, it turns clockwise');
    assert.equal(turned.edge.locked, false);
    assert.equal(turned.edge.settled_on, null);
    assert.deepEqual(turned.edge.shown, {});
    await hand.drag('edge/reading', 'rose/centre');
    const again = await read(page);
    assert.equal(again.edge.settled_on, again.roses[0].id);
    assert.ok(Math.abs(turn_deg(turned.edge.bearing_true_deg, again.edge.bearing_true_deg)) < 1e-9);
  });

  test('a slide away lifts it off the rose; the arrow and the slip turn it round', async () => {
    await do_the_job(page, hand);
    const settled = (await read(page)).edge;
    for (const way of ['edge/arrow', 'turn-edge-round']) {
      await hand.press(way);
      const round = (await read(page)).edge;
      assert.ok(Math.abs(Math.abs(turn_deg(settled.bearing_true_deg, round.bearing_true_deg)) - 180) < 1e-9, way);
      assert.equal(round.shown.true, settled.shown.back_true);
      assert.equal(round.shown.back_true, settled.shown.true);
      await hand.press(way);
    }
    assert.deepEqual((await read(page)).edge, settled);
    const at = await place_of(page, 'edge/reading');
    await hand.drag(at, { x: at.x + 10, y: at.y - 80 });
    const lifted = (await read(page)).edge;
    assert.equal(lifted.settled_on, null);
    assert.equal(lifted.locked, true);
    assert.deepEqual(lifted.shown, {});
  });

  test('undo and redo leave the edge where it lies', async () => {
    await hand.press('tool/mark');
    await hand.press(empty_place);
    await do_the_job(page, hand);
    const { edge } = await read(page);
    await hand.press('undo');
    assert.deepEqual((await read(page)).edge, edge);
    await hand.press('redo');
    assert.deepEqual((await read(page)).edge, edge);
  });

  test('undo takes off an end that stood on a mark which it takes away', async () => {
    await hand.press('tool/mark');
    await hand.press(empty_place);
    const { marks } = await read(page);
    await hand.press('tool/straight-edge');
    await hand.press(`mark/#${marks.at(-1).id}`);
    await hand.press('mark/Off Gannet');
    assert.deepEqual((await read(page)).edge.on, [marks.at(-1).id, marks[1].id]);
    await hand.press('undo');
    const { edge, marks: fewer } = await read(page);
    assert.ok(edge === null || edge.on.every((id) => fewer.some((mark) => mark.id === id)), 'an edge never stands on a mark that is gone');
  });

  test('Esc takes the edge off, then puts the tool down', async () => {
    await lay_edge(page, hand);
    // Panels are painted with the next frame, not within the press.
    const in_hand = (pressed) => until(page, `the tool to be ${pressed ? 'in hand' : 'put down'}`,
      (wanted) => document.querySelector('[data-name="tool/straight-edge"]').getAttribute('aria-pressed') === wanted, String(pressed));
    await in_hand(true);
    await key('Escape');
    assert.equal((await read(page)).edge, null);
    await in_hand(true);
    await key('Escape');
    await in_hand(false);
  });

  test('Esc during a drag throws it away', async () => {
    await do_the_job(page, hand);
    const settled = (await read(page)).edge;
    const at = await place_of(page, 'edge/reading');
    const drag = await hand.hold(at, { x: at.x, y: at.y - 120 });
    await key('Escape');
    await drag.let_go();
    assert.deepEqual((await read(page)).edge, settled, 'what lay there lies there again');
  });

  test('a press on a mark with no tool selects it, a press on nothing lets go of it', async () => {
    await hand.press('mark/Gannet Post');
    const slip_names_it = () => document.getElementById('slip').innerText.includes('Gannet Post');
    await until(page, 'the slip of the mark', slip_names_it);
    await hand.press(empty_place);
    await until(page, 'the slip to close', `() => !(${slip_names_it})()`);
  });

  test('wheel and keys bring the sheet closer about the mouse', async () => {
    const at = await place_of(page, 'mark/Off Gannet');
    const spread = async () => (await place_of(page, 'mark/Off Gannet')).x - (await place_of(page, 'mark/Off Sarn')).x;
    const wide = await spread();
    await page.move(at);
    await page.raw.page.mouse.wheel(0, -240);
    await page.raw.page.waitForTimeout(100);
    assert.ok((await spread()) > wide * 1.1);
    const now = await place_of(page, 'mark/Off Gannet');
    assert.ok(Math.hypot(now.x - at.x, now.y - at.y) < 2, 'what lies under the mouse stays there');
    const closer = await spread();
    await hand.press('wider');
    assert.ok((await spread()) < closer);
    assert.equal((await read(page)).history.undo_label, null);
    assert.ok(await where(page, 'rose/centre'));
  });
});
