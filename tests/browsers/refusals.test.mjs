// How commands refuse: every wrong entry, damaged text and unknown name gets a whole sentence, and all stays as it was.
import assert from 'node:assert/strict';
import { before, describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { command, link, open, read, text_of, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const fields = (value) => Object.keys(value).sort();

describe('refusals', with_engine('chromium', 180_000), () => {
  const stage = chromium_on_site();
  let page;
  before(async () => {
    page = await stage.browser.open(size);
    await open(page, stage.site.url);
  });

  // Each: a command, bad arguments, and words that the sentence must have: what, where, or what to do.
  const refusals = [
    ['add-mark', { name: 'Far off', lat_deg: 50, lon_deg: -31 }, /Far off.*(off|outside).*(inside|sheet)/],
    ['add-mark', { name: 'Pole', lat_deg: 91, lon_deg: -31 }, /./],
    ['add-mark', { name: '', lat_deg: 44.1, lon_deg: -31.3 }, /name/],
    ['add-mark', { name: 'x'.repeat(5000), lat_deg: 44.1, lon_deg: -31.3 }, /5000/],
    ['add-mark', { name: 'No place' }, /missing.*lat_deg/],
    ['add-mark', { name: 'Half a place', lat_deg: 44.1 }, /missing.*lon_deg/],
    ['add-mark', { name: 'Text', lat_deg: '44.1', lon_deg: -31.3 }, /missing.*lat_deg/],
    ['add-mark', { name: 'Rock', lat_deg: 44.1, lon_deg: -31.3, kind: 'danger' }, /radius/],
    ['add-mark', { name: 'Rock', lat_deg: 44.1, lon_deg: -31.3, kind: 'danger', radius_nm: -1 }, /-?−?1/],
    ['add-mark', { name: 'Thing', lat_deg: 44.1, lon_deg: -31.3, kind: 'reef' }, /reef/],
    ['move-mark', { id: '9999', lat_deg: 44.1, lon_deg: -31.3 }, /9999/],
    ['move-mark', { id: '2', lat_deg: 60, lon_deg: -31.3 }, /sheet/],
    ['remove-mark', { id: 'nobody' }, /nobody/],
    ['remove-mark', {}, /id/],
    ['add-leg', { from: '2', to: '2' }, /two places/],
    ['add-leg', { from: '2', to: '9999' }, /9999/],
    ['set-date', { date: '21 June' }, /21 June.*2026-06-21/],
    ['set-date', { date: '2025-02-29' }, /2025-02-29/],
    ['set-date', {}, /date/],
    ['set-printed-variation', { value_deg: 400, year: 2026, annual_change_min: 0 }, /400/],
    ['set-printed-variation', { value_deg: -4, year: 2026 }, /annual_change_min/],
    ['new-sheet', { mid_lat_deg: 80, mid_lon_deg: 0, scale: 100000, paper: 'A4-across' }, /75/],
    ['new-sheet', { mid_lat_deg: 50, mid_lon_deg: 0, scale: 10, paper: 'A4-across' }, /scale.*25 ?000/],
    ['new-sheet', { mid_lat_deg: 50, mid_lon_deg: 0, scale: 100000, paper: 'A9' }, /A9/],
    ['lay-edge', { from: '2', to: '2' }, /two places|close together/],
    ['lay-edge', { from: '2' }, /to/],
    ['slide-edge-to', { rose: '1' }, /straight-edge is not on/],
    ['turn-edge', { bearing_deg: 360, reference: 'true' }, /360/],
    ['turn-edge', { bearing_deg: 10, reference: 'compass' }, /[Dd]eviation.*not entered|not entered.*deviation/],
    ['turn-edge', { bearing_deg: 10, reference: 'grid' }, /grid/],
    ['turn-edge', { reference: 'true' }, /bearing_deg/],
    ['lift-edge', {}, /straight-edge is not on/],
    ['undo', {}, /nothing to undo/],
    ['redo', {}, /nothing to redo/],
    ['open-text', { text: '' }, /empty/],
    ['open-text', { text: 'https://example.invalid/' }, /1:/],
    ['open-text', { text: '7:AAAA' }, /newer.*7/],
    ['open-text', { text: '1:' }, /./],
    ['open-text', { text: '1:AAAA' }, /./],
    ['open-text', { text: '1:AA*A' }, /character/],
    ['set-palette', { palette: 'pink' }, /pink/],
    ['no-such-command', {}, /no-such-command/],
  ];

  describe('of commands', () => {
    for (const [name, args, words] of refusals) {
      test(`${name} ${JSON.stringify(args).slice(0, 90)}`, async () => {
        const before_it = await read(page);
        const answer = await command(page, name, args);
        assert.deepEqual(fields(answer), ['error']);
        assert.match(answer.error, words);
        assert.match(answer.error, /^[A-Z0-9“].*[.?]$/, 'a whole sentence');
        assert.deepEqual(await read(page), before_it, 'all stays as it was');
      });
    }

    test('arguments of the wrong kind are refused in words too', async () => {
      const answers = await page.evaluate(() => [null, 7, 'text', [], undefined].map((args) => window.fogsheet.command('add-mark', args)));
      for (const answer of answers) assert.equal(typeof answer.error, 'string');
      const odd = await page.evaluate(() => [NaN, Infinity, null, '12', {}].map((lat_deg) => window.fogsheet.command('add-mark', { name: 'Odd', lat_deg, lon_deg: -31.3 })));
      for (const answer of odd) assert.match(answer.error, /lat_deg/);
    });

    test('a text with one character changed, left out or put in is damaged', async () => {
      const text = (await link(page)).split('#')[1];
      const before_it = await read(page);
      const spoilt = [];
      for (let at = 2; at < text.length; at += 13) {
        spoilt.push(text.slice(0, at) + (text[at] === 'A' ? 'B' : 'A') + text.slice(at + 1), text.slice(0, at) + text.slice(at + 1), `${text.slice(0, at)}Q${text.slice(at)}`);
      }
      for (let length = 2; length < text.length; length += 29) spoilt.push(text.slice(0, length));
      const taken = await page.evaluate((texts) => texts.filter((each) => window.fogsheet.command('open-text', { text: each }).ok), spoilt);
      assert.deepEqual(taken, []);
      assert.deepEqual(await read(page), before_it);
    });

    test('a text that no sheet can have is refused unread', async () => {
      const answer = await page.evaluate(() => window.fogsheet.command('open-text', { text: `1:${'A'.repeat(40_000_000)}` }));
      assert.match(answer.error, /too long.*40000002/);
    });

    test('a person sees the sentence that a script gets', async () => {
      const { error } = await command(page, 'add-mark', { name: 'Far off', lat_deg: 50, lon_deg: -31 });
      await until(page, 'the sentence on the page', (text) => document.body.innerText.includes(text), error);
    });

    test('a link that is damaged opens the sheet to try and says so', async () => {
      const other = await stage.browser.open(size);
      const text = await link(page);
      await open(other, text.slice(0, -6));
      assert.equal((await read(other)).sheet.name, 'The Sunder Ground');
      assert.match(await text_of(other, 'body'), /damaged|too early/);
      await other.close();
    });
  });
});
