// window.fogsheet: the handles for scripts and tests (README, "Scripting"). It exists before the application runs; until
// then every handle but `ready` says so.
import { words } from './words.js';

// Things that are a place on the sheet rather than something to press: whatever lies on them there, the place is the same.
const is_a_place = (name) => name.startsWith('rose/') || name.startsWith('sheet/');

/// Returns {started(page), settle, fail}: `page` has read, command, commands, where, link, frames and refresh.
export function make_handles() {
  let page = null;
  let settle;
  let fail;
  const ready = new Promise((resolve, reject) => {
    settle = resolve;
    fail = (sentence) => reject(new Error(sentence));
  });
  ready.catch(() => {});  // a page that can't start says so on the screen; nobody need listen here
  const running = () => {
    if (!page) throw new Error(words.not_started);
    return page;
  };
  window.fogsheet = Object.freeze({
    ready,
    read: () => running().read(),
    command: (name, args = {}) => running().command(name, args),
    commands: () => running().commands(),
    where: (name) => where(running(), String(name)),
    link: () => running().link(),
    frames: () => page?.frames() ?? 0,
  });
  return { started: (running_page) => { page = running_page; }, settle, fail };
}

function where(page, name) {
  page.refresh();
  const part = part_named(name);
  if (part) return visible_box(part);
  const box = page.where(name);
  if (!box) return null;
  const canvas = page.canvas;
  const origin = canvas.getBoundingClientRect();
  const at = { x: origin.left + box.x, y: origin.top + box.y, width: box.width, height: box.height };
  const hit = document.elementFromPoint(at.x + at.width / 2, at.y + at.height / 2);
  return hit === canvas || (is_a_place(name) && hit?.closest('#notes')) ? at : null;
}

/// `panel/chain` is a panel or a named part of one; anything else is a named part.
function part_named(name) {
  const quoted = (text) => CSS.escape(text);
  if (!name.startsWith('panel/')) return document.querySelector(`[data-name="${quoted(name)}"]`);
  const bare = quoted(name.slice('panel/'.length));
  return document.querySelector(`[data-panel="${bare}"]`) ?? document.querySelector(`[data-panel] [data-name="${bare}"]`);
}

/// What can be seen of a part; null when a press on its middle would not reach it.
function visible_box(part) {
  let { left, top, right, bottom } = part.getBoundingClientRect();
  for (let around = part.parentElement; around; around = around.parentElement) {
    if (getComputedStyle(around).overflow === 'visible') continue;
    const edge = around.getBoundingClientRect();
    left = Math.max(left, edge.left);
    top = Math.max(top, edge.top);
    right = Math.min(right, edge.right);
    bottom = Math.min(bottom, edge.bottom);
  }
  right = Math.min(right, innerWidth);
  bottom = Math.min(bottom, innerHeight);
  left = Math.max(left, 0);
  top = Math.max(top, 0);
  if (right <= left || bottom <= top) return null;
  const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
  return hit && part.contains(hit) ? { x: left, y: top, width: right - left, height: bottom - top } : null;
}
