// Does what the application asks of a store on the device (shell/keeper): one IndexedDB database, whose own version stays
// 1 for ever, with a store for each part and [sheet, sequence] as keys. Nothing is decided here. Where the browser has locks
// there is one for each sheet and boat, which the page that writes it holds; what was written is told to the other pages.

const parts = ['sheets', 'journal', 'desk', 'damaged'];  // StorePart in shell/keeper/store.h
const acts = { put: 0, add: 1, erase: 2 };               // StoreAct::Kind
const faults = { none: 0, missing: 1, silent: 2, full: 3, refused: 4, taken: 5, elsewhere: 6 };  // StoreFault
const asks = { claim: 0, claim_now: 1, let_go: 2, read: 3 };  // StoreAsk::Kind
const news = { read: 0, granted: 1, elsewhere: 2, wanted: 3, heard: 4 };  // StoreNews
const lock_of = (part, key) => `fogsheet ${parts[part]} ${key}`;
const patience_ms = 2000;       // for a store that doesn't answer at the start
const letting_go_ms = 600;      // a page that is loaded anew may still hold the lock that long

export class Store {
  #database = null;
  #list = [];  // what the write that is being asked for consists of
  #holds = false;
  #claims = new Map();  // by name of the lock, what lets go of it
  #others = globalThis.BroadcastChannel && new BroadcastChannel('fogsheet');
  #answer;
  #told;

  /// @param answer  called with a write's number and its fault, later and never at once
  /// @param told    called with StoreNews, part, key and records
  constructor(answer, told) {
    this.#answer = answer;
    this.#told = told;
    this.#others?.addEventListener('message', ({ data: { wanted, written } }) => {
      if (wanted) told(news.wanted, ...wanted, []);
      written?.forEach(({ part, key, records }) => told(news.heard, part, key, records));
    });
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
    let transaction;
    try {
      transaction = this.#database.transaction([...new Set(list.map(({ part }) => part))], 'readwrite');
      transaction.oncomplete = () => {
        this.#others?.postMessage({ written: list.filter(is_for_others).map(told_of) });
        this.#answer(id, faults.none);
      };
      transaction.onabort = () => this.#answer(id, fault_of(transaction.error));
      for (const { kind, part, sheet, sequence, last, bytes } of list) {
        const store = transaction.objectStore(part);
        if (kind === acts.erase) store.delete(IDBKeyRange.bound([sheet, sequence], [sheet, last]));
        else if (kind === acts.add) store.add(bytes, [sheet, sequence]);
        else store.put(bytes, [sheet, sequence]);
      }
      transaction.commit?.();  // it is done even if the page goes before the next turn
    } catch (error) {
      transaction?.abort();  // what was asked for before that would be done without the rest
      if (!transaction) queueMicrotask(() => this.#answer(id, fault_of(error)));
    }
  }

  /// StoreAsk: what comes of it is told.
  ask(kind, part, key) {
    const name = lock_of(part, key);
    if (kind === asks.read) this.#tell_all(news.read, part, key).catch(() => {});
    else if (kind === asks.let_go) this.#let_go(name);
    else this.#claim(name, part, key);
    if (kind === asks.claim_now) this.#others?.postMessage({ wanted: [part, key] });
  }

  #let_go(name) {
    this.#claims.get(name)?.();
    this.#claims.delete(name);
  }

  /// Where there are no locks each page writes what it likes, and finds out when another has.
  #claim(name, part, key) {
    if (this.#claims.has(name)) return;
    this.#claims.set(name, null);
    const hold = () => new Promise((let_go) => {
      this.#claims.set(name, let_go);
      this.#tell_all(news.granted, part, key).catch(() => this.#let_go(name));
    });
    if (!navigator.locks) hold();
    else navigator.locks.request(name, hold).catch(() => this.#claims.delete(name));
    setTimeout(() => { if (this.#claims.get(name) === null) this.#told(news.elsewhere, part, key, []); }, letting_go_ms);
  }

  async #tell_all(what, part, key) {
    this.#told(what, part, key, await this.#read_one(part, key));
  }

  /// For as long as this page lives, and beside others. Pages of a version that had one lock for all keep to themselves by it.
  #hold() {
    if (!navigator.locks) return this.#held_at_once();
    return new Promise((held, refused) => {
      navigator.locks.request('fogsheet', { mode: 'shared' }, () => {
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
    return this.#records(parts);
  }

  /// All of a sheet, or of a boat.
  #read_one(part, key) {
    return parts[part] === 'sheets' ? this.#records(['sheets', 'journal'], IDBKeyRange.bound([key, 0], [key, Infinity])) : this.#records([parts[part]], IDBKeyRange.only([key, 1]));
  }

  async #records(names, range) {
    const transaction = this.#database.transaction(names);
    const lists = await Promise.all(names.map(async (part) => {
      const store = transaction.objectStore(part);
      const [keys, values] = await Promise.all([asked(store.getAllKeys(range)), asked(store.getAll(range))]);
      return keys.map(([sheet, sequence], i) => ({ part: parts.indexOf(part), sheet, sequence, bytes: values[i] }));
    }));
    return lists.flat();
  }
}

/// A step goes whole, of the rest the name: what is damaged, and a journal that was taken up, go with their sheet.
const is_for_others = ({ kind, part }) => part !== 'damaged' && (part !== 'journal' || kind === acts.add);
const told_of = ({ part, sheet, sequence, bytes }) => ({
  part: parts.indexOf(part === 'desk' ? part : 'sheets'),
  key: sheet,
  records: part === 'journal' ? [{ part: parts.indexOf(part), sheet, sequence, bytes }] : [],
});

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
