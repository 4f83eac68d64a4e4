// The nine kinds of item that panels are made of. Each gives {element, patch(item)}; patch changes only what differs.
import { make, say, set, with_units } from './dom.js';
import { field } from './field.js';
import { figure } from './figure.js';
import { icon } from './icons.js';
import { sum, table } from './tables.js';

export const kinds = { heading, line, field, choice, button, sum, table, caution, figure };

function heading() {
  const words = make('bdi');
  const beside = make('p', { class: 'beside' });
  const element = make('div', { class: 'heading' });
  let title = null;
  return {
    element,
    patch(item) {
      const tag = `h${item.level}`;
      if (title?.localName !== tag) {
        title = make(tag, {}, words);
        element.replaceChildren(title, beside);
      }
      say(words, item.text);
      say(beside, with_units(item.beside));
      beside.hidden = !item.beside;
    },
  };
}

function line() {
  const words = make('bdi', { class: 'words' });
  const value = make('span', { class: 'value' });
  const readings = make('div', { class: 'readings', 'aria-hidden': 'true' });
  const element = make('div', {}, readings, words, value);
  return {
    element,
    patch(item) {
      const large = item.readings.length > 0;
      set(element, 'class', large ? 'line reading-line' : `line ${item.tone}`);
      say(words, with_units(item.text));
      say(value, with_units(item.value));
      value.hidden = !item.value;
      words.classList.toggle('visually-hidden', large);
      readings.hidden = !large;
      if (!large) return;
      readings.replaceChildren(...item.readings.map((reading) => make('div', { class: 'reading' },
        make('span', { class: 'figures' }, reading.figures), make('span', { class: 'unit' }, reading.unit), make('span', { class: 'under' }, reading.under))));
    },
  };
}

/// A few options side by side; many, or of unknown number, behind one line that opens.
function choice(act, id) {
  let shown = null;
  let is_long = null;
  return {
    get element() { return shown.element; },
    patch(item) {
      if (item.is_long !== is_long) {
        shown = item.is_long ? long_choice(act) : short_choice(act, id);
        is_long = item.is_long;
      }
      shown.patch(item);
    },
  };
}

function long_choice(act) {
  const label = make('span', { class: 'label' });
  const select = make('select', { dir: 'auto' });
  const element = make('label', { class: 'field' }, label, make('span', { class: 'box' }, select));
  let item = null;
  let offered = '';
  select.addEventListener('change', () => act.press(item.on_choose, { [item.argument]: select.value }));
  return {
    element,
    patch(next) {
      item = next;
      set(select, 'data-name', item.name);
      say(label, item.label);
      const offer = JSON.stringify(item.options);
      if (offer !== offered) select.replaceChildren(...item.options.map((option) => make('option', { value: option.value }, option.label)));
      offered = offer;
      if (select.value !== item.chosen) select.value = item.chosen;
    },
  };
}

function short_choice(act, id) {
  const label = make('span', { class: 'label', id: `${id}/label` });
  const options = make('div', { class: 'options' });
  const element = make('div', { class: 'choice', role: 'radiogroup', 'aria-labelledby': label.id }, label, options);
  let item = null;
  let offered = '';
  const renew = () => options.replaceChildren(...item.options.map((option) => {
    const input = make('input', { type: 'radio', name: id, value: option.value });
    input.addEventListener('change', () => act.press(item.on_choose, { [item.argument]: option.value }));
    return make('label', { 'data-name': `${item.name}/${option.value}` }, input, make('bdi', { class: 'option' }, option.label));
  }));
  return {
    element,
    patch(next) {
      item = next;
      set(element, 'data-name', item.name);
      say(label, item.label);
      element.classList.toggle('brief', item.options.length <= 3 && item.options.every((option) => option.label.length <= 5));
      const offer = JSON.stringify(item.options);
      if (offer !== offered) renew();
      offered = offer;
      for (const input of options.querySelectorAll('input')) input.checked = input.value === item.chosen;
    },
  };
}

const hold_ms = 800;      // as in items.css
const after_lift_ms = 60;  // a click comes at once after the lift
const twice_ms = 1500;   // between two presses of Enter that count as one hold

/// What a hold did may have put another button under the finger: its lift is no press of that one.
function swallow_lift() {
  const swallow = (event) => {
    event.stopPropagation();
    event.preventDefault();
  };
  const lifted = () => setTimeout(() => removeEventListener('click', swallow, { capture: true }), after_lift_ms);
  addEventListener('click', swallow, { capture: true });
  for (const end of ['pointerup', 'pointercancel', 'keyup']) addEventListener(end, lifted, { capture: true, once: true });
}

/// Makes a button one that is held: `press` is called once it has been held long enough, by a pointer or by a key held
/// down, or when Enter was pressed twice. Let go before that, nothing happens.
function held(pressable, press) {
  let waiting = null;
  let entered_ms = -Infinity;
  const let_go = () => {
    clearTimeout(waiting);
    waiting = null;
    pressable.classList.remove('holding');
  };
  const hold = () => {
    if (waiting !== null) return;
    pressable.classList.add('holding');
    waiting = setTimeout(() => {
      let_go();
      swallow_lift();
      press();
    }, hold_ms);
  };
  pressable.addEventListener('pointerdown', hold);
  for (const end of ['pointerup', 'pointercancel', 'pointerleave', 'keyup', 'blur']) pressable.addEventListener(end, let_go);
  pressable.addEventListener('contextmenu', (event) => event.preventDefault());
  pressable.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    if (event.repeat) return;
    if (event.timeStamp - entered_ms < twice_ms) {
      let_go();
      press();
    } else {
      entered_ms = event.timeStamp;
      hold();
    }
  });
}

function button(act, id) {
  const words = make('bdi', { class: 'words' });
  const key = make('span', { class: 'key', 'aria-hidden': 'true' });
  const reason = make('span', { class: 'reason', id: `${id}/reason` });
  const pressable = make('button', { type: 'button' }, words, key);
  let element = null;
  let drawn = '';
  let item = null;
  let is_held = false;
  const press = () => (item.enabled ? act.press(item.on_press, {}) : act.refuse(item.reason));
  pressable.addEventListener('focus', () => act.follow(item.on_focus));
  pressable.addEventListener('click', (event) => {
    if (is_held) {
      // A click without a pointer is a screen reader's: there is no way for it to hold.
      if (event.detail === 0 && event.isTrusted) press();
      return;
    }
    // A finger on a button does not take the focus from a field everywhere; what was typed counts before what is pressed.
    if (document.activeElement?.closest('.field')) document.activeElement.blur();
    press();
    // A well that was pressed by hand gives the keys back to the sheet.
    if (item.look === 'well' && event.detail > 0) act.focus_sheet();
  });
  return {
    get element() { return element; },
    patch(next) {
      item = next;
      if (item.hold && !is_held) {
        held(pressable, press);
        is_held = true;
      }
      const alone = item.look === 'well' || item.look === 'cross' || item.look === 'thing';
      element ??= alone ? pressable : make('div', { class: 'act' }, pressable, reason);
      set(pressable, 'class', item.look);
      set(pressable, 'data-name', item.name);
      set(pressable, 'aria-label', item.look === 'cross' ? item.label : null);
      set(pressable, 'title', item.look === 'well' && item.reason ? item.reason : null);
      set(pressable, 'aria-pressed', item.pressed ?? null);
      set(pressable, 'aria-disabled', item.enabled ? null : 'true');
      set(pressable, 'aria-keyshortcuts', item.key || null);
      set(pressable, 'aria-describedby', !alone && item.reason && !item.enabled ? reason.id : null);
      say(words, item.label);
      say(key, item.key);
      say(reason, item.enabled ? '' : item.reason);
      if (item.icon !== drawn) {
        pressable.querySelector('svg')?.remove();
        if (item.icon) pressable.prepend(icon(item.icon));
        drawn = item.icon;
      }
    },
  };
}

function caution() {
  const text = make('bdi');
  const advice = make('bdi', { class: 'advice' });
  const element = make('div', { class: 'caution', role: 'note' }, icon('caution'), make('strong', {}, text), advice);
  return {
    element,
    patch(item) {
      say(text, with_units(item.text));
      say(advice, with_units(item.advice));
    },
  };
}
