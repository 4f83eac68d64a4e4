// Runs inside the page of a kill test, beside the product's own script: tells the test what is on the device, then edits
// by the page's handles and tells each edit that is shown as kept, until the process is killed. Where several tabs do so at
// once, each has a number in its address; every fifth edit of each goes onto one sheet that all share.
const tab = new URLSearchParams(location.search).get('tab') ?? '1';
const told = async (what) => (await fetch('./told', { method: 'POST', body: JSON.stringify({ tab, ...what }) })).text();
const sheet = window.fogsheet;
const must = (answer) => {
  if (!answer.ok) throw new Error(answer.error);
};
const do_it = (name, args = {}) => must(sheet.command(name, args));
const middle = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' };

/// The names of all marks on all sheets; each sheet is opened for it.
function marks_of_all() {
  const drawer = sheet.read().history.drawer;
  const names = drawer.filter(({ removed }) => !removed).flatMap(({ key }) => {
    do_it('open-sheet', { key });
    return sheet.read().marks.map(({ name }) => name);
  });
  const in_hand = drawer.find((each) => each.in_hand);
  if (in_hand) do_it('open-sheet', { key: in_hand.key });
  return names;
}

/// Not by a timer: in a tab out of sight those are slow.
const turn = () => new Promise((done) => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = done;
  port2.postMessage(0);
});

/// Whether all that was done is shown as kept; false once it is said that it can't be.
async function is_kept() {
  for (;;) {
    const { state } = sheet.read().history.kept;
    if (state === 'kept') return true;
    if (state === 'failed' || state === 'off') return false;
    await turn();
  }
}

// An edit that was not kept is done again after the kill: at another place, for what is there already is refused.
const aside_deg = (Date.now() % 1000) * 1e-5 + Number(tab) * 0.02;

const shared_sheet = () => sheet.read().history.drawer.find(({ name }) => name === 'shared');
let own_key = null;

/// Marks are only ever added, so that a mark that was kept must be there for good; between them all else is done.
function edit(n, full) {
  const is_shared = n % 5 === 4 && shared_sheet();
  if (is_shared) do_it('open-sheet', { key: is_shared.key });
  else if (n % 12 === 0 || !own_key) {
    do_it('new-sheet', middle);
    own_key = sheet.read().history.drawer.find(({ in_hand }) => in_hand).key;
  } else if (!sheet.read().history.drawer.some(({ key, in_hand }) => in_hand && key === own_key)) do_it('open-sheet', { key: own_key });
  const { sheet: { mid_lat_deg, mid_lon_deg }, marks } = sheet.read();
  do_it('add-mark', { name: `edit ${tab}.${n}${full ? ' '.padEnd(150, 'x') : ''}`, lat_deg: mid_lat_deg + (n % 12) * 0.001 + Math.floor(n / 12) * 1e-5, lon_deg: mid_lon_deg + aside_deg });
  if (n % 3 === 0) {
    do_it('undo');
    do_it('redo');
  }
  if (n % 4 === 0 && marks.length > 1) do_it('move-mark', { id: marks[0].id, lat_deg: mid_lat_deg - 0.01 - Math.random() * 0.001, lon_deg: mid_lon_deg + 0.001 * (n % 7) });
  if (n % 7 === 0 && marks.length > 1) sheet.command('lay-edge', { from: marks[0].id, to: marks[1].id });  // too short an edge is refused
}

async function run() {
  const other = new URLSearchParams(location.search).get('other');
  if (other) window.open(other);
  await sheet.ready;
  const { history, sheet: { name } } = sheet.read();
  const { next, tabs, full } = JSON.parse(await told({ found: { marks: marks_of_all(), kept: history.kept, sheets: history.drawer.length, name, notes: document.getElementById('margin').innerText } }));
  if (tabs > 1 && tab === '1' && !shared_sheet()) do_it('new-sheet', { ...middle, name: 'shared' });
  for (let n = next; ; n += 1) {
    edit(n, full);
    if (await is_kept()) await told({ kept: n });
    else await told({ unkept: document.getElementById('margin').innerText });
  }
}

run().catch((error) => told({ error: `${error.message} ${error.stack}` }));
