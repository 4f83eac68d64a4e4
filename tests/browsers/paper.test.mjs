// The sheet on paper, measured in the PDF that the browser makes (poppler), in Chromium and Firefox: the check line, minutes of
// latitude against Mercator's own formula written here, text as text, pages and their crosses; and files: SVG at its size in
// millimetres, PNG with its resolution and in our typeface.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';

import { PNG } from 'pngjs';

import { launch, with_engine } from './lib/engines.mjs';
import { open_site } from './lib/site.mjs';
import { command, done, open, until } from './lib/sheet.mjs';

const tolerance_mm = 0.2;
const mm_a_point = 25.4 / 72;
const sizes = { 'A4-upright': [210, 297], 'A4-across': [297, 210], 'A3-across': [420, 297], 'Letter-upright': [215.9, 279.4], 'Tabloid-across': [431.8, 279.4] };  // ISO 216, ANSI/ASME Y14.1

let folder;
before(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'fogsheet-paper-')); });
after(() => rmSync(folder, { recursive: true, force: true }));

/// Neither engine without a head shows a dialogue: what print() is asked for is counted, and the PDF made by the driver.
const no_dialogue = (page) => page.evaluate(() => { window.print = () => { window.times_printed = (window.times_printed ?? 0) + 1; }; });

async function printed(page, paper, name) {
  const [width, height] = sizes[paper];
  const file = path.join(folder, `${page.name}-${name}.pdf`);
  writeFileSync(file, await page.raw.page.pdf({ preferCSSPageSize: true, width: `${width}mm`, height: `${height}mm`, margin: { top: 0, right: 0, bottom: 0, left: 0 } }));
  const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
  const pages = Number(/Pages:\s+(\d+)/.exec(info)[1]);
  if (process.env.FOGSHEET_PICTURES) {
    mkdirSync(process.env.FOGSHEET_PICTURES, { recursive: true });
    execFileSync('pdftoppm', ['-png', '-r', '100', file, path.join(process.env.FOGSHEET_PICTURES, `paper-${page.name}-${name}`)]);
  }
  return {
    pages,
    size: /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info).slice(1).map((points) => points * mm_a_point),
    text: (number) => execFileSync('pdftotext', ['-f', number, '-l', number, '-raw', file, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' '),
    lines: (number) => lines_of(execFileSync('pdftocairo', ['-svg', '-f', number, '-l', number, file, '-'], { encoding: 'utf8', maxBuffer: 1 << 27 })),
  };
}

/// Every straight line of a page, in mm from its top left corner: poppler writes paths of "M x y L x y" with their matrix.
function lines_of(svg) {
  const lines = [];
  for (const [, tag] of svg.matchAll(/<path ([^>]*)>/g)) {
    const d = / ?\bd="([^"]*)"/.exec(tag)?.[1];
    if (!d) continue;
    const [a, b, c, e, x0, y0] = /transform="matrix\(([^)]*)\)"/.exec(tag)?.[1].split(',').map(Number) ?? [1, 0, 0, 1, 0, 0];
    const at = (x, y) => ({ x: (a * x + c * y + x0) * mm_a_point, y: (b * x + e * y + y0) * mm_a_point });
    let from = null;
    for (const [, letter, x, y] of d.matchAll(/([ML]) ([-\d.]+) ([-\d.]+)/g)) {
      const to = at(Number(x), Number(y));
      if (letter === 'L' && from) lines.push({ from, to });
      from = to;
    }
  }
  return lines;
}

const near = (a, b) => Math.abs(a - b) <= tolerance_mm;
const level = ({ from, to }) => Math.abs(from.y - to.y) < 0.01;
const long = ({ from, to }) => Math.hypot(to.x - from.x, to.y - from.y);
const low = ({ from, to }) => Math.min(from.x, to.x);

/// A level line of 100 mm with a tick up at either end: the one that a ruler is laid on.
function check_lines(lines) {
  const upright = lines.filter(({ from, to }) => Math.abs(from.x - to.x) < 0.01);
  const ticks_at = (x, y) => upright.some(({ from, to }) => Math.abs(from.x - x) < 0.01 && Math.abs(Math.max(from.y, to.y) - y) < 0.01);
  return lines.filter((line) => level(line) && Math.abs(long(line) - 100) < 5 && ticks_at(line.from.x, line.from.y) && ticks_at(line.to.x, line.to.y));
}

// WGS84. Source: NIMA TR8350.2, table 3.1. Mercator on the ellipsoid: Snyder, USGS PP 1395 (1987), eq. 7-7, 14-15.
const semi_major_mm = 6378137 * 1000, flattening = 1 / 298.257223563, eccentricity = Math.sqrt(flattening * (2 - flattening));
const radians = (deg) => (deg * Math.PI) / 180;
const northing = (deg) => {
  const es = eccentricity * Math.sin(radians(deg));
  return Math.log(Math.tan(Math.PI / 4 + radians(deg) / 2) * ((1 - es) / (1 + es)) ** (eccentricity / 2));
};
const mm_a_radian = (deg, scale) => (semi_major_mm / scale) * Math.cos(radians(deg)) / Math.sqrt(1 - (eccentricity * Math.sin(radians(deg))) ** 2);
/// How far two latitudes are apart on a sheet that is true at mid_deg.
const apart_mm = (a_deg, b_deg, mid_deg, scale) => mm_a_radian(mid_deg, scale) * (northing(b_deg) - northing(a_deg));

/// Whole minutes of latitude lie as far from the southmost one as Mercator has them; the border's ticks of 2.4 mm, both sides.
function check_latitudes(lines, { mid_deg, scale, step_min, left_mm, right_mm }) {
  for (const [edge, inward] of [[left_mm, 1], [right_mm, -1]]) {
    const ticks = lines.filter((line) => level(line) && near(long(line), 2.4) && near(inward > 0 ? low(line) : Math.max(line.from.x, line.to.x), edge)).map(({ from }) => from.y).sort((a, b) => b - a);
    assert.ok(ticks.length >= 8, `ticks at ${edge}: ${ticks.length}`);
    // Which minute the southmost is: the only multiple of the step for which the whole spacing fits, counted from the middle.
    const span = ticks[0] - ticks.at(-1);
    const steps = ticks.length - 1;
    const first = Array.from({ length: 400 }, (_, i) => Math.round((mid_deg * 60) / step_min) * step_min - i * step_min)
      .find((minute) => near(apart_mm(minute / 60, (minute + steps * step_min) / 60, mid_deg, scale), span) && Math.abs(minute / 60 + (steps * step_min) / 120 - mid_deg) <= step_min / 60);
    assert.notEqual(first, undefined, `no minutes are ${span} mm apart`);
    ticks.forEach((y, i) => {
      const wanted = apart_mm(first / 60, (first + i * step_min) / 60, mid_deg, scale);
      assert.ok(near(ticks[0] - y, wanted), `minute ${first + i * step_min}: ${ticks[0] - y} mm, not ${wanted}`);
    });
  }
}

const sheet = { mid_lat_deg: 59, mid_lon_deg: -28, scale: 1000000, paper: 'A4-upright' };

for (const engine of ['chromium', 'firefox']) {
  describe(`a sheet printed by ${engine}`, with_engine(engine, 240_000), () => {
    let site, page;
    before(async () => {
      site = await open_site();
      page = await launch(engine, { width: 1180, height: 820 });
      await open(page, site.url);
      await no_dialogue(page);
    });
    after(async () => {
      await page?.close();
      await site?.close();
    });

    test('as plotted: one page of its own paper, its line 100 mm, its minutes Mercator\'s, its words text', async () => {
      await done(page, 'print-sheet', {});
      assert.equal(await page.evaluate(() => window.times_printed), 1);
      const pdf = await printed(page, 'A4-across', 'plotted');
      assert.equal(pdf.pages, 1);
      pdf.size.forEach((side, i) => assert.ok(Math.abs(side - sizes['A4-across'][i]) < 0.5, `${pdf.size}`));
      const lines = pdf.lines(1), found = check_lines(lines);
      assert.equal(found.length, 1);
      assert.ok(near(long(found[0]), 100), `${long(found[0])}`);
      // The demo: 1 : 100 000, true at 44°08.9'N, whole minutes marked.
      check_latitudes(lines, { mid_deg: 44 + 8.9 / 60, scale: 100000, step_min: 1, left_mm: 16, right_mm: 281 });
      for (const words of ['The Sunder Ground', 'This line is 100 mm', 'Hask Rock', '096°T', 'Keep a lookout by eye and ear', '44°10′']) assert.ok(pdf.text(1).includes(words), `${words} in ${pdf.text(1)}`);
      assert.ok(!pdf.text(1).includes('Straight-edge'), 'the tray is not printed');
    });

    test('blank: nothing that was plotted, and the same measures at another latitude and scale', async () => {
      await done(page, 'new-sheet', sheet);
      await done(page, 'add-mark', { name: 'Hask Rock', kind: 'landmark', lat_deg: 59.2, lon_deg: -28.1 });
      await done(page, 'print-sheet', { what: 'blank', ink: 'black' });
      const pdf = await printed(page, 'A4-upright', 'blank');
      assert.equal(pdf.pages, 1);
      assert.ok(!pdf.text(1).includes('Hask Rock'));
      assert.ok(pdf.text(1).includes('used as 12°W'));
      const lines = pdf.lines(1);
      assert.ok(near(long(check_lines(lines)[0]), 100));
      check_latitudes(lines, { mid_deg: 59, scale: 1000000, step_min: 5, left_mm: 16, right_mm: 194 });
      await done(page, 'undo', {});
    });

    test('A3 on A4: pages that say what joins them, a line of 100 mm on each, crosses in the same places', async () => {
      await done(page, 'new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 50000, paper: 'A3-across' });
      await done(page, 'print-sheet', { paper: 'A4-across', what: 'plotted', ink: 'magenta' });
      const pdf = await printed(page, 'A4-across', 'tiled');
      assert.equal(pdf.pages, 4);
      const joins = ['page 2 on its right, page 3 below', 'page 1 on its left, page 4 below', 'page 4 on its right, page 1 above', 'page 3 on its left, page 2 above'];
      const crosses = [];
      for (let number = 1; number <= 4; number += 1) {
        const text = pdf.text(number), lines = pdf.lines(number);
        assert.ok(text.includes(`page ${number} of 4`) && text.includes(`Joins ${joins[number - 1]}`), text);
        const own = check_lines(lines).filter((line) => near(low(line), 8));
        assert.equal(own.length, 1, `page ${number}`);
        assert.ok(near(long(own[0]), 100));
        crosses.push(lines.filter((line) => level(line) && near(long(line), 5)).map((line) => ({ x: low(line) + 2.5, y: line.from.y })));
      }
      // Page 1 beside page 2: the crosses at its right edge are as far from one another as those at the other's left edge.
      const column = (points, side) => {
        const x = side === 'right' ? Math.max(...points.map((p) => p.x)) : Math.min(...points.map((p) => p.x));
        return points.filter((p) => near(p.x, x)).map((p) => p.y).sort((a, b) => a - b);
      };
      const right = column(crosses[0], 'right'), left = column(crosses[1], 'left');
      assert.equal(right.length, 3);
      assert.equal(left.length, 3);
      right.forEach((y, i) => assert.ok(near(y - right[0], left[i] - left[0])));
    });

    test('every paper prints at its own size', async () => {
      for (const paper of ['Letter-upright', 'Tabloid-across']) {
        await done(page, 'print-sheet', { paper, what: 'blank' });
        const pdf = await printed(page, paper, paper);
        pdf.size.forEach((side, i) => assert.ok(Math.abs(side - sizes[paper][i]) < 0.5, `${paper}: ${pdf.size}`));
        for (let number = 1; number <= pdf.pages; number += 1) assert.ok(check_lines(pdf.lines(number)).some((line) => near(long(line), 100)), `${paper}, page ${number}`);
      }
    });

    test('files: SVG in millimetres with our typeface, PNG with its resolution and in our typeface', async () => {
      await done(page, 'open-demo', {});
      await catch_files(page);
      const svg = await saved(page, 'save-sheet-svg', { ink: 'magenta', what: 'plotted' }, 'The Sunder Ground.svg');
      const text = Buffer.from(svg, 'base64').toString('utf8');
      assert.match(text, / width="297mm" height="210mm" viewBox="0 0 297 210"/);
      assert.equal(text.match(/@font-face\{font-family:B612;[^}]*src:url\(data:font\/otf;base64,/g).length, 3);
      const png = Buffer.from(await saved(page, 'save-sheet-png', { dots: '300' }, 'The Sunder Ground.png'), 'base64');
      const { width, height } = PNG.sync.read(png);
      assert.deepEqual([width, height], [3508, 2480]);  // 297 and 210 mm at 300 dots an inch
      assert.deepEqual(resolution_of(png), { across: 11811, down: 11811, unit: 1 });
      if (process.env.FOGSHEET_PICTURES) writeFileSync(path.join(process.env.FOGSHEET_PICTURES, `paper-${engine}.png`), png);
      // The title as our typeface has it: the same letters, drawn by the page itself, cover as many dots in the same places.
      assert.ok(await page.evaluate(likeness_of_title, png.toString('base64'), 'B612') > 0.8);
      assert.ok(await page.evaluate(likeness_of_title, png.toString('base64'), 'monospace') < 0.6);
    });

    test('a picture that the device has no canvas for is refused, with the resolution that works', async () => {
      await page.evaluate(() => {
        const own = HTMLCanvasElement.prototype.getContext;
        HTMLCanvasElement.prototype.getContext = function getContext(...what) { return this.width * this.height > 16_777_216 ? null : own.apply(this, what); };
      });
      await done(page, 'save-sheet-png', { dots: '600' });
      await until(page, 'the refusal', () => document.body.innerText.includes('300 dots an inch works here'));
    });

    test('what can\'t be printed is refused in words', async () => {
      for (const args of [{ paper: 'screen' }, { paper: 'A5' }, { what: 'half' }, { ink: 'blue' }]) assert.ok((await command(page, 'print-sheet', args)).error);
    });
  });
}

/// Files that the page gives to its user are kept in the page instead.
const catch_files = (page) => page.evaluate(() => {
  window.files = {};
  const blobs = new Map();
  const own = URL.createObjectURL;
  URL.createObjectURL = (blob) => {
    const url = own.call(URL, blob);
    blobs.set(url, blob);
    return url;
  };
  HTMLAnchorElement.prototype.click = function click() {
    const reader = new FileReader();
    reader.onload = () => { window.files[this.download] = reader.result.split(',')[1]; };
    reader.readAsDataURL(blobs.get(this.href));
  };
});

async function saved(page, name, args, file) {
  await done(page, name, args);
  await until(page, file, (wanted) => wanted in window.files, file);
  return page.evaluate((wanted) => window.files[wanted], file);
}

/// Source: PNG (third edition), 5.3 layout of chunks, 11.3.4.3 pHYs. The CRC is checked by pngjs.
function resolution_of(png) {
  const at = png.indexOf('pHYs', 0, 'latin1') + 4;
  assert.ok(at < png.indexOf('IDAT', 0, 'latin1'), 'before the picture itself');
  return { across: png.readUInt32BE(at), down: png.readUInt32BE(at + 4), unit: png[at + 8] };
}

/// In the page: how much of the ink where the title stands is ink of the same words in a typeface, and the other way round.
async function likeness_of_title(base64, typeface) {
  const image = new Image();
  image.src = `data:image/png;base64,${base64}`;
  await image.decode();
  const a_mm = image.width / 297;
  const [left, top, wide, high] = [20, 14, 75, 11].map((mm) => Math.round(mm * a_mm));
  const ink = (draw) => {
    const context = Object.assign(document.createElement('canvas'), { width: wide, height: high }).getContext('2d');
    context.fillStyle = '#fff';
    context.fillRect(0, 0, wide, high);
    draw(context);
    return context.getImageData(0, 0, wide, high).data.filter((_, i) => i % 4 === 1).map((green) => (green < 128 ? 1 : 0));
  };
  const found = ink((context) => context.drawImage(image, -left, -top));
  const wanted = ink((context) => {
    context.fillStyle = '#000';
    context.font = `${6.6 * a_mm}px ${typeface}`;
    // On the baseline where core sets it: 4 mm and 0.95 of its height under the neat line, 6 mm right of it.
    context.fillText('The Sunder Ground', 22 * a_mm - left, (13 + 4 + 0.95 * 6.6) * a_mm - top);
  });
  let both = 0, either = 0;
  found.forEach((dot, i) => {
    both += dot & wanted[i];
    either += dot | wanted[i];
  });
  return both / either;
}
