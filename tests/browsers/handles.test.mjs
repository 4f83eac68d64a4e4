// window.fogsheet as the README's "Scripting" gives it: what each handle gives, what each command makes, and how it refuses.
// Chromium, one page for all that leaves a page as it was.
import assert from 'node:assert/strict';
import { before, beforeEach, describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { rhumb, turn_deg } from './lib/geodesy_check.mjs';
import { mouse_hand, place_of, where } from './lib/hands.mjs';
import { command, done, frames, link, note_violations, open, read, sheet_of, text_of, until, watch } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const fields = (value) => Object.keys(value).sort();

describe('handles', with_engine('chromium', 180_000), () => {
  const stage = chromium_on_site();
  let page;
  let watched;
  before(async () => {
    page = await stage.browser.open({ ...size, prepare: note_violations });
    watched = watch(page, stage.site.origin);
    await open(page, stage.site.url);
  });

  /// The sheet to try, with an empty past.
  const afresh = () => open(page, stage.site.url);
  const commands = () => page.evaluate(() => window.fogsheet.commands());

  describe('what is there', () => {
    test('from DOMContentLoaded; all but ready are synchronous', async () => {
      const other = await stage.browser.open({ ...size, prepare: () => {
        document.addEventListener('DOMContentLoaded', () => { window.at_load = Object.keys(window.fogsheet ?? {}); });
      } });
      await open(other, stage.site.url);
      assert.deepEqual((await other.evaluate(() => window.at_load)).sort(), ['command', 'commands', 'frames', 'link', 'read', 'ready', 'where']);
      const kinds = await other.evaluate(() => ['read', 'commands', 'link', 'frames'].map((name) => window.fogsheet[name]() instanceof Promise));
      assert.deepEqual(kinds, [false, false, false, false]);
      const next_line = await other.evaluate(() => {
        window.fogsheet.command('add-mark', { name: 'Gull Rock', lat_deg: 44.13, lon_deg: -31.3 });
        return window.fogsheet.read().marks.at(-1).name;
      });
      assert.equal(next_line, 'Gull Rock', 'the next line after a command sees its result');
      await other.close();
    });

    test('read() has all its fields, and no others', async () => {
      await afresh();
      const { marks } = await read(page);
      await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
      const value = await read(page);
      assert.deepEqual(fields(value), ['compass', 'edge', 'format', 'history', 'legs', 'marks', 'notes', 'passage', 'roses', 'sheet', 'variation']);
      assert.ok(Number.isInteger(value.format));
      assert.deepEqual(value.compass, { deviation: 'not entered' });
      assert.deepEqual(fields(value.sheet), ['date', 'datum', 'mid_lat_deg', 'mid_lon_deg', 'name', 'note', 'paper', 'scale', 'signs']);
      assert.match(value.sheet.date, /^\d{4}-\d\d-\d\d$/);
      assert.deepEqual(fields(value.variation), ['source', 'uncertainty_deg', 'used_deg', 'value_deg', 'zone']);
      assert.ok(value.marks.length > 0 && value.legs.length > 0 && value.roses.length > 0);
      for (const mark of value.marks) {
        const radius = mark.kind === 'danger' ? ['radius_nm'] : [];
        assert.deepEqual(fields(mark), ['id', 'kind', 'lat_deg', 'lon_deg', 'name', ...radius]);
      }
      for (const leg of value.legs) {
        assert.deepEqual(fields(leg), ['course_compass_deg', 'course_magnetic_deg', 'course_true_deg', 'distance_nm', 'from', 'id', 'shown', 'to', 'variation_deg']);
        assert.deepEqual(fields(leg.shown), ['back_magnetic', 'back_true', 'deviation', 'distance', 'magnetic', 'true', 'variation']);
        assert.equal(leg.course_compass_deg, null, 'deviation is not entered');
      }
      for (const rose of value.roses) assert.deepEqual(fields(rose), ['id', 'lat_deg', 'lon_deg', 'own_place', 'radius_mm', 'variation_deg']);
      assert.deepEqual(fields(value.edge), ['bearing_magnetic_deg', 'bearing_true_deg', 'locked', 'on', 'settled_on', 'shown']);
      assert.deepEqual(fields(value.history), ['boats', 'drawer', 'first_step', 'kept', 'last_step', 'redo_label', 'step', 'undo_label']);
      const ids = [...value.marks, ...value.legs, ...value.roses].map((each) => each.id);
      assert.ok(ids.every((id) => typeof id === 'string' && id !== ''));
    });

    test("the legs' courses and distances are the rhumb lines', worked out by another path", async () => {
      await afresh();
      const { legs, marks, variation } = await read(page);
      for (const leg of legs) {
        const [from, to] = [leg.from, leg.to].map((id) => marks.find((mark) => mark.id === id));
        const { course_deg, distance_nm } = rhumb(from, to);
        // The formulas here are exact to well under a metre; 1e-6 deg is a decimetre over these legs.
        assert.ok(Math.abs(turn_deg(leg.course_true_deg, course_deg)) < 1e-6, `${leg.course_true_deg} for ${course_deg}`);
        assert.ok(Math.abs(leg.distance_nm - distance_nm) < 1e-5, `${leg.distance_nm} for ${distance_nm}`);
        assert.ok(Math.abs(turn_deg(leg.course_magnetic_deg, course_deg - variation.used_deg)) < 1e-6);
        assert.equal(leg.shown.distance, `${distance_nm.toFixed(1)} nm`);
      }
    });

    test('commands() tells name, label, key, arguments with units, and whether each can be done now', async () => {
      await afresh();
      const table = await commands();
      for (const row of table) {
        assert.deepEqual(fields(row), ['arguments', 'enabled', 'key', 'label', 'name']);
        assert.ok(row.label, row.name);
        for (const argument of row.arguments) assert.ok(argument.name && argument.unit, `${row.name}: ${JSON.stringify(argument)}`);
      }
      // Names and arguments as the README has them.
      const wanted = { 'new-sheet': 'mid_lat_deg mid_lon_deg scale paper', 'add-mark': 'name lat_deg lon_deg kind radius_nm', 'move-mark': 'id lat_deg lon_deg', 'remove-mark': 'id',
        'add-leg': 'from to', 'set-date': 'date', 'set-printed-variation': 'value_deg year annual_change_min', 'lay-edge': 'from to', 'slide-edge-to': 'rose mark',
        'turn-edge': 'bearing_deg reference', 'lift-edge': '', undo: '', redo: '', 'open-text': 'text', fit: '', 'set-palette': 'palette' };
      for (const [name, names] of Object.entries(wanted)) {
        const row = table.find((each) => each.name === name);
        const taken = row?.arguments.map((argument) => argument.name) ?? [];
        assert.ok(row && names.split(' ').filter(Boolean).every((each) => taken.includes(each)), `${name}: ${taken}`);
      }
      const enabled = (rows) => Object.fromEntries(rows.map((row) => [row.name, row.enabled]));
      assert.deepEqual([enabled(table).undo, enabled(table).redo, enabled(table)['lift-edge']], [false, false, false]);
      await done(page, 'set-date', { date: '2026-07-01' });
      assert.deepEqual([enabled(await commands()).undo, enabled(await commands()).redo], [true, false]);
    });
  });

  describe('commands', () => {
    beforeEach(afresh);

    test('new-sheet: one rose, today, and undo goes back to before it', async () => {
      const old = await read(page);
      await done(page, 'new-sheet', { mid_lat_deg: -41.5, mid_lon_deg: 179.98, scale: 50000, paper: 'A3-upright' });
      const made = await read(page);
      assert.deepEqual([made.sheet.scale, made.sheet.paper, made.marks.length, made.legs.length, made.roses.length], [50000, 'A3-upright', 0, 0, 1]);
      assert.ok(Math.abs(made.sheet.mid_lat_deg + 41.5) < 1e-6 && Math.abs(made.sheet.mid_lon_deg - 179.98) < 1e-6);
      const now = new Date();
      assert.equal(made.sheet.date, [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-'));
      await done(page, 'add-mark', { name: 'Over the line', lat_deg: -41.5, lon_deg: -179.99 });
      await done(page, 'undo');
      await done(page, 'undo');
      assert.deepEqual(sheet_of(await read(page)), sheet_of(old));
    });

    test('new-sheet takes every paper', async () => {
      for (const paper of ['A4-upright', 'A4-across', 'A3-upright', 'A3-across', 'Letter-upright', 'Letter-across', 'Tabloid-upright', 'Tabloid-across', 'screen']) {
        await done(page, 'new-sheet', { mid_lat_deg: 10, mid_lon_deg: 20, scale: 150000, paper });
        assert.equal((await read(page)).sheet.paper, paper);
      }
    });

    test('marks of every kind, moved and rubbed out; undo and redo', async () => {
      const states = [sheet_of(await read(page))];
      const keep = async () => states.push(sheet_of(await read(page)));
      const made = [];
      for (const kind of ['landmark', 'light', 'turn', 'other']) {
        made.push(await done(page, 'add-mark', { name: `A ${kind}`, lat_deg: 44.12, lon_deg: -31.25, kind }));
        await keep();
      }
      made.push(await done(page, 'add-mark', { name: 'A rock', lat_deg: 44.12, lon_deg: -31.3, kind: 'danger', radius_nm: 0.3 }));
      await keep();
      const { marks } = await read(page);
      assert.deepEqual(marks.slice(-5).map((mark) => mark.id), made);
      assert.equal(marks.at(-1).radius_nm, 0.3);
      await done(page, 'move-mark', { id: made[0], lat_deg: 44.14, lon_deg: -31.2 });
      await keep();
      // Stored as whole 0.0001', so half of that either way.
      const moved = (await read(page)).marks.find((mark) => mark.id === made[0]);
      assert.ok(Math.abs(moved.lat_deg - 44.14) <= 0.00005 / 60 + 1e-12 && Math.abs(moved.lon_deg + 31.2) <= 0.00005 / 60 + 1e-12);
      const leg = await done(page, 'add-leg', { from: made[0], to: made[4] });
      await keep();
      assert.equal((await read(page)).legs.at(-1).id, leg);
      await done(page, 'remove-mark', { id: made[0] });
      await keep();
      const rest = await read(page);
      assert.ok(rest.legs.every((each) => each.from !== made[0] && each.to !== made[0]), 'a leg goes with its end');
      for (const state of states.slice(0, -1).reverse()) {
        await done(page, 'undo');
        assert.deepEqual(sheet_of(await read(page)), state);
      }
      for (const state of states.slice(1)) {
        await done(page, 'redo');
        assert.deepEqual(sheet_of(await read(page)), state);
      }
    });

    test('the edge: laid, slid to a rose and to a mark, turned, lifted; no part of history', async () => {
      const { marks, roses, history } = await read(page);
      await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
      const laid = (await read(page)).edge;
      assert.deepEqual([laid.on, laid.locked, laid.settled_on, laid.shown], [[marks[0].id, marks[1].id], false, null, {}]);
      await done(page, 'slide-edge-to', { rose: roses[0].id });
      const settled = (await read(page)).edge;
      assert.deepEqual([settled.locked, settled.settled_on], [true, roses[0].id]);
      assert.ok(Math.abs(turn_deg(settled.bearing_true_deg, laid.bearing_true_deg)) < 1e-9);
      await done(page, 'turn-edge', { bearing_deg: 47, reference: 'true' });
      const turned = (await read(page)).edge;
      assert.ok(Math.abs(turn_deg(turned.bearing_true_deg, 47)) < 1e-9);
      assert.deepEqual([turned.settled_on, turned.locked], [roses[0].id, false], 'turned about the rose it lies on');
      await done(page, 'slide-edge-to', { mark: marks[3].id });
      const at_mark = (await read(page)).edge;
      assert.equal(at_mark.locked, true);
      assert.ok(Math.abs(turn_deg(at_mark.bearing_true_deg, 47)) < 1e-9);
      await done(page, 'lift-edge');
      assert.equal((await read(page)).edge, null);
      await done(page, 'turn-edge', { bearing_deg: 123, reference: 'magnetic' });
      const { edge, variation } = await read(page);
      assert.equal(edge.settled_on, roses[0].id, 'with no edge, one through the first rose');
      assert.ok(Math.abs(turn_deg(edge.bearing_true_deg, 123 + variation.used_deg)) < 1e-9);
      assert.equal(edge.shown.magnetic, '123°M');
      assert.deepEqual((await read(page)).history, history);
    });

    // Common practice, no source: east is least, west is best.
    for (const { true_deg, variation_deg, magnetic } of [
      { true_deg: 200, variation_deg: 10, magnetic: '190°M' }, { true_deg: 100, variation_deg: 8, magnetic: '092°M' }, { true_deg: 100, variation_deg: -3, magnetic: '103°M' }]) {
      test(`${true_deg}°T with ${Math.abs(variation_deg)}°${variation_deg > 0 ? 'E' : 'W'} is ${magnetic}`, async () => {
        await done(page, 'set-printed-variation', { value_deg: variation_deg, year: 2026, annual_change_min: 0 });
        await done(page, 'turn-edge', { bearing_deg: true_deg, reference: 'true' });
        const { edge, variation } = await read(page);
        assert.deepEqual([variation.source, variation.used_deg, variation.printed], ['printed', variation_deg, { value_deg: variation_deg, year: 2026, annual_change_min: 0 }]);
        assert.equal(edge.shown.magnetic, magnetic);
        const shown = await text_of(page, '[data-name=chain]');
        assert.ok(shown.replace(/\s/g, '').includes(magnetic), shown);
      });
    }

    test('a printed variation is carried to the date, and taken away with null', async () => {
      const model = (await read(page)).variation;
      await done(page, 'set-date', { date: '2026-07-02' });
      await done(page, 'set-printed-variation', { value_deg: -8, year: 2022, annual_change_min: 12 });
      const { value_deg } = (await read(page)).variation;
      // Half-way through 2026 is four to five years of 12' after 2022, however the note's year is counted: 48' to 60'.
      assert.ok(value_deg >= -8 + 48 / 60 - 1e-9 && value_deg <= -8 + 60 / 60, String(value_deg));
      await page.evaluate(() => window.fogsheet.command('set-printed-variation', null));
      const again = (await read(page)).variation;
      assert.equal(again.source, 'model');
      assert.ok(Math.abs(again.value_deg - model.value_deg) < 0.02, 'eleven days are under a minute of arc');
    });

    test('fit shows the whole sheet', async () => {
      await done(page, 'closer');
      await done(page, 'fit');
      const { sheet } = await read(page);
      for (const [lat, lon] of [["44°13.5'N", "031°28.0'W"], ["44°04.5'N", "031°28.0'W"]]) assert.ok(await where(page, `sheet/${lat} ${lon}`), `${lat} ${lon} of ${sheet.name}`);
    });

    test('set-palette, kept across a reload', async () => {
      for (const palette of ['dusk', 'night', 'high-contrast', 'day']) {
        await done(page, 'set-palette', { palette });
        await afresh();
        assert.equal(await page.evaluate(() => document.documentElement.dataset.palette), palette);
      }
    });

    test('open-text takes a text and a link, with its slip and its past', async () => {
      const demo = await read(page);
      const demo_link = await link(page);
      await done(page, 'new-sheet', { mid_lat_deg: 10, mid_lon_deg: 20, scale: 150000, paper: 'screen' });
      const other = await read(page);
      const other_text = (await link(page)).split('#')[1];
      assert.match(other_text, /^1:[A-Za-z0-9_-]+$/);
      await done(page, 'open-text', { text: demo_link });
      assert.deepEqual(sheet_of(await read(page)), sheet_of(demo));
      await done(page, 'open-text', { text: other_text });
      assert.deepEqual(sheet_of(await read(page)), sheet_of(other));
      await done(page, 'undo');
      assert.deepEqual(sheet_of(await read(page)), sheet_of(demo), 'the former one is kept');
    });
  });

  test('a date outside the models: no variation, no magnetic course, and the reason', async () => {
    await afresh();
    await done(page, 'set-date', { date: '2041-05-01' });
    const { variation, legs, edge } = await read(page);
    assert.equal(edge, null);
    assert.equal(variation.value_deg, null);
    assert.equal(legs[0].course_magnetic_deg, null);
    for (const name of ['magnetic', 'back_magnetic', 'variation']) assert.ok(!(name in legs[0].shown), name);
    await done(page, 'turn-edge', { bearing_deg: 10, reference: 'true' });
    const shown = await until(page, 'the slip', () => document.querySelector('[data-panel=straight-edge]')?.innerText);
    assert.match(shown, /2041[\s\S]*(printed|another date)/);
    const refused = await command(page, 'turn-edge', { bearing_deg: 10, reference: 'magnetic' });
    assert.match(refused.error, /2041/);
    // The note on a chart helps out while it is young enough; a model's end is no bar to it.
    await done(page, 'set-printed-variation', { value_deg: 6, year: 2040, annual_change_min: 0 });
    assert.equal((await read(page)).variation.used_deg, 6);
  });

  describe('where()', () => {
    beforeEach(afresh);

    test('gives boxes whose middle reaches the thing', async () => {
      const hand = mouse_hand(page);
      await hand.press('mark/Gannet Post');
      await until(page, 'the slip of the mark', () => document.getElementById('slip').innerText.includes('Gannet Post'));
      await hand.press('tool/straight-edge');
      await until(page, 'the slip of the edge', () => window.fogsheet.where('panel/straight-edge'));
      await done(page, 'turn-edge', { bearing_deg: 60, reference: 'true' });
      const chain = await where(page, 'panel/chain');
      assert.deepEqual(fields(chain), ['height', 'width', 'x', 'y']);
      for (const name of ['edge/end-a', 'edge/end-b', 'edge/reading', 'rose/centre', `rose/#${(await read(page)).roses[0].id}`]) assert.ok(await where(page, name), name);
    });

    test('names a mark by its name, the first of that name, or by its id', async () => {
      await done(page, 'add-mark', { name: 'Gannet Post', lat_deg: 44.12, lon_deg: -31.3 });
      const { marks } = await read(page);
      const [first, second] = marks.filter((mark) => mark.name === 'Gannet Post');
      assert.deepEqual(await where(page, 'mark/Gannet Post'), await where(page, `mark/#${first.id}`));
      assert.notDeepEqual(await where(page, `mark/#${second.id}`), await where(page, `mark/#${first.id}`));
    });

    test('is null for what is not there, off the screen or covered', async () => {
      for (const name of ['mark/Nobody', 'mark/#9999', 'edge/reading', 'edge/end-a', 'panel/chain', 'tool/sextant', 'rose/#77', 'sheet/nowhere', 'nonsense', '', "sheet/10°00.0'N 031°20.0'W"])
        assert.equal(await where(page, name), null, name);
    });

    test('is null under a slip and under the tray, and not when the slip is gone', async () => {
      const hand = mouse_hand(page);
      const slip = await where(page, 'panel/first-run');
      const from = await place_of(page, 'mark/Off Gannet');
      const free = await place_of(page, "sheet/44°12.5'N 031°22.5'W");
      const to = { x: slip.x + slip.width / 2, y: slip.y + slip.height / 2 };
      const place = "sheet/44°10.09'N 031°17.13'W";  // Off Gannet's
      // In two pulls, so that each begins and ends on free paper.
      for (let pull = 0; pull < 2; pull += 1) await hand.drag(free, { x: free.x + (to.x - from.x) / 2, y: free.y + (to.y - from.y) / 2 });
      assert.deepEqual([await where(page, 'mark/Off Gannet'), await where(page, place)], [null, null]);
      await hand.press('close');
      assert.ok(await where(page, 'mark/Off Gannet'));
      assert.ok(await where(page, place));
      const down = { x: free.x, y: size.height - 100 };
      while ((await where(page, 'mark/Off Gannet'))) await hand.drag(free, down);
      assert.equal(await where(page, place), null, 'under the tray or off the canvas');
    });

    test('gives a place on the sheet as it is written', async () => {
      const box = await where(page, "sheet/44°10.0'N 031°20.0'W");
      const north = await where(page, "sheet/44°11.0'N 031°20.0'W");
      const east = await where(page, "sheet/44°10.0'N 031°19.0'W");
      const middle = ({ x, y, width, height }) => [x + width / 2, y + height / 2];
      assert.ok(middle(north)[1] < middle(box)[1] && Math.abs(middle(north)[0] - middle(box)[0]) < 1e-6);
      assert.ok(middle(east)[0] > middle(box)[0] && Math.abs(middle(east)[1] - middle(box)[1]) < 1e-6);
      // A minute of longitude to one of latitude on WGS84 at 44°10': both from the ellipsoid's radii of curvature.
      const parallel_nm = rhumb({ lat_deg: 44 + 10 / 60, lon_deg: 0 }, { lat_deg: 44 + 10 / 60, lon_deg: 1 / 60 }).distance_nm;
      const meridian_nm = rhumb({ lat_deg: 44 + 9.5 / 60, lon_deg: 0 }, { lat_deg: 44 + 10.5 / 60, lon_deg: 0 }).distance_nm;
      const on_screen = (middle(east)[0] - middle(box)[0]) / (middle(box)[1] - middle(north)[1]);
      assert.ok(Math.abs(on_screen - parallel_nm / meridian_nm) < 0.001, `${on_screen} for ${parallel_nm / meridian_nm}`);
    });
  });

  test('nothing is drawn while nothing happens', async () => {
    await afresh();
    await done(page, 'turn-edge', { bearing_deg: 60, reference: 'true' });
    await page.raw.page.waitForTimeout(700);  // the edge's own motion is over after 0.12 s, the slip's after 0.15 s
    const drawn = await frames(page);
    assert.ok(drawn > 0);
    await page.raw.page.waitForTimeout(2000);
    assert.equal(await frames(page), drawn);
  });

  test('all this asked nothing of another host, missed no file and broke no rule of the page', () => watched.check());
});
