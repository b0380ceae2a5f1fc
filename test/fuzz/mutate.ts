/** Small harm, done to bytes, to text and to JSON values, out of a seeded source of chance. */
import type { RandomSource } from "../../src/kernel/random.js";

export const below = (random: RandomSource, limit: number): number => Math.floor(random() * limit);

export function pick<T>(random: RandomSource, items: readonly T[]): T {
  const item = items[below(random, items.length)];
  if (item === undefined) throw new RangeError("nothing to pick from");
  return item;
}

export const randomBytes = (random: RandomSource, length: number): Uint8Array =>
  Uint8Array.from({ length }, () => below(random, 256));

/** Flips a bit, sets an octet to an edge value, cuts, adds, or doubles; one to four times. */
export function mutateBytes(random: RandomSource, bytes: Uint8Array): Uint8Array {
  let list = [...bytes];
  for (let left = 1 + below(random, 4); left > 0; left -= 1) {
    const at = below(random, list.length + 1);
    const how = below(random, 6);
    if (how === 0 && at < list.length) list[at] = (list[at] ?? 0) ^ (1 << below(random, 8));
    else if (how === 1 && at < list.length) list[at] = pick(random, [0, 1, 0x7f, 0x80, 0xfe, 0xff]);
    else if (how === 2) list = list.slice(0, at);
    else if (how === 3) list.splice(at, 0, below(random, 256));
    else if (how === 4) list.splice(at, 1);
    else list = [...list, ...list.slice(at)].slice(0, 600);
  }
  return Uint8Array.from(list);
}

/** Pieces that upset readers: JSON's own signs, line ends, numbers at the edge, names of an object's machinery. */
const NASTY_TEXT = [
  ...'{}[]",:\\\n\r\t ',
  "\u0000",
  "\ud800",
  "\u2028",
  "\ufeff",
  "\r\n",
  "null",
  "1e999",
  "-0",
  '"__proto__":1,',
  "[".repeat(3000),
  '{"a":'.repeat(3000),
  "9".repeat(400),
  "\\u0000",
  "<img src=x onerror=alert(1)>",
];

/** Cuts, repeats, swaps or strews in; one to four times. */
export function mutateText(random: RandomSource, text: string): string {
  let changed = text;
  for (let left = 1 + below(random, 4); left > 0; left -= 1) {
    const at = below(random, changed.length + 1);
    const length = 1 + below(random, 12);
    const how = below(random, 6);
    if (how === 0) changed = changed.slice(0, at) + changed.slice(at + length);
    else if (how === 1) changed = changed.slice(0, at) + pick(random, NASTY_TEXT) + changed.slice(at);
    else if (how === 2) changed = changed.slice(0, at);
    else if (how === 3)
      changed = changed.slice(0, at) + changed.slice(at, at + length).repeat(3) + changed.slice(at);
    else if (how === 4)
      changed = changed.slice(0, at) + String.fromCharCode(below(random, 0x10000)) + changed.slice(at + 1);
    else changed = changed.slice(at) + changed.slice(0, at);
  }
  return changed;
}

const NASTY_KEYS = [
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "valueOf",
  "length",
  "then",
  "",
  "0",
];

function nastyValue(random: RandomSource): unknown {
  return pick<() => unknown>(random, [
    () => null,
    () => below(random, 2) === 0,
    () => pick(random, [0, -0, -1, 0.5, 1e308, -1e308, 5e-324, 2 ** 53, 65_535, 1.5]),
    () =>
      pick(random, [
        "",
        " ",
        "x".repeat(600),
        "2026-11-25T18:30:00+05",
        "2026-02-31T10:00:00Z",
        "1e999",
        ...NASTY_TEXT,
      ]),
    () => [],
    () => ({}),
    () => ({ toString: 1, valueOf: null }),
    () => JSON.parse(`{"__proto__":{"polluted":1}}`) as unknown,
    () => nested(pick(random, [10, 100, 6000]), pick(random, ["[", "{"] as const)),
    () => Array.from({ length: below(random, 600) }, () => "x"),
  ])();
}

/** Stands for brackets within brackets until the value becomes text: JSON.stringify cannot write what JSON.parse can read. */
const nested = (depth: number, opening: "[" | "{") => `@nested ${depth} ${opening}`;

/**
 * A value as JSON text, with the brackets in place of what stands for them. Only of the depths above, and only for a
 * whole value: what stands for them may have been mutated in its turn.
 */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(value) ?? "null";
  return text.replace(/(?<!\\)"@nested (10|100|6000) ([[{])"/g, (_all, depth: string, opening: string) =>
    opening === "["
      ? "[".repeat(Number(depth)) + "]".repeat(Number(depth))
      : `${'{"a":'.repeat(Number(depth))}1${"}".repeat(Number(depth))}`,
  );
}

/** A copy of a JSON value with one to three places of it changed, taken out, doubled or put in. */
export function mutateValue(random: RandomSource, value: unknown): unknown {
  let changed = structuredClone(value);
  for (let left = 1 + below(random, 3); left > 0; left -= 1) changed = mutateOnce(random, changed, 0);
  return changed;
}

function mutateOnce(random: RandomSource, value: unknown, depth: number): unknown {
  const stop = random() < 0.15 + 0.05 * depth;
  if (typeof value === "number" && !stop) return pick(random, [-value, value + 1, value * 10, value / 3]);
  if (typeof value === "string" && !stop) return mutateText(random, value);
  if (typeof value !== "object" || value === null || stop) return nastyValue(random);
  return Array.isArray(value) ? mutateList(random, value, depth) : mutateMembers(random, value, depth);
}

function mutateList(random: RandomSource, list: readonly unknown[], depth: number): unknown[] {
  const copy = [...list];
  const at = below(random, copy.length + 1);
  const how = below(random, 8);
  if (how === 0 || at === copy.length) copy.splice(at, 0, copy[0] ?? nastyValue(random));
  else if (how === 1) copy.splice(at, 1);
  else copy[at] = mutateOnce(random, copy[at], depth + 1);
  return copy;
}

function mutateMembers(random: RandomSource, value: object, depth: number): object {
  const members = Object.entries(value);
  const at = below(random, members.length);
  const [name, member] = members[at] ?? ["", undefined];
  const how = below(random, 10);
  if (how === 0 || member === undefined) members.push([pick(random, NASTY_KEYS), nastyValue(random)]);
  else if (how === 1) members.splice(at, 1);
  else if (how === 2) members[at] = [pick(random, NASTY_KEYS), member];
  else members[at] = [name, mutateOnce(random, member, depth + 1)];
  // As JSON.parse does: an own member of that name, never the prototype.
  const made = {};
  for (const [key, one] of members)
    Object.defineProperty(made, key, { value: one, enumerable: true, configurable: true, writable: true });
  return made;
}
