// Does what the application asks of a store on the device (shell/keeper): one IndexedDB database, whose own version stays
// 1 for ever, with a store for each part and [sheet, sequence] as keys. Nothing is decided here. One page at a time keeps
// the sheets, where the browser has locks: a second one is told so, and comes into its own when the first has gone.

const parts = ['sheets', 'journal', 'desk', 'damaged'];  // StorePart in shell/keeper/store.h
const acts = { put: 0, add: 1, erase: 2 };               // StoreAct::Kind
const faults = { none: 0, missing: 1, silent: 2, full: 3, refused: 4, taken: 5, elsewhere: 6 };  // StoreFault
const patience_ms = 2000;       // for a store that doesn't answer at the start
const letting_go_ms = 600;      // a page that is loaded anew may still hold the lock that long

export class Store {
  #database = null;
  #list = [];  // what the write that is being asked for consists of
  #holds = false;
  #answer;

  /// @param answer  called with a write's number and its fault, later and never at once
  constructor(answer) {
    this.#answer = answer;
  }

  /// {records, fault}: what is kept, without records where it can't be had. A store that is silent, or another page's,
  /// may come after all: then `late` is called with its records.
  async open(late) {
    const held = this.#hold();
    const ours = held.then(() => this.#read()).then((records) => ({ records, fault: faults.none }));
    const first = await Promise.race([ours, this.#meanwhile()]).catch(() => ({ fault: faults.missing }));
    if (first.fault === faults.silent || first.fault === faults.elsewhere) ours.then(late, () => {});
    return first;
  }

  act(kind, part, sheet, sequence, last, bytes) {
    this.#list.push({ kind, part: parts[part], sheet, sequence, last, bytes });
  }

  write(id) {
    const list = this.#list;
    this.#list = [];
    try {
      const transaction = this.#database.transaction([...new Set(list.map(({ part }) => part))], 'readwrite');
      transaction.oncomplete = () => this.#answer(id, faults.none);
      transaction.onabort = () => this.#answer(id, fault_of(transaction.error));
      for (const { kind, part, sheet, sequence, last, bytes } of list) {
        const store = transaction.objectStore(part);
        if (kind === acts.erase) store.delete(IDBKeyRange.bound([sheet, sequence], [sheet, last]));
        else if (kind === acts.add) store.add(bytes, [sheet, sequence]);
        else store.put(bytes, [sheet, sequence]);
      }
      transaction.commit?.();  // it is done even if the page goes before the next turn
    } catch (error) {
      queueMicrotask(() => this.#answer(id, fault_of(error)));
    }
  }

  /// For as long as this page lives.
  #hold() {
    if (!navigator.locks) return this.#held_at_once();
    return new Promise((held, refused) => {
      navigator.locks.request('fogsheet', () => {
        this.#holds = true;
        held();
        return new Promise(() => {});
      }).catch(refused);
    });
  }

  async #held_at_once() { this.#holds = true; }

  /// What there is to say of a store that takes long.
  async #meanwhile() {
    await sleep(letting_go_ms);
    if (!this.#holds) return { records: await this.#read(), fault: faults.elsewhere };
    await sleep(patience_ms - letting_go_ms);
    return { fault: faults.silent };
  }

  async #read() {
    this.#database ??= await asked(indexedDB.open('fogsheet', 1), (request) => {
      request.onupgradeneeded = () => parts.forEach((part) => request.result.createObjectStore(part));
    });
    const transaction = this.#database.transaction(parts);
    const lists = await Promise.all(parts.filter((part) => part !== 'damaged').map(async (part) => {
      const store = transaction.objectStore(part);
      const [keys, values] = await Promise.all([asked(store.getAllKeys()), asked(store.getAll())]);
      return keys.map(([sheet, sequence], i) => ({ part: parts.indexOf(part), sheet, sequence, bytes: values[i] }));
    }));
    return lists.flat();
  }
}

const sleep = (ms) => new Promise((done) => { setTimeout(done, ms); });

function asked(request, prepare = () => {}) {
  return new Promise((resolve, reject) => {
    prepare(request);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function fault_of(error) {
  if (error?.name === 'QuotaExceededError') return faults.full;
  if (error?.name === 'ConstraintError') return faults.taken;
  return faults.refused;
}
