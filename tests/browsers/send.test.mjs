// A sheet sent and opened: its link as a code on the screen, read back from a picture of the screen by another program's decoder (jsqr);
// what is handed to the system to send; a link that comes while a sheet of one's own is open. Chromium.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import read_code from 'jsqr';
import { PNG } from 'pngjs';

import { with_engine } from './lib/engines.mjs';
import { press_part } from './lib/forms.mjs';
import { mouse_hand, touch_hand } from './lib/hands.mjs';
import { views } from './lib/job.mjs';
import { done, link, open, open_again, read, text_of, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const mine = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across', name: 'Mine' };
const fragment = (of) => of.slice(of.indexOf('#'));

/// What the decoder reads from the screen as it is.
async function code_on(page) {
  const { data, width, height } = PNG.sync.read(await page.raw.page.screenshot());
  return read_code(new Uint8ClampedArray(data), width, height)?.data;
}

const code_shown = (page) => until(page, 'a code', () => document.querySelector('[data-panel=code] svg.qr path') !== null);

/// A route of so many marks along the sheet's middle.
async function plot(page, marks, from = 0) {
  for (let i = from; i < from + marks; i += 1) await done(page, 'add-mark', { name: `Perch ${i + 1}`, lat_deg: 44 + 0.0001 * (i % 7), lon_deg: -31.05 + 0.0005 * i });
}

describe('send', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();

  async function fresh(view) {
    const page = await stage.browser.open(view);
    await open(page, stage.site.url);
    return page;
  }

  for (const device of ['tablet across', 'tablet upright', 'phone', 'desktop'])
    test(`the code is read back from the screen: ${device}`, async () => {
      const page = await fresh(views[device]);
      const hand = views[device].touch ? await touch_hand(page) : mouse_hand(page);
      await done(page, 'open-slip', { slip: 'send' });
      await press_part(page, hand, 'show-code');
      await code_shown(page);
      assert.equal(await code_on(page), await link(page));
      for (const palette of ['dusk', 'night', 'high-contrast']) {
        await done(page, 'set-palette', { palette });
        for (const light of ['full', 'little']) {
          await done(page, 'code-light', { light });
          assert.equal(await code_on(page), await link(page), `${palette}, ${light}`);
        }
      }
      await done(page, 'new-sheet', mine);
      await plot(page, 85);
      await done(page, 'show-code');
      await code_shown(page);
      assert.ok((await link(page)).length > 600);
      assert.equal(await code_on(page), await link(page));
      await page.close();
    });

  test('a link too long for a code, then for messages, says so and offers the file', async () => {
    const page = await fresh(views['tablet across']);
    await done(page, 'new-sheet', mine);
    await plot(page, 120);
    await done(page, 'open-slip', { slip: 'send' });
    assert.match(await text_of(page, '[data-panel=send]'), /858 characters/);
    assert.match((await page.evaluate(() => window.fogsheet.command('show-code', {}))).error, /858 characters/);
    await plot(page, 220, 120);
    assert.match(await text_of(page, '[data-panel=send]'), /Too long for many messages[\s\S]*2 000 characters/);
    const [download] = await Promise.all([page.raw.page.waitForEvent('download'), press_part(page, mouse_hand(page), 'save-sheet')]);
    assert.equal(download.suggestedFilename(), 'Mine.fogsheet');
    await page.close();
  });

  test('what the browser can share with gets link or file', async () => {
    const page = await stage.browser.open({ ...views['tablet across'], prepare: () => {
      window.given = [];
      navigator.canShare = ({ files }) => files.length === 1;
      navigator.share = async (what) => {
        window.given.push({ ...what, files: await Promise.all((what.files ?? []).map(async (file) => ({ name: file.name, text: await file.text() }))) });
        if (window.refuses) throw new DOMException('no', window.refuses);
      };
    } });
    await open_again(page, stage.site.url);
    await done(page, 'new-sheet', mine);
    await done(page, 'open-slip', { slip: 'send' });
    await press_part(page, mouse_hand(page), 'share-link');
    await press_part(page, mouse_hand(page), 'share-file');
    const given = await until(page, 'both', () => window.given.length === 2 && window.given);
    assert.equal(given[0].url, await link(page));
    assert.equal(given[1].files[0].name, 'Mine.fogsheet');
    assert.equal(given[1].files[0].text.trim(), fragment(await link(page)).slice(1));
    await page.evaluate(() => { window.refuses = 'NotAllowedError'; });
    await press_part(page, mouse_hand(page), 'share-link');
    await until(page, 'word of it', () => document.body.innerText.includes('Nothing took it'));
    await page.close();
  });

  test('a link that comes while a sheet of one\'s own is open asks, and opens beside', async () => {
    const page = await fresh(views['tablet across']);
    const demo = await link(page);
    await done(page, 'new-sheet', { ...mine, name: 'Sent' });
    const sent = await link(page);
    await done(page, 'new-sheet', mine);
    await done(page, 'add-mark', { name: 'Rock', lat_deg: 44, lon_deg: -31 });
    const { drawer } = (await read(page)).history;
    const own = drawer.find(({ in_hand }) => in_hand).key;
    // One that lies here just so is taken in hand.
    await page.evaluate((hash) => { location.hash = hash; }, fragment(sent));
    await until(page, 'the sheet of the link', () => window.fogsheet.read().sheet.name === 'Sent');
    assert.equal((await read(page)).history.drawer.length, drawer.length);
    // One that was changed since lies beside what the link has.
    await done(page, 'add-mark', { name: 'Perch', lat_deg: 44, lon_deg: -31 });
    await page.evaluate((hash) => { location.hash = hash; }, fragment(demo));
    await until(page, 'the sheet to try', () => window.fogsheet.read().sheet.name !== 'Sent');
    await done(page, 'open-sheet', { key: own });
    await page.evaluate((hash) => { location.hash = hash; }, fragment(sent));
    await until(page, 'the question', () => document.querySelector('[data-panel=link]') !== null);
    assert.match(await text_of(page, '[data-panel=link]'), /Sent[\s\S]*No marks yet/);
    await press_part(page, mouse_hand(page), 'open-arrived');
    await until(page, 'the sheet of the link', () => window.fogsheet.read().sheet.name === 'Sent' && window.fogsheet.read().marks.length === 0);
    assert.equal((await read(page)).history.drawer.length, drawer.length + 1);
    await page.close();
  });
});
