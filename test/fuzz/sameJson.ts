/** Holding what came out of a reader against what went in. */
import assert from "node:assert/strict";
import { canonicalJson } from "../../src/meals/canonicalJson.js";

/**
 * Names of an object's own machinery. Readers leave members of these names out on purpose: no record of ours has one,
 * and letting them through is how a file would reach into the program.
 */
const MACHINERY = new Set(["__proto__", "constructor", "prototype"]);

/** Deeper than any reader may let through: comparing what is deeper would fail here, not there. */
const MOST_DEPTH = 1000;

/**
 * The same value without members that readers leave out, and lists as objects whose names are places: a reader takes a
 * list where an object stands, and nothing is lost by it. Throws where no reader should have let the depth through.
 */
export function withoutMachinery(value: unknown, depth = 0): unknown {
  if (depth > MOST_DEPTH) throw new RangeError(`accepted at a depth beyond ${MOST_DEPTH}`);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => !MACHINERY.has(key))
      .map(([key, member]) => [key, withoutMachinery(member, depth + 1)]),
  );
}

/** Nothing lost, nothing changed. Typed arrays and the like must have been written out as JSON before. */
export function assertSame(found: unknown, given: unknown, what: string): void {
  assert.equal(canonicalJson(withoutMachinery(found)), canonicalJson(withoutMachinery(given)), what);
  assert.equal(Reflect.get({}, "polluted"), undefined, "the prototype of all objects was changed");
}
