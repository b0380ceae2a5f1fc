/** Bytes as text, without the browser's help. @see RFC 4648, section 4 */
const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const PADDING = "=".charCodeAt(0);
const NO_DIGIT = 0xff;

const CODES = Uint8Array.from(ALPHABET, (digit) => digit.charCodeAt(0));
const DIGITS = new Uint8Array(128).fill(NO_DIGIT);
CODES.forEach((code, digit) => (DIGITS[code] = digit));

/** How many codes are made into text at a time: below the limit of arguments that engines set. */
const CHUNK = 8192;

/** Base64 with padding. */
export function toBase64(bytes: Uint8Array): string {
  const codes = new Uint8Array(4 * Math.ceil(bytes.length / 3)).fill(PADDING);
  for (let from = 0, to = 0; from < bytes.length; from += 3, to += 4) {
    const left = bytes.length - from;
    const three = (byteAt(bytes, from) << 16) | (byteAt(bytes, from + 1) << 8) | byteAt(bytes, from + 2);
    codes[to] = codeOf(three >> 18);
    codes[to + 1] = codeOf((three >> 12) & 63);
    if (left > 1) codes[to + 2] = codeOf((three >> 6) & 63);
    if (left > 2) codes[to + 3] = codeOf(three & 63);
  }
  const parts: string[] = [];
  for (let from = 0; from < codes.length; from += CHUNK)
    parts.push(String.fromCharCode(...codes.subarray(from, from + CHUNK)));
  return parts.join("");
}

/** The bytes, or undefined for text that no encoder writes: strange digits, missing padding, stray bits. */
export function fromBase64(text: string): Uint8Array | undefined {
  if (text.length % 4 !== 0) return undefined;
  const padding = text.endsWith("==") ? 2 : text.endsWith("=") ? 1 : 0;
  const bytes = new Uint8Array((text.length / 4) * 3 - padding);
  let held = 0;
  for (let at = 0; at < text.length - padding; at += 1) {
    const digit = DIGITS[text.charCodeAt(at)] ?? NO_DIGIT;
    if (digit === NO_DIGIT) return undefined;
    held = ((held << 6) | digit) & 0xffffff;
    const place = at % 4;
    if (place > 0) bytes[Math.floor(at / 4) * 3 + place - 1] = (held >> (6 - 2 * place)) & 0xff;
  }
  const strayBits = padding === 2 ? held & 15 : padding === 1 ? held & 3 : 0;
  return strayBits === 0 ? bytes : undefined;
}

function byteAt(bytes: Uint8Array, at: number): number {
  return bytes[at] ?? 0;
}

function codeOf(digit: number): number {
  return CODES[digit] ?? PADDING;
}
