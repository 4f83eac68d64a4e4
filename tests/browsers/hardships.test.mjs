// What the page does where something is missing or lost: no WebGL2, a lost context, no service worker, no program, another
// sub-path, a newer version. Chromium.
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { describe, test } from 'node:test';

import { open_chromium, with_engine } from './lib/engines.mjs';
import { mouse_hand, place_of, where } from './lib/hands.mjs';
import { do_the_job } from './lib/job.mjs';
import { picture, same_ink } from './lib/pictures.mjs';
import { command, done, frames, kept, kept_offline, link, note_violations, open, open_again, read, ready, sheet_of, text_of, until, watch } from './lib/sheet.mjs';
import { open_site, site_folder } from './lib/site.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const plain_host = 'boat.test';  // a name that is not the machine's own: no secure context, so no service worker

describe('hardships', with_engine('chromium', 180_000), () => {
  const stage = chromium_on_site({ flags: [`--host-resolver-rules=MAP ${plain_host} 127.0.0.1`] });

  const offline_line = async (page) => {
    await done(page, 'open-slip', { slip: 'more' });
    return until(page, 'what More says of offline use', () => document.querySelector('[data-panel=more]')?.innerText);
  };

  test('no WebGL2: the page says so; lists, sum and commands work', async () => {
    const bare = await open_chromium({ flags: ['--disable-3d-apis'] });
    try {
      const page = await bare.open(size);
      await open(page, stage.site.url);
      assert.match(await text_of(page, 'body'), /WebGL2/);
      assert.match(await text_of(page, '[data-name=marks]'), /Gannet Post/);
      assert.match(await text_of(page, '[data-name=legs]'), /096°T/);
      const { marks, roses } = await read(page);
      await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
      await done(page, 'slide-edge-to', { rose: roses[0].id });
      assert.match((await text_of(page, '[data-name=chain]')).replace(/\s/g, ''), /096°T.*9°W.*105°M/);
      await done(page, 'add-mark', { name: 'Gull Rock', lat_deg: 44.13, lon_deg: -31.3 });
      assert.match(await until(page, 'the new mark in the list', () => document.querySelector('[data-name=marks]').innerText), /Gull Rock/);
      assert.equal(await where(page, 'mark/Gull Rock'), null);
      assert.equal(await frames(page), 0);
    } finally {
      await bare.close();
    }
  });

  test('a lost context is restored, and the same picture drawn; one lost for good gives the lists', async () => {
    const page = await stage.browser.open({ ...size, serviceWorkers: 'block' });
    await open(page, stage.site.url);
    await done(page, 'turn-edge', { bearing_deg: 60, reference: 'true' });
    await page.raw.page.waitForTimeout(500);
    const as_it_was = await page.screenshot();
    const drawn = await page.evaluate(() => {
      window.losing = document.querySelector('#sheet canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
      window.losing.loseContext();
      return window.fogsheet.frames();
    });
    await done(page, 'turn-edge', { bearing_deg: 80, reference: 'true' });
    await done(page, 'turn-edge', { bearing_deg: 60, reference: 'true' });
    await page.raw.page.waitForTimeout(200);
    await page.evaluate(() => window.losing.restoreContext());
    await until(page, 'a frame after the loss', (before_it) => window.fogsheet.frames() > before_it, drawn);
    await page.raw.page.waitForTimeout(400);
    assert.ok(same_ink(picture(as_it_was), picture(await page.screenshot())), 'the sheet looks as before');

    await page.evaluate(() => window.losing.loseContext());
    await until(page, 'the lists in its place', () => document.getElementById('whole').innerText.includes('Gannet Post'));
    assert.match(await text_of(page, 'body'), /WebGL2/);
    await page.close();
  });

  test('no service worker: More says so, and all else works', async () => {
    const page = await stage.browser.open({ ...size, prepare: note_violations });
    const address = stage.site.url.replace('localhost', plain_host);
    const watched = watch(page, new URL(address).origin);
    await open(page, address);
    assert.equal(await page.evaluate(() => 'serviceWorker' in navigator), false);
    assert.match(await offline_line(page), /without a (signal|connection)|offline/i);
    await done(page, 'close-slip');
    await do_the_job(page, mouse_hand(page));
    await watched.check();
    await page.close();
  });

  test('a service worker that fails: More says so', async () => {
    const page = await stage.browser.open({ ...size, serviceWorkers: 'block' });
    await open(page, stage.site.url);
    const more = await offline_line(page);
    const well = await stage.browser.open(size);
    await open(well, stage.site.url);
    await kept_offline(well);
    assert.notEqual(await offline_line(well), more);
    await page.close();
    await well.close();
  });

  test('ready rejects with the sentence that is shown when the program does not arrive', async () => {
    const page = await stage.browser.open({ ...size, serviceWorkers: 'block' });
    await page.raw.page.route('**/*.wasm', (route) => route.abort());
    await page.goto(stage.site.url);
    const sentence = await page.evaluate(() => window.fogsheet.ready.then(() => '', (error) => error.message));
    assert.match(sentence, /^[A-Z].*\.$/);
    assert.ok((await text_of(page, 'body')).includes(sentence));
    await page.close();
  });

  test('the site works from a root, a sub-path, and with a link in its address', async () => {
    for (const base of ['/', '/a/b/c/']) {
      const other = await open_site({ base });
      const page = await stage.browser.open({ ...size, prepare: note_violations });
      const watched = watch(page, other.origin);
      await open(page, other.url);
      const text = await link(page);
      assert.ok(text.startsWith(`${other.url}#1:`), text);
      await kept_offline(page);
      await watched.check();
      await other.close();
      await open(page, text);
      assert.ok(await frames(page) > 0);
      await page.close();
    }
  });

  test('a newer version waits until it is asked for, and is whole', async () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'fogsheet-site-'));
    cpSync(site_folder, folder, { recursive: true });
    const moving = await open_site({ folder });
    try {
      const page = await stage.browser.open(size);
      await open(page, moving.url);
      await kept_offline(page);
      await page.reload();
      await ready(page);
      await done(page, 'add-mark', { name: 'Gull Rock', lat_deg: 44.13, lon_deg: -31.3 });
      publish_anew(folder);
      await page.evaluate(() => navigator.serviceWorker.getRegistration().then((worker) => worker.update()));
      await until(page, 'the newer version to wait', () => navigator.serviceWorker.getRegistration().then((worker) => Boolean(worker.waiting)));
      assert.equal((await read(page)).marks.at(-1).name, 'Gull Rock', 'what is open stays open');
      await done(page, 'close-slip');
      await until(page, 'word of it in the margin', () => /newer version/.test(document.getElementById('margin').innerText));
      await offline_line(page);
      await until(page, 'the offer in More', () => {
        document.querySelector('[data-name=use-new-version]')?.scrollIntoView();
        return window.fogsheet.where('use-new-version');
      });
      const version = await page.evaluate(() => document.querySelector('script[type=module]').src);
      // What was done a moment before is on its way to the store, and must not be left behind.
      const offer = await place_of(page, 'use-new-version');
      await done(page, 'add-mark', { name: 'Tern Rock', lat_deg: 44.14, lon_deg: -31.3 });
      await Promise.all([page.raw.page.waitForNavigation(), mouse_hand(page).press(offer)]);
      await ready(page);
      assert.deepEqual((await read(page)).marks.slice(-2).map((mark) => mark.name), ['Gull Rock', 'Tern Rock']);
      assert.notEqual(await page.evaluate(() => document.querySelector('script[type=module]').src), version);
      await moving.close();
      await page.reload();
      await ready(page);
      await page.close();
    } finally {
      await moving.close().catch(() => {});
      rmSync(folder, { recursive: true });
    }
  });

  test('a tab of the older version goes on beside one of the newer, with its own files and the same sheets', async () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'fogsheet-site-'));
    cpSync(site_folder, folder, { recursive: true });
    const moving = await open_site({ folder });
    try {
      const older = await stage.browser.open(size);
      await open(older, moving.url);
      await kept_offline(older);
      await older.reload();
      await ready(older);
      await done(older, 'new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across', name: 'Gull' });
      await kept(older);
      const raw = await older.raw.context.newPage();
      const newer = { ...older, raw: { ...older.raw, page: raw }, goto: (url) => raw.goto(url), evaluate: (fn, ...args) => raw.evaluate(`(${fn})(...${JSON.stringify(args)})`) };
      await open_again(newer, moving.url);
      const version = (page) => page.evaluate(() => document.querySelector('script[type=module]').src);
      const old_version = await version(older);
      assert.equal(await version(newer), old_version);
      publish_anew(folder);
      await newer.evaluate(() => navigator.serviceWorker.getRegistration().then((worker) => worker.update()));
      await until(newer, 'the newer version to wait', () => navigator.serviceWorker.getRegistration().then((worker) => Boolean(worker.waiting)));
      await until(newer, 'word of it', () => /newer version/.test(document.getElementById('margin').innerText));
      await Promise.all([raw.waitForNavigation(), done(newer, 'use-new-version')]);
      await ready(newer);
      assert.notEqual(await version(newer), old_version);
      await moving.close();  // from here on all comes from the device

      await done(older, 'add-mark', { name: 'from the older', lat_deg: 44.01, lon_deg: -31 });
      await kept(older);
      const last_mark = (page, name) => until(page, name, (wanted) => window.fogsheet.read().marks.at(-1)?.name === wanted, name);
      await last_mark(newer, 'from the older');
      await done(newer, 'add-mark', { name: 'from the newer', lat_deg: 44.02, lon_deg: -31 });
      await kept(newer);
      await last_mark(older, 'from the newer');
      const [download] = await Promise.all([older.raw.page.waitForEvent('download'), done(older, 'save-as', { format: 'gpx' })]);
      assert.match(readFileSync(await download.path(), 'utf8'), /from the newer/);
      await older.reload();
      await ready(older);
      assert.equal(await version(older), await version(newer), 'loaded anew it is the newer one');
      assert.deepEqual((await read(older)).marks.map(({ name }) => name), ['from the older', 'from the newer']);
      await older.close();
    } finally {
      await moving.close().catch(() => {});
      rmSync(folder, { recursive: true });
    }
  });

  test('what is put on while storage is forbidden stands, and nothing breaks', async () => {
    const page = await stage.browser.open({ ...size, serviceWorkers: 'block', prepare: () => {
      Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('forbidden', 'SecurityError'); } });
    } });
    await open(page, stage.site.url);
    await done(page, 'set-palette', { palette: 'night' });
    assert.ok((await command(page, 'fit')).ok);
    await page.close();
  });

  test('a link pasted into the address of an open page opens its sheet, and the former one is kept', async () => {
    const page = await stage.browser.open({ ...size, serviceWorkers: 'block' });
    await open(page, stage.site.url);
    const demo = await read(page);
    await done(page, 'new-sheet', { mid_lat_deg: 10, mid_lon_deg: 20, scale: 150000, paper: 'screen' });
    const made = await read(page);
    const text = await link(page);
    await done(page, 'undo');
    await page.evaluate((fragment) => { location.hash = fragment; }, new URL(text).hash);
    await until(page, 'the other sheet', (scale) => window.fogsheet.read().sheet.scale === scale, 150000);
    assert.deepEqual(sheet_of(await read(page)), sheet_of(made));
    await done(page, 'undo');
    assert.deepEqual(sheet_of(await read(page)), sheet_of(demo));
    await page.close();
  });
});

/// The same site under another version's name, as a build of changed sources gives it.
function publish_anew(folder) {
  const old = /"([0-9a-f]{12})\//.exec(readFileSync(path.join(folder, 'sw.js'), 'utf8'))[1];
  const fresh = [...old].reverse().join('');
  cpSync(path.join(folder, old), path.join(folder, fresh), { recursive: true });
  rmSync(path.join(folder, old), { recursive: true });
  for (const name of ['index.html', 'sw.js']) {
    const file = path.join(folder, name);
    writeFileSync(file, readFileSync(file, 'utf8').replaceAll(old, fresh));
  }
}
