// What goes to paper: a page panel is all that prints, on one sheet of A4 or Letter, in black, as text that can be selected, in
// every palette and at every size of text; on the screen it is not there. Measured in the PDF that the browser makes (poppler).
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { bring_axe, faults_of } from './lib/axe.mjs';
import { with_engine } from './lib/engines.mjs';
import { picture } from './lib/pictures.mjs';
import { done, open } from './lib/sheet.mjs';
import { chromium_on_site, page_on_site } from './lib/stage.mjs';

const program = fileURLToPath(new URL('../../build/wasm/tests/printed_card.js', import.meta.url));
const samples = ['swung', 'typed', 'steep', 'part'];
const card = (name) => JSON.parse(execFileSync(process.execPath, [program, name], { encoding: 'utf8' }));
const papers = { A4: [595, 842], Letter: [612, 792] };  // points of 1/72 inch: ISO 216, ANSI/ASME Y14.1

/// The application shows that panel among its own from now on.
const show = (page, panel) => page.evaluate(async (value) => {
  const at = [...document.querySelectorAll('link[rel=modulepreload]')].map(({ href }) => href).find((href) => href.endsWith('/program.js'));
  const { Program } = await import(at);
  const own = Program.prototype.panels;
  Program.prototype.panels = function panels() { return [...own.call(this), value]; };
  window.fogsheet.command('open-slip', { slip: 'more' });  // panels are painted anew
  return document.querySelector('#page section') !== null;
}, panel);

let folder;
before(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'fogsheet-print-')); });
after(() => rmSync(folder, { recursive: true, force: true }));

/// What a PDF is: its pages, their size in points, its text, and a picture of the first at 100 dots an inch.
function look_into(bytes, name) {
  const file = path.join(folder, `${name}.pdf`);
  writeFileSync(file, bytes);
  const info = execFileSync('pdfinfo', [file], { encoding: 'utf8' });
  const text = execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' });
  const png = execFileSync('pdftoppm', ['-png', '-r', '100', '-f', '1', '-l', '1', file], { maxBuffer: 1 << 26 });
  if (process.env.FOGSHEET_PICTURES) {
    mkdirSync(process.env.FOGSHEET_PICTURES, { recursive: true });
    writeFileSync(path.join(process.env.FOGSHEET_PICTURES, `${name}.png`), png);
  }
  const [, width, height] = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info);
  return { pages: Number(/Pages:\s+(\d+)/.exec(info)[1]), size: [Number(width), Number(height)], text, shot: picture(png, 100 / 72) };
}

/// How far the ink reaches from each edge, in points, and whether any of it has a colour.
function ink_of(shot) {
  const reach = { left: shot.width, top: shot.height, right: 0, bottom: 0 };
  let coloured = 0;
  for (let y = 0; y < shot.height; y += 1) {
    for (let x = 0; x < shot.width; x += 1) {
      const i = (y * shot.width + x) * 4;
      const [red, green, blue] = shot.data.subarray(i, i + 3);
      if (Math.max(red, green, blue) - Math.min(red, green, blue) > 12) coloured += 1;
      if (red > 200) continue;
      reach.left = Math.min(reach.left, x);
      reach.right = Math.max(reach.right, x);
      reach.top = Math.min(reach.top, y);
      reach.bottom = Math.max(reach.bottom, y);
    }
  }
  const points = (px) => px / shot.scale;
  return { coloured, left: points(reach.left), top: points(reach.top), right: points(shot.width - 1 - reach.right), bottom: points(shot.height - 1 - reach.bottom) };
}

/// Every line, cell and heading of a panel is in the text, wherever its lines break.
function check_text(text, panel) {
  const plain = (words) => words.replace(/\s+/g, '');
  const printed = plain(text);
  for (const item of panel.items) {
    const wanted = { heading: [item.text, item.beside], line: [item.text, item.value], table: [item.caption, ...(item.rows ?? []).flat()] }[item.kind] ?? [];
    for (const words of wanted) assert.ok(printed.includes(plain(words)), words);
  }
}

describe('printing', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();
  const opened = async (panel, view = {}) => {
    const page = await stage.browser.open({ width: 1180, height: 820, ...view });
    await open(page, stage.site.url);
    assert.ok(await show(page, panel));
    return page;
  };
  const printed = async (page, format, name) => look_into(await page.raw.page.pdf({ format, preferCSSPageSize: false }), name);

  for (const sample of samples) {
    test(`a card (${sample}) is one page, as text and in black, on either paper`, async () => {
      const panel = card(sample);
      const page = await opened(panel);
      for (const [format, size] of Object.entries(papers)) {
        const { pages, size: found, text, shot } = await printed(page, format, `card-${sample}-${format}`);
        assert.equal(pages, 1, format);
        found.forEach((side, i) => assert.ok(Math.abs(side - size[i]) < 1.5, `${format}: ${found}`));
        check_text(text, panel);
        assert.ok(!text.includes('Straight-edge'), 'the tray is not printed');
        const { coloured, ...margins } = ink_of(shot);
        assert.equal(coloured, 0);
        for (const [side, points] of Object.entries(margins)) assert.ok(points > 28, `${format}: ${side} ${points}`);  // printers leave up to 10 mm
      }
      await page.close();
    });
  }

  test('the screen\'s palette, dimmer and size of text, and forced colours, change nothing on paper', async () => {
    const panel = card('swung');
    const page = await opened(panel);
    const usual = await printed(page, 'A4', 'usual');
    const same = async (what) => {
      const other = await printed(page, 'A4', 'other');
      assert.equal(other.pages, 1, what);
      assert.equal(other.text, usual.text, what);
      assert.deepEqual(ink_of(other.shot), ink_of(usual.shot), what);
    };
    for (const palette of ['dusk', 'high-contrast', 'night']) {
      await done(page, 'set-palette', { palette });
      await same(palette);
    }
    await done(page, 'set-dimmer', { step: '3' });
    await done(page, 'set-text-size', { percent: '150' });
    await same('dimmed, larger text');
    await page.raw.page.emulateMedia({ forcedColors: 'active' });
    await same('forced colours');
    await page.close();
  });

  test('on the screen it is not there, for eyes, keys or axe', async () => {
    const page = await stage.browser.open({ width: 1180, height: 820 });
    await open(page, stage.site.url);
    assert.ok(await show(page, card('swung')));
    assert.doesNotMatch(await page.evaluate(() => document.body.innerText), /Deviation card|045|To steer/);
    assert.deepEqual(await page.evaluate(() => { const { width, height } = document.getElementById('page').getBoundingClientRect(); return [width, height]; }), [0, 0]);
    assert.equal(await page.evaluate(() => document.documentElement.scrollHeight), 820);
    await bring_axe(page);
    assert.deepEqual(await faults_of(page), []);
    await page.close();
  });

  test('without a page the rest prints as it did', async () => {
    const page = await stage.browser.open({ width: 1180, height: 820 });
    await open(page, stage.site.url);
    await done(page, 'open-slip', { slip: 'more' });
    const { text } = await printed(page, 'A4', 'none');
    assert.ok(text.includes('Straight-edge'));
    await page.close();
  });
});

test('firefox lays the same page out for paper', with_engine('firefox', 120_000), async (t) => {
  const { page, site } = await page_on_site(t, 'firefox', { width: 1180, height: 820 });
  await open(page, site.url);
  const panel = card('swung');
  assert.ok(await show(page, panel));
  for (const format of Object.keys(papers)) {
    const { pages, text, shot } = look_into(await page.raw.page.pdf({ format, margin: { top: '12mm', bottom: '12mm', left: '12mm', right: '12mm' } }), `firefox-${format}`);
    assert.equal(pages, 1, format);
    check_text(text, panel);
    assert.equal(ink_of(shot).coloured, 0);
  }
});
