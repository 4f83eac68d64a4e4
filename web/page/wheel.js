// Makes a figure one that is turned, like a wheel's rim under the thumb: dragged sideways, or by the arrow keys.
import { set } from './dom.js';

const key_steps = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

/// @return a function to be given the figure's wheel whenever it is new
export function wheel(element, act) {
  let now = null;
  let from = 0;
  let sent = 0;  // steps since the thumb came down
  const turn = (steps) => act.press(now.on_turn, { [now.argument]: steps * now.step });

  element.addEventListener('pointerdown', (event) => {
    from = event.clientX;
    sent = 0;
    element.setPointerCapture(event.pointerId);
  });
  element.addEventListener('pointermove', (event) => {
    if (!element.hasPointerCapture(event.pointerId)) return;
    const steps = Math.trunc((event.clientX - from) / (element.firstElementChild.clientWidth * now.pitch));
    if (steps !== sent) turn(steps - sent);
    sent = steps;
  });
  element.addEventListener('keydown', (event) => {
    const steps = event.ctrlKey || event.altKey || event.metaKey ? 0 : key_steps[event.key];
    if (!steps) return;
    event.preventDefault();
    turn(steps);
  });
  element.classList.add('wheel');
  set(element, 'role', 'slider');
  set(element, 'tabindex', '0');
  return (next) => {
    now = next;
    set(element, 'aria-valuemin', -next.most);
    set(element, 'aria-valuemax', next.most);
    set(element, 'aria-valuenow', next.value);
    set(element, 'aria-valuetext', next.text);
  };
}
