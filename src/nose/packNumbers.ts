/** Numbers as text: base64 of little-endian bytes, the shortest that JSON can carry. RFC 4648, section 4. */

const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const LETTERS = Uint8Array.from(ALPHABET, (letter) => letter.charCodeAt(0));
/** What each letter of Latin-1 stands for; 255 if it is none of the alphabet's. */
const VALUES = new Uint8Array(256).fill(255);
LETTERS.forEach((letter, value) => (VALUES[letter] = value));
const NONE = 255;
/** Letters put together at a time: more arguments than this some browsers refuse. */
const STRETCH = 4096;

/** Kinds of number lists that a nose holds. */
export type NumberList = Float32Array | Int32Array | Int16Array | Uint8Array;
export type ListKind = "f32" | "i32" | "i16" | "u8";

/** The browser's own encoder and decoder, where there are: a nose is megabytes of base64, and nobody should wait for it. */
const { toBase64: ownEncoder } = Uint8Array.prototype as { readonly toBase64?: () => string };
const { fromBase64: ownDecoder } = Uint8Array as {
  readonly fromBase64?: (text: string, options: { readonly lastChunkHandling: "strict" }) => Uint8Array;
};

/** Bytes to base64. @see ECMAScript proposal "ArrayBuffer to and from base64" */
export function toBase64(bytes: Uint8Array): string {
  if (ownEncoder !== undefined) return ownEncoder.call(bytes);
  const letters = new Uint8Array(4 * Math.ceil(bytes.length / 3));
  for (let at = 0, to = 0; at < bytes.length; at += 3, to += 4) {
    const triple = (bytes[at]! << 16) | ((bytes[at + 1] ?? 0) << 8) | (bytes[at + 2] ?? 0);
    letters[to] = LETTERS[triple >> 18]!;
    letters[to + 1] = LETTERS[(triple >> 12) & 63]!;
    letters[to + 2] = LETTERS[(triple >> 6) & 63]!;
    letters[to + 3] = LETTERS[triple & 63]!;
  }
  const missing = (3 - (bytes.length % 3)) % 3;
  letters.fill("=".charCodeAt(0), letters.length - missing);
  let text = "";
  for (let at = 0; at < letters.length; at += STRETCH)
    text += String.fromCharCode(...letters.subarray(at, at + STRETCH));
  return text;
}

/** Base64 to bytes, or null if the text is none. @see ECMAScript proposal "ArrayBuffer to and from base64" */
export function fromBase64(text: string): Uint8Array | null {
  if (text.length % 4 !== 0) return null;
  if (ownDecoder === undefined) return decoded(text);
  try {
    return ownDecoder.call(Uint8Array, text, { lastChunkHandling: "strict" });
  } catch {
    return null;
  }
}

function decoded(text: string): Uint8Array | null {
  const missing = text.endsWith("==") ? 2 : text.endsWith("=") ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - missing);
  const valueAt = (i: number) => (i < text.length - missing ? (VALUES[text.charCodeAt(i)] ?? NONE) : 0);
  for (let i = 0, at = 0; i < text.length; i += 4, at += 3) {
    const [a, b, c, d] = [valueAt(i), valueAt(i + 1), valueAt(i + 2), valueAt(i + 3)];
    if ((a | b | c | d) === NONE) return null;
    // Bytes past the end of the list are dropped: those are the missing ones.
    bytes[at] = (a << 2) | (b >> 4);
    bytes[at + 1] = (b << 4) | (c >> 2);
    bytes[at + 2] = (c << 6) | d;
  }
  return bytes;
}

const WIDTH: Record<ListKind, number> = { f32: 4, i32: 4, i16: 2, u8: 1 };

/** A number list as base64 text. */
export function packNumbers(list: NumberList): string {
  const bytes = new Uint8Array(list.buffer, list.byteOffset, list.byteLength);
  return toBase64(isLittleEndian() ? bytes : turned(bytes, list.BYTES_PER_ELEMENT));
}

/** The number list of a kind behind base64 text, or null if the text is none or does not hold whole numbers of it. */
export function unpackNumbers(text: string, kind: "f32"): Float32Array | null;
export function unpackNumbers(text: string, kind: "i32"): Int32Array | null;
export function unpackNumbers(text: string, kind: "i16"): Int16Array | null;
export function unpackNumbers(text: string, kind: "u8"): Uint8Array | null;
export function unpackNumbers(text: string, kind: ListKind): NumberList | null {
  const bytes = fromBase64(text);
  if (bytes === null || bytes.length % WIDTH[kind] !== 0) return null;
  const { buffer } = isLittleEndian() ? bytes : turned(bytes, WIDTH[kind]);
  if (kind === "f32") return new Float32Array(buffer);
  if (kind === "i32") return new Int32Array(buffer);
  if (kind === "i16") return new Int16Array(buffer);
  return bytes;
}

/** Number lists lie in memory in the machine's own order. */
function isLittleEndian(): boolean {
  return new Uint8Array(Uint16Array.of(1).buffer)[0] === 1;
}

/** The bytes of each number in the other order. */
export function turned(bytes: Uint8Array, width: number): Uint8Array {
  return Uint8Array.from(bytes, (_, at) => bytes[at - (at % width) + width - 1 - (at % width)]!);
}
