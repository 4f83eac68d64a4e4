// The built site, served under a sub-path, and Chromium pages on it as a user has them.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../../../web/serve.mjs';

export const site_folder = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../../build/site');

export const sizes = {
  tablet_across: { width: 1180, height: 820, scale: 1 },
  tablet_upright: { width: 820, height: 1180, scale: 2, touch: true },
  phone: { width: 390, height: 844, scale: 3, touch: true },
  desktop: { width: 1440, height: 900, scale: 1 },
};

export const serve_product = (base = '/a/sub/path/') => serve(site_folder, { port: 0, base });

export const launch_chromium = (args = []) => chromium.launch({ executablePath: '/usr/bin/chromium', chromiumSandbox: false, args });

/// A page in a profile of its own. Whatever it asks of another origin, and whatever the page's policy refuses, is noted.
export async function open_page(browser, url, { width, height, scale = 1, touch = false, workers = 'block', ...more }) {
  const context = await browser.newContext({ viewport: { width, height }, deviceScaleFactor: scale, hasTouch: touch, isMobile: touch, serviceWorkers: workers, ...more });
  const page = await context.newPage();
  const noted = { errors: [], elsewhere: [] };
  const origin = new URL(url).origin;
  page.on('pageerror', (error) => noted.errors.push(error.message));
  page.on('console', (message) => { if (message.type() === 'error') noted.errors.push(message.text()); });
  page.on('request', (request) => { if (!request.url().startsWith(origin) && !/^(data|blob):/.test(request.url())) noted.elsewhere.push(request.url()); });
  await page.goto(url);
  await page.evaluate(() => window.fogsheet.ready);
  return { context, page, noted };
}

export const read = (page) => page.evaluate(() => window.fogsheet.read());
export const command = (page, name, args) => page.evaluate(([n, a]) => window.fogsheet.command(n, a), [name, args]);
export const where = (page, name) => page.evaluate((n) => window.fogsheet.where(n), name);

export async function middle_of(page, name) {
  const box = await where(page, name);
  if (!box) throw new Error(`${name} can't be reached`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/// Real presses and drags, by mouse or by finger (through the browser's own input, never by script events).
export function hand(page, { touch = false } = {}) {
  if (!touch) {
    return {
      press: async (at) => { await page.mouse.move(at.x, at.y); await page.mouse.down(); await page.mouse.up(); },
      drag: async (from, to, steps = 12) => {
        await page.mouse.move(from.x, from.y);
        await page.mouse.down();
        await page.mouse.move(to.x, to.y, { steps });
        await page.mouse.up();
      },
    };
  }
  let session;
  const send = async (type, points) => {
    session ??= await page.context().newCDPSession(page);
    await session.send('Input.dispatchTouchEvent', { type, touchPoints: points.map((p, id) => ({ x: p.x, y: p.y, id, force: 0.5 })) });
  };
  return {
    press: async (at) => { await send('touchStart', [at]); await page.waitForTimeout(60); await send('touchEnd', []); },
    drag: async (from, to, steps = 12) => {
      await send('touchStart', [from]);
      for (let i = 1; i <= steps; ++i) await send('touchMove', [{ x: from.x + ((to.x - from.x) * i) / steps, y: from.y + ((to.y - from.y) * i) / steps }]);
      await send('touchEnd', []);
    },
    two_fingers: async (frames) => {
      await send('touchStart', frames[0]);
      for (const frame of frames.slice(1)) await send('touchMove', frame);
      await send('touchEnd', []);
    },
    send,
  };
}

/// Two sheets are equal when what is read of them agrees but for edge and history.
export function equal_part(reading) {
  const { edge, history, ...rest } = reading;
  return rest;
}
