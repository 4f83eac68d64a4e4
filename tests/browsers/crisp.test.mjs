// Letters on the sheet are crisp at every zoom and pixel ratio: from paper to ink within two pixels of the device, whether
// our typeface draws them or the browser's. Chromium.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { place_of } from './lib/hands.mjs';
import { colour, distance, resting_picture } from './lib/pictures.mjs';
import { done, open, read } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const look = { paper: colour('#FCFAF4'), ink: colour('#13202A') };
const words = { 'our typeface': 'HHHHHH', "the browser's": 'НННННН' };  // Latin, Cyrillic: upright stems both
const most_px = 2;  // of the device

describe('letters on the sheet', with_engine('chromium', 200_000), () => {
  const stage = chromium_on_site();

  for (const scale of [1, 2, 3]) {
    test(`at ${scale} pixels of the device for one of the page`, async (t) => {
      const page = await stage.browser.open({ width: 900, height: 700, scale, serviceWorkers: 'block' });
      t.after(page.close);
      await open(page, stage.site.url);
      const middle = { lat_deg: 44.15, lon_deg: -31.3 };
      await done(page, 'new-sheet', { mid_lat_deg: middle.lat_deg, mid_lon_deg: middle.lon_deg, scale: 100000, paper: 'A4-across', name: 'Crisp' });
      for (const { id } of (await read(page)).roses) await done(page, 'remove-rose', { id });
      const at = Object.values(words).map((text, i) => ({ text, lat_deg: middle.lat_deg + (0.2 - 0.35 * i) / 60, lon_deg: middle.lon_deg + 0.1 / 60 }));
      for (const each of at) await done(page, 'add-note', each);
      await done(page, 'finish-note');
      await done(page, 'tool', { tool: 'none' });
      await done(page, 'close-slip');
      await done(page, 'fit');
      await done(page, 'closer');
      for (let zoom = 0; zoom < 4; zoom += 1) {
        const shot = await resting_picture(page, scale);
        for (const [i, [whose, text]] of Object.entries(words).entries()) {
          const start = await place_of(page, place_name(at[i]));
          const stems = stems_at(shot, start, text.length);
          const softest = Math.max(...stems.map(({ touched_px, ink_px }) => (touched_px - ink_px) / 2));
          t.diagnostic(`zoom ${zoom}, ${whose}: ${stems.length} stems of ${(stems[0]?.ink_px ?? 0).toFixed(2)} px of the device, an edge spread over ${(2 * softest).toFixed(2)} at most`);
          assert.equal(stems.length, 2 * text.length, `zoom ${zoom}, ${whose}: two stems a letter`);
          assert.ok(2 * softest <= most_px, `zoom ${zoom}, ${whose}: an edge over ${2 * softest} px`);
        }
        await done(page, 'closer');
      }
    });
  }
});

const minutes = (deg) => `${String(Math.floor(Math.abs(deg))).padStart(2, '0')}°${(Math.abs(deg) % 1 * 60).toFixed(3)}'`;
const place_name = ({ lat_deg, lon_deg }) => `sheet/${minutes(lat_deg)}N 0${minutes(lon_deg)}W`;

/// The stems that the row of pixels a little above the baseline crosses: how many pixels each touches, and how many it would
/// fill. An edge that goes evenly from paper to ink over n pixels touches n / 2 more than it fills.
function stems_at(shot, start, letters) {
  const whole = distance(look.ink, look.paper);
  const y = (Math.floor((start.y - 2) * shot.scale) + 0.5) / shot.scale;
  const stems = [];
  let stem = null;
  for (let x = start.x - 3; x < start.x + letters * 20; x += 1 / shot.scale) {
    const share = Math.min(1, distance(shot.at({ x, y }), look.paper) / whole);
    if (share > 0.04) {
      if (!stem) stems.push(stem = { touched_px: 0, ink_px: 0 });
      stem.touched_px += 1;
      stem.ink_px += share;
    } else {
      stem = null;
    }
  }
  return stems;
}
