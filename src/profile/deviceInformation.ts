/**
 * The UTF-8 strings of the Device Information Service. The serial number is not among them: browsers block it,
 * so the sniffer's identity travels in LAYOUT.
 */
import { err, ok, type Result } from "../kernel/result.js";
import { fromHex, toHex } from "./bytes.js";
import type { FieldError } from "./fieldError.js";

/** The longest attribute value. @see Bluetooth Core, Vol 3 Part F, 3.2.9 (value from memory) */
const MOST_OCTETS = 512;

/**
 * Strict: no overlong forms, no surrogates, nothing replaced. Never throws.
 *
 * @see ECMA-262, "Decode" (URI handling): octets that are not well-formed UTF-8 are a URIError
 */
export function decodeText(bytes: Uint8Array): Result<string, FieldError> {
  try {
    return ok(decodeURIComponent(toHex(bytes).replaceAll(/../g, "%$&")));
  } catch {
    return err({ kind: "text" });
  }
}

/** @throws {RangeError} for a lone surrogate, or more than 512 octets */
export function encodeText(text: string): Uint8Array {
  const hex = Array.from(text, octetsOf).join("");
  if (hex.length > 2 * MOST_OCTETS) throw new RangeError("text is longer than an attribute");
  return fromHex(hex);
}

/** One character's octets in hexadecimal. */
function octetsOf(character: string): string {
  const ascii = character.charCodeAt(0);
  if (ascii < 0x80) return ascii.toString(16).padStart(2, "0");
  if (/^[\ud800-\udfff]$/.test(character)) throw new RangeError("text has a lone surrogate");
  return encodeURIComponent(character).replaceAll("%", "");
}
