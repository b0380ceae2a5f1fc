/** SHA-256 of a text's UTF-8 bytes, as lower-case hexadecimal. @see FIPS 180-4; Web Cryptography API, section 14.3.5 */
export async function sha256(text: string): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
