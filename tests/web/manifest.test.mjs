// What an installed page is made from: the manifest's members, its pictures at the sizes it states, and its colours out of
// the one table. Source of members and safe zone: W3C Web Application Manifest.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { PNG } from 'pngjs';

import { assemble } from '../../web/assemble.mjs';
import { colours_of } from '../../web/palette_css.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const table = readFileSync(path.join(root, 'shell/palettes.inc'), 'utf8');
const folder = mkdtempSync(path.join(os.tmpdir(), 'manifest-'));
after(() => rmSync(folder, { recursive: true }));

const site = (() => {
  const [program, fonts] = ['program', 'fonts'].map((name) => path.join(folder, name));
  for (const made of [program, fonts]) mkdirSync(made);
  for (const name of ['fogsheet.js', 'fogsheet.wasm', 'exchange.js', 'exchange.wasm', 'photograph.js', 'photograph.wasm']) writeFileSync(path.join(program, name), '');
  return assemble({ program, fonts, palettes: path.join(root, 'shell/palettes.inc') });
})();
const manifest = JSON.parse(String(site.files.get('manifest.webmanifest')));
const page = String(site.files.get('index.html'));
const address = 'https://example.org/quiet/corner/manifest.webmanifest';

test('it names the page, and keeps to its own folder wherever that is', () => {
  assert.equal(manifest.name, 'Fogsheet');
  assert.ok(manifest.short_name.length <= 12, 'short enough to stand under an icon (common practice, no source)');
  assert.equal(manifest.display, 'standalone');
  assert.ok(manifest.description);
  for (const member of ['id', 'start_url', 'scope']) {
    assert.equal(manifest[member], './', member);
    assert.equal(new URL(manifest[member], address).href, 'https://example.org/quiet/corner/');
  }
  assert.match(page, /<link rel="manifest" href="manifest.webmanifest">/);
});

test('no member but those that are meant', () => {
  assert.deepEqual(Object.keys(manifest).toSorted(), ['background_color', 'description', 'display', 'file_handlers', 'icons', 'id', 'name', 'scope', 'short_name', 'start_url', 'theme_color']);
});

test('every picture is there, a PNG of the size that is stated; 192 and 512, plain and maskable', () => {
  const stated = manifest.icons.filter((icon) => icon.type === 'image/png');
  for (const { src, sizes } of stated) {
    const png = PNG.sync.read(site.files.get(src));
    assert.equal(`${png.width}x${png.height}`, sizes, src);
  }
  for (const purpose of [undefined, 'maskable']) {
    assert.deepEqual(stated.filter((icon) => icon.purpose === purpose).map((icon) => icon.sizes).toSorted(), ['192x192', '512x512']);
  }
  const [drawing] = manifest.icons.filter((icon) => icon.type === 'image/svg+xml');
  assert.match(String(site.files.get(drawing.src)), /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" viewBox="0 0 512 512">/);
});

const paper = [1, 3, 5].map((i) => Number.parseInt(colours_of(table, 'paper').day.slice(i, i + 2), 16));

/// The greatest distance of anything drawn from the middle, in parts of the width; fails on what is not opaque.
function reach(png, name) {
  let most = 0;
  for (let y = 0; y < png.height; y += 1) {
    for (let x = 0; x < png.width; x += 1) {
      const at = (y * png.width + x) * 4;
      assert.equal(png.data[at + 3], 255, `${name} is not opaque at ${x}, ${y}`);
      const off = Math.max(...paper.map((value, channel) => Math.abs(value - png.data[at + channel])));
      if (off > 4) most = Math.max(most, Math.hypot(x + 0.5 - png.width / 2, y + 0.5 - png.height / 2) / png.width);
    }
  }
  return most;
}

test('what a system cuts to its own shape is opaque, and a maskable picture has all within the safe zone', () => {
  const safe = 0.4;  // of the width, a circle about the middle
  for (const { src } of manifest.icons.filter((icon) => icon.purpose === 'maskable')) {
    const most = reach(PNG.sync.read(site.files.get(src)), src);
    assert.ok(most <= safe && most > 0.3, `${src} reaches ${most}`);
  }
  const [, touch] = /<link rel="apple-touch-icon" href="([^"]*)">/.exec(page);
  const png = PNG.sync.read(site.files.get(touch));
  assert.equal(`${png.width}x${png.height}`, '180x180');
  assert.ok(reach(png, touch) > 0.4);
});

test('colours of the page, its first script and the manifest come from the one table', () => {
  const behind = colours_of(table, 'table');
  assert.ok(page.includes(`<meta name="theme-color" content="${behind.day}">`));
  assert.ok(String(site.files.get(`${site.version}/palette.js`)).includes(JSON.stringify(behind)));
  // A start at night must not dazzle.
  assert.equal(manifest.background_color, behind.dusk);
  assert.equal(manifest.theme_color, behind.dusk);
  // No colour is written anywhere else in the page's own files but in the drawing of its icon, and the shadow under a slip.
  for (const [name, bytes] of site.files) {
    if (!/\.(html|js)$/.test(name) || name.endsWith('palette.js')) continue;
    const found = (String(bytes).match(/#[0-9A-Fa-f]{6}\b/g) ?? []).filter((colour) => colour !== behind.day || name !== 'index.html');
    assert.deepEqual(found, [], name);
  }
});
