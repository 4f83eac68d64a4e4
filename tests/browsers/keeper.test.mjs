// What is kept on the device: sheets, their pasts and the desk come back after a reload and without the server; the drawer
// and its files; and what is said where nothing can be kept. Chromium.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import { setTimeout as sleep } from 'node:timers/promises';

import { with_engine } from './lib/engines.mjs';
import { press_part } from './lib/forms.mjs';
import { mouse_hand } from './lib/hands.mjs';
import { fill, middle } from './lib/keeping.mjs';
import { command, done, kept, kept_offline, link, note_violations, open, open_again, read, ready, sheet_of, text_of, until, watch } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const desk_rest_ms = 700;  // the desk is written when it has come to rest

describe('keeper', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();
  const fresh = async (view = {}) => {
    const page = await stage.browser.open({ ...size, ...view });
    if (!view.prepare) await open(page, stage.site.url);
    else await open_again(page, stage.site.url);
    return page;
  };

  const margin = (page) => text_of(page, '#margin');
  const label_way = async (page) => {
    const way = [];
    for (let { history } = await read(page); history.undo_label; { history } = await read(page)) {
      way.push(history.undo_label);
      await done(page, 'undo');
    }
    return way;
  };

  test('a reload brings back the sheet, its past and its future, and the desk', async () => {
    const page = await fresh({ prepare: note_violations });
    const watched = watch(page, stage.site.origin);
    await fill(page, 'Gull');
    assert.match(await until(page, 'the line in the margin', () => /kept \d{4}/.exec(document.getElementById('margin').innerText)?.[0]), /^kept ([01]\d|2[0-3])[0-5]\d$/);
    await done(page, 'closer');
    await done(page, 'open-slip', { slip: 'lists' });
    await sleep(desk_rest_ms);
    const as_left = await read(page);
    const rose = await page.evaluate(() => window.fogsheet.where('rose/centre'));
    await page.reload();
    await ready(page);
    assert.deepEqual(await read(page), as_left);
    assert.ok(as_left.edge.settled_on && as_left.history.redo_label && as_left.history.undo_label);
    assert.deepEqual(await page.evaluate(() => window.fogsheet.where('rose/centre')), rose, 'the paper lies where it lay');
    assert.match(await text_of(page, '[data-panel=lists]'), /Off Sarn/);
    assert.equal(await page.evaluate(() => document.querySelector('[data-name="tool/straight-edge"]').getAttribute('aria-pressed')), 'true');
    await done(page, 'redo');
    assert.equal((await read(page)).sheet.date, '2027-05-01');
    assert.deepEqual(await label_way(page), ['set the date', 'leg to Off Sarn', 'add Off Sarn', 'add Gull Rock', 'new sheet']);
    await watched.check();
    await page.close();
  });

  test('the database is of version 1, which it stays, with a store for each part', async () => {
    const page = await fresh();
    await fill(page, 'Gull');
    assert.deepEqual(await page.evaluate(() => indexedDB.databases()), [{ name: 'fogsheet', version: 1 }]);
    const names = await page.evaluate(() => new Promise((found) => {
      const request = indexedDB.open('fogsheet');
      request.onsuccess = () => found([...request.result.objectStoreNames]);
    }));
    assert.deepEqual(names, ['damaged', 'desk', 'journal', 'sheets']);
    await page.close();
  });

  test('a reload right after a command loses nothing of it', async () => {
    const page = await fresh();
    await done(page, 'new-sheet', middle);
    for (let n = 0; n < 20; n += 1) await command(page, 'add-mark', { name: `mark ${n}`, lat_deg: 44 + n * 0.001, lon_deg: -31 });
    await page.reload();
    await ready(page);
    assert.equal((await read(page)).marks.length, 20);
    await page.close();
  });

  test('with the server gone the same sheets open', async () => {
    const own = await open_site();
    const page = await stage.browser.open(size);
    await open(page, own.url);
    await fill(page, 'Gull');
    await kept_offline(page);
    await sleep(desk_rest_ms);
    const as_left = await read(page);
    await own.close();
    await page.reload();
    await ready(page);
    assert.deepEqual(await read(page), as_left);
    await page.close();
  });

  test('the demo is there only where nothing is kept, and never flashes up', async () => {
    const page = await fresh();
    assert.equal((await read(page)).history.kept.state, 'nothing');
    assert.doesNotMatch(await margin(page), /kept/i);
    await page.reload();
    await ready(page);
    assert.match(await text_of(page, '[data-panel=first-run]'), /sheet to try/i);
    await fill(page, 'Gull');
    await page.raw.context.addInitScript(() => {
      window.seen = [];
      const look = () => {
        for (const panel of document.querySelectorAll('[data-panel]')) window.seen.push(panel.dataset.panel);
        requestAnimationFrame(look);
      };
      requestAnimationFrame(look);
    });
    await page.reload();
    await ready(page);
    assert.equal((await page.evaluate(() => window.seen)).includes('first-run'), false);
    assert.equal((await read(page)).sheet.name, 'Gull');
    await page.close();
  });

  test('several sheets: by name and day, open, copy, take out and put back, by pressing', async () => {
    const page = await fresh();
    const hand = mouse_hand(page);
    await fill(page, 'Gull');
    await fill(page, 'Tern');
    const tern = await read(page);
    await hand.press('drawer');
    const rows = () => until(page, 'the drawer', () => [...document.querySelectorAll('[data-name=sheets] tbody tr')].map((row) => row.innerText));
    const names = async () => (await rows()).map((row) => /Gull|Tern|Sunder/.exec(row)?.[0]);
    assert.deepEqual((await names()).slice(0, 2), ['Tern', 'Gull']);
    assert.match((await rows())[0], /in hand/);
    const changed = await page.evaluate(() => document.querySelectorAll('[data-name=sheets] tbody tr')[1].lastElementChild.innerText);
    assert.match(changed, /^([01]\d|2[0-3])[0-5]\d$/);

    await hand.press('sheets/1');
    assert.equal((await read(page)).sheet.name, 'Gull');
    assert.ok((await read(page)).edge, 'with what lay on it');
    await press_part(page, hand, 'copy-sheet');
    const copy = await read(page);
    assert.equal(copy.sheet.name, 'Gull (copy)');
    assert.equal(copy.history.undo_label, 'open a sheet');
    assert.equal(copy.marks.length, 2);
    await press_part(page, hand, 'delete-sheet');
    await until(page, 'the sheet to be out', () => document.querySelector('[data-name=removed]')?.innerText.includes('Gull (copy)'));
    assert.notEqual((await read(page)).sheet.name, 'Gull (copy)');
    await kept(page);
    await page.reload();
    await ready(page);
    if (!(await page.evaluate(() => document.querySelector('[data-panel=drawer]')))) await hand.press('drawer');
    await press_part(page, hand, 'removed/0');
    await until(page, 'none to be out', () => !document.querySelector('[data-name=removed]'));
    const { history } = await read(page);
    assert.equal(history.drawer.filter(({ name, removed }) => name === 'Gull (copy)' && !removed).length, 1);
    await done(page, 'open-sheet', { key: history.drawer.find(({ name }) => name === 'Tern').key });
    assert.deepEqual(sheet_of(await read(page)), sheet_of(tern));
    assert.match((await command(page, 'open-sheet', { key: '17' })).error, /no sheet/);
    await page.close();
  });

  test('the steps of a sheet, and going to any of them', async () => {
    const page = await fresh();
    const hand = mouse_hand(page);
    await fill(page, 'Gull');
    await done(page, 'open-slip', { slip: 'history' });
    const steps = () => until(page, 'the steps', () => [...document.querySelectorAll('[data-name=steps] tbody tr')].map((row) => row.innerText.replace(/\s+/g, ' ').trim()));
    assert.deepEqual(await steps(), ['set the date 4', 'leg to Off Sarn now', 'add Off Sarn 2', 'add Gull Rock 1', 'laid down 0']);
    await hand.press('steps/3');
    assert.deepEqual((await read(page)).marks.map(({ name }) => name), ['Gull Rock']);
    await done(page, 'go-to-step', { step: 4 });
    assert.equal((await read(page)).sheet.date, '2027-05-01');
    assert.match((await command(page, 'go-to-step', { step: 5 })).error, /4/);
    await page.close();
  });

  test('a sheet saved as a file and opened again is the same, beside the one in hand', async () => {
    const page = await fresh();
    const hand = mouse_hand(page);
    await fill(page, 'Gull: "Sound"/1');
    const saved = await read(page);
    await hand.press('drawer');
    const [download] = await Promise.all([page.raw.page.waitForEvent('download'), hand.press('save-sheet')]);
    assert.equal(download.suggestedFilename(), 'Gull- -Sound--1.fogsheet');
    const file = await download.path();
    assert.match(readFileSync(file, 'utf8'), /^1:[\w-]+\n$/);
    await done(page, 'new-sheet', middle);
    const [chooser] = await Promise.all([page.raw.page.waitForEvent('filechooser'), hand.press('open-file')]);
    await chooser.setFiles({ name: 'other.fogsheet', mimeType: 'text/plain', buffer: readFileSync(file) });
    await until(page, 'the file to be opened', () => window.fogsheet.read().marks.length === 2);
    assert.deepEqual(sheet_of(await read(page)), sheet_of(saved));
    const [again] = await Promise.all([page.raw.page.waitForEvent('filechooser'), done(page, 'open-slip', { slip: 'drawer' }).then(() => hand.press('open-file'))]);
    await again.setFiles({ name: 'letter.txt', mimeType: 'text/plain', buffer: Buffer.from('Dear all') });
    await until(page, 'why it can not be opened', () => document.querySelector('[data-panel=file] .caution'));
    assert.deepEqual(sheet_of(await read(page)), sheet_of(saved));
    await page.close();
  });

  test('a link in the address opens beside the sheets that are kept, and once only', async () => {
    const page = await fresh();
    await fill(page, 'Gull');
    const text = await link(page);
    await done(page, 'new-sheet', { ...middle, name: 'Tern' });
    await kept(page);
    await page.goto('about:blank');
    await open_again(page, text);
    assert.equal((await read(page)).sheet.name, 'Gull');
    await done(page, 'add-mark', { name: 'mine', lat_deg: 44, lon_deg: -31 });
    await kept(page);
    const sheets = (await read(page)).history.drawer.length;
    await page.reload();
    await ready(page);
    const { marks, history } = await read(page);
    assert.equal(marks.at(-1).name, 'mine', 'the sheet as it is now, not the link');
    assert.equal(history.drawer.length, sheets);
    assert.equal(history.drawer.filter(({ name }) => name === 'Tern').length, 1);
    await page.close();
  });

  test('no store: said at the start, and before anything is lost; the page works, files and links too', async () => {
    for (const forbid of [
      () => { Object.defineProperty(window, 'indexedDB', { value: undefined }); },
      () => { IDBFactory.prototype.open = () => { throw new DOMException('forbidden', 'SecurityError'); }; },
      () => { IDBFactory.prototype.open = () => {
        const request = { error: new DOMException('no', 'UnknownError') };
        setTimeout(() => request.onerror(), 5);
        return request;
      }; },
    ]) {
      const page = await fresh({ prepare: forbid });
      assert.match(await until(page, 'the line', () => document.getElementById('margin').innerText), /nothing is kept/i);
      assert.equal((await read(page)).history.kept.state, 'off');
      await fill_unkept(page);
      const caution = await until(page, 'the caution', () => document.querySelector('#margin .caution')?.innerText);
      assert.match(caution, /nothing is kept[\s\S]*(file|link)/i);
      const [download] = await Promise.all([page.raw.page.waitForEvent('download'), mouse_hand(page).press('save-sheet')]);
      assert.match(readFileSync(await download.path(), 'utf8'), /^1:/);
      await page.close();
    }
  });

  async function fill_unkept(page) {
    await done(page, 'new-sheet', middle);
    await done(page, 'add-mark', { name: 'Gull Rock', lat_deg: 44, lon_deg: -31 });
  }

  test('a store that does not answer: the page starts, says so, and keeps all once it does', async () => {
    const page = await fresh({ prepare: () => {
      const real = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function open(...args) {
        const shell = {};
        window.let_it_open = () => {
          const request = real.apply(this, args);
          request.onupgradeneeded = () => { Object.assign(shell, { result: request.result }); shell.onupgradeneeded?.(); };
          request.onsuccess = () => { Object.assign(shell, { result: request.result }); shell.onsuccess(); };
        };
        return shell;
      };
    } });
    assert.match(await until(page, 'the line', () => document.getElementById('margin').innerText), /does not answer/);
    await fill_unkept(page);
    await page.evaluate(() => window.let_it_open());
    await kept(page);
    assert.equal((await read(page)).marks.length, 1);
    await page.close();
  });

  test('a store that is full: said until it succeeds, and nothing is lost on the way', async () => {
    const page = await fresh({ prepare: () => {
      const real = IDBDatabase.prototype.transaction;
      IDBDatabase.prototype.transaction = function transaction(parts, mode) {
        if (window.is_full && mode === 'readwrite') throw new DOMException('full', 'QuotaExceededError');
        return real.call(this, parts, mode);
      };
    } });
    await fill_unkept(page);
    await kept(page);
    await page.evaluate(() => { window.is_full = true; });
    await done(page, 'add-mark', { name: 'Off Sarn', lat_deg: 44.02, lon_deg: -31 });
    assert.match(await until(page, 'the caution', () => document.querySelector('#margin .caution')?.innerText), /no room/);
    await done(page, 'add-mark', { name: 'Hask', lat_deg: 44.03, lon_deg: -31 });
    assert.equal((await read(page)).history.kept.state, 'failed');
    assert.equal((await read(page)).history.kept.step, 1);
    await page.evaluate(() => { window.is_full = false; });
    await kept(page);
    assert.equal(await page.evaluate(() => document.querySelector('#margin .caution')), null);
    await page.reload();
    await ready(page);
    assert.deepEqual((await read(page)).marks.map(({ name }) => name), ['Gull Rock', 'Off Sarn', 'Hask']);
    await page.close();
  });

  test('of a write that the browser breaks off halfway nothing is done, until all of it is', async () => {
    const page = await fresh({ prepare: () => {
      const real = IDBObjectStore.prototype.delete;
      IDBObjectStore.prototype.delete = function erase(...args) {
        if (window.breaks_off) throw new DOMException('broken off', 'DataError');
        return real.apply(this, args);
      };
    } });
    const sheets = () => page.evaluate(() => new Promise((count) => {
      indexedDB.open('fogsheet', 1).onsuccess = ({ target: { result } }) => {
        const asked = result.transaction('sheets').objectStore('sheets').count();
        asked.onsuccess = () => { result.close(); count(asked.result); };
      };
    }));
    const before = await sheets();
    await page.evaluate(() => { window.breaks_off = true; });
    await done(page, 'new-sheet', { ...middle, name: 'Halfway' });  // the sheet comes in, and its journal goes
    await until(page, 'it to be said', () => document.getElementById('margin').innerText.includes('could not write it'));
    assert.equal(await sheets(), before);
    await page.evaluate(() => { window.breaks_off = false; });
    await kept(page);
    assert.ok(await sheets() > before);
    await page.close();
  });

  test('hostile names are text in the drawer and among the steps', async () => {
    const page = await fresh();
    const names = ['<img src=x onerror=alert(1)>', '\u202Eright to left', '"><script>', 'a'.repeat(190)];
    for (const name of names) await done(page, 'new-sheet', { ...middle, name });
    await done(page, 'add-mark', { name: names[0], lat_deg: 44, lon_deg: -31 });
    await done(page, 'open-slip', { slip: 'drawer' });
    await until(page, 'the drawer', () => document.querySelector('[data-panel=drawer]'));
    const shown = await page.evaluate(() => [...document.querySelectorAll('[data-name=sheets] tbody td:first-child')].map((cell) => cell.textContent));
    for (const name of names) assert.ok(shown.includes(name.replace('\u202E', '')), name);  // what is never turned back goes
    assert.equal(await page.evaluate(() => document.querySelectorAll('[data-panel] img, [data-panel] script').length), 0);
    await page.close();
  });
});
