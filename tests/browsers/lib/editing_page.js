// Runs inside the page of a kill test, beside the product's own script: tells the test what is on the device, then edits
// by the page's handles and tells each edit that is shown as kept, until the process is killed.
const told = async (what) => (await fetch('./told', { method: 'POST', body: JSON.stringify(what) })).text();
const sheet = window.fogsheet;
const must = (answer) => {
  if (!answer.ok) throw new Error(answer.error);
};
const do_it = (name, args = {}) => must(sheet.command(name, args));

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

const kept = async () => {
  while (sheet.read().history.kept.state !== 'kept') await new Promise((turn) => { setTimeout(turn, 1); });
};

// An edit that was not kept is done again after the kill: at another place, for what is there already is refused.
const aside_deg = (Date.now() % 1000) * 1e-5;

/// Marks are only ever added, so that a mark that was kept must be there for good; between them all else is done.
function edit(n) {
  if (n % 12 === 0) do_it('new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' });
  const { sheet: { mid_lat_deg, mid_lon_deg }, marks } = sheet.read();
  do_it('add-mark', { name: `edit ${n}`, lat_deg: mid_lat_deg + (n % 12) * 0.001, lon_deg: mid_lon_deg + aside_deg });
  if (n % 3 === 0) {
    do_it('undo');
    do_it('redo');
  }
  if (n % 4 === 0 && marks.length > 1) do_it('move-mark', { id: marks[0].id, lat_deg: mid_lat_deg - 0.01, lon_deg: mid_lon_deg + 0.001 * (n % 7) });
  if (n % 7 === 0 && marks.length > 1) sheet.command('lay-edge', { from: marks[0].id, to: marks[1].id });  // too short an edge is refused
}

async function run() {
  await sheet.ready;
  const { history, sheet: { name } } = sheet.read();
  let next = Number(await told({ found: { marks: marks_of_all(), kept: history.kept, sheets: history.drawer.length, name, notes: document.getElementById('margin').innerText } }));
  if (next === 0) do_it('new-sheet', { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' });
  for (;; next += 1) {
    edit(next);
    await kept();
    await told({ kept: next });
  }
}

run().catch((error) => told({ error: `${error.message} ${error.stack}` }));
