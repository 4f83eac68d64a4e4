// Browsers started as a user starts them, on a profile of their own and with no driver, so that they keep what they are
// told to keep; and killed with all their processes, as a full stop of the machine would for all that the page can tell.
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

import { programs, virtual_screen } from './engines.mjs';
import { end_group, remember } from './leftovers.mjs';

const flags = ['--headless=new', '--no-sandbox', '--no-first-run', '--disable-gpu-sandbox'];

/// @return {open(url), kill(), close()}: one browser at a time on one profile
export async function open_profile(engine) {
  const profile = mkdtempSync(path.join(os.tmpdir(), `fogsheet-${engine}-`));
  const screen = engine === 'webkit' ? await virtual_screen() : null;
  const start = {
    chromium: (url) => {
      for (const name of ['SingletonLock', 'SingletonSocket', 'SingletonCookie']) rmSync(path.join(profile, name), { force: true });
      return [programs.chromium, [...flags, `--user-data-dir=${profile}`, url], process.env];
    },
    firefox: (url) => {
      writeFileSync(path.join(profile, 'user.js'), 'user_pref("browser.sessionstore.resume_from_crash", false);\nuser_pref("toolkit.startup.max_resumed_crashes", -1);\n');
      return [programs.firefox, ['--headless', '--no-remote', '--profile', profile, url], process.env];
    },
    webkit: (url) => {
      const home = { HOME: profile, XDG_DATA_HOME: profile, XDG_CACHE_HOME: profile, XDG_CONFIG_HOME: profile, XDG_RUNTIME_DIR: profile };
      return [programs.minibrowser, [url], { ...process.env, ...home, DISPLAY: screen.display, GDK_BACKEND: 'x11', NO_AT_BRIDGE: '1', LIBGL_ALWAYS_SOFTWARE: '1' }];
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
  return {
    open(url) {
      const [program, args, env] = start(url);
      running = spawn(program, args, { detached: true, stdio: 'ignore', env });
      remember(running.pid);
    },
    kill,
    async close() {
      await kill();
      screen?.close();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    },
  };
}
