// The checksum of a photograph's bytes, against its published check value and the one that zlib puts behind what it packs.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { gzipSync } from 'node:zlib';

import { crc32 } from '../../web/page/crc32.js';

test('crc32 is the one of RFC 1952', () => {
  // Source: the check value of CRC-32/ISO-HDLC in G. Cook, Catalogue of parametrised CRC algorithms.
  assert.equal(crc32(new TextEncoder().encode('123456789')), 0xcbf43926);
  let state = 7;
  for (const size of [0, 1, 2, 255, 256, 65_537]) {
    const bytes = Uint8Array.from({ length: size }, () => {
      state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
      return state >>> 16;
    });
    assert.equal(crc32(bytes), gzipSync(bytes).readUInt32LE(gzipSync(bytes).length - 8));
  }
});
