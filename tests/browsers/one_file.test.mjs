// The page as one file, opened from the file system without any server, in three engines: the job, what is kept, a file of
// another program, and a picture; and nothing is asked of anybody.
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { test } from 'node:test';
import { fileURLToPath, pathToFileURL } from 'node:url';

import { PNG } from 'pngjs';

import { drop, drop_long_track } from './lib/dropped.mjs';
import { engines, launch, open_chromium, with_engine } from './lib/engines.mjs';
import { mouse_hand } from './lib/hands.mjs';
import { do_the_job } from './lib/job.mjs';
import { done, kept, note_violations, open_again, read, ready, sheet_of, text_of, until, watch } from './lib/sheet.mjs';

const file = fileURLToPath(new URL('../../build/one-file/fogsheet.html', import.meta.url));
const url = pathToFileURL(file).href;
const size = { width: 1180, height: 820 };

const points = '<wpt lat="44.1" lon="-31.3"><name>Stack</name></wpt>';
const gpx = `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="test">${points}</gpx>`;

assert.ok(existsSync(file), 'the one file is not built: web/run --build-only');

for (const engine of engines) {
  test(`${engine}: the job, from the file alone, and it is kept`, with_engine(engine, 120_000), async (t) => {
    const page = await launch(engine, size);
    t.after(() => page.close());
    await open_again(page, url);
    await do_the_job(page, mouse_hand(page));
    await done(page, 'lift-edge');
    await done(page, 'add-mark', { name: 'Stack', lat_deg: 44.1, lon_deg: -31.3 });
    const before = await read(page);
    await kept(page);
    await page.reload();
    await ready(page);
    assert.deepEqual(sheet_of(await read(page)), sheet_of(before));
    await done(page, 'open-slip', { slip: 'more' });
    assert.match(await text_of(page, '[data-panel=more]'), /All of it is in this one file/);

    await drop(page, ['chart.png', PNG.sync.write(new PNG({ width: 64, height: 48 }))]);
    await until(page, 'the photograph to be read', () => /64 (×|x|by) 48/.test(document.querySelector('[data-panel=photograph]')?.innerText));

    await drop_long_track(page, 'long.gpx', 24);
    await until(page, 'a long file to be read', () => document.querySelector('[data-panel=file]')?.innerText.includes('being read, 24 MB'));
    await done(page, 'add-mark', { name: 'Meanwhile', lat_deg: 44.2, lon_deg: -31.3 });
    assert.match(await text_of(page, '[data-panel=file]'), /being read/, 'the page answers meanwhile');
    await drop(page, ['marks.gpx', gpx]);
    await until(page, 'what the other holds', () => /^marks\.gpx[^]*1 mark/.test(document.querySelector('[data-panel=file]')?.innerText));
    await done(page, 'put-file-away');
  });
}

test('nothing is asked of anybody, and nothing breaks the policy', with_engine('chromium', 60_000), async (t) => {
  const browser = await open_chromium();
  t.after(() => browser.close());
  const page = await browser.open({ ...size, prepare: note_violations });
  const asked = [];
  page.raw.context.on('request', (request) => asked.push(request.url()));
  const watched = watch(page, new URL(url).origin);
  await open_again(page, url);

  await drop(page, ['marks.gpx', gpx]);
  await until(page, 'what the file holds', () => document.querySelector('[data-panel=file]')?.innerText.includes('1 mark'));
  await done(page, 'import-marks');
  assert.ok((await read(page)).marks.some(({ name }) => name === 'Stack'));

  const [download] = await Promise.all([page.raw.page.waitForEvent('download'), done(page, 'save-as', { format: 'gpx' })]);
  assert.match(readFileSync(await download.path(), 'utf8'), /<name>Stack<\/name>/);

  assert.deepEqual(asked.filter((each) => !/^(data|blob):/.test(each)), [url]);
  await watched.check();
});
