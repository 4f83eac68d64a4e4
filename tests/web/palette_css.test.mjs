// The page's style sheet has each colour and each step of the dimmer from the one table, and that table keeps its contrasts by
// axe-core's own computation, beside the shell's (tests/shell/style_test.cpp).
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';

import { colours_of, gone_of, inks_of, palette_css } from '../../web/palette_css.mjs';

const { Color, getContrast } = createRequire(import.meta.url)('axe-core').commons.color;
const table = readFileSync(new URL('../../shell/palettes.inc', import.meta.url), 'utf8');
const css = palette_css(table);
const inks = new Map(inks_of(table));
const palettes = ['day', 'dusk', 'night', 'high contrast'];

function contrast(...pair) {
  const [a, b] = pair.map((hex) => {
    const parsed = new Color();
    parsed.parseHexString(hex);
    return parsed;
  });
  return getContrast(a, b);
}

test('every role has its colour in every palette', () => {
  for (const role of inks.keys()) assert.equal(css.split(`  --${role}: #`).length - 1, palettes.length, role);
  assert.deepEqual(colours_of(table, 'paper'), { day: '#FCFAF4', dusk: '#1E262C', night: '#0B0000', 'high-contrast': '#FFFFFF' });
  assert.match(css, /data-palette="night"\] \{\n {2}color-scheme: dark;/);
});

test('contrasts by axe-core: text, signs, and what lies on tints', () => {
  // The look's rules by palette; 4.5:1 is WCAG's own least for text (1.4.3), 3:1 for signs (1.4.11).
  const text = [7, 6, 4.8, 7], sign = [3, 3, 3, 3];
  const rules = [
    ...['ink', 'soft', 'magenta', 'blue', 'danger', 'agrees'].map((role) => [role, 'paper', text]),
    ...['edge', 'focus', 'doubt-line', 'bar'].map((role) => [role, 'paper', sign]),
    ['graticule', 'paper', [3, 3, 3, 7]],
    ['rule', 'paper', [0, 0, 0, 4.5]],
    ...[['on-pressed', 'pressed'], ['ink', 'caution'], ['ink', 'table'], ['soft', 'table'], ['ink', 'field'], ['soft', 'field']].map((pair) => [...pair, [4.5, 4.5, 4.5, 4.5]]),
  ];
  for (const [role, ground, least] of rules) {
    least.forEach((ratio, i) => {
      const found = contrast(inks.get(role)[i], inks.get(ground)[i]);
      assert.ok(found >= ratio, `${role} on ${ground}, ${palettes[i]}: ${found}, at least ${ratio}`);
    });
  }
});

test('night is red and nothing else', () => {
  for (const [role, colours] of inks) {
    const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(colours[2].slice(at, at + 2), 16));
    assert.ok(red >= green && red >= blue && blue <= (role === 'focus' ? 0x52 : 0x30), `${role} at night`);
  }
});

test('what the dimmer takes away is gone from figures at its step; panels keep the outlines of controls', () => {
  const gone = gone_of(table);
  assert.equal(gone['edge-fill'], 1);
  assert.equal(gone.soft, 3);
  assert.equal(gone['ring-tens'], 2);
  for (const [role, step] of Object.entries(gone)) {
    if (!inks.has(role)) continue;  // the canvas's own
    assert.ok(css.includes(`[data-dim~="${step}"] .figure .fill-${role} { fill: none; }`), role);
    const leaves_panels = css.includes(`[data-dim~="${step}"] { --${role}: transparent; }`);
    assert.equal(leaves_panels, !['graticule', 'soft'].includes(role), role);
  }
  assert.ok(css.includes('[data-dim~="3"] { --shows-soft: 0; }'));
});
