// Hands that press and drag as a user does: a mouse, or fingers on glass (real touches by CDP, Chromium only). Places are
// {x, y} in CSS pixels, or names that `fogsheet.where` knows.
import assert from 'node:assert/strict';
import { setTimeout as sleep } from 'node:timers/promises';

const steps_of_a_drag = 6;
const contact_ms = 45;  // shorter ones in a row are taken for rain

/// The box of a thing that can be pressed now; fails when it is off screen or covered.
export async function box_of(page, name) {
  const box = await where(page, name);
  assert.ok(box, `${name} is not to be seen`);
  return box;
}

/// The middle of that box.
export async function place_of(page, name) {
  const box = await box_of(page, name);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

export const where = (page, name) => page.evaluate((wanted) => window.fogsheet.where(wanted), name);

const between = (from, to, part) => ({ x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part });
const way = (from, to) => Array.from({ length: steps_of_a_drag }, (_, i) => between(from, to, (i + 1) / steps_of_a_drag));
const resolve = (page, at) => (typeof at === 'string' ? place_of(page, at) : at);

/// Either hand: {press(at), drag(from, to), hold(from, to)}. `hold` drags and does not let go: it returns {let_go()}.
export function mouse_hand(page) {
  const hold = async (from, to) => {
    const [start, end] = [await resolve(page, from), await resolve(page, to)];
    await page.down(start);
    for (const at of way(start, end)) await page.move(at);
    return { let_go: () => page.up(end) };
  };
  return {
    press: async (at) => {
      const place = await resolve(page, at);
      await page.down(place);
      await page.up(place);
    },
    drag: async (from, to) => (await hold(from, to)).let_go(),
    hold,
  };
}

/// Fingers. Beside the hand's three: pinch(a, b, a_to, b_to) moves two fingers at once, and second_finger(at) puts another
/// down while one is held; take_away() is the browser's, which ends a touch by cancelling it.
export async function touch_hand(page) {
  const cdp = await page.raw.context.newCDPSession(page.raw.page);
  let fingers = [];
  const send = (type) => cdp.send('Input.dispatchTouchEvent', { type, touchPoints: fingers });
  const finger = ({ x, y }, id) => ({ x, y, id, force: 0.5 });
  const put = async (...places) => {
    fingers = places.map((at, i) => finger(at, i + 1));
    await send('touchStart');
  };
  const move = async (...places) => {
    fingers = places.map((at, i) => finger(at, i + 1));
    await send('touchMove');
  };
  const lift = async () => {
    fingers = [];
    await send('touchEnd');
  };
  const hold = async (from, to) => {
    const [start, end] = [await resolve(page, from), await resolve(page, to)];
    await put(start);
    await sleep(contact_ms);
    for (const at of way(start, end)) await move(at);
    return {
      let_go: lift,
      take_away: async () => {
        fingers = [];
        await send('touchCancel');
      },
      second_finger: async (at) => {
        fingers = [...fingers, finger(at, 2)];
        await send('touchStart');
      },
    };
  };
  return {
    press: async (at) => {
      // Not waiting for the page in between: a slow machine would make a hold of it.
      const down = put(await resolve(page, at));
      await sleep(contact_ms);
      await Promise.all([down, lift()]);
    },
    drag: async (from, to) => (await hold(from, to)).let_go(),
    hold,
    pinch: async (a, b, a_to, b_to) => {
      await put(a, b);
      for (let i = 1; i <= steps_of_a_drag; i += 1) await move(between(a, a_to, i / steps_of_a_drag), between(b, b_to, i / steps_of_a_drag));
      await lift();
    },
  };
}

/// A hand whose presses are counted, but for those on a keypad's figures, which go by `figure`.
export function counting(hand) {
  let presses = 0;
  return { ...hand, press: (what) => { presses += 1; return hand.press(what); }, get presses() { return presses; }, figure: hand.press };
}
