// Photographs of charts as they are kept on the device: the files' own bytes and where they lie, by the key of their sheet. They
// are in a database of their own, so that the sheets' never waits for them nor fails with them; and they leave the sheets room.

import { any_kept, is_damaged, is_full, is_here, is_kept, not_kept, note_kept } from './underlay_kept.js';

const name = 'fogsheet-photographs';
const stores = ['files', 'placings'];
const room_for_sheets = 50_000_000;   // bytes that are left free

/// Null when there is none.
export async function kept_photograph(sheet) {
  if (!any_kept()) return null;
  return with_stores('readonly', async (files, placings) => {
    const [file, placing] = await Promise.all([asked(files.get(sheet)), asked(placings.get(sheet))]);
    return file && { name: file.name, blob: new Blob([file.bytes]), placing: placing ?? new Uint8Array() };
  });
}

/// All of them, one read after the other: {sheet, name, blob, placing, checksum}. @param checksum_of  promises that of a blob
export async function kept_photographs(checksum_of) {
  const all = [];
  for (const sheet of await with_stores('readonly', (files) => asked(files.getAllKeys()))) {
    const photograph = await kept_photograph(sheet);
    if (photograph) all.push({ ...photograph, sheet, checksum: await checksum_of(photograph.blob) });
  }
  return all;
}

/// Keeps one out of a file, unless one is kept with that sheet already. @param size  that the blob has where the file is whole
export async function take_photograph(sheet, { name: file_name, placing, checksum }, blob, size, checksum_of) {
  if (await kept_photograph(sheet)) return is_here;
  if (blob.size !== size || await checksum_of(blob) !== checksum) return is_damaged;
  const told = await keep_photograph(sheet, { name: file_name, blob }, placing, true);
  return { kept: is_kept, full: is_full }[told] ?? not_kept;
}

/// As bytes: WebKit keeps no blob where it keeps nothing past its own end. @return "kept", "full" or "not_kept"
export async function keep_photograph(sheet, { name: file_name, blob }, placing, is_new) {
  try {
    if (is_new && !(await has_room(blob.size))) return 'full';
    const bytes = is_new ? await blob.arrayBuffer() : null;
    note_kept();  // first: what is not asked for at the next start would lie there for nothing
    await with_stores('readwrite', (files, placings) => {
      if (is_new) files.put({ name: file_name, bytes }, sheet);
      placings.put(placing, sheet);
    });
    return 'kept';
  } catch (error) {
    return error?.name === 'QuotaExceededError' ? 'full' : 'not_kept';
  }
}

export function forget_photograph(sheet) {
  if (!any_kept()) return Promise.resolve();
  return with_stores('readwrite', (...both) => both.forEach((store) => store.delete(sheet)));
}

/// Of all other sheets.
export function forget_photographs_but(sheets) {
  return with_stores('readwrite', async (...both) => {
    for (const store of both) for (const sheet of await asked(store.getAllKeys())) if (!sheets.includes(sheet)) store.delete(sheet);
  });
}

async function has_room(bytes) {
  const { quota, usage } = (await navigator.storage?.estimate?.().catch(() => null)) ?? {};
  return quota === undefined || quota - usage > bytes + room_for_sheets;
}

/// Closed again each time: nothing stands in the way of who clears the device.
async function with_stores(mode, act) {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => stores.forEach((store) => request.result.createObjectStore(store));
  const database = await asked(request);
  try {
    const transaction = database.transaction(stores, mode);
    const done = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = () => reject(transaction.error);
    });
    const answer = await act(...stores.map((store) => transaction.objectStore(store)));
    await done;
    return answer;
  } finally {
    database.close();
  }
}

function asked(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}
