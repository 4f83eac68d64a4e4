// Every slip on every device in Chromium: targets large enough and apart, no words cut off, nothing lost at text of 150 %, at
// the browser's zoom of 200 and 400 %, beside a notch; and the instrument in hand never under its own slip.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { press_part, tab_to } from './lib/forms.mjs';
import { mouse_hand, touch_hand, where } from './lib/hands.mjs';
import { views } from './lib/job.mjs';
import { layout_faults } from './lib/layout_check.mjs';
import { done, open, read, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';
import { swing_by_commands } from './lib/swing.mjs';

// What a screen of 1280 by 1024 has at the browser's zoom of 200 and 400 %.
const zoomed = { '200 %': { width: 640, height: 512, scale: 2 }, '400 %': { width: 320, height: 256, scale: 4 } };

/// Each slip, and how it is opened.
const slips = {
  'first run': async () => {},
  'edge put on': (page) => done(page, 'tool', { tool: 'straight-edge' }),
  'edge read': async (page) => {
    const { marks, roses } = await read(page);
    await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
    await done(page, 'slide-edge-to', { rose: roses[0].id });
  },
  'edge set': async (page) => {
    await done(page, 'lift-edge');
    await done(page, 'begin-direction');
    await done(page, 'type-direction', { text: '095' });
  },
  dividers: async (page) => {
    const { marks } = await read(page);
    await done(page, 'lift-edge');
    await done(page, 'tool', { tool: 'dividers' });
    await done(page, 'open-dividers', { from: marks[0].id, to: marks[1].id });
  },
  rose: async (page) => {
    await done(page, 'lift-dividers');
    await done(page, 'tool', { tool: 'rose' });
  },
  swing: swing_by_commands,
  'compass with its log': async (page) => done(page, 'open-slip', { slip: 'compass' }),
  passage: async (page) => {
    await done(page, 'make-passage');
    for (const [field, text] of [['speed', '5'], ['time', '0640'], ['stream/kind', 'steady'], ['stream/set', '352'], ['stream/drift', '0.7']]) await done(page, 'type-passage', { field, text });
    await done(page, 'close-slip');
  },
  'passage-leg': async (page) => done(page, 'open-passage-leg', { leg: 1 }),
  'passage-details': async (page) => done(page, 'open-slip', { slip: 'passage-details' }),
  'next-leg': async (page) => done(page, 'open-slip', { slip: 'next-leg' }),
  'next-leg under way': async (page) => done(page, 'depart'),
  'deck-log': async (page) => done(page, 'open-slip', { slip: 'deck-log' }),
  stream: async (page) => done(page, 'open-slip', { slip: 'stream' }),
  send: async (page) => done(page, 'open-slip', { slip: 'send' }),
  code: async (page) => {
    await done(page, 'show-code');
    await until(page, 'a code', () => document.querySelector('[data-panel=code] svg.qr') !== null);
  },
  link: async (page) => {
    const link = await page.evaluate(() => window.fogsheet.link());
    await done(page, 'set-date', { date: '2026-08-01' });
    await done(page, 'open-link', { text: link });
  },
  mark: async (page) => done(page, 'select-mark', { id: (await read(page)).marks[1].id }),
  leg: async (page) => done(page, 'select-leg', { id: (await read(page)).legs[1].id }),
  ...Object.fromEntries(['more', 'lists', 'new-mark', 'sheet', 'settings', 'legend', 'rough-method', 'drawer', 'history', 'photograph', 'new-sheet'].map((slip) => [slip, (page) => done(page, 'open-slip', { slip })])),
  'drawer of many': async (page) => {
    for (let i = 0; i < 7; i += 1) await done(page, 'new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across', name: `A sheet with a long name for a narrow row ${i}` });
    await done(page, 'open-slip', { slip: 'drawer' });
  },
};

/// Ways of putting the edge on, each from a sheet without one and no tool in hand.
const ways = {
  'two presses': async (page, hand, [from, to]) => {
    await hand.press('tool/straight-edge');
    await hand.press(`mark/#${from}`);
    await hand.press(`mark/#${to}`);
  },
  'a drag': async (page, hand, [from, to]) => {
    await hand.press('tool/straight-edge');
    await hand.drag(`mark/#${from}`, `mark/#${to}`);
  },
  'the leg\'s slip': async (page, hand, [from, to]) => {
    const leg = (await read(page)).legs.find((each) => each.from === from && each.to === to);
    await done(page, 'select-leg', { id: leg.id });
    await press_part(page, hand, 'edge-on-leg');
  },
  'the leg\'s slip, moved to the foot': async (page, hand, [from, to]) => {
    const at = await where(page, `mark/#${from}`);
    await hand.drag({ x: at.x + 60, y: at.y + 90 }, { x: at.x + 60, y: at.y + 90 + 120 });
    await ways['the leg\'s slip'](page, hand, [from, to]);
  },
  'a command': (page, hand, [from, to]) => done(page, 'lay-edge', { from, to }),
};

describe('layouts', with_engine('chromium', 900_000), () => {
  const stage = chromium_on_site();
  const fresh = async (view, text = 100) => {
    const page = await stage.browser.open(view);
    await open(page, stage.site.url);
    if (text !== 100) await done(page, 'set-text-size', { percent: String(text) });
    return page;
  };
  const check_each_slip = async (page, what) => {
    const amiss = [];
    for (const [slip, make] of Object.entries(slips)) {
      await make(page);
      await page.evaluate(() => new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted))));
      for (const fault of await layout_faults(page)) amiss.push(`${slip}: ${fault}`);
    }
    assert.deepEqual(amiss, [], what);
  };

  for (const [device, view] of Object.entries({ ...views, ...zoomed }))
    for (const text of [100, 125, 150])
      test(`${device}, text ${text} %`, async () => {
        const page = await fresh(view, text);
        await check_each_slip(page, `${device}, text ${text} %`);
        await page.close();
      });

  test('beside a notch and above a home bar', async () => {
    for (const [device, inset] of [['phone', { top: 47, bottom: 34 }], ['phone across', { left: 47, right: 47, bottom: 21 }]]) {
      const page = await fresh(views[device]);
      const cdp = await page.raw.context.newCDPSession(page.raw.page);
      await cdp.send('Emulation.setSafeAreaInsetsOverride', { insets: { top: 0, left: 0, right: 0, bottom: 0, ...inset } });
      await check_each_slip(page, `${device} with insets`);
      const outside = await page.evaluate(({ left = 0, right = 0, bottom = 0, top = 0 }) => [...document.querySelectorAll('[data-name]:is(button, input, label)')]
        .map((each) => [each.dataset.name, window.fogsheet.where(each.dataset.name)])
        .filter(([, box]) => box && (box.x < left - 0.5 || box.x + box.width > innerWidth - right + 0.5 || box.y + box.height > innerHeight - bottom + 0.5 || box.y < top - 0.5))
        .map(([name]) => name), inset);
      assert.deepEqual(outside, [], device);
      await page.close();
    }
  });

  for (const [device, view] of Object.entries(views))
    test(`the edge is never under its own slip: ${device}`, async () => {
      const page = await fresh(view);
      const hand = view.touch ? await touch_hand(page) : mouse_hand(page);
      const marks = (await read(page)).marks.slice(0, 2).map(({ id }) => id);
      for (const [way, put_on] of Object.entries(ways)) {
        await put_on(page, hand, marks);
        await until(page, `${way}: the edge is on`, () => window.fogsheet.read().edge?.on.length === 2);
        await until(page, `${way}: the edge in sight`, () => window.fogsheet.where('panel/straight-edge') !== null && window.fogsheet.where('edge/reading') !== null);
        const { roses } = await read(page);
        await done(page, 'slide-edge-to', { rose: roses[0].id });
        await until(page, `${way}: the settled edge in sight`, () => window.fogsheet.where('rose/centre') !== null && window.fogsheet.where('edge/reading') !== null);
        await done(page, 'lift-edge');
        await done(page, 'tool', { tool: 'none' });
        await done(page, 'close-slip');
      }
      await done(page, 'begin-direction');
      await done(page, 'type-direction', { text: '041' });
      await until(page, 'the edge that was set, in sight', () => window.fogsheet.where('edge/reading') !== null);
      await done(page, 'lift-edge');
      await done(page, 'tool', { tool: 'dividers' });
      await done(page, 'open-dividers', { from: marks[0], to: marks[1] });
      await until(page, 'dividers in sight', () => ['leg-a', 'leg-b'].every((part) => window.fogsheet.where(`dividers/${part}`) !== null));
      await page.close();
    });

  // What must be in the slip's own view once the edge has settled, before anything is scrolled.
  const first_view = {
    'tablet across': ['.readings', '[data-name=turn-edge]', '[data-name=chain]', '[data-name="write-ring/magnetic"]', '[data-name=write-on-leg]', '[data-name=begin-direction]', '[data-name=turn-edge-round]', '[data-name=lift-edge]'],
    phone: ['.readings', '[data-name=turn-edge]', '[data-name=chain] .result', '[data-name=write-on-leg]', '[data-name=begin-direction]'],
  };
  for (const [device, parts] of Object.entries(first_view))
    for (const palette of ['day', 'night'])
      test(`what the settled edge reads is seen without a scroll: ${device}, ${palette}`, async () => {
        const page = await fresh(views[device]);
        await done(page, 'set-palette', { palette });
        const { marks, roses } = await read(page);
        await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
        await done(page, 'slide-edge-to', { rose: roses[0].id });
        const hidden = await until(page, 'the reading', (wanted) => {
          const slip = document.querySelector('[data-panel=straight-edge]');
          if (!slip?.querySelector('.readings')) return null;
          const room = slip.querySelector('.body').getBoundingClientRect();
          return { names: wanted.filter((part) => {
            const element = slip.querySelector(part);
            const box = element.getBoundingClientRect();
            const low = element.closest('.acts') ? innerHeight : room.bottom;
            return box.height < 8 || box.top < room.top - 0.5 || box.bottom > low + 0.5 || box.left < 0 || box.right > innerWidth;
          }) };
        }, parts);
        assert.deepEqual(hidden.names, []);
        await page.close();
      });

  test('both readings are whole at each size of text', async () => {
    for (const device of Object.keys(views)) {
      const page = await fresh(views[device]);
      const { marks, roses } = await read(page);
      await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
      await done(page, 'slide-edge-to', { rose: roses[0].id });
      for (const percent of ['100', '125', '150']) {
        await done(page, 'set-text-size', { percent });
        const cut = await until(page, 'the readings', () => {
          const all = [...document.querySelectorAll('[data-panel=straight-edge] .reading > *')];
          const room = document.querySelector('[data-panel=straight-edge] .body')?.getBoundingClientRect();
          return all.length === 6 && { texts: all.filter((each) => each.getBoundingClientRect().right > room.right + 0.5 || each.getBoundingClientRect().left < room.left - 0.5).map((each) => each.textContent) };
        });
        assert.deepEqual(cut.texts, [], `${device}, ${percent} %`);
      }
      await page.close();
    }
  });

  test('at 400 % a slip is read and worked to its end without a scroll across', async () => {
    const page = await fresh(zoomed['400 %']);
    await done(page, 'open-slip', { slip: 'new-mark' });
    for (const name of ['name', 'position', 'note', 'make-new-mark']) {
      await tab_to(page, name);
      assert.ok(await where(page, name), `${name} is in sight when it has the focus`);
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth), 320);
    }
    await page.close();
  });
});
