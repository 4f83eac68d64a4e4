// The photograph of a chart under the sheet in hand: read beside the page by the third program, drawn by underlay_layer.js, kept
// by underlay_store.js. What is to be done with it the application decides.
import { faults, patience_s, run_beside } from './later_program.js';
import { UnderlayLayer } from './underlay_layer.js';
import { forget_photograph, forget_photographs_but, keep_photograph, kept_photograph } from './underlay_store.js';

const acts = ['choose', 'stop', 'bring', 'keep', 'remove', 'keep_only'];                     // PhotographAct in shell/photograph.h
const news = ['chosen', 'brought', 'read', 'refused', 'drawn', 'kept', 'full', 'not_kept'];  // PhotographNews

export class Underlay {
  #tell;
  #layer;
  #reading = null;  // {end}
  #sheet = 0;       // whose photograph it is
  #file = null;     // {name, blob, is_kept}
  #store = Promise.resolve();  // done with what was last asked of it

  /// @param tell  calls a method of the program and gives its answer
  constructor(canvas, tell) {
    this.#tell = (what, sheet, { text = '', bytes = new Uint8Array(), code = 0, a = 0, b = 0 } = {}) => tell('photograph_news', news.indexOf(what), sheet, text, bytes, code, a, b);
    this.#layer = new UnderlayLayer(canvas);
    canvas.addEventListener('webglcontextlost', () => this.#layer.lose());
    canvas.addEventListener('webglcontextrestored', () => {
      if (this.#file) this.#read(this.#sheet, this.#file.blob);  // its pieces went with the context
    });
  }

  draw(numbers) { this.#layer.draw(numbers); }

  /// @param file  that was chosen; none unless the act is "choose"
  async act(act, sheet, bytes, file) {
    switch (acts[act]) {
      case 'choose': return this.#take(sheet, file);
      case 'stop': return this.#put_away();
      case 'bring': return this.#bring(sheet);
      case 'keep': return this.#keep(sheet, bytes);
      case 'keep_only': return this.#in_turn(() => forget_photographs_but(Array.from(new BigUint64Array(bytes.buffer), Number)));
      default:
        this.#put_away();
        return this.#in_turn(() => forget_photograph(sheet));
    }
  }

  /// What is kept and then taken away is gone, what is taken away and then kept is there, however long either takes.
  #in_turn(act) {
    this.#store = this.#store.then(act).catch(() => null);
    return this.#store;
  }

  #take(sheet, file) {
    this.#put_away();
    if (!this.#tell('chosen', sheet, { text: file.name, a: file.size })) return;
    this.#sheet = sheet;
    this.#file = { name: file.name, blob: file, is_kept: false };
    this.#read(sheet, file);
  }

  async #bring(sheet) {
    this.#put_away();
    this.#sheet = sheet;
    const kept = await this.#in_turn(() => kept_photograph(sheet));
    if (!kept || this.#sheet !== sheet || this.#file) return;
    if (!this.#tell('brought', sheet, { text: kept.name, bytes: kept.placing })) return;
    this.#file = { name: kept.name, blob: kept.blob, is_kept: true };
    this.#read(sheet, kept.blob);
  }

  async #keep(sheet, placing) {
    const file = this.#file;
    if (this.#sheet !== sheet || !file) return;
    const told = await this.#in_turn(() => keep_photograph(sheet, file, placing, !file.is_kept));
    file.is_kept ||= told === 'kept';
    if (this.#file === file) this.#tell(told, sheet);
  }

  #put_away() {
    this.#stop();
    this.#layer.clear();
    this.#file = null;
  }

  #stop() {
    this.#reading?.end();
    this.#reading = null;
  }

  async #read(sheet, blob) {
    this.#stop();
    this.#layer.clear();
    const refuse = (code, more = {}) => {
      this.#put_away();
      this.#tell('refused', sheet, { code, ...more });
    };
    let shrunk = 1;
    const reading = run_beside('photograph', (data) => {
      if (data === 'all') {
        this.#stop();
        this.#tell('drawn', sheet);
      } else if (data.fault !== undefined) {
        refuse(data.fault, { text: data.text, a: data.numbers[0], b: data.numbers[1] });
      } else if (data.pixels) {
        this.#layer.add(data, shrunk);
        reading.say('next');
      } else {
        shrunk = data.shrunk;
        if (this.#tell('read', sheet, { code: shrunk, a: data.width, b: data.height })) reading.say('next');
        else this.#stop();
      }
    }, (fault) => refuse(fault, { a: patience_s }));
    this.#reading = reading;
    const bytes = await blob.arrayBuffer().catch(() => null);
    if (this.#reading !== reading) return;
    if (bytes) reading.say({ bytes, largest: this.#layer.largest() }, [bytes]);
    else refuse(faults.no_bytes);
  }
}
