// The application, compiled from C++, behind one method a function (web/main.cpp). Text and JSON go in and out here and
// nowhere else. Any error from inside stops it for good: from then on each call throws, and nothing is drawn or changed.
import { words } from './words.js';

const shift = 1, control = 2, alt = 4, repeat = 8;

/// The modifier keys of an event as one number, and whether its key is held down.
export function modifiers(event) {
  return (event.shiftKey ? shift : 0) + (event.ctrlKey || event.metaKey ? control : 0) + (event.altKey ? alt : 0) + (event.repeat ? repeat : 0);
}

export class Program {
  #module;
  #sheet = 0;
  #on_stop;
  stopped = null;

  /// @param module   what Emscripten made
  /// @param faces    the bytes of the typeface: regular, bold, italic
  /// @param on_stop  told the error once
  constructor(module, faces, on_stop) {
    this.#module = module;
    this.#on_stop = on_stop;
    const held = faces.flatMap((face) => {
      const bytes = new Uint8Array(face);
      const at = module._malloc(bytes.length);
      module.HEAPU8.set(bytes, at);
      return [at, bytes.length];
    });
    this.#sheet = this.#guarded(() => module._sheet_open(...held));
  }

  // -- the store (keeper.js): its records, how a write went, the time asked for, the page being left
  store_record(part, sheet, sequence, bytes) {
    this.#with_bytes(bytes, (at) => this.#call('store_record', part, sheet, sequence, at, bytes.length));
  }
  store_read(fault) { this.#call('store_read', fault); }
  store_refused(fault) { this.#call('store_refused', fault); }
  store_told(what, part, key, records) {
    records.forEach((record) => this.store_record(record.part, record.sheet, record.sequence, record.bytes));
    this.#call('store_told', what, part, key);
  }
  store_answered(write, fault) { this.#call('store_answered', write, fault); }
  store_room(used, allowed, promise) { this.#call('store_room', used, allowed, promise); }
  woken() { this.#call('woken'); }
  hidden() { this.#call('hidden'); }
  half_typed({ field, text }) { this.#call('half_typed', field, text); }
  take_half_typed() {
    const [field, ...lines] = this.#text('take_half_typed').split('\n');
    return { field, text: lines.join('\n') };
  }

  start(fragment, loaded_anew) { this.#call('start', fragment, Number(loaded_anew)); }

  // -- files (files.js, platform.js)
  file_chosen(name, size, head, others) { return this.#with_bytes(head, (at) => this.#call('file_chosen', name, size, at, head.length, others)); }
  file_opened(text) { this.#call('file_opened', text); }
  backup_bytes_wanted() { return this.#call('backup_bytes_wanted'); }
  backup_read(bytes) { this.#with_bytes(bytes, (at) => this.#call('backup_read', at, bytes.length)); }
  file_read(bytes) { this.#with_bytes(bytes, (at) => this.#call('file_read', at, bytes.length)); }
  file_not_read(fault, patience_s) { this.#call('file_not_read', fault, patience_s); }
  file_not_saved(fault, patience_s) { this.#call('file_not_saved', fault, patience_s); }
  code_made(modules) { this.#with_bytes(modules, (at) => this.#call('code_made', at, modules.length)); }
  not_shared() { this.#call('not_shared'); }

  // -- the photograph under the sheet (underlay.js)
  photograph_news(what, sheet, text, bytes, code, a, b) {
    return this.#with_bytes(bytes, (at) => this.#call('photograph_news', what, sheet, text, at, bytes.length, code, a, b)) === 1;
  }

  crc32(bytes, before) { return this.#with_bytes(bytes, (at) => this.#call('crc32', at, bytes.length, before)) >>> 0; }
  photograph_listed({ sheet, name, placing, blob, checksum }) {
    this.#with_bytes(placing, (at) => this.#call('photograph_listed', sheet, name, at, placing.length, blob.size, checksum));
  }
  photographs_listed(were_read) { this.#call('photographs_listed', Number(were_read)); }
  photograph_taken(sheet, how) { this.#call('photograph_taken', sheet, how); }

  // -- the canvas
  attach() { return this.#call('attach') === 1; }
  lose() { this.#call('lose'); }
  canvas_lost(lost) { this.#call('canvas_lost', Number(lost)); }
  viewport({ width, height, pixel_ratio, covered_right, covered_bottom }) {
    this.#call('viewport', width, height, pixel_ratio, covered_right, covered_bottom);
  }
  wants_frame() { return this.#call('wants_frame') === 1; }
  /// Whether a frame was drawn.
  frame(now_ms, width, height) { return this.#call('frame', now_ms, width, height) === 1; }

  // -- what happened
  pointer({ phase, kind, id, x, y, buttons, pressure, keys, time_ms }) {
    this.#call('pointer', phase, kind, id, x, y, buttons, pressure, keys, time_ms);
  }
  wheel(x, y, steps) { this.#call('wheel', x, y, steps); }
  /// Whether the key was ours.
  key(key, keys) { return this.#call('key', key, keys) === 1; }
  /// A direction as typed, turned.
  turned(text, by_deg) { return this.#text('turned', text, by_deg); }
  keys_at_rest() { this.#call('keys_at_rest'); }
  minute_passed() { this.#call('minute_passed'); }
  copied(done) { this.#call('copied', Number(done)); }
  printing(now) { this.#call('printing', Number(now)); }
  picture_refused(largest) { this.#call('picture_refused', largest); }
  awake_state(state) { this.#call('awake_state', state); }
  own_position(lat_deg, lon_deg, accuracy_m, at_ms) { this.#call('own_position', lat_deg, lon_deg, accuracy_m, at_ms); }
  no_own_position(why) { this.#call('no_own_position', why); }
  offline_state(state) { this.#call('offline_state', state); }

  // -- what to show, and for scripts
  panels_revision() { return this.#call('panels_revision'); }
  panels() { return JSON.parse(this.#text('panels')); }
  palette() { return this.#text('palette'); }
  dim_step() { return this.#call('dim_step'); }
  text_percent() { return this.#call('text_percent'); }
  cursor() { return this.#text('cursor'); }
  read() { return JSON.parse(this.#text('read')); }
  command(name, args) { return JSON.parse(this.#text('command', String(name), JSON.stringify(args) ?? 'null')); }
  commands() { return JSON.parse(this.#text('commands')); }
  where(name) { return JSON.parse(this.#text('where', String(name))); }
  link() { return this.#text('link'); }

  #with_bytes(bytes, act) {
    const at = this.#module._malloc(bytes.length);
    if (!at && bytes.length > 0) throw new Error('no room');
    this.#module.HEAPU8.set(bytes, at);
    const answer = act(at);
    this.#module._free(at);
    return answer;
  }

  #text(name, ...values) { return this.#module.UTF8ToString(this.#call(name, ...values)); }

  #call(name, ...values) {
    if (this.stopped) throw this.stopped;
    const texts = [];
    const passed = values.map((value) => {
      if (typeof value !== 'string') return value;
      const size = this.#module.lengthBytesUTF8(value) + 1;
      const at = this.#module._malloc(size);
      this.#module.stringToUTF8(value, at, size);
      texts.push(at);
      return at;
    });
    const answer = this.#guarded(() => this.#module[`_sheet_${name}`](this.#sheet, ...passed));
    texts.forEach((at) => this.#module._free(at));
    return answer;
  }

  #guarded(act) {
    try {
      return act();
    } catch (error) {
      this.stopped = new Error(words.stopped, { cause: error });
      this.#on_stop(error);
      throw this.stopped;
    }
  }
}
