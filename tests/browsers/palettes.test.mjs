// How the page looks by palette beyond what pictures.test.mjs checks: the dimmer's steps, what the browser draws itself at
// night, forced colours, less motion, and each palette in grey and to eyes that see red and green alike. Pictures to be looked
// at go to build/palettes. Chromium.
import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { with_engine } from './lib/engines.mjs';
import { mouse_hand, place_of } from './lib/hands.mjs';
import { press_part } from './lib/forms.mjs';
import { brightest, circles, colour, distance, picture } from './lib/pictures.mjs';
import { done, open, open_again, read, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const folder = fileURLToPath(new URL('../../build/palettes/', import.meta.url));
const axe_file = fileURLToPath(import.meta.resolve('axe-core/axe.min.js'));
const tablet = { width: 1180, height: 820 };
const palettes = ['day', 'dusk', 'night', 'high-contrast'];
const tables = { day: '#E6E1D6', dusk: '#12171B', night: '#000000', 'high-contrast': '#FFFFFF' };  // the look's table of colours
const night_most = [0xff, 0x6a, 0x52];  // the focus ring's

async function settle_edge(page) {
  const { marks, roses } = await read(page);
  await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
  await done(page, 'slide-edge-to', { rose: roses[0].id });
}

async function wear(page, palette, dim = 0) {
  await done(page, 'set-palette', { palette });
  await done(page, 'set-dimmer', { step: String(dim) });
  const steps = ['', '1', '1 2', '1 2 3'][['dusk', 'night'].includes(palette) ? dim : 0];
  await until(page, `${palette} at step ${dim}`, (name, list) => {
    const { palette: worn, dim: dimmed } = document.documentElement.dataset;
    return worn === name && dimmed === list && !document.getAnimations().length;
  }, palette, steps);
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
}

/// The mean light of a picture: WCAG 2.2's relative luminance.
function light({ data }) {
  const linear = Array.from({ length: 256 }, (_, v) => (v / 255 <= 0.04045 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4));
  let sum = 0;
  for (let i = 0; i < data.length; i += 4) sum += 0.2126 * linear[data[i]] + 0.7152 * linear[data[i + 1]] + 0.0722 * linear[data[i + 2]];
  return sum / (data.length / 4);
}

describe('palettes', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();
  const view = { ...tablet, reducedMotion: 'reduce', serviceWorkers: 'block' };
  before(async () => {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
  });

  const keep = async (page, name) => {
    const png = await page.screenshot();
    writeFileSync(path.join(folder, `${name}.png`), png);
    return picture(png);
  };

  const begin = async (t, more = {}) => {
    const page = await stage.browser.open({ ...view, ...more });
    t.after(page.close);
    await open(page, stage.site.url);
    return page;
  };

  test('each step of the dimmer takes light away, and nothing in its way moves or falls silent', async (t) => {
    const page = await begin(t);
    await settle_edge(page);
    for (const palette of ['dusk', 'night']) {
      const lights = [];
      let first = null;
      for (const step of [0, 1, 2, 3]) {
        await wear(page, palette, step);
        lights.push(light(await keep(page, `dimmer-${palette}-${step}`)));
        const here = { read_aloud: await page.raw.page.locator('#slip').ariaSnapshot(), slip: await page.evaluate(() => JSON.stringify(document.getElementById('slip').getBoundingClientRect())) };
        first ??= here;
        assert.deepEqual(here, first, `${palette}, step ${step}`);
      }
      t.diagnostic(`${palette}: mean light of the whole screen by step: ${lights.map((each) => each.toFixed(4)).join(', ')}`);
      lights.slice(1).forEach((each, i) => assert.ok(each < lights[i], `${palette}: step ${i + 1} gives ${each}, the one before ${lights[i]}`));
    }
  });

  test('the dimmer: a press up, a press down, and it says where it ends', async (t) => {
    const page = await begin(t);
    const hand = mouse_hand(page);
    await wear(page, 'night');
    await done(page, 'open-slip', { slip: 'more' });
    const dim = () => page.evaluate(() => document.documentElement.dataset.dim);
    for (const steps of ['1', '1 2', '1 2 3']) {
      await press_part(page, hand, 'darker');
      await until(page, `step ${steps}`, (list) => document.documentElement.dataset.dim === list, steps);
    }
    await keep(page, 'dimmer-more');
    assert.equal(await page.evaluate(() => document.querySelector('[data-name=darker]').getAttribute('aria-disabled')), 'true');
    assert.match(await page.evaluate(() => document.querySelector('[data-panel=more]').innerText), /device's own brightness/);
    await press_part(page, hand, 'lighter');
    await until(page, 'a step back', () => document.documentElement.dataset.dim === '1 2');
    await open_again(page, stage.site.url);
    await until(page, 'the same step after the page has come again', () => document.documentElement.dataset.dim === '1 2');
    assert.equal(await dim(), '1 2');
  });

  test('axe-core finds no text of panels under 4.5:1 at any step of the dimmer', async (t) => {
    const page = await begin(t);
    await settle_edge(page);
    await page.raw.page.evaluate(readFileSync(axe_file, 'utf8'));
    for (const palette of ['dusk', 'night']) {
      for (const slip of ['straight-edge', 'settings', 'new-mark']) {
        await done(page, 'close-slip');
        await done(page, 'open-slip', { slip });
        for (const step of [0, 1, 2, 3]) {
          await wear(page, palette, step);
          const { amiss, measured } = await page.evaluate(async () => {
            const { violations, passes } = await window.axe.run(document, { runOnly: ['color-contrast'] });
            const nodes = (rules) => rules.flatMap((rule) => rule.nodes.map((node) => node.html));
            return { amiss: nodes(violations), measured: nodes(passes).length };
          });
          assert.ok(measured > 10, `${measured} texts measured`);
          assert.deepEqual(amiss, [], `${palette}, ${slip}, step ${step}`);
        }
      }
    }
  });

  test('at night what the browser draws itself is dark too: selected text, focus, lists that open, scroll bars', async (t) => {
    const page = await begin(t);
    await wear(page, 'night');
    const night = async (name) => {
      const most = brightest(await keep(page, name));
      assert.ok(most.every((value, channel) => value <= night_most[channel]), `${name}: as bright as ${most}`);
    };
    for (const slip of ['settings', 'more', 'sheet', 'new-sheet', 'new-mark', 'lists', 'drawer']) {
      await done(page, 'open-slip', { slip });
      await until(page, slip, (name) => document.querySelector(`[data-panel="${name}"]`), slip);
      const drawn = await page.evaluate((name) => [...document.querySelectorAll(`[data-panel="${name}"] :is(input, textarea, select, option, .body)`)].map((part) => {
        const { colorScheme, scrollbarColor, backgroundColor } = getComputedStyle(part);
        return `${part.localName === 'option' ? backgroundColor : ''} ${colorScheme} ${scrollbarColor}`;
      }), slip);
      for (const each of drawn) assert.match(each, /^(rgb\(11, 0, 0\))? dark rgb\(180, 32, 14\) rgb\(11, 0, 0\)$/);
      await page.evaluate((name) => {
        const field = document.querySelector(`[data-panel="${name}"] :is(input[type=text], textarea)`);
        field?.focus();
        field?.select();
      }, slip);
      await night(`night-${slip}`);
    }
  });

  test('forced colours: panels follow the system, the canvas keeps black on white, and the tool in hand can be told', async (t) => {
    for (const colorScheme of ['light', 'dark']) {
      const page = await begin(t, { forcedColors: 'active', colorScheme });
      await settle_edge(page);
      assert.equal(await page.evaluate(() => document.documentElement.dataset.palette), 'high-contrast');
      const seen = await page.evaluate(() => {
        const system = (name) => {
          const probe = document.createElement('i');
          probe.style.color = name;
          document.body.append(probe);
          const { color } = getComputedStyle(probe);
          probe.remove();
          return color;
        };
        const style = (selector) => getComputedStyle(document.querySelector(selector));
        return {
          slip: [style('#slip').backgroundColor, system('Canvas')],
          words: [style('#slip .heading h2').color, system('CanvasText')],
          in_hand: [style('.well[aria-pressed=true]').backgroundColor, system('Highlight')],
          field: [style('#slip .plain').color, system('ButtonText')],
        };
      });
      for (const [part, [is, should]] of Object.entries(seen)) assert.equal(is, should, `${colorScheme}: ${part}`);
      const free = await place_of(page, "sheet/44°06.0'N 031°27.0'W");
      assert.deepEqual((await keep(page, `forced-${colorScheme}`)).at(free), [255, 255, 255]);
      await done(page, 'open-slip', { slip: 'settings' });
      await until(page, 'the settings', () => document.querySelector('[data-panel=settings]'));
      await keep(page, `forced-${colorScheme}-settings`);
    }
  });

  test('more contrast asked for: high contrast with bold lines', async (t) => {
    const page = await begin(t, { contrast: 'more' });
    await settle_edge(page);
    await keep(page, 'contrast-more');
    await done(page, 'open-slip', { slip: 'settings' });
    assert.equal(await until(page, 'bold lines', () => document.querySelector('[data-name="bold-lines"] :checked')?.value), 'bold');
  });

  test('less motion asked for: no animation anywhere, a slip is there at once; else it takes its 150 ms', async (t) => {
    for (const reducedMotion of ['reduce', 'no-preference']) {
      const page = await begin(t, { reducedMotion });
      const names = await page.evaluate(() => {
        window.fogsheet.command('open-slip', { slip: 'more' });
        window.fogsheet.command('lock-touch');
        document.querySelector('[data-name="unlock-touch"]').dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
        return document.getAnimations().map((each) => each.animationName).toSorted();
      });
      assert.deepEqual(names, reducedMotion === 'reduce' ? [] : ['fill-up', 'lay-down'], reducedMotion);
    }
  });

  test('the colour of the bars about the page follows the palette, from before the program has come', async (t) => {
    const page = await begin(t);
    const theme = () => document.querySelector('meta[name=theme-color]').content;
    for (const palette of palettes) {
      await wear(page, palette);
      assert.equal(await page.evaluate(theme), tables[palette]);
    }
    await wear(page, 'night');
    await page.raw.page.route('**/*.wasm', (route) => route.abort());
    await page.raw.page.reload({ waitUntil: 'commit' });
    assert.equal(await until(page, 'the first script', () => document.documentElement.dataset.palette), 'night');
    assert.equal(await page.evaluate(theme), tables.night);
  });

  test('in grey, and to eyes that see red and green alike: both rings are there to be read in every palette', async (t) => {
    const page = await begin(t);
    const cdp = await page.raw.context.newCDPSession(page.raw.page);
    await settle_edge(page);
    const grey = (text) => { const [r, g, b] = colour(text); const y = 0.2126 * r + 0.7152 * g + 0.0722 * b; return [y, y, y]; };
    const inks = { day: ['#9A1A63', '#FCFAF4'], dusk: ['#E69AC6', '#1E262C'], night: ['#FF3B22', '#0B0000'], 'high-contrast': ['#7A0050', '#FFFFFF'] };
    for (const palette of palettes) {
      await wear(page, palette);
      const centre = await place_of(page, 'rose/centre');
      for (const type of ['achromatopsia', 'protanopia', 'deuteranopia']) {
        await cdp.send('Emulation.setEmulatedVisionDeficiency', { type });
        const shot = await keep(page, `${type}-${palette}`);
        if (type !== 'achromatopsia') continue;
        const [ink, paper] = inks[palette].map(grey);
        assert.ok(distance(shot.at({ x: 4, y: 4 }), shot.at({ x: 4, y: 4 }).map((_, i, all) => all[0])) < 2, 'the picture is grey');
        const rings = circles(shot, centre, { ink, paper, from_px: 30, to_px: 260 });
        assert.equal(rings.length, 2, `${palette}: two rings, found ${rings}`);
      }
      await cdp.send('Emulation.setEmulatedVisionDeficiency', { type: 'none' });
    }
  });

  test('our signs are of one hand: each within its square, in few weights', async (t) => {
    for (const palette of ['day', 'night']) {
      for (const scale of [1, 2, 3]) {
        const page = await begin(t, { scale, width: 700, height: 420 });
        await wear(page, palette);
        const boxes = await page.evaluate(async () => {
          const source = document.querySelector('script[type=module]').src.replace('boot.js', 'icons.js');
          const { icon, icon_names } = await import(source);
          const sheet = document.createElement('div');
          sheet.className = 'contact-sheet';
          Object.assign(sheet.style, { position: 'fixed', inset: '0', zIndex: '9', background: 'var(--table)', display: 'grid', gridTemplateColumns: 'repeat(auto-fill, 90px)', gap: '10px', padding: '16px', alignContent: 'start', font: '12px B612', color: 'var(--ink)', textAlign: 'center' });
          const boxes = icon_names.map((name) => {
            const cell = document.createElement('div');
            cell.append(icon(name), document.createElement('br'), name);
            sheet.append(cell);
            return { name, cell };
          });
          document.body.append(sheet);
          return boxes.map(({ name, cell }) => {
            const parts = [...cell.querySelectorAll('svg > *')];
            const all = parts.map((part) => { const b = part.getBBox(); const s = Number(part.getAttribute('stroke-width') ?? 0) / 2; return [b.x - s, b.y - s, b.x + b.width + s, b.y + b.height + s]; });
            return { name, left: Math.min(...all.map((b) => b[0])), top: Math.min(...all.map((b) => b[1])), right: Math.max(...all.map((b) => b[2])), bottom: Math.max(...all.map((b) => b[3])),
              weights: parts.map((part) => Number(part.getAttribute('stroke-width'))).filter(Boolean) };
          });
        });
        await keep(page, `signs-${palette}-${scale}x`);
        for (const box of boxes) {
          for (const side of ['left', 'top', 'right', 'bottom']) assert.ok(Math.abs(box[side]) <= 12, `${box.name} reaches ${side} to ${box[side]}`);
          for (const weight of box.weights) assert.ok(weight >= 1.2 && weight <= 2.2, `${box.name}: a stroke of ${weight}`);
        }
      }
    }
  });
});
