// The drawer: a sheet found as its words are typed, its picture beside it, many sheets; what is damaged, told, saved and put
// away; how much room there is and what the browser promises. Chromium.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { press_part } from './lib/forms.mjs';
import { mouse_hand } from './lib/hands.mjs';
import { done, kept, note_violations, open, open_again, read, ready, text_of, until, watch } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const middle = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' };
const names = (page) => page.evaluate(() => [...document.querySelectorAll('[data-name=sheets] tbody tr')].map((row) => row.querySelector('bdi').innerText));
const drawer_text = (page) => text_of(page, '[data-panel=drawer]');

describe('drawer', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();
  const fresh = async (view = {}) => {
    const page = await stage.browser.open({ ...size, prepare: note_violations, ...view });
    await open(page, stage.site.url);
    return page;
  };
  const open_drawer = (page) => done(page, 'open-slip', { slip: 'drawer' });
  /// Until the page has been told how much room there is.
  const looked = (page) => until(page, 'the room to be looked at', () => navigator.storage.estimate().then(() => true));

  test('sheets are found letter by letter, the field keeps the keys, each has its picture', async () => {
    const page = await fresh();
    const watched = watch(page, stage.site.origin);
    for (let i = 0; i < 40; i += 1) await done(page, 'new-sheet', { ...middle, name: `Sheet ${i}` });
    await done(page, 'add-mark', { name: 'Östra Hask', lat_deg: 44.01, lon_deg: -31 });
    await open_drawer(page);
    await until(page, 'some of the sheets', () => document.querySelectorAll('[data-name=sheets] tbody tr').length === 30);
    assert.equal(await page.evaluate(() => document.querySelectorAll('[data-name=sheets] .picture svg path').length >= 30), true);
    const ink = () => page.evaluate(() => getComputedStyle(document.querySelector('[data-name=sheets] .picture .stroke-ink')).stroke);
    const by_day = await ink();
    await done(page, 'set-palette', { palette: 'night' });
    assert.notEqual(await until(page, 'the palette', () => document.documentElement.dataset.palette === 'night' && getComputedStyle(document.querySelector('[data-name=sheets] .picture .stroke-ink')).stroke), by_day);
    await done(page, 'set-palette', { palette: 'day' });

    await press_part(page, mouse_hand(page), 'search');
    const { keyboard } = page.raw.page;
    for (const [letter, count] of [['ö', 1], ['s', 1], ['t', 1]]) {
      await keyboard.insertText(letter);
      assert.equal((await until(page, 'what is found', (wanted) => (document.querySelectorAll('[data-name=sheets] tbody tr').length === wanted ? [wanted] : null), count)).length, 1);
    }
    assert.deepEqual(await names(page), ['Sheet 39']);
    assert.equal(await page.evaluate(() => document.activeElement.dataset.name), 'search');
    await keyboard.press('Control+A');
    await keyboard.insertText('nowhere');
    await until(page, 'none', () => document.querySelector('[data-name=sheets] .when-empty')?.innerText.includes('no sheet'));
    await keyboard.press('Control+A');
    await keyboard.press('Delete');
    await until(page, 'all of them', () => document.querySelectorAll('[data-name=sheets] tbody tr').length === 30);
    await press_part(page, mouse_hand(page), 'more-sheets');
    await until(page, 'the rest', () => document.querySelectorAll('[data-name=sheets] tbody tr').length > 40);
    await watched.check();
    await page.close();
  });

  test('a damaged record: told, the last good state opened, saved as a file, put away', async () => {
    const page = await fresh();
    await done(page, 'new-sheet', { ...middle, name: 'Gull' });
    await done(page, 'add-mark', { name: 'Gull Rock', lat_deg: 44.01, lon_deg: -31 });
    await done(page, 'add-mark', { name: 'Off Sarn', lat_deg: 44.02, lon_deg: -31 });
    await kept(page);
    await page.goto('about:blank');
    await page.goto(`${stage.site.url}notices.txt`);
    await page.evaluate(() => new Promise((turned, failed) => {  // a bit of the last journal record turns
      const request = indexedDB.open('fogsheet', 1);
      request.onerror = failed;
      request.onsuccess = () => {
        const transaction = request.result.transaction('journal', 'readwrite');
        const cursor = transaction.objectStore('journal').openCursor(null, 'prev');
        cursor.onsuccess = () => {
          const bytes = cursor.result.value;
          bytes[bytes.length - 7] ^= 0x40;
          cursor.result.update(bytes);
        };
        transaction.oncomplete = () => {
          request.result.close();
          turned();
        };
      };
    }));
    await open_again(page, stage.site.url);
    assert.deepEqual((await read(page)).marks.map(({ name }) => name), ['Gull Rock'], 'the last good state');
    await open_drawer(page);
    assert.match(await drawer_text(page), /damaged[\s\S]*last steps of Gull/);
    const hand = mouse_hand(page);
    assert.equal(await page.evaluate(() => document.querySelector('[data-name=put-damaged-away]').getAttribute('aria-disabled')), 'true');
    const [download] = await Promise.all([page.raw.page.waitForEvent('download'), press_part(page, hand, 'save-damaged')]);
    assert.match(download.suggestedFilename(), /^Fogsheet damaged .*\.fogsheets$/);
    assert.ok(readFileSync(await download.path()).includes('Off Sarn'), 'what was lost is in it');
    await press_part(page, hand, 'put-damaged-away');
    await until(page, 'it to be gone', () => !document.querySelector('[data-name=save-damaged]'));
    await page.reload();
    await ready(page);
    await open_drawer(page);
    assert.doesNotMatch(await drawer_text(page), /damaged/);
    await page.close();
  });

  test('the browser is asked once, in the drawer, and its answer stands there', async () => {
    const page = await fresh({ prepare: () => {
      window.asked = 0;
      StorageManager.prototype.persisted = async () => window.promised === true;
      StorageManager.prototype.persist = async () => {
        window.asked += 1;
        return window.promised === true;
      };
    } });
    await page.evaluate(() => localStorage.removeItem('fogsheet.promise-asked'));
    await page.reload();
    await ready(page);
    await looked(page);
    await open_drawer(page);
    await done(page, 'close-slip');
    assert.equal(await page.evaluate(() => window.asked), 0, 'nothing to lose yet');
    await done(page, 'new-sheet', middle);
    await kept(page);
    await open_drawer(page);
    await until(page, 'it to be asked', () => window.asked === 1);
    await until(page, 'the answer', () => document.querySelector('[data-panel=drawer]').innerText.includes('may also clear them'));
    await done(page, 'close-slip');
    await open_drawer(page);
    assert.equal(await page.evaluate(() => window.asked), 1);
    await page.evaluate(() => { window.promised = true; });
    await press_part(page, mouse_hand(page), 'ask-promise');
    await until(page, 'the promise', () => document.querySelector('[data-panel=drawer]').innerText.includes('has promised'));
    assert.equal(await page.evaluate(() => document.querySelector('[data-name=ask-promise]')), null);
    await page.close();
  });

  test('room that grows short, as the browser tells it: said before it is full, with the file to save', async () => {
    const page = await fresh({ prepare: () => { StorageManager.prototype.estimate = async () => window.room ?? { usage: 2e6, quota: 9e8 }; } });
    await done(page, 'new-sheet', { ...middle, name: 'Gull' });
    await kept(page);
    await page.evaluate(() => { window.room = { usage: 85e6, quota: 100e6 }; });
    await open_drawer(page);
    await until(page, 'the drawer to say so', () => /grows short: 85 of 100 MB/.test(document.querySelector('[data-panel=drawer]')?.innerText));
    await done(page, 'close-slip');
    assert.match(await until(page, 'the caution', () => document.querySelector('#margin .caution')?.innerText), /grows short[\s\S]*Save all/);
    const [download] = await Promise.all([page.raw.page.waitForEvent('download'), mouse_hand(page).press('save-all')]);
    assert.match(readFileSync(await download.path(), 'latin1'), /^fogsheets:1\n/);
    await page.evaluate(() => { window.room = { usage: 2e6, quota: 9e8 }; });
    await open_drawer(page);
    await until(page, 'the caution to go', () => !document.querySelector('#margin .caution'));
    await page.close();
  });

  test('a browser that tells neither room nor promise, or has no store: nothing breaks, all can be saved', async () => {
    for (const lack of [
      () => { Object.defineProperty(Navigator.prototype, 'storage', { value: undefined }); },
      () => { for (const name of ['estimate', 'persisted', 'persist']) delete StorageManager.prototype[name]; },
      () => { for (const name of ['estimate', 'persisted', 'persist']) StorageManager.prototype[name] = async () => { throw new TypeError('forbidden'); }; },
      () => { Object.defineProperty(window, 'indexedDB', { value: undefined }); },
    ]) {
      const page = await fresh({ prepare: lack });
      await done(page, 'new-sheet', { ...middle, name: 'Gull' });
      await open_drawer(page);
      await until(page, 'the drawer', () => document.querySelector('[data-panel=drawer]'));
      const has_store = await page.evaluate(() => Boolean(window.indexedDB));
      if (!has_store) assert.match(await drawer_text(page), /Nothing is kept here/);
      else assert.equal(await page.evaluate(() => document.querySelector('[data-name=ask-promise]')), null);
      const [download] = await Promise.all([page.raw.page.waitForEvent('download'), press_part(page, mouse_hand(page), 'save-all')]);
      assert.ok(readFileSync(await download.path()).includes('Gull'));
      await page.close();
    }
  });
});
