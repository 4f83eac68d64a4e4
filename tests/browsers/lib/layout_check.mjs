// Whether the page's parts stand clear of each other: no control over another or close to it, each large enough to be
// pressed, no words cut off, nothing wider than the page.
import assert from 'node:assert/strict';

const least_target_px = 44;  // on land; the look's rules
const least_gap_px = 6;

/// What is wrong, as sentences.
export const layout_faults = (page) => page.evaluate(faults, least_target_px, least_gap_px);

/// @param what  names the state in what fails
export async function check_layout(page, what) {
  assert.deepEqual(await layout_faults(page), [], what);
}

function faults(least_px, least_gap) {
  const found = [];
  const clipped = (element) => getComputedStyle(element).clipPath === 'inset(50%)';  // there for keys and ears alone
  const shown = (element) => (element.checkVisibility?.({ checkVisibilityCSS: true }) ?? element.offsetParent !== null) && !clipped(element.closest('#outline') ?? element);
  const name_of = (element) => element.dataset.name ?? element.getAttribute('aria-label') ?? (element.textContent.trim().slice(0, 30) || element.localName);

  if (document.documentElement.scrollWidth > innerWidth) found.push(`the page is ${document.documentElement.scrollWidth} px wide`);

  const controls = [...document.querySelectorAll('button, input, textarea, .choice label')]
    .filter((element) => shown(element) && !(element.localName === 'input' && element.closest('label')));
  /// What is not scrolled away of it.
  const seen = (element) => {
    let { left, top, right, bottom } = element.getBoundingClientRect();
    for (let around = element.parentElement; around; around = around.parentElement) {
      if (getComputedStyle(around).overflow === 'visible') continue;
      const edge = around.getBoundingClientRect();
      [left, top, right, bottom] = [Math.max(left, edge.left), Math.max(top, edge.top), Math.min(right, edge.right), Math.min(bottom, edge.bottom)];
    }
    return { left, top, right, bottom };
  };
  const boxes = controls.map((element) => ({ element, box: element.getBoundingClientRect() }));
  for (const { element, box } of boxes) {
    if (box.width < least_px - 0.5 || box.height < least_px - 0.5) found.push(`${name_of(element)} is ${Math.round(box.width)} by ${Math.round(box.height)} px`);
  }
  const in_view = boxes.map(({ element }) => ({ element, box: seen(element) })).filter(({ box }) => box.right > box.left && box.bottom > box.top);
  for (const [i, a] of in_view.entries()) {
    for (const b of in_view.slice(i + 1)) {
      const wide = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);  // below nought: the gap between
      const high = Math.min(a.box.bottom, b.box.bottom) - Math.max(a.box.top, b.box.top);
      // What a scrolled part hides lies under what stands below it, and is not seen.
      const scrolled = a.element.closest('.content') !== b.element.closest('.content');
      if (wide > 0.5 && high > 0.5 && !scrolled && !a.element.contains(b.element) && !b.element.contains(a.element)) found.push(`${name_of(a.element)} lies over ${name_of(b.element)}`);
      const gap = Math.max(-wide, -high);
      if (gap > -0.5 && gap < least_gap - 0.5 && !scrolled) found.push(`${name_of(a.element)} is ${Math.round(gap * 10) / 10} px from ${name_of(b.element)}`);
    }
  }

  const wells = [...document.querySelectorAll('#tray button')].filter(shown);
  for (const well of wells) {
    const box = well.getBoundingClientRect();
    if (box.left < -0.5 || box.right > innerWidth + 0.5 || box.bottom > innerHeight + 0.5) found.push(`${name_of(well)} runs off the screen`);
  }
  for (const element of document.querySelectorAll('button, th, td, h2, h3, .words, .figures, .unit, .beside, .value, .under')) {
    if (element.closest('.visually-hidden')) continue;
    if (shown(element) && element.scrollWidth > element.clientWidth + 1 && getComputedStyle(element).display !== 'inline') found.push(`${name_of(element)}: its words are cut off`);
  }
  // A table can be scrolled across where text is enlarged, and needs it nowhere else.
  if (innerWidth >= 380 && !['125', '150'].includes(document.documentElement.dataset.text))
    for (const table of document.querySelectorAll('.table')) if (shown(table) && table.scrollWidth > table.clientWidth + 1) found.push(`${name_of(table)}: ${table.scrollWidth - table.clientWidth} px of it are out of sight`);
  return found;
}
