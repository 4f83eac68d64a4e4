// Whether a text is GPX 1.1, by another road than the product's: an XML parser from the package registry, and the rules of the
// schema (namespace http://www.topografix.com/GPX/1/1) written out as they are stated: order and number of elements, attributes,
// ranges of latitude and longitude, numbers without an exponent.
import { DOMParser } from '@xmldom/xmldom';

const space = 'http://www.topografix.com/GPX/1/1';
const point = ['ele', 'time', 'magvar', 'geoidheight', 'name', 'cmt', 'desc', 'src', 'link*', 'sym', 'type', 'fix', 'sat', 'hdop', 'vdop', 'pdop', 'ageofdgpsdata', 'dgpsid', 'extensions'];
const line = (points) => ['name', 'cmt', 'desc', 'src', 'link*', 'number', 'type', 'extensions', points];
const children = {
  gpx: ['metadata', 'wpt*', 'rte*', 'trk*', 'extensions'],
  metadata: ['name', 'desc', 'author', 'copyright', 'link*', 'time', 'keywords', 'bounds', 'extensions'],
  wpt: point, rtept: point, trkpt: point,
  rte: line('rtept*'), trk: line('trkseg*'), trkseg: ['trkpt*', 'extensions'],
};
const attributes = { gpx: ['version', 'creator'], wpt: ['lat', 'lon'], rtept: ['lat', 'lon'], trkpt: ['lat', 'lon'] };
const decimal = /^[+-]?(\d+(\.\d*)?|\.\d+)$/;

const elements_in = (element) => [...element.childNodes].filter((node) => node.nodeType === 1);

/// @return {document, faults: a sentence for each}
export function check_gpx(text) {
  const faults = [];
  const document = new DOMParser({ onError: (level, message) => { faults.push(`${level}: ${message}`); } }).parseFromString(text, 'text/xml');
  const root = document.documentElement;
  if (root.localName !== 'gpx' || root.namespaceURI !== space) faults.push(`the root is ${root.namespaceURI} ${root.localName}`);
  if (root.getAttribute('version') !== '1.1') faults.push('version is not 1.1');
  check(root, faults);
  return { document, faults };
}

function check(element, faults) {
  const name = element.localName;
  for (const wanted of attributes[name] ?? []) if (!element.hasAttribute(wanted)) faults.push(`${name} has no ${wanted}`);
  for (const { name: given } of [...element.attributes]) if (!given.startsWith('xmlns') && !(attributes[name] ?? []).includes(given)) faults.push(`${name} has an attribute ${given}`);
  if (attributes[name]?.includes('lat')) {
    const [lat, lon] = ['lat', 'lon'].map((each) => element.getAttribute(each));
    if (!decimal.test(lat) || Number(lat) < -90 || Number(lat) > 90) faults.push(`latitude ${lat}`);
    if (!decimal.test(lon) || Number(lon) < -180 || Number(lon) >= 180) faults.push(`longitude ${lon}`);
  }
  const order = children[name];
  if (!order) {
    if (elements_in(element).length > 0) faults.push(`${name} holds elements`);
    return;
  }
  if ([...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim())) faults.push(`text in ${name}`);
  let at = 0;
  for (const child of elements_in(element)) {
    if (child.namespaceURI !== space) faults.push(`${child.nodeName} outside extensions`);
    const place = order.findIndex((each) => each.replace('*', '') === child.localName);
    if (place < at) faults.push(place < 0 ? `${child.localName} in ${name}` : `${child.localName} comes too late in ${name}`);
    else at = order[place].endsWith('*') ? place : place + 1;
    if (child.localName === 'extensions') {
      for (const inner of elements_in(child)) if (!inner.namespaceURI || inner.namespaceURI === space) faults.push(`${inner.nodeName} in extensions is not of another namespace`);
    } else {
      check(child, faults);
    }
  }
}
