// The assembled site: its worker's list, its version, and a page that the strict policy lets run. The program and the
// typeface are stand-ins here; that the real ones work is the browsers' suite.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { assemble, write_site } from '../../web/assemble.mjs';
import { inks_of, palette_css } from '../../web/palette_css.mjs';
import { policy } from '../../web/policy.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const palettes = path.join(root, 'shell/palettes.inc');
const folder = mkdtempSync(path.join(os.tmpdir(), 'site-'));
after(() => rmSync(folder, { recursive: true }));

/// A site whose program is that text.
function site_with(program_text) {
  const program = path.join(folder, 'program'), fonts = path.join(folder, 'fonts');
  for (const made of [program, fonts]) mkdirSync(made, { recursive: true });
  writeFileSync(path.join(program, 'fogsheet.js'), 'export default 0;');
  writeFileSync(path.join(program, 'fogsheet.wasm'), program_text);
  for (const face of ['Regular', 'Bold', 'Italic']) writeFileSync(path.join(fonts, `B612-${face}.otf`), face);
  writeFileSync(path.join(folder, 'licence'), 'You may.');
  return assemble({ program, fonts, palettes, notices: [['A part', path.join(folder, 'licence')]] });
}

const site = site_with('one');
const text_of = (name) => String(site.files.get(name));
const texts = [...site.files].filter(([name]) => /\.(html|js|css|webmanifest)$/.test(name));

test('the worker keeps every file but the pictures of an installed page, and no other', () => {
  const list = JSON.parse(/const files = (\[[^\]]*\])/.exec(text_of('sw.js'))[1]);
  const wanted = [...site.files.keys()].filter((name) => name !== 'sw.js' && !name.endsWith('.png')).map((name) => (name === 'index.html' ? './' : name));
  assert.deepEqual(list.toSorted(), wanted.toSorted());
  assert.ok(list.includes(`${site.version}/fogsheet.wasm`));
});

test('the version follows the content, and nothing else', () => {
  assert.equal(site_with('one').version, site.version);
  assert.notEqual(site_with('two').version, site.version);
  assert.ok(text_of('sw.js').includes(`'${site.version}'`));
});

test('no placeholder is left', () => {
  for (const [name, bytes] of texts) assert.doesNotMatch(String(bytes), /\{\{/, name);
});

test('all that the page and its modules ask for is there, by relative address', () => {
  const ask = (from, to) => path.posix.normalize(path.posix.join(path.posix.dirname(from), to));
  for (const [, to] of text_of('index.html').matchAll(/(?:src|href)="([^"]*)"/g)) assert.ok(site.files.has(ask('index.html', to)), to);
  for (const [name, bytes] of texts) {
    for (const [, to] of String(bytes).matchAll(/(?:from |import\()'(\.[^']*)'/g)) assert.ok(site.files.has(ask(name, to)), `${name}: ${to}`);
    for (const [, to] of String(bytes).matchAll(/url\("([^"]*)"\)/g)) assert.ok(site.files.has(ask(name, to)), `${name}: ${to}`);
  }
  for (const { src } of JSON.parse(text_of('manifest.webmanifest')).icons) assert.ok(site.files.has(src), src);
});

test('nothing names another origin', () => {
  for (const [name, bytes] of texts) {
    const elsewhere = String(bytes).match(/https?:\/\/[^\s'"`]+/g) ?? [];
    assert.deepEqual(elsewhere.filter((url) => !url.startsWith('http://www.w3.org/')), [], name);
  }
});

test('the page obeys its own policy: no script, style or handler in line', () => {
  const page = text_of('index.html');
  assert.ok(page.includes(`content="${policy}"`));
  assert.doesNotMatch(page, /<script(?![^>]*\bsrc=)/);
  assert.doesNotMatch(page, /<style|\sstyle=|\son\w+=/);
});

test('the palette script runs before the style sheet and the modules', () => {
  const page = text_of('index.html');
  const [palette, style, boot] = ['palette.js"></script>', 'rel="stylesheet"', 'boot.js'].map((part) => page.indexOf(part));
  assert.ok(palette > 0 && palette < style && style < boot);
});

test('the notices hold each licence under its title', () => {
  assert.match(text_of('notices.txt'), /^A part\n======\n\nYou may\.\n/);
});

test('a site is written whole, and what was there before is gone', () => {
  const out = path.join(folder, 'out');
  mkdirSync(out, { recursive: true });
  writeFileSync(path.join(out, 'old.js'), '');
  write_site(site.files, out);
  assert.equal(String(readFileSync(path.join(out, site.version, 'page.css'))), text_of(`${site.version}/page.css`));
  assert.throws(() => readFileSync(path.join(out, 'old.js')));
});

// WCAG 2.2, relative luminance and contrast ratio.
function contrast(a, b) {
  const luminance = (hex) => [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
    .reduce((sum, part, i) => sum + part * [0.2126, 0.7152, 0.0722][i], 0);
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

test('colours: every role in every palette, text readable, night red and nothing else', () => {
  const table = String(readFileSync(palettes));
  const css = palette_css(table);
  const inks = new Map(inks_of(table));
  for (const role of inks.keys()) assert.equal(css.split(`  --${role}: #`).length - 1, 4, role);

  // Least contrast of text by palette; 4.5:1 is WCAG's own least (1.4.3), the rest is this project's choice.
  const least = { ink: [7, 6, 4.8, 7], soft: [7, 6, 4.8, 7], danger: [7, 6, 4.8, 7] };
  for (const [role, ratios] of Object.entries(least)) {
    ratios.forEach((ratio, i) => assert.ok(contrast(inks.get(role)[i], inks.get('paper')[i]) >= ratio, `${role} in palette ${i}`));
  }
  ['day', 'dusk', 'night', 'high contrast'].forEach((palette, i) => {
    assert.ok(contrast(inks.get('pressed')[i], inks.get('on-pressed')[i]) >= 4.5, `main buttons, ${palette}`);
    assert.ok(contrast(inks.get('ink')[i], inks.get('caution')[i]) >= 4.5, `cautions, ${palette}`);
    assert.ok(contrast(inks.get('focus')[i], inks.get('paper')[i]) >= 3, `focus ring, ${palette}`);
  });
  for (const [role, colours] of inks) {
    const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(colours[2].slice(at, at + 2), 16));
    assert.ok(red >= green && red >= blue && blue <= (role === 'focus' ? 0x52 : 0x30), `${role} at night`);
  }
});
