/**
 * SHA-256 of a text's UTF-8 bytes, or of bytes, as lower-case hexadecimal.
 *
 * @see FIPS 180-4; Web Cryptography API, section 14.3.5
 */
export async function sha256(data: string | Blob): Promise<string> {
  const bytes = typeof data === "string" ? new TextEncoder().encode(data) : await data.arrayBuffer();
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
