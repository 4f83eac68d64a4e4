// Files: one that was picked, dropped, or opened by the system comes into the application; one for other programs goes out.
// The files of other programs are read and written by a second program (web/exchange.cpp), which comes here alone.
import { program_of } from './own_files.js';

const formats = ['gpx', 'geojson', 'csv'];  // as the second program counts them
const media_types = { gpx: 'application/gpx+xml', geojson: 'application/geo+json', csv: 'text/csv', fogsheet: 'text/plain', svg: 'image/svg+xml', png: 'image/png' };
/// A sheet's text as a file.
const sheet_file = (name, text) => new File([text], name, { type: media_types.fogsheet });

const head_bytes = 200;
const roads = { none: 0, sheet: 1, exchange: 2, all: 3 };  // as in FileRoad

/// A new one each time: its memory goes with it.
async function exchanged(act, bytes) {
  const { default: make_exchange } = await import('./exchange.js');
  const module = await make_exchange(await program_of('exchange.wasm'));
  const at = module._malloc(bytes.length);
  if (!at && bytes.length > 0) throw new Error('no room');
  module.HEAPU8.set(bytes, at);
  const exchange = module._exchange_open();
  act(module, exchange, at);
  const first = module._exchange_answer(exchange);
  return module.HEAPU8.slice(first, first + module._exchange_answer_size(exchange));
}

const read_file = (bytes) => exchanged((module, exchange, at) => module._exchange_read(exchange, at, bytes.length), bytes);

/// @param format  "gpx", "geojson" or "csv". @param bytes  marks and lines, as the application hands them over
export function written_for_others(format, bytes) {
  return exchanged((module, exchange, at) => module._exchange_write(exchange, formats.indexOf(format), at, bytes.length), bytes);
}

/// @return  the text's QR code, as core/exchange/qr_code.h has it
export function qr_code(text) {
  const bytes = new TextEncoder().encode(text);
  return exchanged((module, exchange, at) => module._exchange_qr(exchange, at, bytes.length), bytes);
}

/// Gives bytes or a text to the user as a file of that name.
export function download(name, content) {
  const type = media_types[name.split('.').at(-1)] ?? 'application/octet-stream';
  const link = document.createElement('a');
  link.download = name;
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/// What the browser hands to whatever the system sends things with: nothing, links, or files too.
export function shares() {
  if (!navigator.share) return '';
  return navigator.canShare?.({ files: [sheet_file('sheet.fogsheet', '1:')] }) ? 'files' : 'links';
}

/// @return  a promise that is refused when nothing took it; a user's second thoughts are no refusal
export async function share(title, text, file_name) {
  try {
    await navigator.share(file_name ? { title, files: [sheet_file(file_name, text)] } : { title, url: text });
  } catch (error) {
    if (error.name !== 'AbortError') throw error;
  }
}

/// The file that the application is being told of, for it to take as a photograph (platform.js).
export const at_the_door = { file: null };

/// @param tell  calls a method of the program and gives its answer
export async function take_file(file, tell) {
  let bytes = null;
  try {
    const head = new Uint8Array(await file.slice(0, head_bytes).arrayBuffer());
    at_the_door.file = file;
    const road = tell('file_chosen', file.name, file.size, head);
    at_the_door.file = null;
    if (road === roads.none) return;
    bytes = new Uint8Array(await file.arrayBuffer());
    if (road === roads.sheet) return tell('file_opened', new TextDecoder().decode(bytes));
    if (road === roads.all) return tell('backup_read', bytes);
  } catch {
    tell('file_chosen', file.name, 0, new Uint8Array());
    return tell('file_not_read', true);
  }
  try {
    tell('file_read', await read_file(bytes));
  } catch {
    tell('file_not_read', false);
  }
}

/// What is dropped on the page, and what the system opens with it once it is installed.
/// @param hover  told whether a file is held over the page
export function listen_for_files(tell, hover) {
  const brings_files = (event) => event.dataTransfer?.types.includes('Files');
  document.addEventListener('dragover', (event) => {
    if (!brings_files(event)) return;
    event.preventDefault();
    hover(true);
  });
  document.addEventListener('dragleave', (event) => {
    if (!event.relatedTarget) hover(false);  // out of the page, not from one part of it to another
  });
  document.addEventListener('drop', (event) => {
    if (!brings_files(event)) return;
    event.preventDefault();
    hover(false);
    if (event.dataTransfer.files[0]) take_file(event.dataTransfer.files[0], tell);
  });
  window.launchQueue?.setConsumer(async ({ files }) => {
    if (files[0]) take_file(await files[0].getFile(), tell);
  });
}
