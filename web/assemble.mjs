// Lays the static site out: node web/assemble.mjs --program DIR --fonts DIR --palettes FILE --esbuild PROGRAM --out DIR [--notice TITLE=FILE]...
// What belongs together lies in a folder named by the version, so that pages of two versions never mix their files; the
// version is a hash of all of it. The service worker's list is the site's own.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { gzipSync } from 'node:zlib';

import { colours_of, palette_css } from './palette_css.mjs';
import { policy } from './policy.mjs';

const page = path.join(path.dirname(fileURLToPath(import.meta.url)), 'page');
const styles = ['base', 'tray', 'slip', 'outline', 'items', 'keypad', 'passage', 'forced', 'print', 'print_passage'];
const program_files = ['fogsheet.js', 'fogsheet.wasm'];
// These come when they are asked for, and with the rest to be kept for offline use.
const later_files = ['exchange.js', 'exchange.wasm', 'photograph.js', 'photograph.wasm'];
const later_scripts = ['exchange_worker.js', 'later_worker.js', 'photograph_worker.js', 'underlay.js', 'underlay_layer.js', 'underlay_store.js'];
export const later = [...later_files, ...later_scripts];
const gzip_aims_kb = { first: 350, all: 450 };

const read = (...at) => readFileSync(path.join(...at));
const list = (folder, suffix) => readdirSync(folder).filter((name) => name.endsWith(suffix)).sort();

const fill = (template, values) => template.replace(/\{\{(\w+)\}\}/g, (_, name) => values[name]);

/// The bytes of a script or style with all taken out that only people read.
const made_smaller = (esbuild) => (name, bytes) => execFileSync(esbuild, ['--minify', '--charset=utf8', `--loader=${path.extname(name).slice(1)}`], { input: bytes, maxBuffer: 1 << 26 });

/// @param notices  [[title, file]...] of the licences of what is built in
/// @param smaller  what is done to each script and style: name, bytes -> bytes
/// @return {version, files: a map from each path in the site to its bytes, kept: the paths that offline use needs, later: those
/// of them that the first use does not}
export function assemble({ program, fonts, palettes, notices = [], smaller = (_, bytes) => bytes }) {
  const scripts = list(page, '.js').filter((name) => !['sw.js', 'palette.js'].includes(name));
  const faces = list(fonts, '.otf');
  const table = String(read(palettes));
  const behind = colours_of(table, 'table');
  // A start at night must not dazzle: until the page has said otherwise, an installed one shows the dusk's.
  const colours = { behind: JSON.stringify(behind), theme: behind.day, launch: behind.dusk };
  const style = [palette_css(table), ...styles.map((name) => read(page, 'css', `${name}.css`))].join('\n');
  const versioned = new Map([
    ...scripts.map((name) => [name, read(page, name)]),
    ...[...program_files, ...later_files].map((name) => [name, read(program, name)]),
    ...faces.map((name) => [`fonts/${name}`, read(fonts, name)]),
    ['palette.js', Buffer.from(fill(String(read(page, 'palette.js')), colours))],
    ['page.css', Buffer.from(style)],
  ].map(([name, bytes]) => [name, /\.(js|css)$/.test(name) ? smaller(name, bytes) : bytes]));
  const fixed = new Map([
    ...list(path.join(page, 'icons'), '').map((name) => [`icons/${name}`, read(page, 'icons', name)]),
    ['manifest.webmanifest', Buffer.from(fill(String(read(page, 'manifest.webmanifest')), colours))],
    ['notices.txt', Buffer.from(notices.map(([title, file]) => `${title}\n${'='.repeat(title.length)}\n\n${String(read(file)).trim()}\n`).join('\n\n'))],
  ]);
  const templates = { index: String(read(page, 'index.html')), worker: String(read(page, 'sw.js')) };
  const version = version_of([...versioned, ...fixed, ...Object.entries(templates)]);

  const modules = [...scripts.filter((name) => !later_scripts.includes(name)), 'fogsheet.js'];
  const preloads = [
    ...faces.map((name) => `<link rel="preload" href="${version}/fonts/${name}" as="fetch" crossorigin>`),
    ...modules.map((name) => `<link rel="modulepreload" href="${version}/${name}">`),
  ];
  const files = new Map([
    ['index.html', Buffer.from(fill(templates.index, { version, policy, theme: colours.theme, preloads: preloads.join('\n') }))],
    ...fixed,
    ...[...versioned].map(([name, bytes]) => [`${version}/${name}`, bytes]),
  ]);
  // An installed page's pictures are the system's to keep.
  const kept = [...files.keys()].filter((name) => !name.endsWith('.png'));
  const asked_for = kept.map((name) => (name === 'index.html' ? './' : name));
  files.set('sw.js', Buffer.from(fill(templates.worker, { version, files: JSON.stringify(asked_for, null, 1) })));
  return { version, files, kept: [...kept, 'sw.js'], later: later.map((name) => `${version}/${name}`) };
}

function version_of(contents) {
  const hash = createHash('sha256');
  for (const [name, bytes] of contents) hash.update(`${name} ${bytes.length} `).update(bytes);
  return hash.digest('hex').slice(0, 12);
}

export function write_site(files, folder) {
  rmSync(folder, { recursive: true, force: true });
  for (const [name, bytes] of files) {
    const file = path.join(folder, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, bytes);
  }
}

/// What offline use needs, file by file, largest first; what the first use needs, and all of it.
export function size_table({ files, kept, later }) {
  const sizes = kept.map((name) => [name, gzipSync(files.get(name), { level: 9 }).length]).sort((a, b) => b[1] - a[1]);
  const sum = (some) => some.reduce((total, [, size]) => total + size, 0);
  const kb = (size) => (size / 1000).toFixed(1).padStart(7);
  return [
    ...sizes.map(([name, size]) => `${kb(size)} kB  ${name}`),
    `${kb(sum(sizes.filter(([name]) => !later.includes(name))))} kB  for the first use, gzip -9 (aim: ${gzip_aims_kb.first})`,
    `${kb(sum(sizes))} kB  in all (aim: ${gzip_aims_kb.all})`,
  ].join('\n');
}

function main() {
  const text = { type: 'string' };
  const { values } = parseArgs({ options: { program: text, fonts: text, palettes: text, esbuild: text, out: text, notice: { type: 'string', multiple: true } } });
  const notices = (values.notice ?? []).map((notice) => notice.split(/=(.*)/s).slice(0, 2));
  const site = assemble({ ...values, notices, smaller: made_smaller(values.esbuild) });
  write_site(site.files, values.out);
  console.log(`${size_table(site)}\nversion ${site.version}`);
}

if (process.argv[1] && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) main();
