// axe-core finds nothing amiss in any state: each slip, the outline shut and open, entries that were refused, what is lost or
// locked, in each palette and on each size of device. Chromium goes through all of it, Firefox and WebKit through the main ones.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import { bring_axe, faults_of } from './lib/axe.mjs';
import { engines, open_chromium, with_engine } from './lib/engines.mjs';
import { views } from './lib/job.mjs';
import { command, done, open, read, until } from './lib/sheet.mjs';
import { chromium_on_site, page_on_site } from './lib/stage.mjs';
import { swing_by_commands } from './lib/swing.mjs';

const palettes = ['day', 'dusk', 'night', 'high-contrast'];

/// Every slip, and what has to be done for it to open. The list of names is checked against the application's own.
const slips = {
  'first-run': (page) => open_slip(page, 'first-run'),
  more: (page) => open_slip(page, 'more'),
  lists: (page) => open_slip(page, 'lists'),
  'new-sheet': (page) => open_slip(page, 'new-sheet'),
  'new-mark': (page) => open_slip(page, 'new-mark'),
  sheet: (page) => open_slip(page, 'sheet'),
  settings: (page) => open_slip(page, 'settings'),
  legend: (page) => open_slip(page, 'legend'),
  'rough-method': (page) => open_slip(page, 'rough-method'),
  drawer: (page) => open_slip(page, 'drawer'),
  history: (page) => open_slip(page, 'history'),
  keys: (page) => open_slip(page, 'keys'),
  photograph: (page) => open_slip(page, 'photograph'),
  rose: (page) => open_slip(page, 'rose'),
  mark: async (page) => done(page, 'select-mark', { id: (await read(page)).marks[0].id }),
  leg: async (page) => done(page, 'select-leg', { id: (await read(page)).legs[0].id }),
  note: async (page) => done(page, 'select-note', { id: await done(page, 'add-note', { lat_deg: 44.15, lon_deg: -31.3, text: 'Shoals to the north' }) }),
  dividers: async (page) => {
    const { marks } = await read(page);
    await done(page, 'open-dividers', { from: marks[0].id, to: marks[1].id });
  },
  send: (page) => open_slip(page, 'send'),
  code: async (page) => {
    await done(page, 'show-code');
    await until(page, 'a code', () => document.querySelector('[data-panel=code] svg.qr') !== null);
  },
  link: open_link_over_own,
  compass: (page) => open_slip(page, 'compass'),
  stream: (page) => open_slip(page, 'stream'),
  passage: async (page) => {
    await plan_passage(page);
    await open_slip(page, 'passage');
  },
  'passage-details': async (page) => {
    await plan_passage(page);
    await done(page, 'type-passage', { field: 'stream/kind', text: 'hours' });
    await open_slip(page, 'passage-details');
  },
  'passage-leg': async (page) => {
    await plan_passage(page);
    await done(page, 'open-passage-leg', { leg: 1 });
  },
  'next-leg': async (page) => {
    await plan_passage(page);
    await done(page, 'depart');
    await open_slip(page, 'next-leg');
  },
  'deck-log': async (page) => {
    await plan_passage(page);
    await open_slip(page, 'deck-log');
  },
  'own-position': async (page) => {
    await open_slip(page, 'own-position');
    await done(page, 'ask-own-position');
  },
  print: (page) => open_slip(page, 'print'),
  file: drop_file,
  'log-entry': swing_by_commands,
  'straight-edge': async (page) => {
    const { marks, roses } = await read(page);
    await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
    await done(page, 'slide-edge-to', { rose: roses[0].id });
  },
};

/// States that are no slip of their own.
const states = {
  'a direction set on the edge': (page) => done(page, 'turn-edge', { bearing_deg: 60, reference: 'true' }),
  'the outline open': async (page) => {
    await slips['straight-edge'](page);
    await done(page, 'outline');
  },
  'entries refused': async (page) => {
    const { marks } = await read(page);
    await done(page, 'select-mark', { id: marks[0].id });
    await command(page, 'type-mark', { id: marks[0].id, field: 'position', text: '44°72.4\'N 031°20\'W' });
    await until(page, 'the reason', () => document.querySelector('[aria-invalid=true]') !== null);
  },
  'a check': async (page) => {
    await done(page, 'new-boat', { name: 'Pipit' });
    await done(page, 'begin-entry', { kind: 'check' });
    await done(page, 'bearings-from-mark', { text: (await read(page)).marks[0].id });
    await command(page, 'type-entry', { field: 'row/0/read', text: '400' });
  },
  'a compass with its log': async (page) => {
    await swing_by_commands(page);
    await done(page, 'use-card');
    await done(page, 'close-slip');  // which leads back to the log
    await until(page, 'the log', () => document.querySelector('[data-panel="compass"]') !== null);
  },
  'a command refused': (page) => command(page, 'set-date', { date: '2026-02-30' }),
  'weak field': async (page) => {
    await done(page, 'new-sheet', { mid_lat_deg: 74.5, mid_lon_deg: -100, scale: 100000, paper: 'A4-across' });
    await open_slip(page, 'more');
  },
  'empty lists': async (page) => {
    await done(page, 'new-sheet', { mid_lat_deg: 10, mid_lon_deg: 10, scale: 100000, paper: 'A4-across' });
    await open_slip(page, 'lists');
  },
  'a drawer of many sheets': async (page) => {
    for (let i = 0; i < 7; i += 1) await done(page, 'new-sheet', { mid_lat_deg: 10, mid_lon_deg: 10, scale: 100000, paper: 'A4-across', name: `Sheet ${i}` });
    await open_slip(page, 'drawer');
    await until(page, 'the search', () => document.querySelector('[data-name=search]') !== null);
  },
  'touch locked': (page) => done(page, 'lock-touch'),
  'larger text': async (page) => {
    await done(page, 'set-text-size', { percent: '150' });
    await open_slip(page, 'settings');
  },
};

async function plan_passage(page) {
  if ((await read(page)).passage.id === undefined) await done(page, 'make-passage');
  for (const [field, text] of [['speed', '5'], ['time', '0640'], ['stream/kind', 'steady'], ['stream/set', '352'], ['stream/drift', '0.7']]) await done(page, 'type-passage', { field, text });
}

/// A file with one mark on the sheet, one off it, and one that can't be used.
async function drop_file(page) {
  await page.evaluate(() => {
    const points = [['44.1', 'Stack'], ['10', 'Far'], ['x', 'Nowhere']].map(([lat, name]) => `<wpt lat="${lat}" lon="-31.3"><name>${name}</name></wpt>`);
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([`<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="test">${points.join('')}</gpx>`], 'marks.gpx'));
    document.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
  });
  await until(page, 'what the file holds', () => document.querySelector('[data-panel=file]')?.innerText.includes('Nowhere'));
}

/// Opens it whatever is open.
/// A link that comes while a sheet of one's own is in hand: the slip that asks.
async function open_link_over_own(page) {
  const link = await page.evaluate(() => window.fogsheet.link());
  await done(page, 'set-date', { date: '2026-08-01' });
  await done(page, 'open-link', { text: link });
  await until(page, 'the question', () => document.querySelector('[data-panel=link]') !== null);
}

async function open_slip(page, slip) {
  if (slip !== 'none') await done(page, 'close-slip');
  const is_open = await page.evaluate((name) => document.querySelector(`[data-panel="${name}"]`) !== null, slip);
  if (!is_open) await done(page, 'open-slip', { slip });  // some slips lead back to another when they are shut
  await until(page, slip, (name) => document.querySelector(`[data-panel="${name}"]`) !== null, slip);
}

async function check(page, state, faults) {
  await page.evaluate(() => Promise.all(document.getAnimations().map((each) => each.finished.catch(() => {}))));
  for (const fault of await faults_of(page)) faults.push(`${state}: ${fault}`);
}

describe('axe', with_engine('chromium', 1_500_000), () => {
  const stage = chromium_on_site();

  for (const [name, view] of Object.entries(views)) {
    test(`nothing amiss, ${name}`, async () => {
      const page = await stage.browser.open({ ...view, scale: 1 });  // a device's finer pixels are nothing to axe, and take long to draw
      const faults = [];
      await open(page, stage.site.url);
      await bring_axe(page);
      await check(page, 'at the start', faults);
      for (const [slip, reach] of Object.entries(slips)) {
        await reach(page);
        await check(page, slip, faults);
      }
      for (const [state, reach] of Object.entries(states)) {
        await open(page, stage.site.url);
        await bring_axe(page);
        await reach(page);
        await check(page, state, faults);
      }
      assert.deepEqual(faults, []);
      await page.close();
    });
  }

  for (const palette of palettes) {
    test(`nothing amiss, ${palette}`, async () => {
      const page = await stage.browser.open(views.desktop);
      await open(page, stage.site.url);
      await bring_axe(page);
      await done(page, 'set-palette', { palette });
      const faults = [];
      for (const [slip, reach] of Object.entries(slips)) {
        await reach(page);
        await check(page, slip, faults);
      }
      await done(page, 'outline');
      await check(page, 'the outline', faults);
      assert.deepEqual(faults, []);
      await page.close();
    });
  }

  test('every slip that can be opened is among those looked at', async () => {
    const page = await stage.browser.open(views.desktop);
    await open(page, stage.site.url);
    const unit = (await page.evaluate(() => window.fogsheet.commands())).find(({ name }) => name === 'open-slip').arguments[0].unit;
    const named = unit.split(', ').filter((slip) => slip !== 'none');
    assert.deepEqual(named.filter((slip) => !slips[slip]), []);
    await page.close();
  });

  test('nothing amiss where the sheet can\'t be drawn', async () => {
    const bare = await open_chromium({ flags: ['--disable-3d-apis'] });
    try {
      const page = await bare.open(views.desktop);
      await open(page, stage.site.url);
      await bring_axe(page);
      const faults = [];
      await check(page, 'no WebGL2', faults);
      assert.deepEqual(faults, []);
    } finally {
      await bare.close();
    }
  });
});

for (const engine of engines.filter((each) => each !== 'chromium')) {
  test(`${engine}: nothing amiss in the main states`, with_engine(engine, 240_000), async (t) => {
    const { page, site } = await page_on_site(t, engine, { width: 1180, height: 820 });
    await open(page, site.url);
    await bring_axe(page);
    const faults = [];
    await check(page, 'at the start', faults);
    for (const slip of ['more', 'lists', 'mark', 'straight-edge']) {
      await slips[slip](page);
      await check(page, slip, faults);
    }
    await done(page, 'outline');
    await check(page, 'the outline', faults);
    assert.deepEqual(faults, []);
  });
}
