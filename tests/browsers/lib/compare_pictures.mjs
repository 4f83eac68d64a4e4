// Whether two pictures of one size show the same, whichever engine drew them. Both are blurred over 3 x 3 pixels, so that a
// thin line weighs the same wherever it falls between pixels; then a pixel is apart when its value lies outside what the
// other picture has within a pixel of it. What moved by less than a pixel, or is softened otherwise, is not apart; a line
// that one of them lacks is, all along it.
import assert from 'node:assert/strict';

const tile_px = 16;

/// 3 x 3 means of red, green and blue, one plane a channel.
function blurred({ width, height, data }) {
  return [0, 1, 2].map((channel) => {
    const plane = new Float32Array(width * height);
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        let sum = 0;
        for (const yy of [Math.max(y - 1, 0), y, Math.min(y + 1, height - 1)]) {
          for (const xx of [Math.max(x - 1, 0), x, Math.min(x + 1, width - 1)]) sum += data[(yy * width + xx) * 4 + channel];
        }
        plane[y * width + x] = sum / 9;
      }
    }
    return plane;
  });
}

/// Marks where a plane's value lies further than `slight` outside what the other has within a pixel.
function mark_outside(plane, other, width, height, slight, apart) {
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const here = plane[y * width + x];
      let least = Infinity;
      let most = -Infinity;
      for (let yy = Math.max(y - 1, 0); yy <= Math.min(y + 1, height - 1); yy += 1) {
        for (let xx = Math.max(x - 1, 0); xx <= Math.min(x + 1, width - 1); xx += 1) {
          const there = other[yy * width + xx];
          if (there < least) least = there;
          if (there > most) most = there;
        }
      }
      if (here < least - slight || here > most + slight) apart[y * width + x] = 1;
    }
  }
}

/// One byte a pixel: 1 where the pictures are apart. @param slight  of 255
export function apart_of(a, b, slight = 18) {
  assert.deepEqual([a.width, a.height], [b.width, b.height], 'pictures of one size');
  const { width, height } = a;
  const apart = new Uint8Array(width * height);
  const [in_a, in_b] = [blurred(a), blurred(b)];
  for (let channel = 0; channel < 3; channel += 1) {
    mark_outside(in_a[channel], in_b[channel], width, height, slight, apart);
    mark_outside(in_b[channel], in_a[channel], width, height, slight, apart);
  }
  return apart;
}

/// What share of the pixels on which either has something else than paper is apart.
export function share_apart(a, b, paper) {
  const apart = apart_of(a, b);
  const is_inked = ({ data }, i) => Math.max(...[0, 1, 2].map((channel) => Math.abs(data[i * 4 + channel] - paper[channel]))) > 40;
  let inked = 0;
  let count = 0;
  for (let i = 0; i < apart.length; i += 1) {
    count += apart[i];
    if (is_inked(a, i) || is_inked(b, i)) inked += 1;
  }
  return count / Math.max(inked, 1);
}

/// The tiles of 16 x 16 pixels with the most pixels apart, the worst first: {x, y, count}, x and y of their upper left corner.
export function tiles_apart(a, b) {
  const apart = apart_of(a, b);
  const across = Math.ceil(a.width / tile_px);
  const counts = new Map();
  for (let i = 0; i < apart.length; i += 1) {
    if (!apart[i]) continue;
    const tile = Math.floor(Math.floor(i / a.width) / tile_px) * across + Math.floor(i % a.width / tile_px);
    counts.set(tile, (counts.get(tile) ?? 0) + 1);
  }
  return [...counts].map(([tile, count]) => ({ x: tile % across * tile_px, y: Math.floor(tile / across) * tile_px, count })).sort((one, other) => other.count - one.count);
}
