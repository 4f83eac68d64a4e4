// One finger in each engine: real touches where the driver has them (Chromium by CDP, Firefox by BiDi); in WebKit, whose
// driver makes a mouse of every touch, the pointer events of one, made by a script, and the click that a tap ends in.
import { setTimeout as sleep } from 'node:timers/promises';

import { place_of, touch_hand } from './hands.mjs';

const contact_ms = 45;  // shorter ones in a row are taken for rain
const steps_of_a_drag = 6;

/// {press(at), drag(from, to)}, as mouse_hand has them.
export function engine_finger(page) {
  if (page.name === 'chromium') return touch_hand(page);
  return finger_of(page, page.name === 'firefox' ? firefox_touch(page.raw.page.touchscreen) : made_touch(page));
}

function finger_of(page, { down, move, up }) {
  const resolve = (at) => (typeof at === 'string' ? place_of(page, at) : at);
  return {
    press: async (at) => {
      const place = await resolve(at);
      await down(place);
      await sleep(contact_ms);
      await up(place);
    },
    drag: async (from, to) => {
      const [start, end] = [await resolve(from), await resolve(to)];
      await down(start);
      await sleep(contact_ms);
      for (let i = 1; i <= steps_of_a_drag; i += 1) await move({ x: start.x + (end.x - start.x) * i / steps_of_a_drag, y: start.y + (end.y - start.y) * i / steps_of_a_drag });
      await up(end);
    },
  };
}

const firefox_touch = (screen) => ({
  down: ({ x, y }) => screen.touchStart(x, y),
  move: ({ x, y }) => screen.touchMove(x, y),
  up: () => screen.touchEnd(),
});

function made_touch(page) {
  const send = (type, at) => page.evaluate((kind, { x, y }) => {
    // A touch goes to what it began on, wherever it moves.
    const part = kind === 'pointerdown' ? document.elementFromPoint(x, y) : window.touched_part;
    window.touched_part = part;
    const contact = kind !== 'pointerup';
    part.dispatchEvent(new PointerEvent(kind, { bubbles: true, cancelable: true, composed: true, pointerId: 7, pointerType: 'touch', isPrimary: true, clientX: x, clientY: y, buttons: contact ? 1 : 0, pressure: contact ? 0.5 : 0, width: 20, height: 20 }));
    if (!contact && document.elementFromPoint(x, y) === part) part.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, clientX: x, clientY: y }));
  }, type, at);
  return { down: (at) => send('pointerdown', at), move: (at) => send('pointermove', at), up: (at) => send('pointerup', at) };
}
