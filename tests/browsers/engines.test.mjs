// A smoke test in each of three engines: the page starts, the sheet is drawn in its colours, the job is done with the
// engine's own mouse, and by touch or what comes nearest to it there, an idle page draws nothing, and all of it starts again
// with the server gone. An engine that is not
// installed fails where CI is set, and is skipped by name elsewhere.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { setTimeout as sleep } from 'node:timers/promises';

import { engine_finger } from './lib/engine_finger.mjs';
import { engines, with_engine } from './lib/engines.mjs';
import { mouse_hand, place_of } from './lib/hands.mjs';
import { do_the_job } from './lib/job.mjs';
import { circles, colour, distance, picture } from './lib/pictures.mjs';
import { frames, kept_offline, open, ready } from './lib/sheet.mjs';
import { page_on_site } from './lib/stage.mjs';

const size = { width: 1180, height: 820 };
// By day, as the look's table of colours has them.
const paper = colour('#FCFAF4');
const magenta = colour('#9A1A63');
const danger_fill = colour('#F6D3C4');
const near = 6;  // of 255: colour management and rounding

for (const engine of engines) {
  test(`${engine}: drawn, read, idle, and started again without its server`, with_engine(engine, 120_000), async (t) => {
    const { page, site } = await page_on_site(t, engine, size);
    await open(page, site.url);
    await check_drawn(page);
    const hand = mouse_hand(page);
    await do_the_job(page, hand);

    await kept_offline(page);
    const drawn = await frames_at_rest(page);
    await page.evaluate(() => new Promise((done) => setTimeout(done, 1500)));
    assert.equal(await frames(page), drawn, 'no frame while idle');

    await site.close();
    await page.reload();
    await ready(page);
    await check_drawn(page);
    await do_the_job(page, hand);
  });
}

for (const engine of engines) {
  test(`${engine}: the job by one finger`, with_engine(engine, 90_000), async (t) => {
    const { page, site } = await page_on_site(t, engine, { width: 820, height: 1180, touch: true });
    await open(page, site.url);
    await page.evaluate(() => {
      window.kinds_seen = new Set();
      addEventListener('pointerdown', (event) => window.kinds_seen.add(event.pointerType), { capture: true });
    });
    await do_the_job(page, await engine_finger(page));
    assert.deepEqual(await page.evaluate(() => [...window.kinds_seen]), ['touch'], 'by touch alone');
  });
}

async function check_drawn(page) {
  const shot = await picture_of_sheet(page);
  const rose = await place_of(page, 'rose/centre');
  const rings = circles(shot, rose, { ink: magenta, paper, from_px: 40, to_px: 200 });
  assert.equal(rings.length, 2, `two rings about the rose: ${rings}`);
  const rock = await place_of(page, 'mark/Hask Rock');
  const beside_its_cross = { x: rock.x + 9, y: rock.y + 5 };
  const { at } = shot;
  assert.ok(distance(at(beside_its_cross), danger_fill) < 40, `the danger's tint: ${at(beside_its_cross)}`);
}

/// A picture with paper where the sheet has nothing else. A page may be ready before its first frame has reached the screen.
async function picture_of_sheet(page) {
  for (let tries = 1; ; tries += 1) {
    const free = await place_of(page, "sheet/44°06.0'N 031°27.0'W");
    const shot = picture(await page.screenshot());
    if (distance(shot.at(free), paper) < near) return shot;
    assert.ok(tries < 40, `paper: ${shot.at(free)}`);
    await sleep(100);
  }
}

/// How many frames there were once no more came for half a second, in which the engine was free to draw two: on a busy
/// machine a frame can take as long.
async function frames_at_rest(page) {
  let drawn = await frames(page);
  for (let tries = 1; ; tries += 1) {
    await page.evaluate(async () => {
      await new Promise((done) => setTimeout(done, 500));
      for (let turns = 0; turns < 2; turns += 1) await new Promise(requestAnimationFrame);
    });
    const now = await frames(page);
    if (now === drawn) return drawn;
    assert.ok(tries < 20, `still drawing: ${drawn}, ${now}`);
    drawn = now;
  }
}
