// A sheet of one's own to be kept: marks, a leg, a step undone, an edge on a rose.
import { done, kept, read } from './sheet.mjs';

export const middle = { mid_lat_deg: 44, mid_lon_deg: -31, scale: 100000, paper: 'A4-across' };

/// A sheet with marks, a leg, something undone, and the edge settled.
export async function fill(page, name) {
  await done(page, 'new-sheet', { ...middle, name });
  const a = await done(page, 'add-mark', { name: `${name} Rock`, lat_deg: 44.01, lon_deg: -31 });
  const b = await done(page, 'add-mark', { name: 'Off Sarn', lat_deg: 44.05, lon_deg: -31.1, kind: 'turn' });
  await done(page, 'add-leg', { from: a, to: b });
  await done(page, 'set-date', { date: '2027-05-01' });
  await done(page, 'undo');
  await done(page, 'lay-edge', { from: a, to: b });
  await done(page, 'slide-edge-to', { rose: (await read(page)).roses[0].id });
  await kept(page);
}
