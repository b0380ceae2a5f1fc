import { err, ok, type Result } from "../kernel/result.js";

/** Why a characteristic's value could not be taken. */
export type FieldError =
  | { readonly kind: "length"; readonly expected: number; readonly found: number } // firmware sent a wrong size: report it to its author
  | { readonly kind: "prohibited"; readonly raw: number } // a number the standard forbids: treat the value as missing
  | { readonly kind: "text" }; // not well-formed UTF-8: show no text

/** The bytes if there are exactly `expected` of them. */
export function exactly(bytes: Uint8Array, expected: number): Result<Uint8Array, FieldError> {
  return bytes.length === expected ? ok(bytes) : err({ kind: "length", expected, found: bytes.length });
}
