// The programs that a test run starts, so that the next run can end those that a killed one has left behind. A process is
// known by its number and its start time: a number that was given away again is let alone.
import { appendFileSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const list = fileURLToPath(new URL('../../../build/log/browser-processes.txt', import.meta.url));

/// Clock ticks since the machine started, from Linux's /proc; null when there is no such process.
function started_at(pid) {
  try {
    return readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1).split(' ')[19];
  } catch {
    return null;
  }
}

/// @param pid  the leader of a process group of its own
export function remember(pid) {
  mkdirSync(path.dirname(list), { recursive: true });
  appendFileSync(list, `${pid} ${started_at(pid)} ${process.pid} ${started_at(process.pid)}\n`);
}

export function end_group(pid) {
  try {
    process.kill(-pid, 'SIGKILL');
  } catch {
    // gone already
  }
}

/// Ends what runs have left behind that are no longer there themselves.
export function end_leftovers() {
  let lines;
  try {
    lines = readFileSync(list, 'utf8').trim().split('\n');
  } catch {
    return;
  }
  const kept = lines.filter((line) => {
    const [pid, start, owner, owner_start] = line.split(' ');
    if (started_at(owner) === owner_start) return true;
    if (started_at(pid) === start) end_group(Number(pid));
    return false;
  });
  rmSync(list, { force: true });
  if (kept.length > 0) appendFileSync(list, `${kept.join('\n')}\n`);
}
