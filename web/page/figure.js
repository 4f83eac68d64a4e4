// Figures made by core come as SVG text. It is parsed apart from the page, and only elements and attributes that a figure
// needs come across: the text may hold names that others typed.
import { make, set } from './dom.js';
import { wheel } from './wheel.js';

const elements = new Set(['svg', 'g', 'path', 'line', 'polyline', 'polygon', 'circle', 'ellipse', 'rect', 'text', 'tspan']);
const attributes = new Set([
  'viewBox', 'width', 'height', 'preserveAspectRatio', 'transform', 'class', 'd', 'points', 'x', 'y', 'x1', 'y1', 'x2', 'y2', 'cx', 'cy', 'r', 'rx', 'ry', 'dx', 'dy',
  'fill', 'fill-opacity', 'fill-rule', 'stroke', 'stroke-width', 'stroke-opacity', 'stroke-dasharray', 'stroke-dashoffset', 'stroke-linecap', 'stroke-linejoin',
  'paint-order', 'opacity', 'font-family', 'font-size', 'font-weight', 'font-style', 'text-anchor', 'textLength', 'lengthAdjust', 'xml:space',
]);
const svg_names = 'http://www.w3.org/2000/svg';

export function figure(act) {
  const element = make('div', { class: 'figure', role: 'img' });
  let drawn = '';
  let turned = null;
  return {
    element,
    patch(item) {
      set(element, 'data-name', item.name);
      set(element, 'aria-label', item.text);
      if (item.wheel) (turned ??= wheel(element, act))(item.wheel);
      if (item.svg === drawn) return;
      drawn = item.svg;
      element.replaceChildren(...drawn_from(item.svg));
    },
  };
}

/// The figure's element in a list, or none.
export function drawn_from(svg) {
  const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  return parsed.localName === 'svg' ? [allowed(parsed)] : [];
}

function allowed(from) {
  const to = document.createElementNS(svg_names, from.localName);
  for (const { name, value } of from.attributes) if (attributes.has(name) && !/url\s*\(/i.test(value)) to.setAttribute(name, value);
  for (const child of from.childNodes) {
    if (child.nodeType === Node.TEXT_NODE) to.append(child.data);
    else if (child.namespaceURI === svg_names && elements.has(child.localName)) to.append(allowed(child));
  }
  return to;
}
