// The sheet as a file: core's SVG with our typeface in it, or what the browser draws of that at so many dots an inch.
import { bytes_of } from './own_files.js';

const faces = [['Regular', 'font-weight:400'], ['Bold', 'font-weight:700'], ['Italic', 'font-style:italic']];
const mm_an_inch = 25.4;
const true_size = / width="([\d.]+)mm" height="([\d.]+)mm"/;

/// A picture that the device has no canvas for. `largest`: dots an inch of one that it has; 0 for none.
export class TooLarge extends Error {
  constructor(largest) {
    super(`too large; ${largest} dots an inch work`);
    this.largest = largest;
  }
}

/// @param dots_an_inch  0 for the SVG itself
export async function picture(svg, dots_an_inch) {
  const whole = svg.replace('</title>', `</title><style>text{font-variant-ligatures:none}${(await Promise.all(faces.map(face_rule))).join('')}</style>`);
  return dots_an_inch === 0 ? new Blob([whole], { type: 'image/svg+xml' }) : drawn(whole, dots_an_inch);
}

async function face_rule([file, which]) {
  const reader = new FileReader();
  reader.readAsDataURL(new Blob([await bytes_of(`fonts/B612-${file}.otf`)], { type: 'font/otf' }));
  await new Promise((done, failed) => Object.assign(reader, { onload: done, onerror: failed }));
  return `@font-face{font-family:B612;${which};src:url(${reader.result})}`;
}

const size_px = (svg, dots_an_inch) => true_size.exec(svg).slice(1).map((mm) => Math.round((Number(mm) / mm_an_inch) * dots_an_inch));

/// A context whose last pixel takes ink, or null: a canvas past the device's bounds draws nothing and says nothing.
function context_of([width, height]) {
  try {
    const context = Object.assign(document.createElement('canvas'), { width, height }).getContext('2d', { willReadFrequently: true });
    context.fillRect(width - 1, height - 1, 1, 1);
    return context.getImageData(width - 1, height - 1, 1, 1).data[3] === 255 ? context : null;
  } catch {
    return null;
  }
}

async function drawn(svg, dots_an_inch) {
  const size = size_px(svg, dots_an_inch);
  const context = context_of(size);
  if (!context) throw new TooLarge([300, 150].find((fewer) => fewer < dots_an_inch && context_of(size_px(svg, fewer))) ?? 0);
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([svg.replace(true_size, ` width="${size[0]}" height="${size[1]}"`)], { type: 'image/svg+xml' }));
  try {
    await image.decode();
    context.fillStyle = '#fff';
    context.fillRect(0, 0, ...size);
    context.drawImage(image, 0, 0, ...size);
  } finally {
    URL.revokeObjectURL(image.src);
  }
  const blob = await new Promise((done) => context.canvas.toBlob(done, 'image/png'));
  if (!blob) throw new TooLarge(0);
  return with_resolution(blob, dots_an_inch);
}

// Source: PNG (third edition), 5.2 signature of 8 bytes, 11.2.1 IHDR comes first, 25 bytes long.
const header_ends = 8 + 25;
const with_resolution = (png, dots_an_inch) => new Blob([png.slice(0, header_ends), resolution_chunk(dots_an_inch), png.slice(header_ends)], { type: 'image/png' });

/// 11.3.4.3 pHYs: pixels a metre across, down, and that the unit is the metre. With its length and CRC (5.3, annex D).
function resolution_chunk(dots_an_inch) {
  const chunk = new DataView(new ArrayBuffer(21));
  const a_metre = Math.round((dots_an_inch / mm_an_inch) * 1000);
  chunk.setUint32(0, 9);
  [...'pHYs'].forEach((letter, i) => chunk.setUint8(4 + i, letter.charCodeAt(0)));
  chunk.setUint32(8, a_metre);
  chunk.setUint32(12, a_metre);
  chunk.setUint8(16, 1);
  chunk.setUint32(17, crc(new Uint8Array(chunk.buffer, 4, 13)));
  return chunk.buffer;
}

function crc(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return ~rest >>> 0;
}
