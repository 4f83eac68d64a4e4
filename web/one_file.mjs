// The page as one file that opens without a server: node web/one_file.mjs --site DIR --esbuild PROGRAM --out FILE
// Scripts are bundled and styles put in, allowed by their hashes; programs and typefaces are within as base64. There is no
// service worker: the file itself is what is kept.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

import { one_file_policy, policy } from './policy.mjs';

const first_script = 'boot.js';
const worker_scripts = ['exchange_worker.js', 'photograph_worker.js'];

const base64 = (bytes) => bytes.toString('base64');
const hash_of = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/// Calls of replace() with a text would read its "$&".
const put = (page, was, is) => {
  if (!page.includes(was)) throw new Error(`the page lacks ${was}`);
  return page.replace(was, () => is);
};

/// @param format  "esm"; "iife" for a script that is no module
function bundled(entry, esbuild, format) {
  const options = ['--bundle', `--format=${format}`, '--minify', '--charset=utf8', '--log-level=warning', '--log-override:empty-import-meta=silent'];
  return execFileSync(esbuild, [entry, ...options], { encoding: 'utf8', maxBuffer: 1 << 26 });
}

/// @param site  the folder that assemble.mjs has laid out
/// @param esbuild  the program that bundles scripts
/// @return the page as text
export function one_file(site, esbuild) {
  const read = (...at) => readFileSync(path.join(site, ...at));
  let page = String(read('index.html'));
  const version = /src="([0-9a-f]+)\/boot\.js"/.exec(page)[1];
  const own = [...new Set(JSON.parse(/const files = (\[[^\]]*\])/.exec(String(read('sw.js')))[1]))];
  const binaries = own.filter((name) => /\.(wasm|otf)$/.test(name));
  const within = (name) => base64(read(name));

  const palette = String(read(version, 'palette.js'));
  const script = bundled(path.join(site, version, first_script), esbuild, 'esm');
  const style = String(read(version, 'page.css')).replace(/url\("?([^")]+\.otf)"?\)/g, (_, name) => `url("data:font/otf;base64,${within(`${version}/${name}`)}")`);
  const icon = `data:image/svg+xml;base64,${within('icons/sheet.svg')}`;
  const hold = (name, text) => `<script type="text/plain" data-file="${name}">${text}</script>`;
  const held = [
    ...binaries.map((name) => hold(name.slice(version.length + 1), within(name))),
    ...worker_scripts.map((name) => hold(name, base64(Buffer.from(bundled(path.join(site, version, name), esbuild, 'iife'))))),
  ];
  page = page.replace(/^<link rel="(?:manifest|apple-touch-icon|preload|modulepreload)".*\n/gm, '');
  page = put(page, '<html lang="en">', '<html lang="en" data-one-file>');
  page = put(page, policy, one_file_policy({ scripts: [palette, script].map(hash_of), styles: [hash_of(style)] }));
  page = put(page, `<script src="${version}/palette.js"></script>`, `<script>${palette}</script>`);
  page = put(page, `<link rel="stylesheet" href="${version}/page.css">`, `<style>${style}</style>`);
  page = put(page, 'href="icons/sheet.svg"', `href="${icon}"`);
  page = put(page, `<script type="module" src="${version}/${first_script}"></script>\n`, '');
  const notices = `<script type="text/plain" data-file="notices.txt">\n${String(read('notices.txt')).replaceAll('</', '<\\/')}</script>`;
  return put(page, '</body>', [...held, notices, `<script type="module">${script}</script>`, '</body>'].join('\n'));
}

function main() {
  const text = { type: 'string' };
  const { values } = parseArgs({ options: { site: text, esbuild: text, out: text } });
  const page = one_file(values.site, values.esbuild);
  mkdirSync(path.dirname(values.out), { recursive: true });
  writeFileSync(values.out, page);
  console.log(`${(page.length / 1000).toFixed(0)} kB  ${path.basename(values.out)}`);
}

if (process.argv[1] && path.resolve(process.argv[1]) === fileURLToPath(import.meta.url)) main();
