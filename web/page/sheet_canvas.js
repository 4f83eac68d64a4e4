// The canvas: its size in the device's own pixels, its WebGL2 context lost and given back, and the loop that draws only
// while the application wants a frame.

const wait_for_context_ms = 4000;  // a context that has not come back by then is taken for gone

export class SheetCanvas {
  #program;
  #element;
  #layout;
  #after_frame;
  #requested = 0;
  #pixels = { width: 0, height: 0 };
  #giving_up = 0;
  frames = 0;

  /// @param layout       says what the page's own parts cover (layout.js)
  /// @param after_frame  called after each turn of the loop
  constructor(program, element, layout, after_frame) {
    this.#program = program;
    this.#element = element;
    this.#layout = layout;
    this.#after_frame = after_frame;
    this.#measure();
    if (!program.attach()) program.canvas_lost(true);
    element.addEventListener('webglcontextlost', (event) => this.#lost(event));
    element.addEventListener('webglcontextrestored', () => this.#restored());
    this.#observe();
  }

  /// Asks for a turn of the loop.
  wake() {
    if (!this.#requested && !this.#program.stopped) this.#requested = requestAnimationFrame((now) => this.#turn(now));
  }

  /// Tells the application the canvas's size and what is covered of it.
  place() {
    const { width, height } = this.#pixels;
    const pixel_ratio = devicePixelRatio;
    this.#program.viewport({ width: width / pixel_ratio, height: height / pixel_ratio, pixel_ratio, ...this.#layout.covered() });
  }

  /// Draws at once when the application wants it.
  draw(now = performance.now()) {
    if (this.#program.wants_frame() && this.#program.frame(now, this.#pixels.width, this.#pixels.height)) this.frames += 1;
  }

  #turn(now) {
    this.#requested = 0;
    if (this.#program.stopped) return;
    this.draw(now);
    this.#after_frame();
    if (this.#program.wants_frame()) this.wake();
  }

  /// Whole pixels of the device: from the browser where it tells them, else rounded. A browser that pretends to another
  /// pixel ratio tells its own pixels; they are not meant then.
  #measure(entry) {
    const exact = entry?.devicePixelContentBoxSize?.[0];
    const box = this.#element.getBoundingClientRect();
    const whole = (told, css) => (Math.abs(told - css * devicePixelRatio) < 1.5 ? told : Math.round(css * devicePixelRatio));
    const width = whole(exact?.inlineSize, box.width);
    const height = whole(exact?.blockSize, box.height);
    if (width === this.#pixels.width && height === this.#pixels.height) return false;
    this.#pixels = { width, height };
    this.#element.width = width;
    this.#element.height = height;
    return true;
  }

  /// A canvas loses its picture with its size, so it is drawn again before the browser shows it.
  #resized(entry) {
    if (this.#program.stopped) return;
    const cleared = this.#measure(entry);
    this.place();
    if (cleared) this.#redraw();
    else this.wake();
  }

  #redraw() {
    if (this.#program.frame(performance.now(), this.#pixels.width, this.#pixels.height)) this.frames += 1;
    this.wake();
  }

  #observe() {
    const observer = new ResizeObserver((entries) => this.#resized(entries[0]));
    try {
      observer.observe(this.#element, { box: 'device-pixel-content-box' });
    } catch {
      observer.observe(this.#element);
    }
    // A window moved to another screen changes the pixel ratio without a change of size.
    const watch_ratio = () => matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener('change', () => {
      this.#resized();
      watch_ratio();
    }, { once: true });
    watch_ratio();
  }

  #lost(event) {
    event.preventDefault();  // or the browser never gives it back
    if (this.#program.stopped) return;
    this.#program.lose();
    this.#giving_up = setTimeout(() => this.#give_up(), wait_for_context_ms);
  }

  #give_up() {
    if (this.#program.stopped) return;
    this.#program.canvas_lost(true);
    this.#after_frame();
  }

  #restored() {
    clearTimeout(this.#giving_up);
    if (this.#program.stopped || !this.#program.attach()) return;
    this.#program.canvas_lost(false);
    this.#redraw();
  }
}
