/** Small helpers for octets; multi-octet numbers are least significant octet first throughout the profile. */

/** A view of exactly these bytes, whatever buffer they sit in. */
export const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** The octets of a row of numbers, each as wide as named, least significant octet first. */
export function littleEndian(
  ...fields: readonly (readonly [value: number, octets: 1 | 2 | 4])[]
): Uint8Array {
  const length = fields.reduce((sum, [, octets]) => sum + octets, 0);
  const bytes = new Uint8Array(length);
  const view = viewOf(bytes);
  let offset = 0;
  for (const [value, octets] of fields) {
    if (octets === 1) view.setUint8(offset, value);
    else if (octets === 2) view.setUint16(offset, value, true);
    else view.setUint32(offset, value, true);
    offset += octets;
  }
  return bytes;
}

/** Lower-case hexadecimal, two digits an octet, first octet first. */
export const toHex = (bytes: Uint8Array): string =>
  Array.from(bytes, (octet) => octet.toString(16).padStart(2, "0")).join("");

/**
 * Octets from hexadecimal.
 *
 * @param hex - an even number of hexadecimal digits; spaces between octets are allowed
 * @throws {RangeError} for anything else
 */
export function fromHex(hex: string): Uint8Array {
  const digits = hex.replaceAll(" ", "");
  if (digits.length % 2 !== 0 || !/^[0-9a-fA-F]*$/.test(digits)) throw new RangeError(`not octets: ${hex}`);
  return Uint8Array.from({ length: digits.length / 2 }, (_, i) =>
    Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16),
  );
}

/**
 * Holds our own code to a field's range.
 *
 * @throws {RangeError} unless `value` is whole and within `lowest` to `highest`
 */
export function checkWhole(name: string, value: number, lowest: number, highest: number): void {
  if (!Number.isInteger(value) || value < lowest || value > highest) {
    throw new RangeError(`${name} must be whole, ${lowest} to ${highest}, not ${value}`);
  }
}
