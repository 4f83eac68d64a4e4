// A passage on its sheet, as it is drawn in Chromium: the triangle of the middle leg where the law of sines puts it (plane
// trigonometry), positions along all legs, by day and by night, on a tablet, a desktop and a phone. Pictures for eyes are
// written to build/plotted/.
import assert from 'node:assert/strict';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { before, describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { PNG } from 'pngjs';

import { with_engine } from './lib/engines.mjs';
import { rhumb } from './lib/geodesy_check.mjs';
import { place_of } from './lib/hands.mjs';
import { views } from './lib/job.mjs';
import { distance, resting_picture } from './lib/pictures.mjs';
import { done, open, read } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const folder = fileURLToPath(new URL('../../build/plotted/', import.meta.url));
const radians = Math.PI / 180;
const stream = { set_deg: 352, drift_kn: 0.7 };
const speed_kn = 5;

async function plan(page) {
  await done(page, 'make-passage');
  const entries = { speed: '5', time: '0640', zone: 'UTC+1', 'stream/kind': 'steady', 'stream/set': `${stream.set_deg}`, 'stream/drift': `${stream.drift_kn}` };
  for (const [field, text] of Object.entries(entries)) await done(page, 'type-passage', { field, text });
}

/// Half an hour on the screen: where the stream ends, and where the run through the water from there meets the leg.
async function half_an_hour(page) {
  const { marks } = await read(page);
  const start = await place_of(page, `mark/#${marks[0].id}`);
  const end = await place_of(page, `mark/#${marks[1].id}`);
  const leg = rhumb(marks[0], marks[1]);
  const px_per_nm = Math.hypot(end.x - start.x, end.y - start.y) / leg.distance_nm;
  const off = (stream.set_deg - leg.course_deg) * radians;
  const over_ground_kn = Math.sqrt(speed_kn ** 2 - (stream.drift_kn * Math.sin(off)) ** 2) + stream.drift_kn * Math.cos(off);
  const part = over_ground_kn / 2 / leg.distance_nm;
  const out_px = stream.drift_kn / 2 * px_per_nm;
  return {
    stream_end: { x: start.x + out_px * Math.sin(stream.set_deg * radians), y: start.y - out_px * Math.cos(stream.set_deg * radians) },
    meets: { x: start.x + part * (end.x - start.x), y: start.y + part * (end.y - start.y) },
  };
}

/// Where along a line another colour than before is, of that many places.
function drawn_along(was, is, from, to, places = 40) {
  const drawn = Array.from({ length: places }, (_, i) => {
    const part = (i + 0.5) / places;
    return [-1, 0, 1].some((aside) => {
      const at = { x: from.x + part * (to.x - from.x), y: from.y + part * (to.y - from.y) + aside };
      return distance(was.at(at), is.at(at)) > 60;
    });
  });
  return drawn.filter(Boolean).length / places;
}

describe('a plotted passage', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();
  before(() => {
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
  });

  for (const [device, palette] of [['tablet across', 'day'], ['tablet upright', 'night'], ['desktop', 'night'], ['desktop', 'day'], ['phone', 'day']])
    test(`on a ${device}, ${palette}`, async (t) => {
      const view = views[device];
      const page = await stage.browser.open({ ...view, reducedMotion: 'reduce', serviceWorkers: 'block' });
      t.after(page.close);
      await open(page, stage.site.url);
      await done(page, 'set-palette', { palette });
      await plan(page);
      const keep = (shot, what) => writeFileSync(path.join(folder, `${device}-${palette}-${what}.png`.replaceAll(' ', '-')), PNG.sync.write(shot));
      await done(page, 'close-slip');
      const bare = await resting_picture(page, view.scale);
      await done(page, 'type-passage', { field: 'leg/1/triangle', text: 'yes' });
      await done(page, 'close-slip');
      const with_triangle = await resting_picture(page, view.scale);
      keep(with_triangle, 'triangle');
      const { stream_end, meets } = await half_an_hour(page);
      assert.ok(drawn_along(bare, with_triangle, stream_end, meets) > 0.8, 'the water track is drawn from the stream to the leg');
      const beside = (at, px) => ({ x: at.x, y: at.y - px });
      assert.ok(drawn_along(bare, with_triangle, beside(stream_end, 30), beside(meets, 30)) < 0.5, 'and nowhere else');
      await done(page, 'type-passage', { field: 'plot-every', text: '20' });
      await done(page, 'close-slip');
      const with_positions = await resting_picture(page, view.scale);
      keep(with_positions, 'positions');
      await done(page, 'describe-sheet', { signs: 'b' });
      keep(await resting_picture(page, view.scale), 'american');
      await done(page, 'open-passage-leg', { leg: 1 });
      keep(await resting_picture(page, view.scale), 'leg');
    });
});
