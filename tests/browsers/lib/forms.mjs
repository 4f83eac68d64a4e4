// Filling in forms as a user does: parts are brought into view, pressed by the hand in use, and typed into by the keyboard.
import assert from 'node:assert/strict';
import { setTimeout as sleep } from 'node:timers/promises';

import { place_of } from './hands.mjs';
import { until } from './sheet.mjs';

const selector = (name) => `[data-name="${name}"]`;

/// Waits until a part of that name is there and brings it into view, again if the page moves it away meanwhile: a page
/// that changes its size keeps the field in hand in view.
export async function show(page, name) {
  await until(page, `${name} in reach`, (part, wanted) => {
    document.querySelector(part)?.scrollIntoView({ block: 'nearest' });
    return window.fogsheet.where(wanted) !== null;
  }, selector(name), name);
}

/// Presses it where it stands once the page has stopped moving: a keypad that opens or shuts moves what is below it.
export async function press_part(page, hand, name) {
  let before = null;
  for (let looks = 0; looks < 100; looks += 1) {
    await show(page, name);
    const at = await place_of(page, name);
    if (before?.x === at.x && before.y === at.y) return hand.press(at);
    before = at;
    await sleep(60);
  }
  return assert.fail(`${name} does not stand still`);
}

/// Types into a field in place of what stands there, and leaves it by Enter, a note of several lines by Tab.
export async function type_into(page, hand, name, text) {
  const { keyboard } = page.raw.page;
  await press_part(page, hand, name);
  await until(page, `${name} has the focus`, (wanted) => document.activeElement?.dataset.name === wanted, name);
  await keyboard.press('Control+A');
  await keyboard.insertText(text);
  await keyboard.press(await page.evaluate(() => (document.activeElement.localName === 'textarea' ? 'Tab' : 'Enter')));
}

/// Types into a field by the keypad under the finger; one that its figures complete has left it by itself.
/// @param hand  one that counts: its figures are not counted
export async function by_pad(page, hand, name, text) {
  await press_part(page, hand, name);
  await until(page, 'a keypad', () => document.querySelector('.keypad') !== null);
  for (const figure of text) await press_part(page, { press: hand.figure }, `pad/${figure}`);
  if (await page.evaluate(() => document.querySelector('.keypad') !== null)) await press_part(page, { press: hand.figure }, 'pad/done');
  await until(page, 'it is taken', (wanted) => document.activeElement?.dataset.name !== wanted, name);
}

/// Chooses from a line that opens.
export async function choose(page, name, value) {
  await show(page, name);
  await page.raw.page.selectOption(selector(name), value);
}

/// Moves the focus by Tab until it is on that part.
export async function tab_to(page, name) {
  const { keyboard } = page.raw.page;
  for (let presses = 0; presses < 120; presses += 1) {
    if (await page.evaluate((wanted) => document.activeElement?.dataset.name === wanted, name)) return;
    await keyboard.press('Tab');
  }
  assert.fail(`${name} can't be reached by Tab`);
}

export const reason_at = (page, name) => page.evaluate((wanted) => document.querySelector(wanted)?.closest('.field')?.querySelector('.error')?.innerText.trim() ?? '', selector(name));
export const typed_in = (page, name) => page.evaluate((wanted) => document.querySelector(wanted)?.value ?? null, selector(name));
