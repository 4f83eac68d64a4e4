// Our own signs, drawn in a square of 24 about its middle with the colour of the text beside them: strokes with round
// ends, rings and filled shapes.

const names = 'http://www.w3.org/2000/svg';

const stroke = (d, width = 1.8) => ['path', { d, 'stroke-width': width }];
const filled = (d) => ['path', { d, class: 'filled' }];
const ring = (cx, cy, r, width = 1.8) => ['circle', { cx, cy, r, 'stroke-width': width }];
const dot = (cx, cy, r) => ['circle', { cx, cy, r, class: 'filled' }];

function rose() {
  const rays = Array.from({ length: 8 }, (_, i) => {
    const x = Math.sin(i * Math.PI / 4), y = -Math.cos(i * Math.PI / 4);
    return `M${(8.2 * x).toFixed(2)} ${(8.2 * y).toFixed(2)}L${(10 * x).toFixed(2)} ${(10 * y).toFixed(2)}`;
  });
  return [ring(0, 0, 10, 1.5), ring(0, 0, 5.5, 1.3), stroke(rays.join(''), 1.3), filled('M0-5.5 1.6 0H-1.6Z')];
}

const signs = {
  mark: [ring(0, 7, 2.8, 1.6), stroke('M0 4.2V-9'), stroke('M-4.5-9H4.5', 2.2)],
  leg: [dot(-8, 7, 2.4), stroke('M-8 7 7-6', 2.2), filled('M10-9 7.6-1.5 2-7.6Z')],
  edge: [stroke('M-11 4 8-9 11-4-8 9Z'), stroke('M-2 1-.6 3M2-1.7 3.4.3', 1.3)],
  rose: rose(),
  dividers: [stroke('M0-9-6 9M0-9 6 9'), dot(0, -9, 2.4), stroke('M-3.2 0H3.2', 1.2)],
  bearing: [dot(-9, 7, 2.4), stroke('M-9 7 6.8 2.3'), stroke('M6.8 6V-9'), stroke('M3-9H10.6', 2.2)],
  fix: [ring(0, 0, 4.6), dot(0, 0, 1.4), stroke('M-10-4 10 4M-3 10 3-10', 1.3)],
  doubt: [stroke('M-9.4 0 9.4-7M-9.4 0 9.4 7', 1.4), stroke('M-9.4 0H10.4', 1.2), dot(-9.4, 0, 2.4)],
  compass: [stroke('M-11 0H11', 1.3), stroke('M-10.5 4C-7-13-3-9 0 0S7 13 10.5-4', 2)],
  card: [stroke('M-6-10H6A1.5 1.5 0 0 1 7.5-8.5V8.5A1.5 1.5 0 0 1 6 10H-6A1.5 1.5 0 0 1-7.5 8.5V-8.5A1.5 1.5 0 0 1-6-10Z', 1.6), stroke('M-4-5H4M-4 0H4M-4 5H4', 1.4)],
  sheet: [stroke('M-11-1H3.6V9H-11Z', 1.6), stroke('M-7.5-4.7H7.3V5.5M-4-8.4H11V2', 1.6)],
  note: [stroke('M-9 9-7 2.5 4.5-9 9-4.5-2.5 7Z'), stroke('M1.5-6 6-1.5', 1.3)],
  more: [dot(-7, 0, 2), dot(0, 0, 2), dot(7, 0, 2)],
  plus: [stroke('M-8 0H8M0-8V8', 2.2)],
  minus: [stroke('M-8 0H8', 2.2)],
  undo: [stroke('M-7-3H3A5 5 0 0 1 3 7H-3'), filled('M-10-3-4.5-7.5V1.5Z')],
  redo: [stroke('M7-3H-3A5 5 0 0 0-3 7H3'), filled('M10-3 4.5-7.5V1.5Z')],
  close: [stroke('M-6-6 6 6M6-6-6 6')],
  caution: [stroke('M0-9 9.5 7.2H-9.5Z'), stroke('M0-3.2V1.8', 2), dot(0, 4.7, 1.2)],
};

export const icon_names = Object.keys(signs);

/// An empty square for a name that has no sign.
export function icon(name) {
  const svg = document.createElementNS(names, 'svg');
  svg.setAttribute('viewBox', '-12 -12 24 24');
  svg.setAttribute('class', 'icon');
  svg.setAttribute('aria-hidden', 'true');
  for (const [tag, attributes] of signs[name] ?? []) {
    const part = document.createElementNS(names, tag);
    for (const [key, value] of Object.entries(attributes)) part.setAttribute(key, value);
    svg.append(part);
  }
  return svg;
}
