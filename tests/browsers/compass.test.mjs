// The compass in Chromium, by real presses: a swing of eight headings by touch, what is read wrongly, the card in use and on
// paper; a check by mouse. The same numbers stand in tables that a screen reader reads.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { by_pad, press_part, reason_at, typed_in, type_into } from './lib/forms.mjs';
import { counting, mouse_hand, touch_hand } from './lib/hands.mjs';
import { views } from './lib/job.mjs';
import { done, open, read, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';
import { bearing_deg, boat_deg, deviation_deg, read_on, tenths } from './lib/swing.mjs';

const most_presses = 60;

const table_rows = (page, name) => page.evaluate((wanted) => [...document.querySelectorAll(`.table[data-name="${wanted}"] tbody tr`)].map((row) => [...row.children].map((cell) => cell.innerText.trim())), name);

describe('compass', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();
  const fresh = async (view) => {
    const page = await stage.browser.open(view);
    await open(page, stage.site.url);
    return { page, hand: counting(view.touch ? await touch_hand(page) : mouse_hand(page)) };
  };

  const enter_boat = async (page, hand) => {
    await press_part(page, hand, 'more');
    await press_part(page, hand, 'compass');
    await type_into(page, hand, 'new-boat-name', 'Pipit');
    await press_part(page, hand, 'new-boat');
    await until(page, 'the boat', () => window.fogsheet.read().history.boats.length === 1);
  };

  const swing = async (page, hand) => {
    await press_part(page, hand, 'begin-swing');
    await by_pad(page, hand, 'bearing', String(bearing_deg));
    for (let i = 0; i < 8; i += 1) await by_pad(page, hand, `row/${i}/read`, read_on(45 * i));
  };

  for (const [size, view] of Object.entries({ tablet: views['tablet upright'], phone: views.phone }))
    test(`a swing of eight headings by touch on a ${size}, from no boat to a card in use`, async () => {
      const { page, hand } = await fresh(view);
      await enter_boat(page, hand);
      await swing(page, hand);
      await press_part(page, hand, 'use-card');
      await until(page, 'the card in use', () => window.fogsheet.read().compass.deviation === 'card');
      assert.ok(hand.presses < most_presses, `${hand.presses} presses`);
      console.log(`presses on a ${size}: ${hand.presses}`);
      const { compass, legs } = await read(page);
      for (const { heading_deg, deviation_deg: by_card } of compass.points) assert.ok(Math.abs(by_card - deviation_deg(heading_deg)) < 0.1, `${heading_deg}: ${by_card}`);
      for (const leg of legs) {
        const there = deviation_deg(leg.course_compass_deg);
        assert.ok(Math.abs(leg.course_magnetic_deg - leg.course_compass_deg - there) < 0.1 || Math.abs(Math.abs(leg.course_magnetic_deg - leg.course_compass_deg - there) - 360) < 0.1);
        assert.match(leg.shown.compass, /^\d{3}°C$/);
      }
      // What the reader of tables hears is what was fitted: against the boat's own coefficients.
      const coefficients = await table_rows(page, 'coefficients');
      assert.equal(coefficients.length, 5);
      coefficients.forEach(([name, fitted], i) => {
        assert.ok(name.startsWith('ABCDE'[i]));
        const value = Number(fitted.match(/[+−]?\d+\.\d/)[0].replace('−', '-').replace('+', ''));
        assert.ok(Math.abs(value - boat_deg[i]) < 0.11, `${name}: ${fitted}`);
      });
      for (const [heading, deviation] of await table_rows(page, 'card-compass')) {
        const shown = Number(deviation.match(/\d+\.\d|^0/)[0]) * (deviation.endsWith('W') ? -1 : 1);
        assert.ok(Math.abs(shown - deviation_deg(Number(heading.slice(0, 3)))) < 0.15, `${heading}: ${deviation}`);
      }
      await page.close();
    });

  test('400, a heading twice and a reading from the wrong end are told in place and kept for correction, over a reload too', async () => {
    const { page, hand } = await fresh(views['tablet upright']);
    await enter_boat(page, hand);
    await swing(page, hand);
    await by_pad(page, hand, 'row/2/read', '400');
    await until(page, 'the reason', () => document.querySelector('[data-name="row/2/read"]').closest('.field').querySelector('.error')?.innerText.includes('400'));
    await by_pad(page, hand, 'row/3/read', tenths(bearing_deg + 180));
    await until(page, 'the reason', () => document.querySelector('[data-name="row/3/read"]').closest('.field').querySelector('.error')?.innerText.includes('180°'));
    await press_part(page, hand, 'readings/5').catch(() => done(page, 'open-row', { row: 5 }));
    await by_pad(page, hand, 'row/5/heading', '180');
    await until(page, 'the reason', () => document.querySelector('[data-name="row/5/heading"]').closest('.field').querySelector('.error')?.innerText.includes('already'));
    await until(page, 'all is kept', () => window.fogsheet.read().history.kept.state === 'kept');
    await page.evaluate(() => new Promise((soon) => setTimeout(soon, 700)));  // the desk's own rest
    await page.reload();
    await until(page, 'the swing again', () => document.querySelector('[data-name="row/2/read"]') !== null);
    assert.equal(await typed_in(page, 'row/2/read'), '400');
    assert.match(await reason_at(page, 'row/3/read'), /180°/);
    await by_pad(page, hand, 'row/2/read', read_on(90));
    await until(page, 'no reason', () => !document.querySelector('[data-name="row/2/read"]').closest('.field').querySelector('.error')?.innerText.trim());
    await page.close();
  });

  test('a check by mouse: bearings from the sheet, a verdict in words with its rule', async () => {
    const { page, hand } = await fresh(views.desktop);
    await enter_boat(page, hand);
    await press_part(page, hand, 'begin-check');
    const { marks, variation } = await read(page);
    await page.raw.page.selectOption('[data-name="bearings-from-mark"]', marks.find((mark) => mark.name === 'Pellow Quay').id);
    await until(page, 'bearings', () => document.querySelectorAll('.table[data-name=readings] tbody tr').length > 2);
    const rows = await table_rows(page, 'readings');
    for (let i = 0; i < rows.length; i += 1) await type_into(page, hand, `row/${i}/read`, tenths(Number.parseFloat(rows[i][1]) - variation.value_deg + 3));
    await until(page, 'the verdict', () => document.querySelector('[data-panel=log-entry]').innerText.includes('One constant explains it: 3.0°W'));
    assert.match(await page.evaluate(() => document.querySelector('[data-panel=log-entry]').innerText), /The rule:/);
    await page.close();
  });

  test('the card goes on one page of paper, with the figures that the screen shows', async () => {
    const { page, hand } = await fresh(views.desktop);
    await enter_boat(page, hand);
    await press_part(page, hand, 'begin-swing');
    await type_into(page, hand, 'bearing', String(bearing_deg));
    for (let i = 0; i < 8; i += 1) await type_into(page, hand, `row/${i}/read`, read_on(45 * i));
    await until(page, 'a card', () => document.querySelectorAll('.table[data-name="card-compass"] tbody tr').length === 24);
    await page.evaluate(() => { window.printed = 0; window.print = () => { window.printed += 1; }; });
    await press_part(page, hand, 'print-card');
    await until(page, 'it is printed', () => window.printed === 1);
    const on_screen = await table_rows(page, 'card-magnetic');
    const on_paper = await page.evaluate(() => [...document.querySelectorAll('#page .table[data-name="by-magnetic"] tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent.trim())));
    assert.deepEqual(on_paper, on_screen);
    const pdf = await page.raw.page.pdf({ format: 'A4', preferCSSPageSize: false });
    assert.equal(pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g).length, 1);
    await page.close();
  });
});
