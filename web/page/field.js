// A field: a real one of the page's, so that every keyboard, dictation, paste and composition works in it. What is typed
// counts when the field is left, at Enter, or once it is complete. Under a finger or a pen a field of figures opens our
// own keypad (keypad.js) in place of the system's keyboard.
import { icon } from './icons.js';
import { Keypad } from './keypad.js';
import { make, say, set } from './dom.js';

// Asks a field for what was typed and has not been sent (detail.text), and gives it back after the page was loaded again.
const ask_half = 'ask-half';
const give_half = 'give-half';

/// What is half typed in the field in hand: {field, text}, both empty for none.
export function half_typed() {
  const asked = new CustomEvent(ask_half, { detail: { text: null } });
  document.activeElement?.dispatchEvent(asked);
  const { text } = asked.detail;
  if (text === null) return { field: '', text: '' };
  return { field: `${document.activeElement.closest('[data-panel]').dataset.panel} ${document.activeElement.dataset.name}`, text };
}

/// It stands in its field again, where that is shown; it counts when the field is left.
export function put_back({ field, text }) {
  if (!field) return;
  const [panel, name] = field.split(' ').map(CSS.escape);
  document.querySelector(`[data-panel="${panel}"] [data-name="${name}"]`)?.dispatchEvent(new CustomEvent(give_half, { detail: { text } }));
}

const as_typed = { autocomplete: 'off', autocorrect: 'off', autocapitalize: 'off', spellcheck: 'false', dir: 'auto' };

export function field(act, id) {
  const label = make('span', { class: 'label' });
  const unit = make('span', { class: 'unit' });
  const error = make('span', { class: 'error', id: `${id}/error` });
  const words = make('bdi');
  error.append(icon('caution'), words);
  const box = make('span', { class: 'box' });
  const line = make('label', { class: 'field' }, label, box, error);
  const element = make('div', { class: 'entry' }, line);
  let input = null;
  let item = null;
  let shown = '';  // the last text that the application gave or was given
  let pad = null;  // while it is open
  let by_touch = false;

  const send = () => {
    shown = input.value;
    act.press(item.on_leave, { text: shown });
  };
  const leave = () => {
    if (input.value !== shown) send();
  };
  /// So many figures and no more, a letter after them or none, are a whole entry: it is sent, and the field stays in hand
  /// for what comes next.
  const is_whole = () => {
    const figures = input.value.match(/^(\d+)([a-z]?)$/i);
    return Boolean(figures) && figures[1].length === item.completes_at && (!figures[2] || (item.pad?.letters.includes(figures[2].toUpperCase()) ?? false));
  };
  const typed = (event) => {
    pad?.show_letter(input.value, item.letter);
    if (item.as_typed && !event?.isComposing) return leave();
    if (event?.isComposing || !item.completes_at || input.value === shown || !is_whole()) return;
    send();
    if (pad) input.select();  // the next figure begins the next entry
  };
  const keys = (event) => {
    if (event.isComposing) return;  // these are the composition's
    if (event.key === 'Escape') input.value = shown;
    if (event.key === 'Escape' || (event.key === 'Enter' && input.localName === 'input')) input.blur();
  };

  const system_keyboard = () => (item.figures_only ? 'numeric' : null);
  const open = () => {
    if (pad || !item.pad || !by_touch) return;
    pad = new Keypad(item.pad, { input, typed, done: () => input.blur(), turned: act.turned, refuse: act.refuse, use_keyboard });
    pad.show_letter(input.value, item.letter);
    element.append(pad.element);
    // The first figure takes the place of what stood there. Not yet: the press that opened the pad still sets the caret. And
    // not once something was typed, or the field left: to select would take it back.
    const standing = input.value;
    setTimeout(() => {
      if (pad && document.activeElement === input && input.value === standing) input.select();
    }, 0);
    act.opened(element);
  };
  const close = () => {
    pad?.element.remove();
    pad = null;
    set(input, 'inputmode', system_keyboard());
  };
  /// The keypad goes and the system's keyboard comes, with the same text in the same field.
  const use_keyboard = () => {
    close();
    by_touch = false;
    const before = shown;
    shown = input.value;  // so that leaving it for a moment does not count
    input.blur();
    input.focus();
    shown = before;
  };
  line.addEventListener('pointerdown', (event) => {
    if (document.activeElement === input) return;  // what is in hand keeps its keys
    by_touch = event.pointerType !== 'mouse';
    set(input, 'inputmode', by_touch && item.pad ? 'none' : system_keyboard());
  });
  element.addEventListener('focusout', (event) => {
    if (pad?.element.contains(event.relatedTarget)) return;
    leave();
    by_touch = false;
    if (pad) pad.when_released(close);
  });
  element.addEventListener('focusin', open);

  const renew = (multiline) => {
    input = multiline ? make('textarea', { rows: 3, ...as_typed }) : make('input', { type: 'text', enterkeyhint: 'done', ...as_typed });
    input.addEventListener('input', typed);
    input.addEventListener('compositionend', () => typed());
    input.addEventListener('keydown', keys);
    input.addEventListener(ask_half, ({ detail }) => { if (input.value !== shown) detail.text = input.value; });
    input.addEventListener(give_half, ({ detail }) => {
      input.focus();
      input.value = detail.text;
    });
    box.replaceChildren(input, unit);
  };
  return {
    element,
    patch(next) {
      item = next;
      if (!input || (input.localName === 'textarea') !== item.multiline) renew(item.multiline);
      if (!pad) set(input, 'inputmode', system_keyboard());
      set(input, 'data-name', item.name);
      set(input, 'aria-invalid', item.error ? 'true' : null);
      set(input, 'aria-describedby', item.error ? error.id : null);
      line.classList.toggle('bad', Boolean(item.error));
      say(label, item.label);
      say(unit, item.unit);
      unit.hidden = !item.unit;
      say(words, item.error);
      error.hidden = !item.error;
      // What is being typed stays until it is left; a bad entry stays too, since the application gives it back.
      const typing = document.activeElement === input && input.value !== shown;
      if (!typing && input.value !== item.text) input.value = item.text;
      shown = item.text;
      pad?.show_letter(input.value, item.letter);
    },
  };
}
