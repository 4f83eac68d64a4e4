// What is written of seeded sheets, read by libraries of the package registry: an XML parser and a converter of GPX, a checker
// of GeoJSON (RFC 7946), a reader of CSV (RFC 4180); and the schema's rules of order and range, written out.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { check } from '@placemarkio/check-geojson';
import { gpx as from_gpx } from '@tmcw/togeojson';
import { parse as from_csv } from 'csv-parse/sync';

import { check_gpx } from '../browsers/lib/gpx_check.mjs';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const folder = mkdtempSync(path.join(os.tmpdir(), 'exported-'));
after(() => rmSync(folder, { recursive: true }));

const counts = execFileSync(path.join(root, 'build/native/tests/exported'), [folder, '60'], { encoding: 'utf8' }).trim().split('\n').map((line) => line.split(' ').map(Number));
const text = (seed, format) => readFileSync(path.join(folder, `${seed}.${format}`), 'utf8');
const whole_deg = (deg) => Math.round(deg * 600_000);  // the grid that positions are kept on: 0.0001'

test('GPX obeys its schema, GeoJSON its standard, CSV its; all three tell of the same marks', () => {
  assert.ok(counts.some(([marks]) => marks > 10) && counts.some(([, lines]) => lines > 3));
  counts.forEach(([marks, lines], i) => {
    const seed = i + 1;
    const { document, faults } = check_gpx(text(seed, 'gpx'));
    assert.deepEqual(faults, [], `seed ${seed}`);
    const { features } = from_gpx(document);
    const points = features.filter(({ geometry }) => geometry.type === 'Point');
    assert.equal(points.length, marks);
    assert.equal(document.getElementsByTagName('rte').length, lines);

    const collection = check(text(seed, 'geojson'));
    const same = collection.features.filter(({ geometry }) => geometry.type === 'Point');
    assert.equal(collection.features.length - same.length, lines);
    const rows = from_csv(text(seed, 'csv'), { columns: true });
    assert.equal(rows.length, marks);
    for (let k = 0; k < marks; k += 1) {
      const place = [points[k], same[k]].map(({ geometry }) => geometry.coordinates.slice(0, 2).map(whole_deg));
      assert.deepEqual(place[0], place[1], `seed ${seed}, mark ${k}`);
      assert.deepEqual([whole_deg(Number(rows[k].longitude)), whole_deg(Number(rows[k].latitude))], place[0]);
      assert.equal(same[k].properties.name, rows[k].name);
    }
  });
});

test('no line of GeoJSON leaves -180 to 180, nor jumps across it', () => {
  for (let seed = 1; seed <= counts.length; seed += 1)
    for (const { geometry } of JSON.parse(text(seed, 'geojson')).features) {
      const pieces = geometry.type === 'LineString' ? [geometry.coordinates] : geometry.type === 'MultiLineString' ? geometry.coordinates : [];
      for (const piece of pieces) {
        assert.ok(piece.length >= 2);
        piece.forEach(([lon], k) => assert.ok(Math.abs(lon) <= 180 && (k === 0 || Math.abs(lon - piece[k - 1][0]) < 180), `seed ${seed}`));
      }
    }
});
