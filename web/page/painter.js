// Turns panel values (shell/panels/panel.h) into page parts and keeps them up to date: a section a panel, a part an item,
// patched in place, so that the focus and what is being typed stay. It knows places and kinds of item, and no tool.
import { arrange, make, set } from './dom.js';
import { kinds } from './items.js';

export class Painter {
  #places;
  #act;
  #sections = new Map();

  /// @param act  {press(press, more), refuse(reason), read_aloud(text), focus_sheet(), turned(text, by_deg), opened(element)} for the items
  constructor(act) {
    this.#act = act;
    const place = (id, list = '') => ({ root: document.getElementById(id), list: document.querySelector(`#${id}${list}`) });
    this.#places = { tray: place('tray'), slip: place('slip', ' .papers'), margin: place('margin'), whole: place('whole') };
  }

  /// Returns the names of slips that were not there before.
  paint(panels) {
    const fresh = [];
    const sections = new Map();
    for (const panel of panels) {
      let section = this.#sections.get(panel.name);
      if (section?.place !== panel.place) {
        section = new Section(panel, this.#act);
        if (panel.place === 'slip') fresh.push(panel.name);
      }
      section.patch(panel);
      sections.set(panel.name, section);
    }
    this.#sections = sections;
    for (const [name, { root, list }] of Object.entries(this.#places)) {
      const here = [...sections.values()].filter((section) => section.place === name);
      arrange(list, here.map((section) => section.element));
      root.hidden = here.length === 0;
    }
    return fresh;
  }
}

class Section {
  #act;
  #items = new Map();
  #parts;
  #text = '';

  constructor(panel, act) {
    this.#act = act;
    this.place = panel.place;
    this.element = make('section', { 'data-panel': panel.name });
    const names = panel.place === 'tray' ? ['wells', 'ends'] : ['head', 'body', 'aside', 'acts'];
    this.#parts = Object.fromEntries(names.map((name) => [name, make('div', { class: name })]));
    const { body, aside } = this.#parts;
    const content = body && make('div', { class: 'content' }, body, aside);
    this.element.append(...Object.values(this.#parts).filter((part) => part !== body && part !== aside));
    if (content) this.#parts.head.after(content);
  }

  patch(panel) {
    const text = JSON.stringify(panel);
    if (text === this.#text) return;
    this.#text = text;
    set(this.element, 'aria-label', panel.label);

    const items = new Map();
    const elements = panel.items.map((item) => {
      const key = key_of(item, items);
      const shown = this.#items.get(key) ?? kinds[item.kind](this.#act, `${panel.name}/${item.name ?? key}`);
      shown.patch(item);
      items.set(key, shown);
      return shown.element;
    });
    this.#items = items;

    this.element.inert = panel.deaf;
    this.element.classList.toggle('broad', panel.beside_from !== null);
    const where = panel.place === 'tray' ? panel.items.map((item) => (item.at_end ? 'ends' : 'wells')) : parts_of_slip(panel.items, panel.beside_from ?? panel.items.length);
    for (const [name, part] of Object.entries(this.#parts)) {
      arrange(part, elements.filter((_, i) => where[i] === name));
      part.hidden = !part.firstElementChild;
    }
  }
}

/// Items are known again by their name, those without one by their place among their kind.
function key_of(item, taken) {
  const stem = item.name ? `${item.kind} ${item.name}` : `${item.kind} no`;
  let key = stem;
  for (let n = 2; taken.has(key); n += 1) key = `${stem} ${n}`;
  return key;
}

/// The panel's heading and cross stay at the top, the buttons that end it at the foot; what is between scrolls. In a broad
/// one the items from `beside` on lie beside those before.
function parts_of_slip(items, beside) {
  let end = items.length;
  while (end > 0 && items[end - 1].kind === 'button') end -= 1;
  return items.map((item, i) => {
    if (item.kind === 'heading' && item.level === 2) return 'head';
    if (item.kind === 'button' && item.look === 'cross') return 'head';
    if (i >= end) return 'acts';
    return i < beside ? 'body' : 'aside';
  });
}
