// Where the page's parts stand: how much of the canvas the slip covers, and the folded corner by which a slip that has
// risen from the tray is pulled down and up again.
import { words } from './words.js';

const wide_px = 900;  // from here on the slip stands at the right (k_wide_layout_px in shell/style.h, and page.css)
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
    new ResizeObserver(() => on_change()).observe(this.#slip);
  }

  /// What lies on the canvas, CSS pixels from its right and lower edge.
  covered() {
    const sheet = this.#sheet.getBoundingClientRect();
    const slip = this.#slip.getBoundingClientRect();
    const notes = this.#notes.getBoundingClientRect();
    const shown = slip.height > 0;
    const at_the_side = innerWidth >= wide_px;
    const risen = shown && !at_the_side ? Math.max(0, sheet.bottom - slip.top) : 0;
    document.documentElement.style.setProperty('--risen', `${risen}px`);
    return {
      covered_right: shown && at_the_side ? Math.max(0, sheet.right - slip.left) : 0,
      covered_bottom: risen + (notes.height > 0 ? notes.height + notes_gap_px : 0),
    };
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
