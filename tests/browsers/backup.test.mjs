// All that is kept as one file: saved from the drawer, the store cleared, the file opened by picker and by drop, everything as it
// was; opened again beside what is here; damaged. Chromium by presses, Firefox and WebKit by what the page reads in the file.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { press_part } from './lib/forms.mjs';
import { mouse_hand } from './lib/hands.mjs';
import { done, kept, note_violations, open, open_again, read, ready, sheet_of, text_of, until, watch } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const middle = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' };
const slip_text = (page) => text_of(page, '[data-panel=file]');

describe('backup', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();
  const fresh = async () => {
    const page = await stage.browser.open({ ...size, prepare: note_violations });
    await open(page, stage.site.url);
    return page;
  };

  /// Three sheets, one of them taken out, and a boat.
  async function fill(page) {
    for (const name of ['Gull', 'Tern', 'Skua']) {
      await done(page, 'new-sheet', { ...middle, name });
      await done(page, 'add-mark', { name: `${name} Rock`, lat_deg: 44.01, lon_deg: -31 });
      await done(page, 'set-date', { date: '2027-05-01' });
      await done(page, 'undo');
    }
    await done(page, 'delete-sheet');
    await done(page, 'new-boat', { name: 'Small Hours' });
    await kept(page);
  }

  async function save_all(page) {
    const hand = mouse_hand(page);
    await hand.press('drawer');
    const [download] = await Promise.all([page.raw.page.waitForEvent('download'), press_part(page, hand, 'save-all')]);
    assert.match(download.suggestedFilename(), /^Fogsheet \d{4}-\d\d-\d\d\.fogsheets$/);
    return readFileSync(await download.path());
  }

  async function pick(page, buffer) {
    const hand = mouse_hand(page);
    if (!(await page.evaluate(() => document.querySelector('[data-panel=drawer]')))) await hand.press('drawer');
    const [chooser] = await Promise.all([page.raw.page.waitForEvent('filechooser'), press_part(page, hand, 'open-file')]);
    await chooser.setFiles({ name: 'all.fogsheets', mimeType: 'application/octet-stream', buffer });
    await until(page, 'what the file holds', () => document.querySelector('[data-panel=file] [data-name=take-in], [data-panel=file] .caution'));
  }

  /// All that a user can see of what is kept: every sheet with the way back and forth, and the boats.
  async function everything(page) {
    const { history } = await read(page);
    const all = { boats: history.boats };
    for (const { key, name, removed } of history.drawer) {
      if (removed) await done(page, 'put-back-sheet', { key });
      await done(page, 'open-sheet', { key });
      const now = await read(page);
      const { desk, ...sheet } = sheet_of(now);
      all[`${key} ${name} ${removed}`] = { sheet, undo: now.history.undo_label, redo: now.history.redo_label, last: now.history.last_step };
    }
    return all;
  }

  test('saved from the drawer, the store cleared, picked again: everything as it was, and kept', async () => {
    const page = await fresh();
    const watched = watch(page, stage.site.origin);
    await fill(page);
    const file = await save_all(page);
    const before = await everything(page);
    await open(page, stage.site.url);  // clears the store
    assert.equal((await read(page)).history.kept.state, 'nothing');
    await pick(page, file);
    assert.match(await slip_text(page), /4 sheets, 1 of them taken out, and 1 boat/);
    assert.match(await slip_text(page), /5 come in/);
    await mouse_hand(page).press('take-in');
    await until(page, 'all to have come', () => document.getElementById('margin').innerText.includes('5 have come in'));
    await kept(page);
    await page.reload();
    await ready(page);
    assert.deepEqual(await everything(page), before);
    await watched.check();
    await page.close();
  });

  test('dropped on the page beside what differs: nothing here is changed, and a second time nothing comes', async () => {
    const page = await fresh();
    await fill(page);
    const file = await save_all(page);
    await done(page, 'add-mark', { name: 'since', lat_deg: 44.03, lon_deg: -31 });
    const mine = await read(page);
    const drop = () => page.evaluate((bytes) => {
      const data = new DataTransfer();
      data.items.add(new File([new Uint8Array(bytes)], 'all.fogsheets'));
      document.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, [...file]);
    await drop();
    await until(page, 'what the file holds', () => document.querySelector('[data-panel=file] [data-name=take-in]'));
    assert.match(await slip_text(page), /1 is here in another state: nothing here is changed/);
    await press_part(page, mouse_hand(page), 'take-in');
    await until(page, 'the copy', (count) => window.fogsheet.read().history.drawer.length === count, mine.history.drawer.length + 1);
    assert.deepEqual(sheet_of(await read(page)), sheet_of(mine));
    await drop();
    await until(page, 'what the file holds', () => document.querySelector('[data-panel=file]')?.innerText.includes('stand here already'));
    assert.equal(await page.evaluate(() => document.querySelector('[data-name=take-in]')), null);
    await page.close();
  });

  test('a damaged file names what is damaged, and the rest comes in', async () => {
    const page = await fresh();
    await fill(page);
    const file = Buffer.from(await save_all(page));
    const at = file.indexOf('Tern', file.indexOf('Tern') + 4);
    assert.ok(at > 0 || file.indexOf('Tern') > 0);
    const record = file.indexOf('Tern') + 40;  // in what follows its head
    file[record] ^= 0xFF;
    await open(page, stage.site.url);
    await pick(page, file);
    assert.match(await slip_text(page), /1 thing is not whole/);
    assert.match(await slip_text(page), /Tern\s+damaged/);
    await press_part(page, mouse_hand(page), 'take-in');
    await until(page, 'the rest', () => window.fogsheet.read().history.drawer.some(({ name }) => name === 'Gull'));
    assert.ok((await read(page)).history.drawer.some(({ name, removed }) => name === 'Skua' && removed));
    assert.equal((await read(page)).history.boats.length, 1);
    await page.close();
  });

  test('a letter under its name is refused with a reason, and nothing changes', async () => {
    const page = await fresh();
    const before = await read(page);
    await pick(page, Buffer.from('Dear all'));
    assert.match(await slip_text(page), /can't be used[\s\S]*no file that can be read here/);
    await pick_newer(page);
    assert.match(await slip_text(page), /newer version/);
    assert.deepEqual(sheet_of(await read(page)), sheet_of(before));
    await page.close();
  });

  async function pick_newer(page) {
    const [chooser] = await Promise.all([page.raw.page.waitForEvent('filechooser'), press_part(page, mouse_hand(page), 'open-file')]);
    await chooser.setFiles({ name: 'all.fogsheets', mimeType: 'application/octet-stream', buffer: Buffer.from('fogsheets:7\n') });
    await until(page, 'why', () => document.querySelector('[data-panel=file]')?.innerText.includes('newer'));
  }
});
