// What the hand meets on glass: the loupe, the wheel under the thumb, holds, nothing that zooms, scrolls or selects by
// accident, and frames drawn when they show something and never else (Chromium, real touches).
import assert from 'node:assert/strict';
import { after, before, describe, test } from 'node:test';
import { setTimeout as sleep } from 'node:timers/promises';

import { turn_deg } from './lib/geodesy_check.mjs';
import { open_chromium, with_engine } from './lib/engines.mjs';
import { place_of, touch_hand, where } from './lib/hands.mjs';
import { do_the_job, lay_edge, views } from './lib/job.mjs';
import { colour, distance, picture } from './lib/pictures.mjs';
import { done, frames, open, read, until } from './lib/sheet.mjs';
import { open_site } from './lib/site.mjs';

const loupe = { radius: 84, above: 84 + 96, scale: 3 };
const inks = { day: { ink: colour('#13202A'), paper: colour('#FCFAF4'), focus: colour('#0A4F97') }, night: { ink: colour('#FF3B22'), paper: colour('#0B0000'), focus: colour('#FF6A52') } };

/// Until no more frames are drawn: what moved has come to rest.
async function at_rest(page) {
  for (let last = -1; ; ) {
    const now = await frames(page);
    if (now === last) return now;
    last = now;
    await sleep(700);
  }
}

describe('touch', with_engine('chromium', 240_000), () => {
  let browser;
  let site;
  before(async () => {
    site = await open_site();
    browser = await open_chromium();
  });
  after(async () => {
    await browser?.close();
    await site?.close();
  });

  async function opened(view = views['tablet upright']) {
    const page = await browser.open({ ...view, serviceWorkers: 'block' });
    await open(page, site.url);
    return { page, hand: await touch_hand(page) };
  }

  for (const palette of ['day', 'night'])
    test(`the loupe shows what the finger hides, by ${palette}`, async () => {
      const { page, hand } = await opened();
      const view = views['tablet upright'];
      await done(page, 'set-palette', { palette });
      const { marks } = await read(page);
      await done(page, 'tool', { tool: 'leg' });
      // From a mark low enough on the glass for the loupe to stand straight above, to its neighbour.
      const goal = await place_of(page, 'mark/Gannet Post');
      const drag = await hand.hold('mark/Off Sarn', goal);
      const finger = { ...goal };
      const frames_before = await at_rest(page);
      const shot = picture(await page.screenshot(), view.scale);
      assert.equal(await frames(page), frames_before, 'up, but still, it draws nothing');
      const middle = { x: finger.x, y: Math.max(88, finger.y - loupe.above) };
      const aside = Math.sqrt(Math.max(0, loupe.above ** 2 - (finger.y - middle.y) ** 2));
      const { ink, focus, paper } = inks[palette];
      const rim = (centre) => Array.from({ length: 72 }, (_, i) => {
        const angle = i * Math.PI / 36;
        return Math.min(...[-1, -0.5, 0, 0.5, 1].map((off) => distance(ink, shot.at({ x: centre.x + (loupe.radius + off) * Math.sin(angle), y: centre.y + (loupe.radius + off) * Math.cos(angle) }))));
      }).filter((off) => off < 60).length;
      const centre = [{ x: middle.x + aside, y: middle.y }, { x: middle.x - aside, y: middle.y }].find((at) => rim(at) >= 68);
      assert.ok(centre, 'its rim is where it should be');
      // It has snapped: the mark lies as far from the middle as the finger's own place was from it, three times, with four ticks.
      const near = [];
      for (let dx = -70; dx <= 70; dx += 0.5) for (let dy = -70; dy <= 70; dy += 0.5) if (distance(focus, shot.at({ x: centre.x + dx, y: centre.y + dy })) < 40) near.push({ x: dx, y: dy });
      assert.ok(near.length > 60, `ticks are seen in it: ${near.length}`);
      const tick = { x: near.reduce((sum, at) => sum + at.x, 0) / near.length, y: near.reduce((sum, at) => sum + at.y, 0) / near.length };
      assert.ok(Math.hypot(tick.x, tick.y) <= 22 * loupe.scale, 'about a mark within reach');
      // Under it stands the name.
      const named = [];
      for (let dx = -60; dx <= 60; dx += 0.5) for (let dy = 88; dy <= 108; dy += 0.5) if (distance(ink, shot.at({ x: centre.x + dx, y: centre.y + dy })) < 60) named.push(dx);
      assert.ok(named.length > 300 && Math.max(...named) - Math.min(...named) > 50, 'the name of what it snaps to');
      assert.ok(distance(paper, ink) > 0);
      await drag.let_go();
      const { legs } = await read(page);
      assert.equal(legs.at(-1).to, marks.find((mark) => mark.name === 'Gannet Post').id);
      await page.close();
    });

  test('under the loupe an end moves a third as far as a slow finger', async () => {
    const { page, hand } = await opened();
    const long_px = (await place_of(page, 'mark/Off Gannet')).x - (await place_of(page, 'mark/Off Sarn')).x;
    await lay_edge(page, hand);
    const start = await place_of(page, 'edge/end-b');
    const before_deg = (await read(page)).edge.bearing_true_deg;
    await done(page, 'set-snap', { state: 'off' });
    const cdp = await page.raw.context.newCDPSession(page.raw.page);
    const send = (type, ...at) => cdp.send('Input.dispatchTouchEvent', { type, touchPoints: at.map(({ x, y }) => ({ x, y, id: 1, force: 0.5 })) });
    await send('touchStart', start);
    // 60 px down, 2 px every 40 ms at the quickest: a few events told at once are no haste yet.
    for (let i = 1; i <= 30; i += 1) {
      await sleep(40);
      await send('touchMove', { x: start.x, y: start.y + 2 * i });
    }
    const turned_px = Math.tan(turn_deg(before_deg, (await read(page)).edge.bearing_true_deg) * Math.PI / 180) * long_px;
    await send('touchEnd');
    assert.ok(Math.abs(turned_px - 20) < 2, `${turned_px} of 60 px`);
    await page.close();
  });

  test('a finger that is taken away by the browser leaves nothing half done', async () => {
    const { page, hand } = await opened();
    await lay_edge(page, hand);
    const laid = await read(page);
    for (const name of ['edge/end-b', 'edge/reading']) {
      await until(page, `${name} to be seen`, (wanted) => window.fogsheet.where(wanted), name);
      const at = await place_of(page, name);
      const drag = await hand.hold(at, { x: at.x, y: at.y + 60 });
      assert.notDeepEqual((await read(page)).edge, laid.edge);
      await drag.take_away();
      await until(page, 'the edge to lie as it lay', (edge) => JSON.stringify(window.fogsheet.read().edge) === edge, JSON.stringify(laid.edge));
    }
    await page.close();
  });

  test('the wheel turns the settled edge by a tenth every 12 px, by its keys, and says so', async () => {
    const { page, hand } = await opened();
    const { edge } = await do_the_job(page, hand);
    const box = await where(page, 'turn-edge');
    assert.ok(box.height >= 44, 'it is high enough for a thumb');
    const pitch = await page.evaluate(() => document.querySelector('[data-name=turn-edge] svg').clientWidth * 12 / 266);
    const at = { x: box.x + box.width / 2, y: box.y + box.height / 3 };
    await hand.drag(at, { x: at.x + 5.2 * pitch, y: at.y });
    const bearing = async () => (await read(page)).edge.bearing_true_deg;
    assert.ok(Math.abs(turn_deg(edge.bearing_true_deg, await bearing()) - 0.5) < 1e-6, `${await bearing()} after ${edge.bearing_true_deg}`);
    assert.equal((await read(page)).edge.settled_on, edge.settled_on);
    await page.evaluate(() => document.querySelector('[data-name=turn-edge]').focus());
    for (const key of ['ArrowLeft', 'ArrowLeft', 'PageDown']) await page.raw.page.keyboard.press(key);
    assert.ok(Math.abs(turn_deg(edge.bearing_true_deg, await bearing()) + 0.7) < 1e-6);
    const told = await until(page, 'the wheel to say so', () => {
      const wheel = document.querySelector('[data-name=turn-edge]');
      return wheel.getAttribute('aria-valuetext').startsWith('turned 0.7° anticlockwise') && { role: wheel.getAttribute('role'), now: Number(wheel.getAttribute('aria-valuenow')), label: wheel.getAttribute('aria-label') };
    });
    assert.equal(told.role, 'slider');
    assert.ok(Math.abs(told.now + 0.7) < 1e-9 && told.label);
    await page.close();
  });

  test('a hold opens the slip of a mark whatever the tool, and so does the right button; no menu of the browser comes', async () => {
    const { page, hand } = await opened();
    await page.evaluate(() => {
      window.menus = 0;
      document.addEventListener('contextmenu', (event) => { if (!event.defaultPrevented) window.menus += 1; });
    });
    await hand.press('tool/dividers');
    const at = await place_of(page, 'mark/Gannet Post');
    const cdp = await page.raw.context.newCDPSession(page.raw.page);
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ ...at, id: 1 }] });
    const names_it = () => document.getElementById('slip').innerHTML.includes('Gannet Post') && document.querySelector('[data-panel=mark]') !== null;
    await until(page, 'the slip while the finger still rests', names_it);
    await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await done(page, 'close-slip');
    await page.raw.page.mouse.click(at.x, at.y, { button: 'right' });
    await until(page, 'the slip of the mark again', names_it);
    assert.equal(await page.evaluate(() => window.menus), 0);
    await page.close();
  });

  test('nothing zooms, scrolls, is swiped away or selected by accident', async () => {
    const { page, hand } = await opened();
    await done(page, 'open-slip', { slip: 'settings' });
    await until(page, 'the slip', () => document.querySelector('[data-panel=settings]') !== null);
    const style = (selector) => page.evaluate((wanted) => {
      const { touchAction, overscrollBehaviorX, overscrollBehaviorY, userSelect } = getComputedStyle(document.querySelector(wanted));
      return { touchAction, overscrollBehaviorX, overscrollBehaviorY, userSelect };
    }, selector);
    assert.equal((await style('#sheet canvas')).touchAction, 'none');
    for (const selector of ['html', 'body']) {
      const { touchAction, overscrollBehaviorX, overscrollBehaviorY } = await style(selector);
      assert.deepEqual([touchAction, overscrollBehaviorX, overscrollBehaviorY], ['pan-x pan-y', 'none', 'none'], selector);
    }
    for (const selector of ['#sheet canvas', 'body', '#tray button', '#slip .line', '#slip h2']) assert.equal((await style(selector)).userSelect, 'none', selector);

    const stood = () => page.evaluate(() => ({ scale: visualViewport.scale, left: visualViewport.offsetLeft, top: visualViewport.offsetTop, x: scrollX, y: scrollY, at: location.href, chosen: String(getSelection()) }));
    const before_all = await stood();
    const heading = await page.evaluate(() => {
      const { left, top } = document.querySelector('#slip h2').getBoundingClientRect();
      return { x: left + 20, y: top + 10 };
    });
    for (const at of [heading, { x: 400, y: 300 }]) {
      await hand.press(at);
      await hand.press(at);  // twice: a double tap
      await hand.pinch({ x: at.x + 10, y: at.y }, { x: at.x + 40, y: at.y }, { x: at.x + 10, y: at.y + 5 }, { x: at.x + 240, y: at.y });
      await hand.drag({ x: 6, y: at.y }, { x: 500, y: at.y });  // from the edge inwards, as one goes back
      await hand.drag({ x: 300, y: at.y }, { x: 300, y: at.y + 300 });  // down, as one loads anew
    }
    assert.deepEqual(await stood(), before_all);

    const span = async () => (await place_of(page, 'mark/Off Gannet')).x - (await place_of(page, 'mark/Off Sarn')).x;
    await done(page, 'close-slip');
    await done(page, 'fit');
    const wide = await span();
    await page.raw.page.mouse.move(400, 300);
    await page.raw.page.keyboard.down('Control');
    await page.raw.page.mouse.wheel(0, -100);
    await page.raw.page.keyboard.up('Control');
    await until(page, 'the sheet to come closer', (was) => window.fogsheet.where('mark/Off Gannet')?.x - window.fogsheet.where('mark/Off Sarn')?.x > was * 1.05, wide);
    assert.deepEqual({ ...(await stood()), at: before_all.at }, before_all, 'the sheet alone');
    await page.close();
  });

  /// Notes what the canvas shows in the very frame that follows an input.
  const note_frames = () => {
    const canvas = document.querySelector('#sheet canvas');
    const copy = document.createElement('canvas');
    window.pictures = [];
    const note = () => requestAnimationFrame(() => {
      copy.width = canvas.width;
      copy.height = canvas.height;
      const flat = copy.getContext('2d', { willReadFrequently: true });
      flat.drawImage(canvas, 0, 0);
      const { data } = flat.getImageData(0, 0, copy.width, copy.height);
      let sum = 0;
      for (let i = 0; i < data.length; i += 1) sum = (sum * 31 + data[i]) | 0;
      window.pictures.push(sum);
    });
    // After the application's own listeners, so that its frame is the one that is noted.
    canvas.addEventListener('pointermove', note);
    window.addEventListener('keydown', note);
  };
  const pictures_noted = (page, count) => until(page, `${count} frames to be noted`, (wanted) => window.pictures.length >= wanted && window.pictures, count);

  test('the first frame after an input shows it', async () => {
    const { page, hand } = await opened({ width: 820, height: 1180, scale: 1, touch: true });
    await lay_edge(page, hand);
    await at_rest(page);
    await page.evaluate(note_frames);
    const at = await place_of(page, 'edge/reading');
    const cdp = await page.raw.context.newCDPSession(page.raw.page);
    const send = (type, ...places) => cdp.send('Input.dispatchTouchEvent', { type, touchPoints: places.map(({ x, y }) => ({ x, y, id: 1 })) });
    await send('touchStart', at);
    let noted = [];
    for (const down of [30, 60, 60.4, 90]) {
      await send('touchMove', { x: at.x, y: at.y + down });
      noted = await pictures_noted(page, noted.length + 1);
    }
    assert.equal(noted.length, 4);
    assert.notEqual(noted[0], noted[1]);
    assert.notEqual(noted[1], noted[3]);
    await send('touchCancel');
    await at_rest(page);
    // The same place again draws the same: the frame was whole, nothing of it was left to a later one.
    await page.evaluate(() => { window.pictures = []; });
    await send('touchStart', at);
    await send('touchMove', { x: at.x, y: at.y + 60 });
    const again = await pictures_noted(page, 1);
    assert.equal(again[0], noted[1]);
    await send('touchCancel');
    await at_rest(page);

    await page.evaluate(() => {
      window.pictures = [];
      document.querySelector('#sheet canvas').focus();
    });
    noted = [];
    for (const key of [']', ']', '[']) {
      await page.raw.page.keyboard.press(key);
      noted = await pictures_noted(page, noted.length + 1);
    }
    assert.notEqual(noted[0], noted[1]);
    assert.equal(noted[0], noted[2], 'and back again');
    await page.close();
  });

  test('at rest no frame is drawn: with the edge settled, a slip open, the loupe up', async () => {
    const { page, hand } = await opened();
    const still = async (state) => {
      const drawn = await at_rest(page);
      await sleep(900);
      assert.equal(await frames(page), drawn, state);
    };
    await still('as it opens');
    await do_the_job(page, hand);
    await still('settled');
    await done(page, 'open-slip', { slip: 'more' });
    await still('a slip open');
    await done(page, 'tool', { tool: 'mark' });
    const at = await place_of(page, 'mark/Sarn Beacon');
    const drag = await hand.hold(at, { x: at.x + 30, y: at.y + 30 });
    await still('the loupe up');
    await drag.let_go();
    await page.close();
  });

  test('nothing shifts when panels open and close', async () => {
    for (const view of [views['tablet across'], views['tablet upright'], views.phone]) {
      const { page, hand } = await opened({ ...view, touch: true });
      await at_rest(page);
      await page.evaluate(() => {
        window.shifts = [];
        new PerformanceObserver((list) => list.getEntries().forEach((entry) => window.shifts.push({
          value: entry.value, by_input: entry.hadRecentInput,
          moved: entry.sources.map(({ node }) => node?.nodeName === 'CANVAS' || node?.id === 'sheet' || node?.id === 'tray' ? node.nodeName : ''),
        }))).observe({ type: 'layout-shift' });
      });
      for (const name of ['tool/straight-edge', 'tool/rose', 'tool/leg', 'more', 'settings', 'more', 'more']) {
        await until(page, `${name} to be seen`, (wanted) => window.fogsheet.where(wanted) ?? (document.querySelector(`[data-name="${wanted}"]`)?.scrollIntoView({ block: 'nearest' }), null), name);
        await hand.press(name);
        await sleep(700);  // what shifts within half a second of a press is laid to the press
      }
      const shifts = await page.evaluate(() => window.shifts);
      assert.deepEqual(shifts.filter((shift) => shift.moved.some(Boolean)), [], 'sheet and tray stand still');
      assert.equal(shifts.filter((shift) => !shift.by_input).reduce((sum, shift) => sum + shift.value, 0), 0, 'nothing moves unasked');
      await page.close();
    }
  });
});
