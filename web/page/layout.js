// Where the page's parts stand: how much of the canvas the slip covers, and the folded corner by which a slip that has
// risen from the tray is pulled down and up again.
import { words } from './words.js';

const notes_gap_px = 8;  // under the notes, as in base.css
const pull_px = 8;    // less is a press

export class Layout {
  #sheet = document.getElementById('sheet');
  #slip = document.getElementById('slip');
  #notes = document.getElementById('notes');
  #fold = document.querySelector('#slip .fold');
  #pulled_from = null;

  /// @param on_change  called when parts have another size
  constructor(on_change) {
    this.#fold.addEventListener('pointerdown', (event) => this.#hold(event));
    this.#fold.addEventListener('pointerup', (event) => this.#let_go(event));
    this.#fold.addEventListener('pointercancel', () => { this.#pulled_from = null; });
    this.#fold.addEventListener('click', () => this.#press());
    this.set_folded(false);
    new ResizeObserver(() => {
      this.#show_field();
      on_change();
    }).observe(this.#slip);
    for (const type of ['resize', 'scroll']) window.visualViewport?.addEventListener(type, () => this.#clear_keyboard());
  }

  /// What lies on the canvas, CSS pixels from its right and lower edge.
  covered() {
    const sheet = this.#sheet.getBoundingClientRect();
    const slip = this.#slip.getBoundingClientRect();
    const notes = this.#notes.getBoundingClientRect();
    const shown = slip.height > 0;
    const at_the_side = getComputedStyle(this.#slip).getPropertyValue('--at-side').trim() === '1';
    const risen = shown && !at_the_side ? Math.max(0, sheet.bottom - slip.top) : 0;
    document.documentElement.style.setProperty('--risen', `${risen}px`);
    return {
      covered_right: shown && at_the_side ? Math.max(0, sheet.right - slip.left) : 0,
      covered_bottom: risen + (notes.height > 0 ? notes.height + notes_gap_px : 0),
    };
  }

  /// Scrolls a part of a slip into view; of one too tall for it, the beginning.
  bring_into_view(part) {
    part.scrollIntoView({ block: 'nearest' });
    const room = part.closest(matchMedia('(max-height: 480px)').matches ? '.papers' : '.broad .content, .body');
    if (room && part.getBoundingClientRect().top < room.getBoundingClientRect().top) part.scrollIntoView({ block: 'start' });
  }

  /// The slip stands clear of the system's keyboard, which covers the page's foot and leaves the page as it was.
  #clear_keyboard() {
    const view = window.visualViewport;
    const tray = document.getElementById('tray').getBoundingClientRect().height;
    const hidden = view.scale > 1.01 ? 0 : innerHeight - view.height - view.offsetTop;  // enlarged, less is seen for another reason
    document.documentElement.style.setProperty('--lifted', `${Math.max(0, hidden - tray)}px`);
    this.#show_field();
  }

  #show_field() {
    const field = document.activeElement?.closest('#slip .entry');
    if (field) this.bring_into_view(field);
  }

  set_folded(folded) {
    this.#slip.classList.toggle('folded', folded);
    this.#fold.setAttribute('aria-expanded', String(!folded));
    this.#fold.setAttribute('aria-label', folded ? words.unfold : words.fold);
  }

  #hold(event) {
    this.#pulled_from = event.clientY;
    try {
      this.#fold.setPointerCapture(event.pointerId);
    } catch {
      // no such pointer: a script made the event
    }
  }

  /// Pulled down folds, pulled up opens; the press that follows is then none.
  #let_go(event) {
    const pulled = this.#pulled_from === null ? 0 : event.clientY - this.#pulled_from;
    if (Math.abs(pulled) < pull_px) this.#pulled_from = null;
    else this.set_folded(pulled > 0);
  }

  #press() {
    if (this.#pulled_from === null) this.set_folded(!this.#slip.classList.contains('folded'));
    this.#pulled_from = null;
  }
}
