/** Numbers as text: base64 of little-endian bytes, the shortest that JSON can carry. RFC 4648, section 4. */

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const VALUES = new Map([...ALPHABET].map((letter, value) => [letter.charCodeAt(0), value]));

/** Kinds of number lists that a nose holds. */
export type NumberList = Float32Array | Int32Array | Int16Array | Uint8Array;
export type ListKind = "f32" | "i32" | "i16" | "u8";

/** Bytes to base64. */
export function toBase64(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += 3) {
    const triple = (bytes[at]! << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    const letters = [18, 12, 6, 0].map((shift) => ALPHABET[(triple >> shift) & 63]!);
    const left = bytes.length - at;
    text += letters.slice(0, left >= 3 ? 4 : left + 1).join("");
  }
  return text + "=".repeat((3 - (bytes.length % 3)) % 3);
}

/** Base64 to bytes, or null if the text is none. */
export function fromBase64(text: string): Uint8Array | null {
  if (text.length % 4 !== 0) return null;
  const letters = text.replace(/={1,2}$/, "");
  const bytes = new Uint8Array(Math.floor((letters.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let at = 0;
  for (let i = 0; i < letters.length; i += 1) {
    const value = VALUES.get(letters.charCodeAt(i));
    if (value === undefined) return null;
    held = ((held << 6) | value) & 0xffffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[at] = (held >> bits) & 255;
      at += 1;
    }
  }
  return bytes;
}

const WIDTH: Record<ListKind, number> = { f32: 4, i32: 4, i16: 2, u8: 1 };

/** A number list as base64 text. */
export function packNumbers(list: NumberList): string {
  const kind = kindOf(list);
  const bytes = new Uint8Array(list.length * WIDTH[kind]);
  const view = new DataView(bytes.buffer);
  list.forEach((value, i) => {
    if (kind === "f32") view.setFloat32(4 * i, value, true);
    else if (kind === "i32") view.setInt32(4 * i, value, true);
    else if (kind === "i16") view.setInt16(2 * i, value, true);
    else view.setUint8(i, value);
  });
  return toBase64(bytes);
}

/** The number list of a kind behind base64 text, or null if the text is none or does not hold whole numbers of it. */
export function unpackNumbers(text: string, kind: "f32"): Float32Array | null;
export function unpackNumbers(text: string, kind: "i32"): Int32Array | null;
export function unpackNumbers(text: string, kind: "i16"): Int16Array | null;
export function unpackNumbers(text: string, kind: "u8"): Uint8Array | null;
export function unpackNumbers(text: string, kind: ListKind): NumberList | null {
  const bytes = fromBase64(text);
  if (bytes === null || bytes.length % WIDTH[kind] !== 0) return null;
  const view = new DataView(bytes.buffer);
  const length = bytes.length / WIDTH[kind];
  if (kind === "f32") return Float32Array.from({ length }, (_, i) => view.getFloat32(4 * i, true));
  if (kind === "i32") return Int32Array.from({ length }, (_, i) => view.getInt32(4 * i, true));
  if (kind === "i16") return Int16Array.from({ length }, (_, i) => view.getInt16(2 * i, true));
  return bytes;
}

function kindOf(list: NumberList): ListKind {
  if (list instanceof Float32Array) return "f32";
  if (list instanceof Int32Array) return "i32";
  return list instanceof Int16Array ? "i16" : "u8";
}
