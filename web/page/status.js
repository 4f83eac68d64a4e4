// The line in which the page answers a press that could not be done: it covers nothing that can be pressed, and goes with
// the next press. Also what is only read aloud, and the sentence with which the page stops.
import { say } from './dom.js';

export class Status {
  #line = document.getElementById('status');
  #aloud = document.getElementById('aloud');
  #stopped = document.getElementById('stopped');

  get stopped() { return !this.#stopped.hidden; }

  say(text) { say(this.#line, text); }

  /// The same words again are told apart from the last by a blank that is not heard: a live region tells only what changes.
  read_aloud(text) { say(this.#aloud, this.#aloud.textContent === text ? `${text}\u00A0` : text); }

  /// For good: the sheet is not drawn any further, the panels stay as they were.
  stop(sentence) {
    this.say('');
    say(this.#stopped, sentence);
    this.#stopped.hidden = false;
    document.documentElement.classList.add('has-stopped');
  }
}
