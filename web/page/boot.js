// Starts the page: fetches the application and its typeface, joins it to canvas, panels, input and handles, and keeps them
// in step. Everything it needs is among our own files.
import { half_typed, put_back } from './field.js';
import { Files } from './files.js';
import { make_handles } from './handles.js';
import { listen } from './input.js';
import { Store } from './keeper.js';
import { Layout } from './layout.js';
import { answer_worker, keep_offline } from './offline.js';
import { bytes_of, program_of } from './own_files.js';
import { Painter } from './painter.js';
import { make_platform } from './platform.js';
import { Program } from './program.js';
import { SheetCanvas } from './sheet_canvas.js';
import { Status } from './status.js';
import { load_faces } from './text_image.js';
import { words } from './words.js';

const version = new URL('.', import.meta.url).pathname.split('/').at(-2);
const faces = ['Regular', 'Bold', 'Italic'];

const handles = make_handles();
const status = new Status();
start().catch((error) => {
  console.error(error);
  give_up(typeof WebAssembly === 'object' ? words.no_program : words.old_browser);
});

/// The first sentence stands: what follows from a stop is no news.
function give_up(sentence) {
  if (status.stopped) return;
  status.stop(sentence);
  handles.fail(sentence);
}

async function start() {
  const page = { program: null, files: null };
  const tell = (what, ...told) => page.tell(what, ...told);
  let is_running;
  const running = new Promise((done) => { is_running = done; });
  const store = new Store((write, fault) => tell('store_answered', write, fault), (...told) => running.then(() => tell('store_told', ...told)));
  page.files = new Files(tell);
  const platform = make_platform(store, page.files, (text) => status.read_aloud(text), tell);
  const [module, kept, regular, bold, italic] = await Promise.all([
    Promise.all([import('./fogsheet.js'), program_of('fogsheet.wasm')]).then(([{ default: make_module }, program]) => make_module({ page: platform, ...program })),
    store.open((later) => running.then(() => page.take_up_late(later))),
    ...faces.map((face) => bytes_of(`fonts/B612-${face}.otf`)),
    load_faces(),
  ]);
  page.program = new Program(module, [regular, bold, italic], (error) => {
    console.error(error);
    give_up(words.stopped);
  });
  run(page, kept);
  is_running();
}

const was_loaded_anew = () => ['reload', 'back_forward'].includes(performance.getEntriesByType('navigation')[0]?.type);

/// "1 2" for 2: what a step of the dimmer took away stays away at the next.
const steps_up_to = (step) => Array.from({ length: step }, (_, i) => i + 1).join(' ');

/// Joins the parts. What stands still stays untouched: panels are painted when their revision grows, frames drawn when wanted.
const clock_ms = 20_000;  // what shows the time is never further behind

function run(page, kept) {
  const { program, files } = page;
  const element = document.querySelector('#sheet canvas');
  const root = document.documentElement;
  let painted = -1;

  const layout = new Layout(() => happen(() => canvas.place()));
  const canvas = new SheetCanvas(program, element, layout, () => refresh());
  const painter = new Painter({
    press: (press, more) => command(press.command, { ...press.arguments, ...more }),
    refuse: (reason) => status.say(reason),
    focus_sheet: () => element.focus({ preventScroll: true }),
    turned: (text, by_deg) => program.turned(text, by_deg),
    opened: (part) => layout.bring_into_view(part),
  });

  function refresh() {
    if (program.stopped) return;
    if (element.style.cursor !== program.cursor()) element.style.cursor = program.cursor();
    const revision = program.panels_revision();
    if (revision === painted) return;
    painted = revision;
    if (root.dataset.palette !== program.palette()) wear(program.palette());
    mark('text', String(program.text_percent()));
    mark('dim', steps_up_to(program.dim_step()));
    if (painter.paint(program.panels()).length > 0) layout.set_folded(false);
    canvas.place();
  }

  function mark(name, value) {
    if (root.dataset[name] !== value) root.dataset[name] = value;
  }

  function wear(palette) {
    root.dataset.palette = palette;
    document.querySelector('meta[name=theme-color]').content = getComputedStyle(root).getPropertyValue('--table').trim();
  }

  /// Something was done: the application is told, and the page follows in the next frame.
  function happen(act) {
    if (program.stopped) return;
    try {
      act();
      canvas.wake();
    } catch (error) {
      if (error !== program.stopped) throw error;  // a stop has been said already
    }
  }
  /// The platform's answers: nothing of them need be on the sheet, so that no frame is drawn for most.
  page.tell = (what, ...told) => {
    let answer;
    happen(() => {
      answer = program[what](...told);
      refresh();
    });
    return answer;
  };

  /// What the store holds comes into the application.
  const take_up = ({ records, fault }) => {
    records?.forEach(({ part, sheet, sequence, bytes }) => program.store_record(part, sheet, sequence, bytes));
    if (records) program.store_read(fault);
    else program.store_refused(fault);
  };
  page.take_up_late = (later) => happen(() => {
    take_up(later);
    refresh();
    put_back(program.take_half_typed());
  });

  /// A command by name: panels follow at once, the frame as soon as it may.
  function run_command(name, args) {
    const result = program.command(name, args);
    refresh();
    canvas.wake();
    return result;
  }

  /// As a press: what could not be done is said in the sheet's margin by the application itself.
  function command(name, args) {
    status.say('');
    happen(() => run_command(name, args));
  }

  canvas.place();
  take_up(kept);
  program.start(location.hash.slice(1), was_loaded_anew());
  refresh();
  put_back(program.take_half_typed());
  canvas.draw();
  listen(program, element, happen);
  files.listen((over) => {
    if (over === ('hover' in root.dataset)) return;
    root.toggleAttribute('data-hover', over);
    status.say(over ? words.let_go : '');
  });
  addEventListener('hashchange', () => {
    if (location.hash.length > 1) command('open-link', { text: location.hash.slice(1) });
  });
  const put_away = () => happen(() => {
    program.half_typed(half_typed());
    program.hidden();
  });
  addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') put_away();
    else happen(() => program.half_typed({ field: '', text: '' }));
  });
  addEventListener('pagehide', put_away);
  // Taken out of the browser's memory again, a page has missed what others have written.
  addEventListener('pageshow', ({ persisted }) => { if (persisted) location.reload(); });
  setInterval(() => { if (document.visibilityState === 'visible') happen(() => program.minute_passed()); }, clock_ms);
  // What is printed is painted as the browser sets about it, whoever asked for it.
  addEventListener('beforeprint', () => page.tell('printing', true));
  addEventListener('afterprint', () => page.tell('printing', false));
  addEventListener('pointerdown', () => status.say(''), { capture: true });
  canvas.wake();

  handles.started({
    canvas: element,
    refresh,
    read: () => program.read(),
    command: run_command,
    commands: () => program.commands(),
    where: (name) => program.where(name),
    link: () => program.link(),
    frames: () => canvas.frames,
  });
  handles.settle();
  answer_worker(version);
  keep_offline((state) => happen(() => {
    program.offline_state(state);
    refresh();
  }));
}
