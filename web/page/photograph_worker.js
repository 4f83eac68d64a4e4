// Reads the photograph of a chart beside the page: is given the file's bytes, answers with its size or why there is none, and then
// hands out a piece each time it is asked for the next one.
import { put, serve } from './later_worker.js';
import make_photograph from './photograph.js';

const border = 4;  // pixels of a piece's neighbours that it has too, so that they join without a seam where they are made smaller

let photo, pieces;

serve(make_photograph, (module, job) => (job === 'next' ? hand_out(module) : read(module, job)));

function read(module, { bytes, largest }) {
  const at = put(module, bytes);
  photo = module._photo_open();
  const fault = module._photo_read(photo, at, bytes.byteLength);
  module._free(at);
  if (fault >= 0) return postMessage({ fault, text: module.UTF8ToString(module._photo_fault_text(photo)), numbers: [0, 1].map((i) => module._photo_fault_number(photo, i)) });
  const width = module._photo_width(photo), height = module._photo_height(photo), shrunk = module._photo_shrunk(photo);
  pieces = cut_up(Math.floor(width / shrunk), Math.floor(height / shrunk), largest);
  postMessage({ width, height, shrunk });
}

/// Pieces of at most `largest` on a side, their borders with them.
function cut_up(width, height, largest) {
  const step = largest - 2 * border;
  const list = [];
  for (let top = 0; top < height; top += step) {
    for (let left = 0; left < width; left += step) {
      const from = { x: Math.max(0, left - border), y: Math.max(0, top - border) };
      const to = { x: Math.min(width, left + step + border), y: Math.min(height, top + step + border) };
      list.push({ left, top, right: Math.min(width, left + step), bottom: Math.min(height, top + step), from, width: to.x - from.x, height: to.y - from.y });
    }
  }
  return list;
}

function hand_out(module) {
  const piece = pieces.shift();
  if (!piece) return postMessage('all');
  const at = module._photo_cut(photo, piece.from.x, piece.from.y, piece.width, piece.height);
  const pixels = module.HEAPU8.slice(at, at + 4 * piece.width * piece.height);
  postMessage({ ...piece, pixels }, [pixels.buffer]);
}
