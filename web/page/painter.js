// Turns panel values (shell/panels/panel.h) into page parts and keeps them up to date: a section a panel, a part an item,
// patched in place, so that the focus and what is being typed stay. It knows places and kinds of item, and no tool.
import { arrange, make, set } from './dom.js';
import { kinds } from './items.js';

const paper = new CSSStyleSheet();

export class Painter {
  #places;
  #act;
  #sections = new Map();
  #painting = false;
  #last_thing = '';

  /// @param act  {press(press, more), refuse(reason), focus_sheet(), turned(text, by_deg), opened(element)} for the items
  constructor(act) {
    // A field that is taken away sends what was typed in it: once all is painted.
    const press = (...what) => (this.#painting ? queueMicrotask(() => act.press(...what)) : act.press(...what));
    this.#act = { ...act, press, follow: (press) => { if (press?.command && !this.#painting) act.press(press, {}); } };
    const place = (id, list = '') => ({ root: document.getElementById(id), list: document.querySelector(`#${id}${list}`) });
    this.#places = { tray: place('tray'), slip: place('slip', ' .papers'), margin: place('margin'), outline: place('outline'), whole: place('whole'), page: place('page') };
  }

  /// Returns the names of slips that were not there before.
  paint(panels) {
    this.#painting = true;  // what the focus does meanwhile is ours, not the user's
    try {
      return this.#paint(panels);
    } finally {
      this.#painting = false;
    }
  }

  #paint(panels) {
    const had_focus = document.activeElement;
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
      if (name === 'page' && !here.some((section) => section.has_paper)) document.adoptedStyleSheets = [];
    }
    this.#follow_focus(panels, fresh, had_focus);
    return fresh;
  }

  /// The focus goes where a panel says it has gone. What had it and is no more gives it to the slip that came in its place,
  /// else to the thing of the outline where it was last, else to the sheet.
  #follow_focus(panels, fresh, had_focus) {
    for (const { name, in_focus } of panels) {
      const section = this.#sections.get(name);
      const before = section.told_focus;
      section.told_focus = in_focus;
      if (!in_focus || in_focus === before) continue;
      if (section.place === 'outline') this.#last_thing = in_focus;
      if (section.place !== 'outline' || before === '' || section.element.contains(had_focus)) section.item(in_focus)?.focus();
    }
    if (had_focus === document.body || had_focus?.isConnected || document.activeElement !== document.body) return;
    const next = this.#sections.get(fresh[0])?.element ?? this.#sections.get('outline')?.item(this.#last_thing);
    if (next) next.focus();
    else this.#act.focus_sheet();
  }
}

class Section {
  #act;
  #items = new Map();
  #parts;
  #text = '';
  #on_leave = null;
  told_focus = '';

  constructor(panel, act) {
    this.#act = act;
    this.place = panel.place;
    this.element = make('section', { 'data-panel': panel.name, tabindex: panel.place === 'slip' ? -1 : null });
    this.element.addEventListener('focusout', (event) => {
      if (!this.element.contains(event.relatedTarget)) act.follow(this.#on_leave);
    });
    const names = panel.place === 'tray' ? ['wells', 'ends'] : ['outline', 'page'].includes(panel.place) ? ['head', 'body', 'aside'] : ['head', 'body', 'aside', 'acts'];
    this.#parts = Object.fromEntries(names.map((name) => [name, make('div', { class: name })]));
    const { body, aside } = this.#parts;
    const content = body && make('div', { class: 'content' }, body, aside);
    this.element.append(...Object.values(this.#parts).filter((part) => part !== body && part !== aside));
    if (content) this.#parts.head.after(content);
  }

  /// The part of that name, or all of it.
  item(name) { return name === this.element.dataset.panel ? this.element : this.element.querySelector(`[data-name="${CSS.escape(name)}"]`); }

  patch(panel) {
    const text = JSON.stringify(panel);
    if (text === this.#text) return;
    this.#text = text;
    set(this.element, 'aria-label', panel.label);
    set(this.element, 'data-paper', panel.paper && '');
    this.has_paper = Boolean(panel.paper);
    if (panel.paper) lay_paper(panel.paper);
    this.#on_leave = panel.on_leave;

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
    const where = panel.place === 'tray' ? panel.items.map((item) => (item.at_end ? 'ends' : 'wells')) : parts_of_slip(panel.items, panel.beside_from ?? panel.items.length, 'acts' in this.#parts);
    pair_up(panel.items, elements, where);
    for (const [name, part] of Object.entries(this.#parts)) {
      arrange(part, elements.filter((_, i) => where[i] === name));
      part.hidden = !part.firstElementChild;
    }
    // What has to be scrolled must be reached by keys: by itself where nothing in it can be.
    const { body } = this.#parts;
    if (panel.place === 'slip') {
      const mute = !body.querySelector('button, input, select, textarea, [tabindex]');
      for (const [name, value] of Object.entries({ tabindex: 0, role: 'group', 'aria-label': panel.label })) set(body, name, mute && !body.hidden ? value : null);
    }
  }
}

/// Pages of exactly that size. A rule by name in the style sheet would do, but that Firefox forgets it after two pages.
function lay_paper({ width_mm, height_mm }) {
  paper.replaceSync(`@page { size: ${width_mm}mm ${height_mm}mm; margin: 0; }`);
  document.adoptedStyleSheets = [paper];
}

/// Items are known again by their name, those without one by their place among their kind.
function key_of(item, taken) {
  const stem = item.name ? `${item.kind} ${item.name}` : `${item.kind} no`;
  let key = stem;
  for (let n = 2; taken.has(key); n += 1) key = `${stem} ${n}`;
  return key;
}

const brief_reason = 40;  // characters that stand in half the breadth

/// Buttons among other items stand two by two; what matters most, and what says at length why it can't be, alone in its row.
function pair_up(items, elements, where) {
  let is_first = false;
  for (const [i, { kind, look, enabled, reason }] of items.entries()) {
    const is_act = where[i] === 'body' && kind === 'button';
    const alone = look === 'main' || (!enabled && reason?.length > brief_reason);
    const is_second = is_first && is_act && !alone;
    is_first = is_act && !alone && !is_second;
    if (kind === 'button') for (const [name, on] of Object.entries({ alone: is_act && alone, second: is_second })) elements[i].classList.toggle(name, on);
  }
}

/// The panel's heading and cross stay at the top, the buttons that end it at the foot; what is between scrolls. In a broad
/// one the items from `beside` on lie beside those before.
function parts_of_slip(items, beside, has_acts) {
  let end = items.length;
  while (has_acts && end > 0 && items[end - 1].kind === 'button') end -= 1;
  return items.map((item, i) => {
    if (item.kind === 'heading' && item.level === 2) return 'head';
    if (item.kind === 'button' && item.look === 'cross') return 'head';
    if (i >= end) return 'acts';
    return i < beside ? 'body' : 'aside';
  });
}
