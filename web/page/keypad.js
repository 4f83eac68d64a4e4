// The keypad under a field: lays out the keys that the application gives (shell/panels/keypad.h) and types with them into
// the field, which keeps the focus. It knows no field and no kind of pad.
import { make, set } from './dom.js';

export class Keypad {
  #pad;
  #field;
  #letters = [];  // [letter, key]
  #pressed = false;
  #when_released = null;
  #watch = (event) => this.#pointer(event);

  /// @param field  {input, typed(), done(), turned(text, by_deg), refuse(reason), use_keyboard()}
  constructor(pad, field) {
    this.#pad = pad;
    this.#field = field;
    const keys = (list, name) => make('div', { class: name }, ...list.map((key) => this.#key(key)));
    const main = keys(pad.keys, `keys columns-${pad.columns}`);
    const more = keys(pad.more, 'keys more');
    const done = make('button', { type: 'button', class: 'main', 'data-name': 'pad/done' }, pad.done);
    done.addEventListener('click', () => field.done());
    const foot = make('div', { class: 'keys foot' }, this.#key(pad.keyboard), done);
    this.element = make('div', { class: 'keypad', role: 'group', 'aria-label': pad.label }, main, make('div', { class: 'rest' }, more, foot));
    // A key takes no focus from the field.
    this.element.addEventListener('mousedown', (event) => event.preventDefault());
    for (const type of ['pointerdown', 'pointerup', 'pointercancel']) document.addEventListener(type, this.#watch, { capture: true });
  }

  /// Which letter is in force: the one typed, else the field's own.
  show_letter(text, standing) {
    const typed = this.#letter_of(text);
    for (const [letter, key] of this.#letters) set(key, 'aria-pressed', String(letter === (typed || standing)));
  }

  /// Calls once no pointer is down: what goes away under a finger would make it press what comes in its place.
  when_released(act) {
    this.#when_released = act;
    if (!this.#pressed) setTimeout(() => this.#release(), 0);
  }

  #pointer(event) {
    if (!this.element.isConnected) this.when_released(() => {});  // its panel is gone
    this.#pressed = event.type === 'pointerdown';
    if (!this.#pressed && this.#when_released) setTimeout(() => this.#release(), 0);
  }

  #release() {
    if (document.activeElement === this.#field.input) this.#when_released = null;  // taken up again
    if (!this.#when_released) return;
    for (const type of ['pointerdown', 'pointerup', 'pointercancel']) document.removeEventListener(type, this.#watch, { capture: true });
    this.#when_released();
    this.#when_released = null;
  }

  #key(key) {
    const { label, says = '', act = 'type', value = key } = typeof key === 'string' ? { label: key } : key;
    const button = make('button', { type: 'button', class: `pad-key ${act}`, 'data-name': `pad/${label}`, 'aria-label': says || null }, label);
    if (act === 'letter') this.#letters.push([value, button]);
    button.addEventListener('click', () => {
      this.#acts[act](value);
      if (act !== 'keyboard') this.#field.input.focus({ preventScroll: true });
    });
    return button;
  }

  #letter_of(text) {
    const last = text.trim().slice(-1).toUpperCase();
    return last && this.#pad.letters.includes(last) ? last : '';
  }

  #write(text, caret = text.length) {
    const { input, typed } = this.#field;
    input.value = text;
    input.setSelectionRange(caret, caret);
    typed();
  }

  #acts = {
    type: (text) => {
      const { input, typed } = this.#field;
      input.setRangeText(text, input.selectionStart, input.selectionEnd, 'end');
      typed();
    },
    delete: () => {
      const { input, typed } = this.#field;
      const { selectionStart: from, selectionEnd: to } = input;
      input.setRangeText('', from === to ? Math.max(0, from - 1) : from, to, 'end');
      typed();
    },
    clear: () => this.#write(''),
    // At the end, in place of another; figures go on before it.
    letter: (letter) => {
      const { value } = this.#field.input;
      const figures = this.#letter_of(value) ? value.trim().slice(0, -1) : value.trim();
      this.#write(figures + letter, figures.length);
    },
    turn: (by_deg) => this.#write(this.#field.turned(this.#field.input.value, by_deg)),
    keyboard: () => this.#field.use_keyboard(),
    // The browser may ask first: what was typed meanwhile, or a field that was left, stays so.
    paste: async () => {
      const { input } = this.#field;
      const standing = input.value;
      let text;
      try {
        text = await navigator.clipboard.readText();
      } catch {
        this.#field.refuse(this.#pad.no_paste);
        return;
      }
      if (document.activeElement === input && input.value === standing) this.#write(text.trim());
    },
  };
}
