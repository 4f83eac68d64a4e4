// Pictures of a page, and questions to them that have an answer without a picture to compare with: which ink lies where,
// how often a circle is crossed, what is the brightest pixel.
import assert from 'node:assert/strict';
import { setTimeout as sleep } from 'node:timers/promises';

import { PNG } from 'pngjs';

/// @param png  a screenshot; scale  its pixels per CSS pixel
export function picture(png, scale = 1) {
  const { width, height, data } = PNG.sync.read(png);
  return {
    width, height, data, scale,
    /// [red, green, blue] under a place in CSS pixels.
    at({ x, y }) {
      const i = (Math.min(height - 1, Math.max(0, Math.floor(y * scale))) * width + Math.min(width - 1, Math.max(0, Math.floor(x * scale)))) * 4;
      return [data[i], data[i + 1], data[i + 2]];
    },
  };
}

export const distance = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/// "#RRGGBB" as [red, green, blue].
export const colour = (text) => [1, 3, 5].map((i) => parseInt(text.slice(i, i + 2), 16));

/// The greatest value of each channel anywhere in a picture.
export function brightest({ data }) {
  const most = [0, 0, 0];
  for (let i = 0; i < data.length; i += 4) for (let c = 0; c < 3; c += 1) if (data[i + c] > most[c]) most[c] = data[i + c];
  return most;
}

/// Whether two pictures of one size differ by no more than antialiasing may.
export function same_ink(a, b) {
  if (a.width !== b.width || a.height !== b.height) return false;
  const slight = 24;  // of 255
  let off = 0;
  for (let i = 0; i < a.data.length; i += 1) if (Math.abs(a.data[i] - b.data[i]) > slight) off += 1;
  return off < a.data.length / 10_000;
}

/// How much of the way from paper to ink each of `steps` places along a circle has gone, in [0, 1].
export function along_circle(shot, centre, radius_px, { ink, paper, steps }) {
  const whole = distance(ink, paper);
  return Array.from({ length: steps }, (_, i) => {
    const angle = 2 * Math.PI * i / steps;  // clockwise from the top, as directions are
    const here = shot.at({ x: centre.x + radius_px * Math.sin(angle), y: centre.y - radius_px * Math.cos(angle) });
    return Math.min(1, distance(here, paper) / whole);
  });
}

/// The radii, in CSS pixels, of the circles in one ink about a centre: all but unbroken lines, the outermost first.
export function circles(shot, centre, { ink, paper, from_px, to_px }) {
  const step = 0.5 / shot.scale;
  const radii = Array.from({ length: Math.floor((to_px - from_px) / step) }, (_, i) => to_px - i * step);
  const rings = radii.map((radius) => along_circle(shot, centre, radius, { ink, paper, steps: 720 }));
  // A thin line falls on one pixel or is shared by two: the inkier of neighbours, a pixel's width across, counts.
  const unbroken = radii.map((_, k) => rings[k].filter((share, i) => Math.max(share, rings[k - 1]?.[i] ?? 0, rings[k + 1]?.[i] ?? 0) > 0.3).length / 720);
  // Of neighbouring radii the one in the middle of the line.
  const lines = [];
  radii.forEach((radius, k) => {
    if (unbroken[k] < 0.9) return;
    const line = lines.at(-1);
    if (line && line.at(-1) - radius < 2) line.push(radius);
    else lines.push([radius]);
  });
  return lines.map((line) => (line[0] + line.at(-1)) / 2);
}

/// How strongly `count` evenly spaced strokes mark a circle, and where they lie: that harmonic of its ink. `strength` is 0
/// where there is no such rhythm and up to 2 for thin strokes, whatever else crosses the circle once or twice; `phase_deg`
/// is the first stroke's place, clockwise from the top.
export function rhythm(ring, count) {
  let cosine = 0;
  let sine = 0;
  let all = 0;
  ring.forEach((share, i) => {
    const angle = 2 * Math.PI * i * count / ring.length;
    cosine += share * Math.cos(angle);
    sine += share * Math.sin(angle);
    all += share;
  });
  const every_deg = 360 / count;
  const phase_deg = Math.atan2(sine, cosine) / (2 * Math.PI) * every_deg;
  return { strength: all > 0 ? 2 * Math.hypot(cosine, sine) / all : 0, phase_deg: (phase_deg + every_deg) % every_deg };
}

/// What the page shows once it shows the same twice: an engine may still have a frame on its way to the screen.
export async function resting_picture(page, scale = 1) {
  let before = null;
  for (let tries = 0; tries < 40; tries += 1) {
    await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
    const png = await page.screenshot();
    const shot = picture(png, scale);
    const is_blank = shot.data.every((value) => value === 255);
    if (!is_blank && before?.equals(png)) return shot;
    before = png;
    await sleep(100);
  }
  return assert.fail('the page does not come to rest');
}

/// A part of a picture, in CSS pixels.
export function crop(shot, { left, top, right, bottom }) {
  const [x0, y0] = [left, top].map((value) => Math.round(value * shot.scale));
  const [width, height] = [Math.round(right * shot.scale) - x0, Math.round(bottom * shot.scale) - y0];
  const data = Buffer.alloc(width * height * 4);
  for (let y = 0; y < height; y += 1) shot.data.copy(data, y * width * 4, ((y0 + y) * shot.width + x0) * 4, ((y0 + y) * shot.width + x0 + width) * 4);
  return { width, height, data, scale: shot.scale };
}

/// Where there is ink in a box, in CSS pixels: what has gone more than halfway from paper to ink.
export function ink_extent(shot, box, { ink, paper }) {
  const whole = distance(ink, paper);
  const extent = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity, count: 0 };
  for (let y = Math.floor(box.top); y < box.bottom; y += 1 / shot.scale) {
    for (let x = Math.floor(box.left); x < box.right; x += 1 / shot.scale) {
      const here = shot.at({ x, y });
      if (distance(here, paper) < whole / 2 || distance(here, ink) > whole * 0.6) continue;
      extent.left = Math.min(extent.left, x);
      extent.right = Math.max(extent.right, x + 1 / shot.scale);
      extent.top = Math.min(extent.top, y);
      extent.bottom = Math.max(extent.bottom, y + 1 / shot.scale);
      extent.count += 1;
    }
  }
  return extent;
}
