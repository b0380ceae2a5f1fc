/** Reversed polynomial of CRC-32. */
const POLYNOMIAL = 0xedb88320;

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1;
  return rest;
});

/**
 * CRC-32 of bytes: tells accidental change, not intent.
 *
 * @returns whole, 0 to 2^32 - 1; 0 for no bytes
 * @see RFC 1952, section 8 (the same CRC as ISO/IEC/IEEE 8802-3 uses)
 */
export function crc32(bytes: Uint8Array): number {
  let state = 0xffffffff;
  for (const byte of bytes) state = (state >>> 8) ^ (TABLE[(state ^ byte) & 0xff] ?? 0);
  return (state ^ 0xffffffff) >>> 0;
}
