// CRC-32, as core/formats/crc32 has it. Source: RFC 1952 section 8.
const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? 0xedb88320 ^ (rest >>> 1) : rest >>> 1;
  return rest;
});

/// 0 for no bytes; 0xCBF43926 for "123456789".
export function crc32(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = table[(rest ^ byte) & 0xff] ^ (rest >>> 8);
  return (rest ^ 0xffffffff) >>> 0;
}
