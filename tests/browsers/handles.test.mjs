// The handles for scripts as the README gives them, and what bad input, a missing WebGL2 and an idle page show.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { command, equal_part, launch_chromium, open_page, read, serve_product, sizes, where } from './lib/product.mjs';

let browser;
let site;
let opened;
before(async () => {
  browser = await launch_chromium();
  site = await serve_product();
  opened = await open_page(browser, site.url, sizes.tablet_across);
});
after(async () => {
  await browser?.close();
  await site?.close();
});

test('what read() gives has the names and kinds that scripts rely on', async () => {
  const reading = await read(opened.page);
  assert.deepEqual(Object.keys(reading).sort(), ['compass', 'edge', 'format', 'history', 'legs', 'marks', 'passage', 'roses', 'sheet', 'variation']);
  assert.equal(reading.format, 1);
  assert.deepEqual(Object.keys(reading.sheet).sort(), ['date', 'datum', 'mid_lat_deg', 'mid_lon_deg', 'name', 'paper', 'scale']);
  for (const name of ['source', 'value_deg', 'zone', 'uncertainty_deg', 'used_deg']) assert.ok(name in reading.variation, name);
  for (const name of ['id', 'from', 'to', 'course_true_deg', 'course_magnetic_deg', 'course_compass_deg', 'variation_deg', 'distance_nm', 'shown']) assert.ok(name in reading.legs[0], name);
  for (const name of ['true', 'variation', 'magnetic', 'deviation', 'back_true', 'back_magnetic', 'distance']) assert.equal(typeof reading.legs[0].shown[name], 'string', name);
  assert.equal(reading.edge, null);
  assert.deepEqual(reading.history, { undo_label: null, redo_label: null });
});

test('every command of the contract is in the table, and says what it takes', async () => {
  const table = await opened.page.evaluate(() => window.fogsheet.commands());
  const names = table.map((row) => row.name);
  for (const name of ['new-sheet', 'add-mark', 'move-mark', 'remove-mark', 'add-leg', 'set-date', 'set-printed-variation', 'lay-edge', 'slide-edge-to', 'turn-edge', 'lift-edge', 'undo', 'redo', 'open-text', 'fit', 'set-palette'])
    assert.ok(names.includes(name), name);
  for (const row of table) assert.deepEqual(Object.keys(row).sort(), ['arguments', 'enabled', 'key', 'label', 'name']);
});

const bad = [
  ['add-mark', { name: 'Far', lat_deg: 50, lon_deg: -31 }, /off this sheet/],
  ['add-mark', { name: ' ', lat_deg: 44.1, lon_deg: -31.3 }, /name/],
  ['add-mark', { name: 'No place' }, /missing/],
  ['add-mark', { name: 'Rock', lat_deg: 44.1, lon_deg: -31.3, kind: 'danger' }, /radius/],
  ['add-mark', { name: 'Rock', lat_deg: 44.1, lon_deg: -31.3, kind: 'reef' }, /no kind of mark/],
  ['move-mark', { id: '99', lat_deg: 44.1, lon_deg: -31.3 }, /no such mark/],
  ['remove-mark', { id: 'x' }, /no such mark/],
  ['add-leg', { from: '99', to: '98' }, /no such mark/],
  ['set-date', { date: '2026-02-30' }, /no date/],
  ['new-sheet', { mid_lat_deg: 80, mid_lon_deg: 0, scale: 100000, paper: 'A4-across' }, /75/],
  ['new-sheet', { mid_lat_deg: 50, mid_lon_deg: 0, scale: 10, paper: 'A4-across' }, /scale/],
  ['new-sheet', { mid_lat_deg: 50, mid_lon_deg: 0, scale: 100000, paper: 'A9' }, /paper/],
  ['slide-edge-to', { rose: '1' }, /straight-edge is not on/],
  ['turn-edge', { bearing_deg: 360, reference: 'true' }, /no direction/],
  ['turn-edge', { bearing_deg: 10, reference: 'compass' }, /deviation is not entered/],
  ['lift-edge', {}, /straight-edge is not on/],
  ['undo', {}, /nothing to undo/],
  ['redo', {}, /nothing to redo/],
  ['open-text', { text: '' }, /empty/],
  ['open-text', { text: 'hello' }, /no sheet/],
  ['open-text', { text: '2:AAAA' }, /newer/],
  ['open-text', { text: '1:AAAA' }, /./],
  ['open-text', { text: '1:A*AA' }, /damaged at character/],
  ['set-palette', { palette: 'pink' }, /palette/],
  ['no-such-command', {}, /no command/],
];
for (const [name, args, words] of bad)
  test(`refused, with the sheet as it was: ${name} ${JSON.stringify(args)}`, async () => {
    const sheet = equal_part(await read(opened.page));
    const answer = await command(opened.page, name, args);
    assert.match(answer.error ?? '(done)', words);
    assert.deepEqual(equal_part(await read(opened.page)), sheet);
  });

test('a text with one character changed is refused', async () => {
  const text = (await opened.page.evaluate(() => window.fogsheet.link())).split('#')[1];
  const sheet = equal_part(await read(opened.page));
  for (let at = 2; at < text.length; at += 17) {
    const other = text[at] === 'A' ? 'B' : 'A';
    assert.ok((await command(opened.page, 'open-text', { text: text.slice(0, at) + other + text.slice(at + 1) })).error, `character ${at}`);
  }
  assert.deepEqual(equal_part(await read(opened.page)), sheet);
});

test('a date outside the models shows no variation and says why', async () => {
  assert.ok((await command(opened.page, 'set-date', { date: '2041-05-01' })).ok);
  const reading = await read(opened.page);
  assert.equal(reading.variation.value_deg, null);
  assert.equal(reading.legs[0].shown.magnetic, undefined);
  await command(opened.page, 'open-slip', { slip: 'more' });
  assert.match(await opened.page.textContent('#slip'), /2041/);
  await command(opened.page, 'close-slip');
  await command(opened.page, 'undo');
});

test('where(): null for what is off screen or covered, the place itself for places', async () => {
  assert.equal(await where(opened.page, 'mark/No such'), null);
  assert.equal(await where(opened.page, 'edge/reading'), null);
  assert.ok(await where(opened.page, "sheet/44°10.0'N 031°20.0'W"));
  assert.equal(await where(opened.page, "sheet/10°10.0'N 031°20.0'W"), null);
  assert.ok(await where(opened.page, 'mark/Off Sarn'));
});

test('nothing is drawn while nothing happens', async () => {
  await opened.page.waitForTimeout(800);
  const drawn = await opened.page.evaluate(() => window.fogsheet.frames());
  await opened.page.waitForTimeout(2000);
  assert.equal(await opened.page.evaluate(() => window.fogsheet.frames()), drawn);
});

test('a lost context is restored and drawn anew', async () => {
  const lose = await opened.page.evaluate(() => {
    const gl = document.querySelector('#sheet canvas').getContext('webgl2');
    window.lost = gl.getExtension('WEBGL_lose_context');
    window.lost.loseContext();
    return window.fogsheet.frames();
  });
  await opened.page.waitForTimeout(100);
  await opened.page.evaluate(() => window.lost.restoreContext());
  await opened.page.waitForFunction((before_loss) => window.fogsheet.frames() > before_loss, lose, { timeout: 5000 });
});

test('without WebGL2 the lists and the sum still work, and the page says what is missing', async () => {
  const plain = await launch_chromium(['--disable-gpu', '--disable-3d-apis']);
  try {
    const { page } = await open_page(plain, site.url, sizes.tablet_across);
    assert.match(await page.textContent('#whole'), /WebGL2/);
    assert.match(await page.textContent('#whole'), /096°T/);
    const { marks, roses } = await read(page);
    await command(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
    await command(page, 'slide-edge-to', { rose: roses[0].id });
    assert.match(await page.textContent('[data-name="chain"]'), /105/);
  } finally {
    await plain.close();
  }
});

test('the policy was kept, and nothing was asked of another origin', () => {
  assert.deepEqual(opened.noted.errors.filter((text) => /policy/i.test(text)), []);
  assert.deepEqual(opened.noted.elsewhere, []);
});
