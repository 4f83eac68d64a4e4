// A boat made up for tests, and what her compass reads on a swing: deviation A + B sin + C cos + D sin 2 + E cos 2 of the heading
// by compass, deg, east positive.
import { done } from './sheet.mjs';

export const boat_deg = [1, 4, -2, 0.8, 0.2];
export const bearing_deg = 211;  // of the object, magnetic

const radians = Math.PI / 180;
export const deviation_deg = (heading) => [1, Math.sin(heading * radians), Math.cos(heading * radians), Math.sin(2 * heading * radians), Math.cos(2 * heading * radians)].reduce((sum, factor, i) => sum + factor * boat_deg[i], 0);

/// As it is typed: three figures and a tenth.
export const tenths = (deg) => (((deg % 360) + 360) % 360).toFixed(1).padStart(5, '0');
export const read_on = (heading) => tenths(bearing_deg - deviation_deg(heading));

/// Enters the boat and a whole swing by commands; its slip is open then.
export async function swing_by_commands(page) {
  await done(page, 'new-boat', { name: 'Pipit' });
  await done(page, 'begin-entry', { kind: 'swing' });
  await done(page, 'type-entry', { field: 'bearing', text: String(bearing_deg) });
  for (let i = 0; i < 8; i += 1) await done(page, 'type-entry', { field: `row/${i}/read`, text: read_on(45 * i) });
}
