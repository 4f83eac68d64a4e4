// What is done to the sheet: pointers, wheel and keys, passed on as the browser tells them.
import { modifiers } from './program.js';

const hold_ms = 800;  // k_hold_asks_ms in shell/tools/gestures.cpp

// The order of PointerPhase and PointerKind in shell/pointer.h.
const phases = { pointerdown: 0, pointermove: 1, pointerup: 2, pointercancel: 3, lostpointercapture: 3, pointerleave: 4 };
const kinds = { mouse: 0, pen: 1, touch: 2 };

// One notch of a wheel towards the user, by the event's deltaMode: pixels, lines, pages.
const notch = [100, 3, 1];
const rest_ms = 700;
const pinch_gain = 5;  // a pinch on a touch pad comes as a wheel with Control and small steps

/// @param act  called with what to do; wakes the page afterwards
export function listen(program, canvas, act) {
  let last = null;  // of the pointers, as they were told
  let holding = 0;
  // A contact that does not move says nothing: once it has been held, where it is is told again.
  const watch_hold = (type) => {
    if (type === 'pointermove') return;
    clearTimeout(holding);
    if (type !== 'pointerdown') return;
    const { id, time_ms } = last;
    const tell = () => {
      if (last.id === id) act(() => program.pointer({ ...last, phase: phases.pointermove, time_ms: time_ms + hold_ms }));
    };
    // A page that was busy is told first of a contact that has lifted meanwhile.
    holding = setTimeout(() => { holding = setTimeout(tell); }, hold_ms);
  };
  for (const [type, phase] of Object.entries(phases)) {
    canvas.addEventListener(type, (event) => {
      if (type === 'pointerdown') hold(canvas, event);
      if (type === 'pointerleave' && (event.buttons || event.pointerType === 'touch')) return;
      last = pointer_of(canvas, event);
      watch_hold(type);
      act(() => program.pointer({ ...last, phase }));
    });
  }
  canvas.addEventListener('wheel', (event) => {
    event.preventDefault();
    const at = place_of(canvas, event);
    const steps = event.deltaY / notch[event.deltaMode] * (event.ctrlKey ? pinch_gain : 1);
    act(() => program.wheel(at.x, at.y, steps));
  }, { passive: false });
  // The browser's own answers to a long press and to a pinch would take the gesture away.
  for (const type of ['contextmenu', 'gesturestart']) canvas.addEventListener(type, (event) => event.preventDefault());
  // Arrows that follow each other within this time are one move.
  let resting = 0;
  const rest = () => {
    clearTimeout(resting);
    resting = setTimeout(() => act(() => program.keys_at_rest()), rest_ms);
  };
  window.addEventListener('keydown', (event) => {
    if (!is_for_the_sheet(event, canvas)) return;
    act(() => {
      if (!program.key(event.key, modifiers(event))) return;
      event.preventDefault();
      rest();
    });
  });
}

/// Keeps a pointer that leaves the canvas, and takes the keys.
function hold(canvas, event) {
  try {
    canvas.setPointerCapture(event.pointerId);
  } catch {
    // no such pointer: a script made the event
  }
  canvas.focus({ preventScroll: true });
}

function place_of(canvas, event) {
  const box = canvas.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

function pointer_of(canvas, event) {
  return {
    ...place_of(canvas, event),
    kind: kinds[event.pointerType] ?? kinds.mouse,
    id: event.pointerId,
    buttons: event.buttons,
    pressure: event.pressure,
    keys: modifiers(event),
    time_ms: event.timeStamp,
  };
}

/// All keys while the sheet, a thing of the outline or nothing has the focus; elsewhere but in fields, Esc and what is pressed with Control.
function is_for_the_sheet(event, canvas) {
  if (event.isComposing || event.defaultPrevented) return false;
  const target = event.target;
  if (target === canvas || target === document.body || target === document.documentElement) return true;
  if (target.closest?.('.thing')) return event.key !== ' ' && event.key !== 'Tab';
  if (target.closest?.('input:not([type=radio]), textarea, select')) return false;
  return event.key === 'Escape' || event.ctrlKey || event.metaKey;
}
