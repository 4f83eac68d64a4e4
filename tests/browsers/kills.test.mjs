// The browser is killed again and again while sheets are edited: whatever was shown as kept is there at the next start, and
// every sheet opens. In each engine, FOGSHEET_KILLS times (5 where it is not set), in one tab and in two at once that share a
// sheet; and in Chromium while its store is full.
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
const patience_ms = 60_000;  // for a browser to start and its pages to tell what they found
const room_bytes = 100_000;  // what the store still takes, where it is to be full

/// The site with a script of our own in its page.
function site_that_edits() {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'fogsheet-edits-'));
  cpSync(site_folder, folder, { recursive: true });
  cpSync(fileURLToPath(new URL('./lib/editing_page.js', import.meta.url)), path.join(folder, 'editing_page.js'));
  const page = path.join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('</head>', '<script type="module" src="editing_page.js"></script>\n</head>'));
  return folder;
}

/// What one run has been told so far, tab by tab.
class Told {
  kept = new Map();   // the last edit that was shown as kept
  found = new Map();  // what was there at the start of this round
  error = '';
  unkept = '';

  constructor(tabs, full) {
    this.tabs = tabs;
    this.full = full;
  }

  take(body) {
    const { tab, error, kept, found, unkept } = JSON.parse(body);
    if (error) this.error = error;
    if (kept !== undefined) this.kept.set(tab, kept);
    if (unkept) this.unkept = unkept;
    if (found) this.found.set(tab, found);
    return JSON.stringify({ next: (this.kept.get(tab) ?? -1) + 1, tabs: this.tabs, full: this.full });
  }

  async until(what, is_so) {
    for (let waited = 0; !is_so(); waited += 20) {
      assert.equal(this.error, '');
      assert.ok(waited < patience_ms, `${what}: waited in vain`);
      await sleep(20);
    }
  }
}

/// @param full  the store finds no more room in each round
async function kill_again_and_again(t, engine, { tabs = 1, full = false }) {
  const told = new Told(tabs, full);
  const folder = site_that_edits();
  const site = await serve(folder, { post: (body) => told.take(body) });
  const browser = await open_profile(engine, { driven: full });
  t.after(async () => {
    await browser.close();
    await site.close();
    rmSync(folder, { recursive: true });
  });
  const addresses = Array.from({ length: tabs }, (_, i) => `${site.url}?tab=${i + 1}`);
  let promised = new Map();
  for (let round = 0; round <= kills; round += 1) {
    promised = new Map(told.kept);
    told.found.clear();
    told.unkept = '';
    if (full) await browser.open_with_room(addresses[0], room_bytes);
    else browser.open(addresses);
    await told.until(`round ${round}: what the pages found`, () => told.found.size === tabs);
    for (const [tab, found] of told.found) {
      const names = new Set(found.marks.map((name) => name.split(' ', 2).join(' ')));
      for (const [of_tab, last] of promised) {
        const lost = Array.from({ length: last + 1 }, (_, n) => `edit ${of_tab}.${n}`).filter((name) => !names.has(name));
        assert.deepEqual(lost, [], `round ${round}, found in tab ${tab}: kept up to ${last} in tab ${of_tab}`);
      }
      assert.doesNotMatch(found.notes, /damaged/, `round ${round}`);
    }
    if (round === kills) break;
    if (full) {
      await told.until(`round ${round}: word that nothing is kept`, () => told.unkept);
      assert.match(told.unkept, /no room/);
    }
    await sleep(150 + 900 * Math.random());
    await browser.kill();
    assert.equal(told.error, '', `round ${round}`);
  }
  const edits = [...promised.values()].reduce((sum, last) => sum + last + 1, 0);
  t.diagnostic(`${engine}, ${tabs} ${tabs === 1 ? 'tab' : 'tabs'}${full ? ', store full' : ''}: ${kills} kills, ${edits} edits kept, none lost`);
  assert.equal(promised.size, tabs, 'each tab has kept something');
  assert.ok(edits > kills, `${edits} edits were kept before the last kill`);
}

for (const engine of engines) {
  const options = with_engine(engine, (kills + 1) * 75_000);
  test(`${engine}: nothing that was shown as kept is lost to ${kills} kills`, options, (t) => kill_again_and_again(t, engine, {}));
  test(`${engine}: nor with two tabs that edit at once`, options, (t) => kill_again_and_again(t, engine, { tabs: 2 }));
}
test('chromium: nor while the store is full', with_engine('chromium', (kills + 1) * 75_000), (t) => kill_again_and_again(t, 'chromium', { full: true }));
