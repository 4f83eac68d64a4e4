// Runs a later program (NAME.wasm) beside the page, by its script NAME_worker.js, so that the page answers meanwhile and can end
// it whatever it is at. Each has a worker of its own, and goes with all its memory.
import { own_worker, program_of } from './own_files.js';

export const faults = { no_program: -1, too_long: -2, no_bytes: -3, broken: -4 };  // as page_fault() in shell/app_inside.h counts them
export const patience_s = 60;

/// @param hear  told each message of the worker's
/// @param fail  told once, by one of `faults`, why nothing more comes; it has been ended by then
/// @return {say(message, moved), end()}: after end() nothing is told any more
export function run_beside(name, hear, fail) {
  let is_over = false;
  const end = () => {
    is_over = true;
    clearTimeout(alarm);
    made.then((worker) => worker.terminate(), () => {});
  };
  const give_up = (fault) => {
    if (is_over) return;
    end();
    fail(fault);
  };
  const made = started(name, (data) => {
    if (is_over) return;
    if (data?.failed) give_up(faults[data.failed]);
    else hear(data);
  }, () => give_up(faults.no_program));
  made.catch(() => give_up(faults.no_program));
  const alarm = setTimeout(() => give_up(faults.too_long), patience_s * 1000);
  return {
    say: (message, moved = []) => made.then((worker) => { if (!is_over) worker.postMessage(message, moved); }, () => {}),
    end,
  };
}

async function started(name, hear, fail) {
  const worker = await own_worker(`${name}_worker.js`);
  worker.onmessage = ({ data }) => hear(data);
  worker.onerror = (event) => {
    event.preventDefault();
    fail();
  };
  worker.postMessage(await program_of(`${name}.wasm`));
  return worker;
}
