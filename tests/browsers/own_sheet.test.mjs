// A sheet of one's own in Chromium: made and filled by finger, and by keyboard; how few presses lead to a first course; wrong
// entries kept with their reason in place; hostile names shown as text wherever names are shown.
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { choose, press_part, reason_at, show, tab_to, type_into, typed_in } from './lib/forms.mjs';
import { mouse_hand, place_of, touch_hand } from './lib/hands.mjs';
import { command, done, kept, kept_offline, note_violations, open, read, ready, sheet_of, until, watch } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const tablet = { width: 820, height: 1180, scale: 2, touch: true };
const desktop = { width: 1440, height: 900, scale: 1 };

// An invented piece of water off the demo's: four marks, all on the upper half of an A4 sheet at 1:100 000.
const middle = '44 10.0 N 031 20.0 W';
const quay = { name: 'Quay Head', position: '44°12.5′N 031°25.0′W' };
const beacon = { name: 'Outer Beacon', position: '44 11,2 N 31 21,4 W' };

/// Waits until a reading of the page holds.
const holds = (page, what, fn, ...args) => until(page, what, fn, ...args);
const marks_are = (page, count) => holds(page, `${count} marks`, (wanted) => window.fogsheet.read().marks.length === wanted, count);
const legs_are = (page, count) => holds(page, `${count} legs`, (wanted) => window.fogsheet.read().legs.length === wanted, count);

async function add_by_typing(page, hand, { name, position }) {
  await type_into(page, hand, 'name', name);
  await type_into(page, hand, 'position', position);
  await press_part(page, hand, 'make-new-mark');
}

/// The edge is laid on the first two marks and slid to the rose, and what it reads is written on their leg.
async function write_from_edge(page, hand) {
  await press_part(page, hand, 'tool/straight-edge');
  const { marks } = await read(page);
  await hand.press(`mark/#${marks[0].id}`);
  await hand.press(`mark/#${marks[1].id}`);
  await until(page, 'the edge is on', () => window.fogsheet.read().edge?.on.length === 2);
  await hand.drag('edge/reading', 'rose/centre');
  await until(page, 'the edge is settled', () => window.fogsheet.read().edge.settled_on !== null);
  await press_part(page, hand, 'write-on-leg');
  await until(page, 'a reading on the leg', () => Boolean(window.fogsheet.read().legs[0].written));
}

/// Once all is kept the page is opened anew with the server gone, and has the same sheet.
async function check_reopened(page, own_site, full) {
  await kept_offline(page);
  await kept(page);
  await own_site.close();
  await page.reload();
  await ready(page);
  assert.deepEqual(sheet_of(await read(page)), full);
  await page.close();
}

describe("a sheet of one's own", with_engine('chromium', 300_000), () => {
  const stage = chromium_on_site();
  const fresh = async (view, on = stage.site) => {
    const page = await stage.browser.open({ ...view, prepare: note_violations });
    const watched = watch(page, on.origin);
    await open(page, on.url);
    return { page, watched };
  };

  test('by finger: four marks in three ways, three legs, one written from the edge, undone to nothing and redone, reopened offline', async (t) => {
    const own_site = await open_site();
    t.after(own_site.close);
    const { page, watched } = await fresh(tablet, own_site);
    const hand = await touch_hand(page);
    const demo = sheet_of(await read(page));
    await press_part(page, hand, 'sheet-of-mine');
    await type_into(page, hand, 'middle', middle);
    await press_part(page, hand, 'make-new-sheet');
    await holds(page, 'an empty sheet', () => window.fogsheet.read().marks.length === 0);
    const empty = sheet_of(await read(page));

    await press_part(page, hand, 'more');
    await press_part(page, hand, 'new-mark');
    await add_by_typing(page, hand, quay);
    await marks_are(page, 1);
    await add_by_typing(page, hand, beacon);
    await marks_are(page, 2);
    const first = (await read(page)).marks[0].id;
    await press_part(page, hand, 'how/bearing');
    await choose(page, 'from', first);
    await type_into(page, hand, 'bearing', '100T');
    await type_into(page, hand, 'distance', '4.5');
    await type_into(page, hand, 'name', 'Far Post');
    await press_part(page, hand, 'make-new-mark');
    await marks_are(page, 3);
    await press_part(page, hand, 'close');
    await press_part(page, hand, 'tool/mark');
    await hand.press("sheet/44°13.5'N 031°16.0'W");
    await marks_are(page, 4);
    await press_part(page, hand, 'close');

    await press_part(page, hand, 'tool/leg');
    for (const [i, mark] of (await read(page)).marks.entries()) {
      await hand.press(`mark/#${mark.id}`);
      await legs_are(page, i);
    }
    await press_part(page, hand, 'tool/leg');
    await write_from_edge(page, hand);
    const full = sheet_of(await read(page));
    assert.equal(full.legs[0].written.stale, false);
    assert.equal(full.legs.length, 3);
    const by_bearing = full.marks[2];
    assert.equal(by_bearing.name, 'Far Post');

    let steps = 0;
    for (; JSON.stringify(sheet_of(await read(page))) !== JSON.stringify(demo); steps += 1) {
      assert.ok(steps < 12, 'undo leads back to the sheet that was there before');
      await press_part(page, hand, 'undo');
    }
    assert.equal(steps, 9, 'a step for the sheet, each mark, each leg and the reading');
    await done(page, 'redo');
    assert.deepEqual(sheet_of(await read(page)), empty);
    for (let i = 1; i < steps; i += 1) await done(page, 'redo');
    assert.deepEqual(sheet_of(await read(page)), full);
    await watched.check();
    await check_reopened(page, own_site, full);
  });

  test('by keyboard: the sheet, four marks and three legs, one written from the edge, undone, redone, reopened offline', async (t) => {
    const own_site = await open_site();
    t.after(own_site.close);
    const { page, watched } = await fresh(desktop, own_site);
    const demo = sheet_of(await read(page));
    const { keyboard } = page.raw.page;
    const fill = async (name, text) => {
      await tab_to(page, name);
      await keyboard.insertText(text);
    };
    const press = async (name) => {
      await tab_to(page, name);
      await keyboard.press('Enter');
    };
    await press('sheet-of-mine');
    await fill('middle', middle);
    await press('make-new-sheet');
    await holds(page, 'an empty sheet', () => window.fogsheet.read().marks.length === 0);
    await press('more');
    await press('new-mark');
    const places = [quay, beacon, { name: 'Far Post', position: '44 11.7 N 31 18.0 W' }, { name: 'End', position: '44 13.0 N 31 15.0 W' }];
    for (const [i, place] of places.entries()) {
      await fill('name', place.name);
      await fill('position', place.position);
      await press('make-new-mark');
      await marks_are(page, i + 1);
    }
    await press('lists');
    const { marks } = await read(page);
    for (let i = 0; i < 3; i += 1) {
      for (const [end, at] of [['leg-from', i], ['leg-to', i + 1]]) {
        await tab_to(page, end);
        // Typing a name chooses it, as in any list of the system.
        await keyboard.type(marks[at].name);
        await until(page, `${marks[at].name} chosen`, (name, id) => document.querySelector(`[data-name="${name}"]`).value === id, end, marks[at].id);
      }
      await press('make-new-leg');
      await legs_are(page, i + 1);
    }
    assert.deepEqual((await read(page)).legs.map(({ from, to }) => [from, to]), [0, 1, 2].map((i) => [marks[i].id, marks[i + 1].id]));
    await press('legs/0');
    await press('edge-on-leg');
    await press('slide-to-rose');
    await until(page, 'the edge is settled', () => window.fogsheet.read().edge.settled_on !== null);
    await press('write-on-leg');
    await until(page, 'a reading on the leg', () => Boolean(window.fogsheet.read().legs[0].written));
    const full = sheet_of(await read(page));

    let steps = 0;
    for (; JSON.stringify(sheet_of(await read(page))) !== JSON.stringify(demo); steps += 1) {
      assert.ok(steps < 12, 'undo leads back to the sheet that was there before');
      await keyboard.press('Control+z');
    }
    for (let i = 0; i < steps; i += 1) await keyboard.press('Control+y');
    await until(page, 'all redone', () => window.fogsheet.read().history.redo_label === null);
    assert.deepEqual(sheet_of(await read(page)), full);
    await watched.check();
    await check_reopened(page, own_site, full);
  });

  test('from an empty sheet to the first magnetic course in at most 8 presses', async (t) => {
    const { page } = await fresh(tablet);
    await done(page, 'new-sheet', { mid_lat_deg: 44 + 10 / 60, mid_lon_deg: -(31 + 20 / 60), scale: 100000, paper: 'A4-across' });
    const plain = await touch_hand(page);
    let presses = 0;
    const hand = {
      press: (at) => { presses += 1; return plain.press(at); },
      drag: (from, to) => { presses += 1; return plain.drag(from, to); },
    };
    await hand.press('tool/straight-edge');
    await hand.press("sheet/44°12.0'N 031°25.0'W");
    await hand.press("sheet/44°13.0'N 031°18.0'W");
    await until(page, 'the edge is on', () => window.fogsheet.read().edge !== null);
    await hand.drag('edge/reading', 'rose/centre');
    await until(page, 'a magnetic course', () => /^\d{3}°M$/.test(window.fogsheet.read().edge.shown.magnetic ?? ''));
    t.diagnostic(`${presses} presses with the edge`);
    assert.ok(presses <= 8);
    await page.close();
  });

  describe('wrong entries', () => {
    let page;
    let hand;
    before(async () => {
      ({ page } = await fresh(desktop));
      hand = mouse_hand(page);
      await done(page, 'select-mark', { id: (await read(page)).marks[0].id });
    });
    after(() => page?.close());

    const wrong = [
      ['position', '44 10.09 N 031 77.13 W', /under 60.*77\.13/],
      ['position', '44 61.0 N 031 17.13 W', /under 60.*61/],
      ['position', '76 10.0 N 031 17.0 W', /75/],
      ['position', '44 10.0 N 181 17.0 W', /180/],
      ['position', '44 10.0 N S 031 17.0 W', /two of hemisphere/],
      ['name', '   ', /name/],
    ];
    for (const [field, text, words] of wrong)
      test(`${field}: ${text}`, async () => {
        const standing = sheet_of(await read(page));
        await type_into(page, hand, field, text);
        await until(page, 'a reason', (name) => document.querySelector(`[data-name="${name}"]`).getAttribute('aria-invalid') === 'true', field);
        assert.match(await reason_at(page, field), words);
        assert.equal(await typed_in(page, field), text);
        assert.deepEqual(sheet_of(await read(page)), standing);
      });

    test('a bearing of 360 in a new mark, the same mark twice, a date and a scale out of range', async () => {
      await done(page, 'open-slip', { slip: 'new-mark' });
      await press_part(page, hand, 'how/bearing');
      await type_into(page, hand, 'bearing', '360');
      await press_part(page, hand, 'make-new-mark');
      await until(page, 'a reason', () => document.querySelector('[data-name="bearing"]').getAttribute('aria-invalid') === 'true');
      assert.match(await reason_at(page, 'bearing'), /360/);
      await press_part(page, hand, 'how/position');
      const { marks } = await read(page);
      await type_into(page, hand, 'name', marks[0].name);
      await type_into(page, hand, 'position', `${marks[0].lat_deg.toFixed(7)}, ${marks[0].lon_deg.toFixed(7)}`);
      await press_part(page, hand, 'make-new-mark');
      await until(page, 'a reason', () => document.querySelector('[data-name="name"]').getAttribute('aria-invalid') === 'true');
      assert.match(await reason_at(page, 'name'), /already/);
      assert.equal(await typed_in(page, 'name'), marks[0].name);
      await done(page, 'open-slip', { slip: 'sheet' });
      for (const [field, text, words] of [['date', '2150-01-01', /2100/], ['scale', '1:5 000', /25 ?000/]]) {
        await type_into(page, hand, field, text);
        await until(page, 'a reason', (name) => document.querySelector(`[data-name="${name}"]`).getAttribute('aria-invalid') === 'true', field);
        assert.match(await reason_at(page, field), words);
        assert.equal(await typed_in(page, field), text);
      }
    });
  });

  test('a day for which no model speaks is taken, and the slip says that there is no variation', async () => {
    const { page } = await fresh(desktop);
    const hand = mouse_hand(page);
    await done(page, 'open-slip', { slip: 'sheet' });
    await type_into(page, hand, 'date', '2035-01-01');
    await until(page, 'the caution', () => /No variation for the year 2035/.test(document.querySelector('[data-panel="sheet"] .caution')?.innerText ?? ''));
    const { sheet, variation } = await read(page);
    assert.equal(sheet.date, '2035-01-01');
    assert.equal(variation.value_deg, null);
    assert.equal(await typed_in(page, 'date'), '2035-01-01');
    await page.close();
  });

  test('hostile names are shown as text in slips, lists and choices, and on the sheet', async () => {
    const { page, watched } = await fresh(desktop);
    const names = [
      '<img src=x onerror="window.hit=1">', '"><script>window.hit=1</script>', '&lt;b&gt; &amp;', '\u202Egnol eht gnitaerT\u202C', '\u05D0\u05D1\u05D2 \u0627\u0644\u0628\u062D\u0631',
      '\u{1F9ED}\u{10400}\u{2F800}\u{E0041}\u{F0000}\u{10FFFD}', 'a\u0301\u0323\u0308', '\uFEFF\u200B\u2066zero\u2069', 'two\nlines', '%s %n {} ${1}',
    ];
    await done(page, 'new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' });
    for (const [i, name] of names.entries()) await done(page, 'add-mark', { name, lat_deg: 44.06 - i * 0.01, lon_deg: -31 });
    const too_long = await command(page, 'add-mark', { name: 'x'.repeat(10_000), lat_deg: 44, lon_deg: -31.05 });
    assert.match(too_long.error, /10000/);
    const { marks } = await read(page);
    assert.deepEqual(marks.map(({ name }) => name), names);
    await done(page, 'open-slip', { slip: 'lists' });
    await show(page, 'marks/0');
    const listed = await page.evaluate(() => [...document.querySelectorAll('[data-name^="marks/"] bdi')].map((part) => part.textContent));
    assert.deepEqual(listed, names);
    const offered = await page.evaluate(() => [...document.querySelectorAll('[data-name="leg-from"] option')].slice(1).map((part) => part.textContent));
    assert.deepEqual(offered, names);
    for (const mark of marks) {
      await done(page, 'select-mark', { id: mark.id });
      await until(page, mark.name, (name) => document.querySelector('[data-panel="mark"] h2')?.textContent === name, mark.name);
    }
    assert.equal(await page.evaluate(() => window.hit ?? 0), 0);
    assert.equal(await page.evaluate(() => document.querySelectorAll('#slip img, #slip script').length), 0);
    await watched.check();
    await page.close();
  });
});
