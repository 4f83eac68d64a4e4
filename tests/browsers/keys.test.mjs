// The main job by keyboard alone, at 1440 by 900, in three engines; and in Chromium through roles and names alone, as a screen
// reader has them.
import assert from 'node:assert/strict';
import { test } from 'node:test';

import { engines, open_chromium, with_engine } from './lib/engines.mjs';
import { turn_deg, rhumb } from './lib/geodesy_check.mjs';
import { check_slip, figures, views } from './lib/job.mjs';
import { open, read, until } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';
import { page_on_site } from './lib/stage.mjs';

const places = { 'Gull Stack': '44 12.5N 31 24.0W', 'Teal Point': '44 11.5N 31 16.0W' };
const aloud = (page) => page.evaluate(() => document.getElementById('aloud').textContent.replaceAll('\u00A0', ''));

/// What was written on the new leg agrees with the rhumb line worked out here, and with what was read off both rings.
function check_written({ marks, legs, edge, variation }) {
  const mark = (name) => marks.find((each) => each.name === name);
  const [from, to] = Object.keys(places).map(mark);
  const leg = legs.find((each) => each.from === from.id && each.to === to.id);
  const { course_deg } = rhumb(from, to);
  assert.ok(Math.abs(turn_deg(course_deg, edge.bearing_true_deg)) < 0.3, `${edge.bearing_true_deg} for ${course_deg}`);
  assert.equal(edge.shown.true, `${figures(edge.bearing_true_deg)}°T`);
  assert.equal(edge.shown.magnetic, `${figures(edge.bearing_true_deg - variation.used_deg)}°M`);
  assert.equal(figures(leg.written.bearing_deg), figures(edge.bearing_true_deg));
  assert.equal(leg.written.reference, 'true');
}

for (const engine of engines) {
  test(`${engine}: the job by keys alone`, with_engine(engine, 240_000), async (t) => {
    const { page, site } = await page_on_site(t, engine, views.desktop);
    await open(page, site.url);
    /// Tab, or Shift and Tab where it lies before, until the focus is on a part: as many presses as it takes. Past the last
    /// part the focus would go to the browser's own bars, and in Firefox not come back to the page under a driver.
    const go_to = async (part) => {
      for (let presses = 0; presses < 90; presses += 1) {
        const way = await page.evaluate((wanted) => {
          const target = document.querySelector(wanted);
          const now = document.activeElement;
          if (now === target) return '';
          return target && now.compareDocumentPosition(target) === Node.DOCUMENT_POSITION_PRECEDING ? 'Shift+Tab' : 'Tab';
        }, part);
        if (!way) return;
        await page.press(way);
      }
      assert.fail(`${part} can't be reached by Tab`);
    };
    const named = (name) => `[data-name="${name}"]`;
    const press = async (name) => {
      await go_to(named(name));
      await page.press('Enter');
    };

    for (const [name, place] of Object.entries(places)) {
      await press('more');
      await press('new-mark');
      await go_to(named('name'));
      await page.keys(name);
      await go_to(named('position'));
      await page.keys(place);
      await press('make-new-mark');
      await until(page, name, (wanted) => window.fogsheet.read().marks.some((mark) => mark.name === wanted), name);
    }
    const id_of = async (name) => (await read(page)).marks.find((mark) => mark.name === name).id;
    const [from, to] = [await id_of('Gull Stack'), await id_of('Teal Point')];

    // Back to the sheet, a leg from one to the other by the list of things.
    await go_to('#sheet canvas');
    await page.press('l');
    await page.press('i');
    await until(page, 'the list', () => document.activeElement?.classList.contains('thing'));
    await press(`mark/${from}`);
    await press(`mark/${to}`);
    await until(page, 'the leg', (a, b) => window.fogsheet.read().legs.some((leg) => leg.from === a && leg.to === b), from, to);

    // The edge on both marks, slid by its body to the rose.
    await page.press('s');
    await press(`mark/${from}`);
    await press(`mark/${to}`);
    await until(page, 'the edge', () => window.fogsheet.read().edge?.on.length === 2);
    await go_to(named('edge/body'));
    for (let presses = 0; presses < 120 && !(await read(page)).edge.settled_on; presses += 1) await page.press('Shift+ArrowDown');
    const settled = await read(page);
    assert.equal(settled.edge.settled_on, settled.roses[0].id, 'the edge has come to the rose');
    await page.press('Enter');
    assert.match(await aloud(page), new RegExp(`^Straight-edge, settled on the rose, ${settled.edge.shown.true.slice(0, 3)} true, ${settled.edge.shown.magnetic.slice(0, 3)} magnetic, back`));
    await check_slip(page, settled);

    await press('write-on-leg');
    await until(page, 'what was written', (a) => window.fogsheet.read().legs.some((leg) => leg.from === a && leg.written), from);
    check_written(await read(page));
  });
}

test('chromium: the job through roles and names alone', with_engine('chromium', 120_000), async (t) => {
  const site = await open_site();
  const browser = await open_chromium();
  t.after(async () => {
    await browser.close();
    await site.close();
  });
  const page = await browser.open(views.desktop);
  await open(page, site.url);
  const { page: tree } = page.raw;
  const press = (role, name, within = tree) => within.getByRole(role, { name }).first().press('Enter');
  const region = (name) => tree.getByRole('region', { name, exact: true });
  const fill = async (label, text) => {
    const box = region('Add a mark').getByRole('textbox', { name: label });
    await box.fill(text);
    await box.press('Tab');
  };
  for (const [name, place] of Object.entries(places)) {
    await press('button', 'More');
    await press('button', 'Add a mark', region('More'));
    await fill('Name', name);
    await fill(/^Position/, place);
    await press('button', 'Add the mark');
    await until(page, name, (wanted) => window.fogsheet.read().marks.some((mark) => mark.name === wanted), name);
  }
  await press('button', /^Leg/, region('Instruments'));
  await press('button', /^On the sheet: /);
  const things = region('On the sheet');
  await press('button', /^Gull Stack, landmark, /, things);
  await press('button', /^Teal Point, landmark, /, things);
  await things.getByRole('button', { name: /^Leg \d, Gull Stack to Teal Point, / }).waitFor();
  await press('button', /^Straight-edge/, region('Instruments'));
  await press('button', /^Gull Stack, landmark, /, things);
  await press('button', /^Teal Point, landmark, /, things);
  await things.getByRole('button', { name: 'Straight-edge, on Gull Stack to on Teal Point, not on the rose' }).waitFor();
  await press('button', 'Slide it to the rose', region('Straight-edge'));
  const settled = await read(page);
  await until(page, 'the reading aloud', (words) => document.getElementById('aloud').textContent.includes(words), `${settled.edge.shown.true.slice(0, 3)} true, ${settled.edge.shown.magnetic.slice(0, 3)} magnetic`);
  await things.getByRole('button', { name: /^Straight-edge, settled on the rose, \d{3} true, \d{3} magnetic, back \d{3} true$/ }).waitFor();
  await press('button', /^Write it on leg/, region('Straight-edge'));
  check_written(await read(page));
});
