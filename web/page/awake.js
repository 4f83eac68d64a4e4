// Keeps the screen from going dark while the page is in sight, where the browser can (W3C Screen Wake Lock).

export class Awake {
  #tell;
  #wanted = false;
  #lock = null;
  #asking = false;

  /// @param tell  called with "held", "refused", "absent" or, once it is wanted no longer, ""; never from inside keep()
  constructor(tell) {
    this.#tell = tell;
    // The browser lets go when the page is put out of sight.
    document.addEventListener('visibilitychange', () => this.#hold());
  }

  keep(wanted) {
    this.#wanted = wanted;
    queueMicrotask(() => (wanted ? this.#hold() : this.#let_go()));
  }

  #let_go() {
    const lock = this.#lock;
    this.#lock = null;  // whenever the browser tells that it has let go
    lock?.release();
    this.#tell('');
  }

  async #hold() {
    if (!this.#wanted || this.#lock || this.#asking || document.visibilityState !== 'visible') return;
    if (!navigator.wakeLock) {
      this.#tell('absent');
      return;
    }
    this.#asking = true;
    try {
      const lock = await navigator.wakeLock.request('screen');
      this.#lock = lock;
      lock.addEventListener('release', () => this.#released(lock), { once: true });
      if (this.#wanted) this.#tell('held');
      else this.#let_go();
    } catch {
      this.#tell('refused');
    } finally {
      this.#asking = false;
    }
  }

  /// By the device, while the page is in sight: a battery that runs low, for one.
  #released(lock) {
    if (lock !== this.#lock) return;
    this.#lock = null;
    if (this.#wanted && document.visibilityState === 'visible') this.#tell('refused');
  }
}
