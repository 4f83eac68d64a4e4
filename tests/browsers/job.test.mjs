// The job with real presses and touches in Chromium, at every size: by mouse and by finger, after a reload with the server
// gone, and from a link in another profile.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { mouse_hand, place_of, touch_hand, where } from './lib/hands.mjs';
import { check_uncovered, do_the_job, middle_leg, views } from './lib/job.mjs';
import { done, kept_offline, link, note_violations, open, read, ready, sheet_of, watch } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';
import { chromium_on_site } from './lib/stage.mjs';

describe('the job', with_engine('chromium', 240_000), () => {
  const stage = chromium_on_site();

  for (const [name, view] of Object.entries(views)) {
    const fingers = Boolean(view.touch);
    test(`${name}, by ${fingers ? 'finger' : 'mouse'}; again with the server gone; the link gives the same`, async (t) => {
      const own_site = await open_site();
      t.after(own_site.close);
      const page = await stage.browser.open({ ...view, prepare: note_violations });
      const watched = watch(page, own_site.origin);
      await open(page, own_site.url);
      const hand = fingers ? await touch_hand(page) : mouse_hand(page);

      const { marks } = await read(page);
      const middle = { lat: (marks[0].lat_deg + marks[1].lat_deg) / 2, lon: (marks[0].lon_deg + marks[1].lon_deg) / 2 };
      const leg = await middle_leg(page);
      await check_uncovered(page, ...leg, 'rose/centre', sheet_name(middle));
      const fresh = await read(page);
      await hand.press('tool/straight-edge');
      await check_uncovered(page, ...leg, 'rose/centre');
      await done(page, 'lay-edge', { from: marks[0].id, to: marks[1].id });
      await check_uncovered(page, 'edge/reading', 'rose/centre');
      await hand.press('lift-edge');

      const settled = await do_the_job(page, hand);
      assert.deepEqual(sheet_of(settled), sheet_of(fresh), 'the edge is no part of the sheet');
      assert.deepEqual(settled.history, fresh.history, 'nor of its past');

      const text = await link(page);
      await watched.check();
      await kept_offline(page);
      await own_site.close();
      await page.reload();
      await ready(page);
      await do_the_job(page, hand);
      await page.close();

      const other = await stage.browser.open(view);
      await open(other, stage.site.url + text.slice(text.indexOf('#')));
      assert.deepEqual(sheet_of(await read(other)), sheet_of(fresh));
      await other.close();
    });
  }

  test('a link carries what was put on the sheet', async () => {
    const page = await stage.browser.open({});
    await open(page, stage.site.url);
    const id = await done(page, 'add-mark', { name: 'Gull Rock <b>&amp;</b> ⛵', lat_deg: 44.13, lon_deg: -31.3, kind: 'danger', radius_nm: 0.4 });
    await done(page, 'move-mark', { id, lat_deg: 44.131, lon_deg: -31.302 });
    await done(page, 'set-printed-variation', { value_deg: -8.5, year: 2024, annual_change_min: 9 });
    const sent = await read(page);
    const text = await link(page);
    await page.close();
    const other = await stage.browser.open({});
    await open(other, text);
    assert.deepEqual(sheet_of(await read(other)), sheet_of(sent));
    assert.ok(await where(other, 'mark/Gull Rock <b>&amp;</b> ⛵'));
    await other.close();
  });

  test('the sheet stands still under two fingers but for the view', async () => {
    const page = await stage.browser.open({ ...views['tablet upright'] });
    await open(page, stage.site.url);
    const hand = await touch_hand(page);
    const [a, b] = ['mark/Off Sarn', 'mark/Off Gannet'];
    const before_pan = await where(page, 'rose/centre');
    const at = await place_of(page, 'rose/centre');
    const apart = (half, shift = 0) => [{ x: at.x - half, y: at.y + shift }, { x: at.x + half, y: at.y + shift }];

    await hand.pinch(...apart(80), ...apart(80, -60));
    const panned = await where(page, 'rose/centre');
    assert.ok(Math.abs(panned.y - before_pan.y + 60) < 2 && Math.abs(panned.x - before_pan.x) < 2, 'two fingers carry the sheet along');

    const spread = async () => (await place_of(page, b)).x - (await place_of(page, a)).x;
    const before_zoom = await spread();
    await hand.pinch(...apart(80), ...apart(120));
    assert.ok(Math.abs((await spread()) / before_zoom - 1.5) < 0.03, 'and zoom it as they part');
    assert.equal((await read(page)).history.undo_label, null);
    await page.close();
  });

  test('a second finger throws a drag away', async () => {
    const page = await stage.browser.open({ ...views['tablet upright'] });
    await open(page, stage.site.url);
    const hand = await touch_hand(page);
    await do_the_job(page, hand);
    const settled = await read(page);
    const from = await place_of(page, 'edge/reading');
    const drag = await hand.hold(from, { x: from.x + 30, y: from.y + 90 });
    assert.notDeepEqual((await read(page)).edge, settled.edge, 'while one finger is down the edge follows it');
    await drag.second_finger({ x: from.x + 200, y: from.y - 60 });
    await drag.let_go();
    assert.deepEqual((await read(page)).edge, settled.edge);
    await page.close();
  });

  test('a finger that leaves the glass within a hair of where it came down is a press, not a drag', async () => {
    const page = await stage.browser.open({ ...views.phone });
    await open(page, stage.site.url);
    const hand = await touch_hand(page);
    await hand.press('tool/straight-edge');
    const start = await place_of(page, 'mark/Off Sarn');
    await hand.drag(start, { x: start.x + 6, y: start.y + 4 });  // under 8 px
    assert.equal((await read(page)).edge, null);
    await hand.press('mark/Off Gannet');
    assert.equal((await read(page)).edge.on.length, 2);
    await page.close();
  });
});

/// A place as `where` takes it: degrees and minutes to a hundredth.
function sheet_name({ lat, lon }) {
  const part = (deg, width, letters) => {
    const hundredths = Math.round(Math.abs(deg) * 6000);
    const minutes = (hundredths % 6000) / 100;
    return `${String(Math.floor(hundredths / 6000)).padStart(width, '0')}°${minutes.toFixed(2).padStart(5, '0')}'${deg < 0 ? letters[1] : letters[0]}`;
  };
  return `sheet/${part(lat, 2, 'NS')} ${part(lon, 3, 'EW')}`;
}
