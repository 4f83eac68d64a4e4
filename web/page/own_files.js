// The page's own files. They lie beside this script; where the page is one file, they are within it (web/one_file.mjs).
const within = (name) => document.querySelector(`script[data-file="${name}"]`)?.textContent;

export const is_one_file = document.documentElement.dataset.oneFile !== undefined;

/// @param name  "fonts/B612-Bold.otf". Rejects when it can't be had.
export async function bytes_of(name) {
  const text = within(name);
  if (text !== undefined) return Uint8Array.from(atob(text), (character) => character.charCodeAt(0)).buffer;
  const response = await fetch(new URL(name, import.meta.url));
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return response.arrayBuffer();
}

/// What Emscripten's makers of modules take, so that they need not look for the program's bytes themselves: nothing where
/// they can, since they compile it while it comes.
export const program_of = async (name) => (is_one_file ? { wasmBinary: await bytes_of(name) } : {});

/// A worker that runs one of our own scripts. From a file's own bytes it is no module: Chromium fetches none for a page
/// that was opened from the file system.
export async function own_worker(name) {
  if (!is_one_file) return new Worker(new URL(name, import.meta.url), { type: 'module' });
  const address = URL.createObjectURL(new Blob([await bytes_of(name)], { type: 'text/javascript' }));
  const worker = new Worker(address);
  worker.addEventListener('message', () => URL.revokeObjectURL(address), { once: true });  // it has its script by then
  return worker;
}
