// The browser's side of what the application asks for: the day, the address, the clipboard and settings.
// It is called from inside the application and must not call back into it before that call has returned.
import { Awake } from './awake.js';
import { make_qr_code, write_file } from './exchange_jobs.js';
import { download, share, shares } from './files_out.js';
import { patience_s } from './later_program.js';
import { use_waiting_version } from './offline.js';
import { OwnPosition } from './own_position.js';
import { TooLarge, picture } from './picture.js';
import { look_at_room } from './room.js';
import { text_image } from './text_image.js';
import { any_kept, not_kept } from './underlay_kept.js';

const prefix = 'fogsheet.';
const part_bytes = 1_000_000;  // of a photograph that is looked through

const asked_by_system = {
  share: shares,
  palette: () => document.documentElement.dataset.suggested,
  motion: () => (matchMedia('(prefers-reduced-motion: reduce)').matches ? 'reduced' : ''),
};

/// @param store, files  see keeper.js, files.js
/// @param read_aloud  says a text to who can't see the page
/// @param tell   called with the name of a method of the program and its arguments, never from inside a call of ours
export function make_platform(store, files, read_aloud, tell) {
  const copied = (done) => tell('copied', done);
  const awake = new Awake((state) => tell('awake_state', state));
  const own_position = new OwnPosition(tell);
  let alarm = 0;
  const checksum_of = async (blob) => {
    let checksum = 0;
    for (let at = 0; at < blob.size; at += part_bytes) checksum = tell('crc32', new Uint8Array(await blob.slice(at, at + part_bytes).arrayBuffer()), checksum);
    return checksum;
  };
  let going = [];  // photographs that were listed last
  let underlay = null, coming = null;  // what reads and draws a photograph comes when it is first asked for
  const with_underlay = (act) => {
    coming ??= import('./underlay.js').then(({ Underlay }) => { underlay = new Underlay(document.querySelector('#sheet canvas'), tell); });
    coming.then(() => act(underlay), () => { coming = null; });
  };
  return {
    /// yyyymmdd, by the device's own zone
    today() {
      const now = new Date();
      return now.getFullYear() * 10000 + (now.getMonth() + 1) * 100 + now.getDate();
    },

    now_ms: () => Date.now(),

    minutes_east: (at_ms) => -new Date(at_ms).getTimezoneOffset(),

    wake_after(ms) {
      clearTimeout(alarm);
      alarm = setTimeout(() => tell('woken'), ms);
    },

    look_at_room: (ask) => look_at_room(ask).then((room) => tell('store_room', ...room)),

    text_image,

    store_act: (...act) => store.act(...act),
    store_write: (id) => store.write(id),
    store_ask: (...ask) => store.ask(...ask),

    /// One of 4096, so that pages that are open at once hardly give the same key to two things.
    key_lane: crypto.getRandomValues(new Uint16Array(1))[0] % 4096,

    save_file: (name, bytes) => download(name, bytes),

    save_picture(name, svg, dots_an_inch) {
      picture(svg, dots_an_inch).then((blob) => download(name, blob), (error) => tell('picture_refused', error instanceof TooLarge ? error.largest : 0));
    },

    save_for_others(name, format, bytes) {
      write_file(format, bytes, (file) => download(name, file), (fault) => tell('file_not_saved', fault, patience_s));
    },

    share(title, text, file_name) {
      share(title, text, file_name).catch(() => tell('not_shared'));
    },

    make_code(link) {
      make_qr_code(link, (modules) => tell('code_made', modules), () => tell('code_made', new Uint8Array()));
    },

    /// Any file: which it is shows in what it holds.
    open_file: () => pick('', (file) => files.take([file])),

    stop_file: () => files.stop(),

    /// Acts are counted in underlay.js.
    photograph(act, sheet, bytes) {
      const take = (file) => with_underlay((door) => door.act(act, sheet, bytes, file));
      if (act === 0 && files.at_the_door) take(files.at_the_door);
      else if (act === 0) pick('image/png,image/jpeg', take);
      else if (underlay || coming || any_kept()) with_underlay((door) => door.act(act, sheet, bytes));
    },

    list_photographs() {
      const all = any_kept() ? import('./underlay_store.js').then(({ kept_photographs }) => kept_photographs(checksum_of)) : Promise.resolve([]);
      all.catch(() => null).then((list) => {
        going = list ?? [];
        going.forEach((each) => tell('photograph_listed', each));
        tell('photographs_listed', list !== null);
      });
    },

    save_with_photographs(name, bytes) {
      download(name, bytes, ...going.map(({ blob }) => blob));
      going = [];
    },

    take_photograph(sheet, name, placing, at, size, checksum) {
      const taken = import('./underlay_store.js').then(({ take_photograph }) => take_photograph(sheet, { name, placing, checksum }, files.of_all.slice(at, at + size), size, checksum_of));
      taken.catch(() => not_kept).then((how) => tell('photograph_taken', sheet, how));
    },

    draw_photograph: (numbers) => underlay?.draw(numbers),

    /// Not from inside the press: what it changed must be painted first.
    print_page: () => queueMicrotask(() => print()),

    address: () => location.href.split('#')[0],

    /// What nobody has chosen is as the system asks.
    setting(name) {
      let value = null;
      try {
        value = localStorage.getItem(prefix + name);
      } catch {
        // storage is forbidden: nothing was put
      }
      return value ?? asked_by_system[name]?.() ?? '';
    },

    put_setting(name, value) {
      try {
        localStorage.setItem(prefix + name, value);
      } catch {
        // forbidden or full: it holds until the page goes
      }
    },

    keep_awake: (wanted) => awake.keep(wanted),
    follow_position: (wanted) => own_position.follow(wanted),
    read_aloud,

    use_new_version: () => use_waiting_version(),

    copy(text) {
      const by_hand = () => copied(copy_selected(text));
      if (!navigator.clipboard?.writeText) queueMicrotask(by_hand);
      else navigator.clipboard.writeText(text).then(() => copied(true), by_hand);
    },
  };
}

/// Asks for a file. @param accept  kinds that are offered first; a phone's camera too where they are pictures
function pick(accept, take) {
  const picker = document.createElement('input');
  picker.type = 'file';
  picker.accept = accept;
  picker.addEventListener('change', () => {
    if (picker.files[0]) take(picker.files[0]);
  });
  picker.click();
}

/// The old way, for pages that may not use the clipboard: select a text and have the browser copy what is selected.
function copy_selected(text) {
  const before = document.activeElement;
  const field = document.createElement('textarea');
  field.className = 'visually-hidden';
  field.value = text;
  document.body.append(field);
  field.select();
  let done = false;
  try {
    done = document.execCommand('copy');
  } catch {
    // refused
  }
  field.remove();
  before?.focus?.({ preventScroll: true });
  return done;
}
