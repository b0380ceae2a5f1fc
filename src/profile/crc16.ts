/**
 * CRC-16 with polynomial x^16 + x^12 + x^5 + 1 (0x1021), start 0xffff, most significant bit first, no final
 * change: the one catalogued as CRC-16/IBM-3740. Over a frame of 20 octets it notices every error of up to three
 * bits, every odd number of wrong bits, and whatever happens to one octet, or to two neighbours among those checked.
 *
 * @returns whole, 0 to 0xffff; 0x29b1 for the nine ASCII octets "123456789"
 * @see ITU-T Rec. V.41 (polynomial); G. Cook, Catalogue of parametrised CRC algorithms (parameters, check value)
 */
export function crc16(bytes: Uint8Array): number {
  let remainder = 0xffff;
  for (const octet of bytes) {
    remainder ^= octet << 8;
    for (let bit = 0; bit < 8; bit += 1) {
      remainder = ((remainder << 1) ^ (remainder & 0x8000 ? 0x1021 : 0)) & 0xffff;
    }
  }
  return remainder;
}

/** The bytes with their check value after them, least significant octet first. */
export function withCrc(bytes: Uint8Array): Uint8Array {
  const check = crc16(bytes);
  return Uint8Array.of(...bytes, check & 0xff, check >> 8);
}

/** Do the last two octets check the ones before them? */
export function crcHolds(bytes: Uint8Array): boolean {
  if (bytes.length < 2) return false;
  const check = crc16(bytes.subarray(0, -2));
  return bytes.at(-2) === (check & 0xff) && bytes.at(-1) === check >> 8;
}
