/**
 * JSON with its keys in order, so that the same record is always the same text.
 *
 * Keys are sorted by code unit, absent and undefined members are one thing, and a value that JSON does not know
 * becomes null. Strings and numbers are written as ECMAScript writes them.
 *
 * @see RFC 8785, sections 3.2.2 and 3.2.3
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value === "bigint") return JSON.stringify(String(value));
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([left], [right]) => (left < right ? -1 : 1))
    .map(([key, member]) => `${JSON.stringify(key)}:${canonicalJson(member)}`);
  return `{${members.join(",")}}`;
}
