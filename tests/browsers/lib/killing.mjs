// Browsers started as a user starts them, on a profile of their own and with no driver, so that they keep what they are
// told to keep; and killed with all their processes, as a full stop of the machine would for all that the page can tell.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

import { programs, virtual_screen } from './engines.mjs';
import { end_group, remember } from './leftovers.mjs';

const port_file = 'DevToolsActivePort';  // Chromium writes into it where it can be spoken to
const flags = ['--headless=new', '--no-sandbox', '--no-first-run', '--disable-gpu-sandbox'];

/// @param driven  Chromium lets itself be told how much room there is
/// @return {open(urls), open_with_room(url, bytes), kill(), close()}: one browser at a time on one profile, with a tab for each address
export async function open_profile(engine, { driven = false } = {}) {
  const profile = mkdtempSync(path.join(os.tmpdir(), `fogsheet-${engine}-`));
  const screen = engine === 'webkit' ? await virtual_screen() : null;
  const start = {
    chromium: (urls) => {
      for (const name of ['SingletonLock', 'SingletonSocket', 'SingletonCookie', port_file]) rmSync(path.join(profile, name), { force: true });
      // Headless it takes one address: that page opens the other tab.
      const [first, other] = urls;
      return [programs.chromium, [...flags, `--user-data-dir=${profile}`, ...(driven ? ['--remote-debugging-port=0'] : []), '--disable-popup-blocking', other ? `${first}&other=${encodeURIComponent(other)}` : first], process.env];
    },
    firefox: (urls) => {
      // Nor is it to look at a page by itself, for a small picture of it: that one has a store of its own, which is empty.
      const set = { 'browser.sessionstore.resume_from_crash': false, 'toolkit.startup.max_resumed_crashes': -1, 'browser.pagethumbnails.capturing_disabled': true };
      writeFileSync(path.join(profile, 'user.js'), Object.entries(set).map(([name, value]) => `user_pref("${name}", ${value});\n`).join(''));
      return [programs.firefox, ['--headless', '--no-remote', '--profile', profile, ...urls], process.env];
    },
    webkit: (urls) => {
      const home = { HOME: profile, XDG_DATA_HOME: profile, XDG_CACHE_HOME: profile, XDG_CONFIG_HOME: profile, XDG_RUNTIME_DIR: profile };
      return [programs.minibrowser, urls, { ...process.env, ...home, DISPLAY: screen.display, GDK_BACKEND: 'x11', NO_AT_BRIDGE: '1', LIBGL_ALWAYS_SOFTWARE: '1' }];
    },
  }[engine];
  mkdirSync(profile, { recursive: true });
  let running = null;
  const kill = async () => {
    if (!running) return;
    const gone = new Promise((done) => { running.once('exit', done); });
    end_group(running.pid);
    await gone;
    running = null;
  };
  const open = (urls) => {
    const [program, args, env] = start(urls);
    running = spawn(program, args, { detached: true, stdio: 'ignore', env });
    remember(running.pid);
  };
  return {
    open,
    /// Until the browser is killed its store takes so many bytes more. Told before the page comes: Chromium asks itself how
    /// much there is once in half a minute.
    async open_with_room(url, bytes) {
      open(['about:blank']);
      const { origin } = new URL(url);
      const file = path.join(profile, port_file);
      while (!existsSync(file) || !readFileSync(file, 'utf8').includes('\n')) await sleep(20);
      const { chromium } = await import('playwright-core');
      const browser = await chromium.connectOverCDP(`http://127.0.0.1:${readFileSync(file, 'utf8').split('\n')[0]}`);
      const [context] = browser.contexts();
      const [page] = context.pages();
      const session = await context.newCDPSession(page);
      const { usage } = await session.send('Storage.getUsageAndQuota', { origin });
      await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: usage + bytes });
      await page.goto(url);
    },
    kill,
    async close() {
      await kill();
      screen?.close();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    },
  };
}
