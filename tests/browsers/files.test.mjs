// Files of other programs: picked, dropped, put on the sheet and taken back; saved, and read back by other libraries (an XML
// parser and a converter of GPX, a checker of GeoJSON, a reader of CSV, all from the package registry). Chromium.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { describe, test } from 'node:test';
import { setTimeout as sleep } from 'node:timers/promises';

import { check } from '@placemarkio/check-geojson';
import { gpx as from_gpx } from '@tmcw/togeojson';
import { parse as from_csv } from 'csv-parse/sync';

import { drop, drop_long_track } from './lib/dropped.mjs';
import { with_engine } from './lib/engines.mjs';
import { press_part } from './lib/forms.mjs';
import { check_gpx } from './lib/gpx_check.mjs';
import { mouse_hand } from './lib/hands.mjs';
import { command, done, kept_offline, note_violations, open, open_again, read, ready, text_of, until, watch } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
const middle = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' };
const grid_deg = 0.0001 / 60;

const gpx = `<?xml version="1.0" encoding="UTF-8"?>
<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="test">
<wpt lat="44.02" lon="-31.02"><name>Gull &lt;Rock&gt;</name></wpt>
<wpt lat="55" lon="-31"><name>Far</name></wpt>
<wpt lat="x" lon="0"><name>Nowhere</name></wpt>
<rte><name>Out</name><rtept lat="44.02" lon="-31.02"/><rtept lat="44.03" lon="-31.05"><name>Bend</name></rtept></rte>
</gpx>`;

const slip = '[data-panel=file]';
const named = (panel, name) => document.querySelector(panel)?.innerText.startsWith(name);
const said = (panel, what) => (document.querySelector(panel)?.innerText.match(what) ?? [])[0];

describe('files', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();

  async function fresh(view = {}) {
    const page = await stage.browser.open({ ...size, ...view });
    if (view.prepare) await open_again(page, stage.site.url);
    else await open(page, stage.site.url);
    await done(page, 'new-sheet', { ...middle, name: 'Files' });
    return page;
  }

  async function pick(page, name, content) {
    await done(page, 'open-slip', { slip: 'drawer' });
    const [chooser] = await Promise.all([page.raw.page.waitForEvent('filechooser'), mouse_hand(page).press('open-file')]);
    await chooser.setFiles({ name, mimeType: '', buffer: Buffer.from(content) });
    return until(page, 'what the file holds', (panel) => {
      const text = document.querySelector(panel)?.innerText;
      return text && !text.includes('being read') && text;
    }, slip);
  }

  async function saved(page, press) {
    await done(page, 'open-slip', { slip: 'drawer' });
    const [download] = await Promise.all([page.raw.page.waitForEvent('download'), mouse_hand(page).press(press)]);
    if ((await read(page)) && await page.evaluate(() => Boolean(document.querySelector('[data-panel=drawer]')))) await done(page, 'close-slip');
    return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
  }

  test('a GPX file is picked, put on the sheet as one step, and taken back', async () => {
    const page = await fresh({ prepare: note_violations });
    const watched = watch(page, stage.site.origin);
    const text = await pick(page, 'out.gpx', gpx);
    assert.match(text, /2 marks/);
    assert.match(text, /1 route through 2 points/);
    assert.match(text, /2 marks and 1 leg would come on this sheet\. 1 place lies off it: “Far”\./);
    assert.match(text, /Nowhere\s+its place is missing or can't be read\s+5/);
    await mouse_hand(page).press('import-marks');
    const { marks, legs, history } = await read(page);
    assert.deepEqual(marks.map(({ name }) => name), ['Gull <Rock>', 'Bend']);
    assert.equal(legs.length, 1);
    assert.ok(Math.abs(marks[0].lat_deg - 44.02) <= grid_deg && Math.abs(marks[0].lon_deg + 31.02) <= grid_deg);
    assert.equal(history.undo_label, 'put in what out.gpx holds');
    assert.equal(await page.evaluate((panel) => document.querySelector(panel), slip), null);
    await done(page, 'undo');
    assert.equal((await read(page)).marks.length, 0);
    await watched.check();
    await page.close();
  });

  test('what a file holds far away comes on a sheet of its own', async () => {
    const page = await fresh();
    await pick(page, 'reef.csv', 'name;lat;lon\nWest;-17,0;179,9\nEast;-17,1;-179,9\n');
    await mouse_hand(page).press('import-as-sheet');
    const { sheet, marks } = await read(page);
    assert.equal(sheet.name, 'reef');
    assert.deepEqual(marks.map(({ name }) => name), ['West', 'East']);
    await page.close();
  });

  test('a file is dropped on the page', async () => {
    const page = await fresh();
    const data = await page.raw.page.evaluateHandle((text) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], 'points.geojson'));
      return transfer;
    }, JSON.stringify({ type: 'Point', coordinates: [-31.01, 44.01] }));
    const over = () => page.evaluate(() => [document.documentElement.hasAttribute('data-hover'), document.getElementById('status').textContent]);
    await page.raw.page.dispatchEvent('#sheet canvas', 'dragover', { dataTransfer: data });
    assert.deepEqual(await over(), [true, 'Let go of the file to see what it holds.']);
    await page.raw.page.dispatchEvent('#sheet canvas', 'dragleave', { dataTransfer: data });
    assert.deepEqual(await over(), [false, '']);
    await page.raw.page.dispatchEvent('#sheet canvas', 'dragover', { dataTransfer: data });
    await page.raw.page.dispatchEvent('#sheet canvas', 'drop', { dataTransfer: data });
    assert.deepEqual(await over(), [false, '']);
    assert.match(await until(page, 'what it holds', (panel) => /\d mark/.exec(document.querySelector(panel)?.innerText ?? '')?.input, slip), /1 mark/);
    await page.close();
  });

  test('of two files, the one chosen last is shown, however long the other takes to be read', async () => {
    const page = await fresh({ prepare: () => {
      const whole = File.prototype.arrayBuffer;
      File.prototype.arrayBuffer = async function () {
        const bytes = await whole.call(this);
        if (this.name !== 'slow.gpx') return bytes;
        await new Promise((go_on) => { setTimeout(go_on, 1000); });
        window.slow_came = true;
        return bytes;
      };
    } });
    await done(page, 'open-slip', { slip: 'drawer' });
    const [chooser] = await Promise.all([page.raw.page.waitForEvent('filechooser'), mouse_hand(page).press('open-file')]);
    await chooser.setFiles({ name: 'slow.gpx', mimeType: '', buffer: Buffer.from(gpx) });
    assert.match(await pick(page, 'quick.csv', 'name,latitude,longitude\r\nRock,44,-31\r\n'), /1 mark/);
    await until(page, 'the other file to have come', () => window.slow_came);
    await sleep(300);
    assert.match(await text_of(page, slip), /quick\.csv[^]*1 mark/);
    await mouse_hand(page).press('import-marks');
    assert.deepEqual((await read(page)).marks.map(({ name }) => name), ['Rock']);
    await page.close();
  });

  const no_workers = async (page) => {
    for (let i = 0; i < 200 && page.raw.page.workers().length > 0; i += 1) await sleep(20);
    assert.equal(page.raw.page.workers().length, 0, 'the worker goes, and its memory with it');
  };

  test('while a long file is read the page answers, and stopping leaves everything as it was', async () => {
    const page = await fresh({ prepare: note_violations });
    const watched = watch(page, stage.site.origin);
    await drop_long_track(page, 'long.gpx', 40);
    await until(page, 'it to be read', said, slip, 'It is being read, 40 MB: the sheet can be used meanwhile.');
    const hand = mouse_hand(page), before = await page.evaluate(() => window.fogsheet.where("sheet/44°00.0'N 031°00.0'W"));
    await hand.press('closer');
    await until(page, 'the sheet to come closer', (x) => window.fogsheet.where("sheet/44°00.0'N 031°00.0'W")?.x !== x, before.x);
    await done(page, 'add-mark', { name: 'Meanwhile', lat_deg: 44, lon_deg: -31 });
    assert.match(await text_of(page, slip), /being read/, 'it is read beside all that');
    await hand.press('put-file-away');
    await no_workers(page);
    assert.equal(await text_of(page, slip), '');
    const { marks, legs, history } = await read(page);
    assert.deepEqual([marks.map(({ name }) => name), legs.length, history.undo_label], [['Meanwhile'], 0, 'add Meanwhile']);
    await watched.check();
    await page.close();
  });

  test('one file is read at a time: the next one ends the reading, and of several the first is taken', async () => {
    const page = await fresh();
    await drop_long_track(page, 'long.gpx', 40);
    await until(page, 'the long one', named, slip, 'long.gpx');
    await drop(page, ['small.gpx', gpx], ['other.gpx', gpx], ['third.csv', 'x']);
    assert.match(await until(page, 'the small one', (panel) => /^small[^]*marks[^]*/.exec(document.querySelector(panel)?.innerText)?.[0], slip), /One file is read at a time: 2 others were left\./);
    await no_workers(page);
    assert.match(await text_of(page, slip), /^small\.gpx[^]*2 marks/, 'the first one does not come after it');
    // Who has gone on meanwhile finds it in the drawer.
    await drop_long_track(page, 'late.gpx', 12);
    await until(page, 'the third', named, slip, 'late.gpx');
    await done(page, 'open-slip', { slip: 'legend' });
    await until(page, 'word of it', () => document.querySelector('[data-panel=margin]').innerText.includes('“late.gpx” has been read: what it holds is in the drawer.'));
    assert.match(await text_of(page, '[data-panel=legend]'), /./);
    await done(page, 'open-slip', { slip: 'drawer' });
    await press_part(page, mouse_hand(page), 'show-file');
    assert.match(await text_of(page, slip), /1 track through [\d ]+ points/);
    await page.close();
  });

  test('a file that was cut is read as far as it goes, and what a file is shows in its bytes', async () => {
    const page = await fresh();
    await drop_long_track(page, 'cut.gpx', 2, { cut: true });
    const cut = await until(page, 'what it holds', (panel) => /^cut[^]*mark[^]*/.exec(document.querySelector(panel)?.innerText)?.[0], slip);
    assert.match(cut, /The file is cut short, or broken[^]*can't be read past line [\d ]+: this is what stands before[^]*1 track through [\d ]+ points/);
    await mouse_hand(page).press('import-marks');
    assert.ok((await read(page)).legs.length > 1);
    for (const [name, content, what] of [
      ['a.fogsheet', gpx, /2 marks/],
      ['b.csv', '{"type":"Point","coordinates":[-31.01,44.01]}', /1 mark/],
      ['c.geojson', 'name,lat,lon\nRock,44,-31\n', /1 mark/],
      ['d.gpx', '<!DOCTYPE html><html><p>Log in to use this network.</html>', /another kind: “html”/],
      ['e.gpx', 'PK\x03\x04\0\0\0\0', /no file that can be read here/],
    ]) {
      await drop(page, [name, content]);
      assert.match(await until(page, name, (panel, called) => { const text = document.querySelector(panel)?.innerText; return text?.startsWith(called) && !text.includes('being read') && text; }, slip, name), what, name);
    }
    await page.close();
  });

  test('what reads and writes them does not come: that is said in place', async () => {
    const page = await fresh({ serviceWorkers: 'block' });  // which would have it
    await page.raw.context.route('**/exchange.wasm', (route) => route.abort());
    await drop(page, ['small.gpx', gpx]);
    await until(page, 'the reason', said, slip, 'has not come: load the page once while you are online');
    await done(page, 'put-file-away');
    await done(page, 'save-as', { format: 'gpx' });
    await until(page, 'the reason', said, '[data-panel=margin]', 'has not come: load the page once while you are online');
    await no_workers(page);
    await page.close();
  });

  test('hostile and broken files show a reason and nothing else', async () => {
    const page = await fresh({ prepare: note_violations });
    const watched = watch(page, stage.site.origin);
    const before = await read(page);
    for (const [name, content, why] of [
      ['a.gpx', '<!DOCTYPE gpx [<!ENTITY a "x">]><gpx>&a;</gpx>', /document type of its own/],
      ['a.gpx', '<gpx><wpt lat="1"', /broken/],
      ['a.png', '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><script>alert(1)</script></svg>', /another kind: “svg”/],
      ['a.geojson', `{"type":"FeatureCollection","features":${'['.repeat(100000)}`, /too deeply/],
      ['a.csv', 'Dear all', /No columns for a place/],
      ['a.fogsheet', '1:AAAA', /This file can't be used/],
      ['a.bin', '\0\0\0\0', /no file that can be read here/],
    ]) {
      assert.match(await pick(page, name, content), why, name);
      await mouse_hand(page).press('put-file-away');
    }
    await pick(page, '<img src=x onerror=alert(1)>.gpx', gpx.replace('Gull &lt;Rock&gt;', '<![CDATA[<img src=x onerror=alert(1)>\u202E]]>'));
    assert.equal(await page.evaluate((panel) => document.querySelectorAll(`${panel} img`).length, slip), 0);
    await mouse_hand(page).press('put-file-away');
    assert.deepEqual((await read(page)).marks, before.marks);
    await watched.check();
    await page.close();
  });

  test('what is saved is read back by other libraries, and by the page', async () => {
    const page = await fresh();
    await done(page, 'new-sheet', { mid_lat_deg: -17, mid_lon_deg: 180, scale: 200000, paper: 'A4-across', name: 'Over "180"' });
    const a = await done(page, 'add-mark', { name: 'A <&> "b", c', lat_deg: -17, lon_deg: 179.9, kind: 'light' });
    const b = await done(page, 'add-mark', { name: 'Turn', lat_deg: -17.1, lon_deg: -179.9, kind: 'turn' });
    const c = await done(page, 'add-mark', { name: '=1+1', lat_deg: -17.05, lon_deg: -179.95, kind: 'danger', radius_nm: 0.25 });
    await done(page, 'add-leg', { from: a, to: b });
    await done(page, 'add-leg', { from: b, to: c });
    const { marks } = await read(page);
    const near = (got, wanted) => assert.ok(Math.abs(got - wanted) <= grid_deg / 2, `${got} for ${wanted}`);

    const as_gpx = await saved(page, 'save-as-gpx');
    assert.equal(as_gpx.name, 'Over -180-.gpx');
    const { document, faults } = check_gpx(as_gpx.text);
    assert.deepEqual(faults, []);
    const { features } = from_gpx(document);
    const points = features.filter(({ geometry }) => geometry.type === 'Point'), lines = features.filter(({ geometry }) => geometry.type === 'LineString');
    assert.deepEqual(points.map(({ properties }) => properties.name), marks.map(({ name }) => name));
    points.forEach(({ geometry }, i) => { near(geometry.coordinates[0], marks[i].lon_deg); near(geometry.coordinates[1], marks[i].lat_deg); });
    assert.equal(lines.length, 1, 'legs that follow each other are one route');
    assert.equal(lines[0].geometry.coordinates.length, 3);

    const as_geojson = await saved(page, 'save-as-geojson');
    const collection = check(as_geojson.text);  // throws on whatever RFC 7946 does not allow
    assert.deepEqual(collection.features.slice(0, 3).map(({ properties }) => properties.name), marks.map(({ name }) => name));
    assert.equal(collection.features[3].geometry.type, 'MultiLineString');
    for (const piece of collection.features[3].geometry.coordinates) for (const [lon] of piece) assert.ok(Math.abs(lon) <= 180);

    const as_csv = await saved(page, 'save-as-csv');
    const rows = from_csv(as_csv.text, { columns: true });
    // An apostrophe keeps a program that computes in tables from computing (common practice, no source).
    assert.deepEqual(rows.map(({ name }) => name), marks.map(({ name }) => (name.startsWith('=') ? `'${name}` : name)));
    rows.forEach((row, i) => { near(Number(row.latitude), marks[i].lat_deg); near(Number(row.longitude), marks[i].lon_deg); });

    for (const [file, legs] of [[as_gpx, 2], [as_geojson, 2], [as_csv, 0]]) {
      await pick(page, file.name, file.text);
      await mouse_hand(page).press('import-as-sheet');
      const back = await read(page);
      assert.deepEqual(back.marks.map(({ id, ...mark }) => mark), marks.map(({ id, ...mark }) => mark), file.name);
      assert.equal(back.legs.length, legs, file.name);
    }
    await page.close();
  });

  test('the second program comes when it is wanted, and works without a signal', async () => {
    const site = await open_site();
    const page = await stage.browser.open(size);
    const asked = [];
    page.raw.page.on('request', (request) => asked.push(request.url()));
    await open(page, site.url);
    assert.deepEqual(asked.filter((url) => /exchange\./.test(url)), [], 'the first frame does not wait for it');
    await kept_offline(page);
    await page.reload();
    await ready(page);
    await site.close();
    await done(page, 'new-sheet', middle);
    assert.match(await pick(page, 'out.gpx', gpx), /2 marks/);
    await mouse_hand(page).press('import-marks');
    assert.match((await saved(page, 'save-as-geojson')).text, /^\{"type":"FeatureCollection"/);
    await page.close();
  });

  test('a track of 100 000 points is thinned, and says to what', async () => {
    const page = await fresh();
    const points = Array.from({ length: 100_000 }, (_, i) => `<trkpt lat="${(44 + 0.05 * Math.sin(i / 9000)).toFixed(7)}" lon="${(-31.05 + i * 1e-6).toFixed(7)}"><ele>1</ele></trkpt>`).join('\n');
    assert.match(await pick(page, 'track.gpx', `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="t"><trk><name>Home</name><trkseg>${points}</trkseg></trk></gpx>`),
      /1 track through 100 000 points, thinned to \d+: none left out lies farther than \d+ m from the line/);
    await mouse_hand(page).press('import-marks');
    const { marks, legs } = await read(page);
    assert.ok(marks.length > 10 && marks.length <= 300 && legs.length === marks.length - 1, `${marks.length} marks`);
    assert.equal(marks[0].name, 'Home 1');
    assert.equal((await command(page, 'import-marks')).ok, undefined);
    await page.close();
  });
});
