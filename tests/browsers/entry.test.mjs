// Entry in Chromium: the keypad under a finger, and a field that stays a real one under it; names by composition; a field in
// sight while the system's keyboard covers half the page; what is typed kept when the page is loaded again.
import assert from 'node:assert/strict';
import { describe, test } from 'node:test';

import { with_engine } from './lib/engines.mjs';
import { press_part, reason_at, show, typed_in, type_into } from './lib/forms.mjs';
import { box_of, mouse_hand, touch_hand, where } from './lib/hands.mjs';
import { views } from './lib/job.mjs';
import { done, open, read, ready, until } from './lib/sheet.mjs';
import { chromium_on_site } from './lib/stage.mjs';

const phone = views.phone;
const tablet = views['tablet upright'];

const in_hand = (page) => page.evaluate(() => document.activeElement?.dataset.name ?? '');
const inputmode_of = (page, name) => page.evaluate((wanted) => document.querySelector(`[data-name="${wanted}"]`).getAttribute('inputmode'), name);
const pad_is_open = (page) => page.evaluate(() => document.querySelector('.keypad') !== null);
const letter_in_force = (page) => page.evaluate(() => document.querySelector('.keypad [aria-pressed=true]')?.textContent ?? '');

async function type_by_pad(page, hand, ...keys) {
  for (const key of keys) await press_part(page, hand, `pad/${key}`);
}

async function open_pad(page, hand, name) {
  await press_part(page, hand, name);
  await until(page, 'a keypad, with what stands there selected', () => {
    const { selectionStart, selectionEnd, value } = document.activeElement;
    return document.querySelector('.keypad') !== null && selectionStart === 0 && selectionEnd === value?.length;
  });
}

/// The keypad covers neither its field nor the reason under it, and both can be seen whole.
async function check_pad_is_clear(page, name) {
  const field = await box_of(page, name);
  const pad = await page.evaluate(() => {
    const box = document.querySelector('.keypad').getBoundingClientRect();
    const error = document.querySelector('.entry:has(.keypad) .error');
    const said = error.hidden ? null : error.getBoundingClientRect();
    const whole = (part) => document.elementFromPoint(part.left + part.width / 2, part.top + part.height / 2)?.closest('.entry') !== null;
    return { top: box.top, bottom: box.bottom, error: said && { bottom: said.bottom, seen: whole(said) }, page: innerHeight };
  });
  assert.ok(pad.top >= field.y + field.height, 'the pad begins under its field');
  assert.ok(pad.bottom <= pad.page, 'and ends on the page');
  if (pad.error) assert.ok(pad.error.seen && pad.error.bottom <= pad.top + 1, 'and under the reason');
  for (const key of await page.evaluate(() => [...document.querySelectorAll('.keypad button')].map((each) => each.dataset.name))) assert.ok(await where(page, key), `${key} can be pressed`);
}

describe('entry', with_engine('chromium', 280_000), () => {
  const stage = chromium_on_site();
  const fresh = async (view) => {
    const page = await stage.browser.open(view);
    await open(page, stage.site.url);
    return { page, hand: view.touch ? await touch_hand(page) : mouse_hand(page), cdp: await page.raw.context.newCDPSession(page.raw.page) };
  };

  for (const [name, view] of Object.entries({ phone, tablet, 'phone across': views['phone across'] }))
    test(`a direction by keypad on a ${name}: three figures, its letter, its reciprocal, a degree more`, async () => {
      const { page, hand } = await fresh(view);
      await press_part(page, hand, 'tool/straight-edge');
      await press_part(page, hand, 'begin-direction');
      await open_pad(page, hand, 'direction');
      assert.equal(await inputmode_of(page, 'direction'), 'none', "the system's keyboard stays away");
      await check_pad_is_clear(page, 'direction');
      assert.equal(await letter_in_force(page), 'T');
      await type_by_pad(page, hand, '0', '9');
      assert.equal((await read(page)).edge, null, 'two figures are no direction yet');
      await type_by_pad(page, hand, '5');
      const set = () => page.evaluate(() => window.fogsheet.read().edge.bearing_true_deg);
      await until(page, 'three figures to be one', () => Boolean(window.fogsheet.read().edge));
      assert.ok(Math.abs((await set()) - 95) < 1e-6, String(await set()));
      assert.equal(await in_hand(page), 'direction', 'the field stays in hand');
      await type_by_pad(page, hand, 'M');
      const { used_deg } = (await read(page)).variation;
      await until(page, 'the magnetic ring', (wanted) => Math.abs(window.fogsheet.read().edge.bearing_true_deg - wanted) < 1e-6, 95 + used_deg);
      assert.equal(await letter_in_force(page), 'M');
      await type_by_pad(page, hand, 'recip.');
      await until(page, 'the reciprocal', (wanted) => Math.abs(window.fogsheet.read().edge.bearing_true_deg - wanted) < 1e-6, 275 + used_deg);
      await type_by_pad(page, hand, '+1°');
      await until(page, 'a degree more', (wanted) => Math.abs(window.fogsheet.read().edge.bearing_true_deg - wanted) < 1e-6, 276 + used_deg);
      await type_by_pad(page, hand, 'clear');
      assert.equal(await typed_in(page, 'direction'), '');
      await type_by_pad(page, hand, '1', '2', 'del', '0', '0');
      await until(page, 'a new entry', (wanted) => Math.abs(window.fogsheet.read().edge.bearing_true_deg - wanted) < 1e-6, 100 + used_deg);
      await press_part(page, hand, 'pad/done');
      await until(page, 'the pad to go', () => !document.querySelector('.keypad'));
      assert.equal(await inputmode_of(page, 'direction'), 'numeric');
      await page.close();
    });

  test('a position by keypad; what is wrong with it stands above the keys', async () => {
    const { page, hand } = await fresh(phone);
    const { id } = (await read(page)).marks[0];
    await done(page, 'select-mark', { id });
    await open_pad(page, hand, 'position');
    await type_by_pad(page, hand, ...'44°10.5', 'N', ...'031°72', 'W', 'done');
    await until(page, 'a reason', () => document.querySelector('[data-name=position]').closest('.field').classList.contains('bad'));
    assert.match(await reason_at(page, 'position'), /minutes/i, await typed_in(page, 'position'));
    await open_pad(page, hand, 'position');
    await check_pad_is_clear(page, 'position');
    await type_by_pad(page, hand, 'clear', ...'44°10.5', 'N', ...'031°20.4', 'W', 'done');
    await until(page, 'the mark to be there', (mark) => {
      const { lat_deg, lon_deg } = window.fogsheet.read().marks.find((each) => each.id === mark);
      return Math.abs(lat_deg - (44 + 10.5 / 60)) < 1e-6 && Math.abs(lon_deg + 31 + 20.4 / 60) < 1e-6;
    }, id);
    await page.close();
  });

  test('a bearing by keypad: the letter may come first, figures go on before it', async () => {
    const { page, hand } = await fresh(phone);
    await done(page, 'open-slip', { slip: 'new-mark' });
    await press_part(page, hand, 'how/bearing');
    await open_pad(page, hand, 'bearing');
    await type_by_pad(page, hand, 'M', '1', '0', '0');
    assert.equal(await typed_in(page, 'bearing'), '100M');
    await type_by_pad(page, hand, 'T');
    assert.equal(await typed_in(page, 'bearing'), '100T');
    await page.close();
  });

  test("mouse and keys keep the plain field; the device's own keyboard comes when it is asked for", async () => {
    const { page, hand } = await fresh({ ...views['tablet across'], touch: true });
    await done(page, 'begin-direction');
    const mouse = mouse_hand(page);
    await press_part(page, mouse, 'direction');
    assert.equal(await in_hand(page), 'direction');
    assert.equal(await pad_is_open(page), false);
    await page.raw.page.keyboard.type('041');
    await until(page, 'the edge', () => Math.abs((window.fogsheet.read().edge?.bearing_true_deg ?? 0) - 41) < 1e-6);
    await page.evaluate(() => document.activeElement.blur());

    await open_pad(page, hand, 'direction');
    await page.raw.page.keyboard.type('052');  // a keyboard types into it as always
    await until(page, 'the edge', () => Math.abs(window.fogsheet.read().edge.bearing_true_deg - 52) < 1e-6);
    await type_by_pad(page, hand, '0', '6');
    await press_part(page, hand, 'pad/abc');
    await until(page, 'the pad to go', () => !document.querySelector('.keypad'));
    assert.equal(await in_hand(page), 'direction');
    assert.equal(await typed_in(page, 'direction'), '06', 'the text goes along');
    assert.equal(await inputmode_of(page, 'direction'), 'numeric');
    assert.ok(Math.abs((await read(page)).edge.bearing_true_deg - 52) < 1e-6, 'and is not taken for left');
    await press_part(page, hand, 'direction');
    assert.equal(await inputmode_of(page, 'direction'), 'numeric', "a press that sets the caret leaves the system's keyboard");
    await page.close();
  });

  test('what was typed, and a field that was left, before the keypad stood are not taken back', async () => {
    const { page } = await fresh(phone);
    await done(page, 'open-slip', { slip: 'new-mark' });
    await until(page, 'the form', () => Boolean(document.querySelector('[data-name=position]')));
    // In one go, as on a page that is slow to answer: the press that opens the keypad, and what a quick hand does at once.
    const quick = (typed, leaves) => page.evaluate(async ([text, left]) => {
      const input = document.querySelector('[data-name=position]');
      input.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, pointerType: 'touch' }));
      input.dispatchEvent(new PointerEvent('pointerup', { bubbles: true, pointerType: 'touch' }));
      input.focus();
      if (text) document.execCommand('insertText', false, text);
      if (left) input.blur();
      await new Promise((soon) => setTimeout(soon, 100));
      return { text: input.value, in_hand: document.activeElement === input, selected: input.selectionEnd - input.selectionStart, pad: Boolean(document.querySelector('.keypad')) };
    }, [typed, leaves]);
    assert.deepEqual(await quick('4', false), { text: '4', in_hand: true, selected: 0, pad: true });
    assert.deepEqual(await quick('', true), { text: '4', in_hand: false, selected: 0, pad: false });
    await page.close();
  });

  test('pasted: by the key, and as the system pastes', async () => {
    const { page, hand } = await fresh(tablet);
    const origin = new URL(stage.site.url).origin;
    await page.raw.context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin });
    await done(page, 'open-slip', { slip: 'new-mark' });
    await open_pad(page, hand, 'position');
    await page.evaluate(() => navigator.clipboard.writeText(' 44 11.0 N 031 19.0 W '));
    await type_by_pad(page, hand, 'paste');
    await until(page, 'the text', () => document.querySelector('[data-name=position]').value === '44 11.0 N 031 19.0 W');
    await page.evaluate(() => navigator.clipboard.writeText('44 12.0 N 031 18.0 W'));
    await page.raw.page.keyboard.press('Control+a');
    await page.raw.page.keyboard.press('Control+v');
    await until(page, 'the other text', () => document.querySelector('[data-name=position]').value === '44 12.0 N 031 18.0 W');

    // While the browser asks whether it may, the field is left.
    await page.evaluate(() => {
      navigator.clipboard.readText = () => new Promise((may) => { window.allow = () => may('45 0 N 31 0 W'); });
    });
    await type_by_pad(page, hand, 'paste');
    await page.evaluate(async () => {
      document.activeElement.blur();
      window.allow();
      await new Promise((soon) => setTimeout(soon, 50));
    });
    assert.notEqual(await in_hand(page), 'position', 'what was left stays left');
    assert.equal(await typed_in(page, 'position'), '44 12.0 N 031 18.0 W');
    await page.raw.context.clearPermissions();
    await page.evaluate(() => { delete navigator.clipboard.readText; });
    await open_pad(page, hand, 'position');
    await type_by_pad(page, hand, 'paste');
    await until(page, 'the reason', () => /Paste/.test(document.getElementById('status').textContent));
    await page.close();
  });

  test('a pressed button counts though the keypad goes away under it', async () => {
    const { page, hand } = await fresh(tablet);
    await done(page, 'open-slip', { slip: 'new-mark' });
    await type_into(page, hand, 'name', 'Under the pad');
    await open_pad(page, hand, 'height');
    await type_by_pad(page, hand, '1', '2');
    const beneath = await page.evaluate(() => {
      const boxes = [...document.querySelectorAll('[data-panel=new-mark] .choice label')];
      return boxes.map((each) => each.dataset.name);
    });
    await press_part(page, hand, beneath.at(-1));
    await until(page, 'the choice', (name) => document.querySelector(`[data-name="${name}"] input`).checked, beneath.at(-1));
    assert.equal(await typed_in(page, 'height'), '12');
    await page.close();
  });

  test('a name in any script, by composition: nothing is taken before it is done', async () => {
    const { page, hand, cdp } = await fresh(phone);
    const { marks } = await read(page);
    await done(page, 'select-mark', { id: marks[0].id });
    await press_part(page, hand, 'name');
    const attributes = await page.evaluate(() => Object.fromEntries(['autocorrect', 'autocapitalize', 'autocomplete', 'spellcheck', 'enterkeyhint', 'dir', 'inputmode'].map((each) => [each, document.activeElement.getAttribute(each)])));
    assert.deepEqual(attributes, { autocorrect: 'off', autocapitalize: 'off', autocomplete: 'off', spellcheck: 'false', enterkeyhint: 'done', dir: 'auto', inputmode: null });
    assert.equal(await pad_is_open(page), false);
    const name = () => page.evaluate((id) => window.fogsheet.read().marks.find((mark) => mark.id === id).name, marks[0].id);
    const steps = async () => (await read(page)).history.step;
    const step = await steps();
    await page.raw.page.keyboard.press('Control+a');
    await cdp.send('Input.imeSetComposition', { text: 'にほ', selectionStart: 2, selectionEnd: 2 });
    await page.evaluate(() => document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', isComposing: true, bubbles: true, cancelable: true })));
    assert.equal(await in_hand(page), 'name', 'Enter ends the composition, not the entry');
    await done(page, 'closer');  // whatever else happens
    assert.equal(await typed_in(page, 'name'), 'にほ');
    assert.equal(await name(), marks[0].name);
    await cdp.send('Input.insertText', { text: '日本 Ó Súil שלום' });
    assert.equal(await steps(), step);
    await page.raw.page.keyboard.press('Enter');
    await until(page, 'the name', (id) => window.fogsheet.read().marks.find((mark) => mark.id === id).name === '日本 Ó Súil שלום', marks[0].id);
    assert.equal(await steps(), step + 1);
    await page.close();
  });

  const is_clear_of = (page, name, bottom) => until(page, `${name} above ${bottom} px`, (wanted, low) => {
    const box = document.querySelector(`[data-name="${wanted}"]`).closest('.box').getBoundingClientRect();
    const hit = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
    return box.top >= 0 && box.bottom <= low && hit?.closest('.field') !== null;
  }, name, bottom);

  for (const [device, view] of Object.entries({ phone, tablet, 'tablet across': { ...views['tablet across'], touch: true } }))
    test(`no field lies under the system's keyboard: half of a ${device}`, async () => {
      const { page, hand } = await fresh(view);
      await done(page, 'open-slip', { slip: 'new-mark' });
      for (const name of ['name', 'note']) {
        await press_part(page, hand, name);
        assert.equal(await in_hand(page), name);
        // As most systems do it: less is seen of a page that stays as large as it was.
        await page.evaluate((height) => {
          Object.defineProperty(window.visualViewport, 'height', { configurable: true, get: () => height });
          window.visualViewport.dispatchEvent(new Event('resize'));
        }, view.height / 2);
        await is_clear_of(page, name, view.height / 2);
        await page.evaluate(() => {
          delete window.visualViewport.height;
          window.visualViewport.dispatchEvent(new Event('resize'));
        });
        // As others do it: the page itself is smaller.
        await page.raw.page.setViewportSize({ width: view.width, height: view.height / 2 });
        await is_clear_of(page, name, view.height / 2);
        await page.raw.page.setViewportSize({ width: view.width, height: view.height });
        await until(page, 'the page to have its size again', (whole) => innerHeight === whole, view.height);
      }
      await page.close();
    });

  test('what is typed outlives the page: forms, and a field that was not left', async () => {
    const { page, hand } = await fresh(phone);
    await done(page, 'open-slip', { slip: 'new-mark' });
    await type_into(page, hand, 'name', 'Half typed ⛵');
    await open_pad(page, hand, 'position');
    await type_by_pad(page, hand, ...'44°1');  // and the page goes
    await page.reload();
    await ready(page);
    await until(page, 'the form', () => Boolean(document.querySelector('[data-panel=new-mark]')));
    assert.equal(await typed_in(page, 'name'), 'Half typed ⛵');
    assert.equal(await typed_in(page, 'position'), '44°1');

    const { marks } = await read(page);
    await done(page, 'select-mark', { id: marks[0].id });
    await type_into(page, hand, 'position', '44 72 N 031 20 W');
    const reason = await reason_at(page, 'position');
    assert.match(reason, /minutes/i);
    await page.reload();
    await ready(page);
    await done(page, 'select-mark', { id: marks[0].id });
    await show(page, 'position');
    assert.equal(await typed_in(page, 'position'), '44 72 N 031 20 W');
    assert.equal(await reason_at(page, 'position'), reason);
    assert.deepEqual((await read(page)).marks, marks);
    await page.close();
  });

  test('out of sight, what is half typed counts for nothing and stays in hand; loaded again it is half typed still', async () => {
    const { page, hand } = await fresh(phone);
    const { marks } = await read(page);
    await done(page, 'select-mark', { id: marks[0].id });
    await press_part(page, hand, 'note');
    await page.raw.page.keyboard.insertText('bell');
    await page.evaluate(() => {
      Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => 'hidden' });
      document.dispatchEvent(new Event('visibilitychange', { bubbles: true }));
    });
    assert.equal(await in_hand(page), 'note');
    const half = await typed_in(page, 'note');
    assert.ok(half.includes('bell'));
    assert.deepEqual((await read(page)).marks, marks);
    await page.reload();
    await ready(page);
    await until(page, 'what was half typed', (text) => document.querySelector('[data-name=note]')?.value === text, half);
    assert.deepEqual((await read(page)).marks, marks);
    await page.evaluate(() => document.activeElement.blur());
    await until(page, 'the note', (id) => window.fogsheet.read().marks.find((mark) => mark.id === id).note?.includes('bell'), marks[0].id);
    assert.equal((await read(page)).history.undo_label !== null, true);
    // Sent, it is no longer half typed.
    await page.reload();
    await ready(page);
    await until(page, 'the slip', () => document.querySelector('[data-name=note]') !== null);
    const kept = (await read(page)).marks[0].note;
    assert.equal(await typed_in(page, 'note'), kept);
    await page.close();
  });
});
