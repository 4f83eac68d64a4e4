// A later program's side of its worker (later_program.js): it is given what the program is made from, and then its jobs.

/// @param make  as Emscripten made it
/// @param act   given the program and each job; what it throws ends the worker
export function serve(make, act) {
  let made;
  addEventListener('message', async ({ data }) => {
    if (!made) {
      made = make(data.wasmBinary ? { ...data, locateFile: (name) => name } : {});
      made.catch(() => postMessage({ failed: 'no_program' }));
      return;
    }
    const module = await made;
    try {
      act(module, data);
    } catch {
      postMessage({ failed: 'broken' });
    }
  });
}

/// Where the program finds bytes that were put there for it.
export function put(module, bytes) {
  const at = module._malloc(bytes.byteLength);
  if (!at && bytes.byteLength > 0) throw new Error('no room');
  module.HEAPU8.set(new Uint8Array(bytes), at);
  return at;
}
