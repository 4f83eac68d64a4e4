// Several tabs of one browser: one writes a sheet, the others follow it live, any of them may go, and nothing is lost. Chromium.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { where } from './lib/hands.mjs';
import { fill, middle } from './lib/keeping.mjs';
import { done, kept, open, open_again, read, ready, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };

describe('tabs', with_engine('chromium', 120_000), () => {
  const stage = chromium_on_site();
  const fresh = async () => {
    const page = await stage.browser.open(size);
    await open(page, stage.site.url);
    return page;
  };

  /// Another tab beside a page.
  async function tab_beside(page) {
    const raw = await page.raw.context.newPage();
    return { ...page, raw: { ...page.raw, page: raw }, goto: (url) => raw.goto(url), evaluate: (fn, ...args) => raw.evaluate(`(${fn})(...${JSON.stringify(args)})`) };
  }

  const marks_of = async (page) => (await read(page)).marks.map(({ name }) => name);
  const until_last_mark = (page, name) => until(page, `the mark ${name}`, (wanted) => window.fogsheet.read().marks.at(-1).name === wanted, name);

  test('a second tab follows the first live, what is changed there is kept, and either may go', async () => {
    const page = await fresh();
    await fill(page, 'Gull');
    const other = await tab_beside(page);
    await open_again(other, stage.site.url);
    assert.equal((await read(other)).sheet.name, 'Gull');
    const place = "sheet/44°03'N 031°06'W";
    assert.deepEqual(await where(other, place), await where(page, place), 'it lies as in the first');
    assert.match(await until(other, 'the line', () => /another tab.*/.exec(document.getElementById('margin').innerText)?.[0]), /shows here, and what you do here shows there/);
    await done(page, 'add-mark', { name: 'in the first', lat_deg: 44.02, lon_deg: -31 });
    await until_last_mark(other, 'in the first');
    await done(page, 'undo');
    await until_last_mark(other, 'Off Sarn');
    await done(page, 'redo');
    await until_last_mark(other, 'in the first');
    assert.equal((await read(other)).history.undo_label, (await read(page)).history.undo_label);

    await done(other, 'add-mark', { name: 'in the second', lat_deg: 44.03, lon_deg: -31 });
    await kept(other);
    assert.equal((await read(other)).history.kept.follows, false, 'it writes the sheet now');
    await until_last_mark(page, 'in the second');
    await until(page, 'the first to follow', () => window.fogsheet.read().history.kept.follows);

    await done(other, 'new-sheet', { ...middle, name: 'Tern' });
    await until(page, 'the new sheet in the drawer', () => window.fogsheet.read().history.drawer.some(({ name }) => name === 'Tern'));
    assert.equal((await read(page)).sheet.name, 'Gull', 'what is in hand stays in hand');
    await kept(other);
    await other.raw.page.close();
    await done(page, 'add-mark', { name: 'last', lat_deg: 44.04, lon_deg: -31 });
    await kept(page);
    await page.reload();
    await ready(page);
    assert.equal((await read(page)).sheet.name, 'Gull', 'the desk of the tab that was left last');
    assert.deepEqual(await marks_of(page), ['Gull Rock', 'Off Sarn', 'in the first', 'in the second', 'last']);
    assert.deepEqual((await read(page)).history.drawer.filter(({ name }) => ['Gull', 'Tern'].includes(name)).map(({ name }) => name).sort(), ['Gull', 'Tern']);
    await page.close();
  });

  test('two tabs that change a sheet at the same moment: both changes stay', async () => {
    const page = await fresh();
    await fill(page, 'Gull');
    const other = await tab_beside(page);
    await open_again(other, stage.site.url);
    for (let n = 0; n < 10; n += 1) await Promise.all([page, other].map((each, i) => done(each, 'add-mark', { name: `${'ab'[i]}${n}`, lat_deg: 44.02 + n * 0.001, lon_deg: -31 - i * 0.01 })));
    await kept(page);
    await kept(other);
    await other.raw.page.close();
    await page.reload();
    await ready(page);
    const all = new Set();
    for (const { key } of (await read(page)).history.drawer) {
      await done(page, 'open-sheet', { key });
      for (const name of await marks_of(page)) all.add(name);
    }
    for (let n = 0; n < 10; n += 1) for (const tab of 'ab') assert.ok(all.has(`${tab}${n}`), `${tab}${n}`);
    await page.close();
  });

  test('beside a tab of a version that keeps all alone nothing is kept, which is said, until it has gone', async () => {
    const page = await fresh();
    await fill(page, 'Gull');
    const old = await tab_beside(page);
    await old.goto(`${stage.site.url}notices.txt`);
    await page.goto('about:blank');
    await old.evaluate(() => new Promise((held) => {
      navigator.locks.request('fogsheet', () => {
        held(true);
        return new Promise(() => {});
      });
    }));
    await open_again(page, stage.site.url);
    assert.equal((await read(page)).sheet.name, 'Gull', 'what is kept can be seen');
    assert.equal((await read(page)).history.kept.state, 'off');
    assert.match(await until(page, 'the line', () => document.getElementById('margin').innerText), /another tab/);
    await done(page, 'add-mark', { name: 'beside it', lat_deg: 44.02, lon_deg: -31 });
    await old.raw.page.close();
    await kept(page);
    assert.equal((await read(page)).marks.at(-1).name, 'beside it', 'what was done here stays in hand');
    await page.close();
  });
});
