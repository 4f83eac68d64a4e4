// The page as an installed application: what the browser makes of its manifest, a start without a signal, and the screen kept
// awake. Members and pictures of the manifest are tests/web/manifest.test.mjs; a newer version that waits is hardships.test.mjs.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';

import { engines, launch, open_chromium, with_engine } from './lib/engines.mjs';
import { draw_icon, icon_folder, icons } from './lib/icons.mjs';
import { picture, same_ink } from './lib/pictures.mjs';
import { done, frames, kept_offline, open, open_again, until } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';

const size = { width: 820, height: 1180 };
const plain_host = 'boat.test';  // not the machine's own name: no secure context, in which alone a screen can be kept awake

describe('installed', with_engine('chromium', 180_000), () => {
  let browser;
  before(async () => { browser = await open_chromium({ flags: [`--host-resolver-rules=MAP ${plain_host} 127.0.0.1`] }); });
  after(() => browser?.close());

  test('the browser finds no fault with the manifest, and the page can be installed', async (t) => {
    const site = await open_site();
    t.after(site.close);
    const page = await browser.open(size);
    t.after(page.close);
    await open(page, site.url);
    await kept_offline(page);
    const cdp = await page.raw.context.newCDPSession(page.raw.page);
    const { errors, url } = await cdp.send('Page.getAppManifest');
    assert.deepEqual(errors, []);
    assert.equal(url, `${site.url}manifest.webmanifest`);
    const { installabilityErrors } = await cdp.send('Page.getInstallabilityErrors');
    // A browser without a profile of its own says so; nothing else may be amiss.
    assert.deepEqual(installabilityErrors.map((each) => each.errorId).filter((id) => id !== 'in-incognito'), []);
  });

  test('it starts from the address that the manifest gives when there is no server', async (t) => {
    const site = await open_site();
    const page = await browser.open(size);
    t.after(page.close);
    await open(page, site.url);
    await kept_offline(page);
    const manifest = await page.evaluate(() => fetch('manifest.webmanifest').then((answer) => answer.json()));
    const start = new URL(manifest.start_url, `${site.url}manifest.webmanifest`).href;
    await site.close();
    await page.goto('about:blank');
    await open_again(page, start);
    assert.ok(await frames(page) > 0);
    assert.equal(await page.evaluate(() => window.fogsheet.read().marks.length > 0), true);
  });

  test('its pictures are those of the drawing', async () => {
    for (const [name, row] of Object.entries(icons)) {
      assert.ok(same_ink(picture(readFileSync(path.join(icon_folder, name))), picture(await draw_icon(browser, row))), `${name}: node tests/browsers/lib/icons.mjs draws it anew`);
    }
  });

  describe('the screen kept awake', () => {
    let site;
    before(async () => { site = await open_site(); });
    after(() => site?.close());

    /// A device whose answers the test gives, and a page whose being in sight it can change.
    const stand_in = () => {
      const device = { asked: 0, held: null, refuses: false };
      window.device = device;
      Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: {
        async request(type) {
          device.asked += 1;
          if (type !== 'screen' || device.refuses) throw new DOMException('no', 'NotAllowedError');
          const lock = new EventTarget();
          lock.release = async () => {
            device.held = null;
            lock.dispatchEvent(new Event('release'));
          };
          device.held = lock;
          return lock;
        },
      } });
      let sight = 'visible';
      Object.defineProperty(document, 'visibilityState', { get: () => sight });
      device.show = (state) => {
        sight = state;
        // As the standard has it: a page out of sight loses its lock.
        if (state === 'hidden') device.held?.release();
        document.dispatchEvent(new Event('visibilitychange'));
      };
    };
    const says = (page, words) => until(page, `the settings to say ${words}`, (text) => document.querySelector('[data-panel=settings]')?.innerText.includes(text), words);
    const settings = async (t) => {
      const page = await browser.open({ ...size, serviceWorkers: 'block', prepare: stand_in });
      t.after(page.close);
      await open(page, site.url);
      await done(page, 'open-slip', { slip: 'settings' });
      return page;
    };

    test('it is asked for when set, again when the page comes back into sight, and let go of', async (t) => {
      const page = await settings(t);
      assert.equal(await page.evaluate(() => window.device.asked), 0, 'never unasked');
      await done(page, 'set-screen', { screen: 'awake' });
      await says(page, 'screen stays on');
      await page.evaluate(() => window.device.show('hidden'));
      assert.equal(await page.evaluate(() => window.device.held), null);
      await page.evaluate(() => window.device.show('visible'));
      await until(page, 'the screen held again', () => window.device.held);
      assert.equal(await page.evaluate(() => window.device.asked), 2);

      await open_again(page, site.url);
      await until(page, 'the screen held after the page came again', () => window.device.held);
      await done(page, 'set-screen', { screen: 'device' });
      await until(page, 'it let go', () => !window.device.held);
      await page.evaluate(() => { window.device.show('hidden'); window.device.show('visible'); });
      assert.equal(await page.evaluate(() => window.device.asked), 1, 'not asked again');
    });

    test('a browser that can\'t is said in words', async (t) => {
      const page = await browser.open(size);
      t.after(page.close);
      await open(page, site.url.replace('localhost', plain_host));
      assert.equal(await page.evaluate(() => 'wakeLock' in navigator), false);
      await done(page, 'open-slip', { slip: 'settings' });
      await done(page, 'set-screen', { screen: 'awake' });
      await says(page, "can't keep the screen on");
    });

    test('a device that refuses, or lets go by itself, is said in words', async (t) => {
      const page = await settings(t);
      await page.evaluate(() => { window.device.refuses = true; });
      await done(page, 'set-screen', { screen: 'awake' });
      await says(page, 'would not keep the screen on');
      await page.evaluate(() => { window.device.refuses = false; window.device.show('hidden'); window.device.show('visible'); });
      await says(page, 'screen stays on');
      await page.evaluate(() => window.device.held.release());
      await says(page, 'would not keep the screen on');
    });
  });
});

describe('the screen kept awake in each engine', () => {
  for (const engine of engines) {
    test(engine, with_engine(engine, 120_000), async (t) => {
      const site = await open_site();
      t.after(site.close);
      const page = await launch(engine, size);
      t.after(page.close);
      await open(page, site.url);
      await done(page, 'open-slip', { slip: 'settings' });
      await done(page, 'set-screen', { screen: 'awake' });
      const [has, said] = await until(page, 'how it stands', () => {
        const found = /screen stays on|would not keep|can't keep/.exec(document.querySelector('[data-panel=settings]')?.innerText ?? '');
        return found && [Boolean(navigator.wakeLock), found[0]];
      });
      t.diagnostic(`${engine}: navigator.wakeLock ${has ? 'is there' : 'is absent'}, "${said}"`);
      assert.equal(said === "can't keep", !has);
    });
  }
});
