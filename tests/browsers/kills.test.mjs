// The browser is killed again and again while a sheet is edited: whatever was shown as kept is there at the next start, and
// every sheet opens. In each engine, FOGSHEET_KILLS times (5 where it is not set).
import assert from 'node:assert/strict';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { test } from 'node:test';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

import { serve } from '../../web/serve.mjs';
import { engines, with_engine } from './lib/engines.mjs';
import { open_profile } from './lib/killing.mjs';
import { site_folder } from './lib/site.mjs';

const kills = Number(process.env.FOGSHEET_KILLS ?? 5);
const patience_ms = 60_000;  // for a browser to start and the page to tell what it found

/// The site with a script of our own in its page.
function site_that_edits() {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'fogsheet-edits-'));
  cpSync(site_folder, folder, { recursive: true });
  cpSync(fileURLToPath(new URL('./lib/editing_page.js', import.meta.url)), path.join(folder, 'editing_page.js'));
  const page = path.join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('</head>', '<script type="module" src="editing_page.js"></script>\n</head>'));
  return folder;
}

for (const engine of engines) {
  test(`${engine}: nothing that was shown as kept is lost to ${kills} kills`, with_engine(engine, (kills + 1) * 75_000), async (t) => {
    let last_kept = -1;
    let found = null;
    let error = '';
    const folder = site_that_edits();
    const site = await serve(folder, { post: (body) => {
      const told = JSON.parse(body);
      if (told.error) error = told.error;
      if (told.kept !== undefined) last_kept = told.kept;
      if (told.found) found = told.found;
      return last_kept + 1;
    } });
    const browser = await open_profile(engine);
    t.after(async () => {
      await browser.close();
      await site.close();
      rmSync(folder, { recursive: true });
    });

    let before = -1;
    for (let round = 0; round <= kills; round += 1) {
      found = null;
      before = last_kept;
      browser.open(site.url);
      for (let waited = 0; !found; waited += 20) {
        assert.equal(error, '');
        assert.ok(waited < patience_ms, `round ${round}: the page tells nothing`);
        await sleep(20);
      }
      const names = new Set(found.marks);
      const lost = Array.from({ length: before + 1 }, (_, n) => `edit ${n}`).filter((name) => !names.has(name));
      assert.deepEqual(lost, [], `round ${round}: kept up to ${before}`);
      assert.doesNotMatch(found.notes, /damaged/, `round ${round}`);
      if (round < kills) {
        await sleep(150 + 900 * Math.random());
        await browser.kill();
      }
      assert.equal(error, '', `round ${round}`);
    }
    t.diagnostic(`${engine}: ${last_kept + 1} edits kept, none lost`);
    assert.ok(before > kills, `${before} edits were kept before the last kill`);
  });
}
