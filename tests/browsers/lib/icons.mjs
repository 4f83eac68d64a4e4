// The pictures of an installed page, all made from one drawing, web/page/icons/sheet.svg. Run by itself it draws them anew:
// node tests/browsers/lib/icons.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

import { open_chromium } from './engines.mjs';

export const icon_folder = fileURLToPath(new URL('../../../web/page/icons/', import.meta.url));
const drawing = path.join(icon_folder, 'sheet.svg');

// How much of the picture the drawing takes. What a system cuts to a shape of its own has paper to its edges: a maskable one
// keeps all in the middle 0.8 of the width (W3C Web App Manifest, the safe zone), a touch icon only loses its corners.
export const icons = {
  'sheet-192.png': { size: 192 },
  'sheet-512.png': { size: 512 },
  'sheet-maskable-192.png': { size: 192, share: 0.78 },
  'sheet-maskable-512.png': { size: 512, share: 0.78 },
  'sheet-touch-180.png': { size: 180, share: 0.94 },
};

function page_of({ size, share }) {
  const svg = readFileSync(drawing, 'utf8');
  const paper = /<rect width="512" height="512" rx="84" fill="(#\w{6})"\/>/.exec(svg);
  const middle = share ?? 1;
  const bare = share ? svg.replace(paper[0], '') : svg;
  return `<style>html{margin:0;background:${share ? paper[1] : 'transparent'}}body{margin:0;height:${size}px;display:grid;place-items:center}svg{width:${size * middle}px}</style>${bare}`;
}

/// PNG bytes.
export async function draw_icon(browser, row) {
  const { raw, close } = await browser.open({ width: row.size, height: row.size });
  await raw.page.setContent(page_of(row));
  const png = await raw.page.screenshot({ omitBackground: true });
  await close();
  return png;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const browser = await open_chromium();
  for (const [name, row] of Object.entries(icons)) writeFileSync(path.join(icon_folder, name), await draw_icon(browser, row));
  await browser.close();
}
