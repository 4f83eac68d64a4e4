// The assembled site: its worker's list, its version, and a page that the strict policy lets run. The program and the
// typeface are stand-ins here; that the real ones work is the browsers' suite.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { assemble, size_table, write_site } from '../../web/assemble.mjs';
import { policy } from '../../web/policy.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const palettes = path.join(root, 'shell/palettes.inc');
const folder = mkdtempSync(path.join(os.tmpdir(), 'site-'));
after(() => rmSync(folder, { recursive: true }));

/// A site whose program, and whose second program, are those texts.
function site_with(program_text, later_text = '') {
  const program = path.join(folder, 'program'), fonts = path.join(folder, 'fonts');
  for (const made of [program, fonts]) mkdirSync(made, { recursive: true });
  writeFileSync(path.join(program, 'fogsheet.js'), 'export default 0;');
  writeFileSync(path.join(program, 'fogsheet.wasm'), program_text);
  writeFileSync(path.join(program, 'exchange.js'), 'export default 0;');
  writeFileSync(path.join(program, 'exchange.wasm'), later_text);
  for (const name of ['photograph.js', 'photograph.wasm']) writeFileSync(path.join(program, name), '');
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

test('the second program and the third are kept with the rest, but nothing asks for them at the start', () => {
  const list = JSON.parse(/const files = (\[[^\]]*\])/.exec(text_of('sw.js'))[1]);
  for (const name of ['exchange.js', 'exchange.wasm', 'photograph.js', 'photograph.wasm', 'exchange_worker.js', 'later_worker.js', 'photograph_worker.js', 'underlay.js', 'underlay_layer.js', 'underlay_store.js']) {
    assert.ok(list.includes(`${site.version}/${name}`), name);
    assert.ok(!text_of('index.html').includes(name), name);
  }
  for (const name of ['boot', 'platform', 'program', 'files', 'files_out', 'exchange_jobs', 'later_program', 'own_files', 'underlay_kept']) {
    assert.doesNotMatch(text_of(`${site.version}/${name}.js`), /^import .*(exchange\.js|_worker\.js|photograph|underlay(_layer|_store)?\.js)/m, name);
  }
  for (const name of ['exchange', 'photograph']) assert.match(text_of(`${site.version}/${name}_worker.js`), new RegExp(`^import make_${name} from './${name}\\.js'`, 'm'));
  assert.notEqual(site_with('one', 'another').version, site.version);
});

test('sizes are told of the first use and of all', () => {
  const told = (table) => [...table.matchAll(/([\d.]+) kB {2}(?:for the first use|in all)/g)].map(([, kb]) => Number(kb));
  const noise = Array.from({ length: 9_000 }, (_, i) => String.fromCharCode(33 + ((i * i * 7919) % 8191) % 90)).join('');
  const [first, all] = told(size_table(site)), [first_with, all_with] = told(size_table(site_with('one', noise)));
  assert.equal(first_with, first);
  assert.ok(all_with > all + 1, `${all_with} kB`);
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
