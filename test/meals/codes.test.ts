import { crc32 as zlibCrc32 } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromBase64, toBase64 } from "../../src/meals/base64.js";
import { canonicalJson } from "../../src/meals/canonicalJson.js";
import { crc32 } from "../../src/meals/crc32.js";
import { fingerprintOf } from "../../src/meals/fingerprint.js";
import { deeperThan } from "../../src/kernel/jsonDepth.js";

const ascii = (text: string) => Uint8Array.from(text, (sign) => sign.charCodeAt(0));

describe("base64", () => {
  it.each([
    // Source: RFC 4648, section 10.
    ["", ""],
    ["f", "Zg=="],
    ["fo", "Zm8="],
    ["foo", "Zm9v"],
    ["foob", "Zm9vYg=="],
    ["fooba", "Zm9vYmE="],
    ["foobar", "Zm9vYmFy"],
  ])("writes %j as %j and reads it again", (plain, coded) => {
    expect(toBase64(ascii(plain))).toBe(coded);
    expect(fromBase64(coded)).toEqual(ascii(plain));
  });

  it("agrees with Node's own for any bytes, and beyond one chunk", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString("base64"));
        expect(fromBase64(toBase64(bytes))).toEqual(new Uint8Array(bytes));
      }),
    );
    const long = Uint8Array.from({ length: 20_001 }, (_, i) => (i * 7) & 255);
    expect(toBase64(long)).toBe(Buffer.from(long).toString("base64"));
  });

  it.each([
    ["a missing padding", "Zg"],
    ["a strange digit", "Zm9*"],
    ["a line break", "Zm9\n"],
    ["a letter beyond ASCII", "Zm9é"],
    ["padding in the middle", "Zg==Zg=="],
    ["nothing but padding", "===="],
    ["stray bits before ==", "Zh=="], // RFC 4648, section 3.5: pad bits must be zero
    ["the highest stray bit before ==", "Zo=="],
    ["stray bits before =", "Zm9="],
    ["the higher stray bit before =", "Zm+="],
  ])("refuses %s", (_what, text) => {
    expect(fromBase64(text)).toBeUndefined();
  });
});

describe("CRC-32", () => {
  it("gives the check value of its polynomial", () => {
    expect(crc32(ascii("123456789"))).toBe(0xcbf43926); // value from memory, agrees with zlib below
    expect(crc32(new Uint8Array())).toBe(0);
  });

  it("agrees with zlib for any bytes", () => {
    fc.assert(fc.property(fc.uint8Array(), (bytes) => void expect(crc32(bytes)).toBe(zlibCrc32(bytes))));
  });
});

describe("canonical JSON", () => {
  it("orders keys by code unit on every level", () => {
    // Source: RFC 8785, section 3.2.3, the sorting example. Its names: euro, CR, "\ufb33", "1", U+1F600, U+0080, o-umlaut.
    const source = {
      "\u20ac": "Euro Sign",
      "\r": "Carriage Return",
      "\ufb33": "Hebrew Letter Dalet With Dagesh",
      "1": "One",
      "\ud83d\ude00": "Emoji: Grinning Face",
      "\u0080": "Control",
      "\u00f6": "Latin Small Letter O With Diaeresis",
    };
    const order = [...canonicalJson(source).matchAll(/:"([^"]*)"/g)].map((match) => match[1]);
    expect(order).toEqual([
      "Carriage Return",
      "One",
      "Control",
      "Latin Small Letter O With Diaeresis",
      "Euro Sign",
      "Emoji: Grinning Face",
      "Hebrew Letter Dalet With Dagesh",
    ]);
  });

  it("says the same as JSON does, whatever the order of the keys", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
        const plain = JSON.parse(JSON.stringify(value)) as unknown;
        expect(JSON.parse(canonicalJson(value))).toEqual(plain);
        expect(canonicalJson(reversed(plain))).toBe(canonicalJson(plain));
      }),
    );
  });

  it("takes a missing and an undefined member for one thing, and nothing else away", () => {
    expect(canonicalJson({ b: undefined, a: [undefined, 1n, NaN] })).toBe('{"a":[null,"1",null]}');
  });
});

/** The same value with the keys of every object the other way round. */
function reversed(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(reversed);
  if (typeof value !== "object" || value === null) return value;
  const turned = Object.create(null) as Record<string, unknown>;
  for (const [key, member] of Object.entries(value).reverse()) turned[key] = reversed(member);
  return turned;
}

describe("fingerprints", () => {
  it("tell a changed word, a changed byte and a missing byte", () => {
    const record = { value: { dish: "broth" }, bytes: Uint8Array.of(1, 2) };
    const prints = [
      record,
      { ...record, value: { dish: "brothy" } },
      { ...record, value: { dish: "btorh" } },
      { ...record, bytes: Uint8Array.of(2, 1) },
      { ...record, bytes: Uint8Array.of(1) },
      { value: record.value },
    ].map(fingerprintOf);
    expect(new Set(prints).size).toBe(6);
  });
});

describe("depth of JSON", () => {
  it.each([
    ["[]", 1],
    ['{"a":[{}]}', 3],
    ['["[[[[", "\\"[[[", "\\\\", []]', 2],
    ["1", 0],
  ])("%s is %d deep", (text, depth) => {
    expect(deeperThan(text, depth)).toBe(false);
    if (depth > 0) expect(deeperThan(text, depth - 1)).toBe(true);
  });

  it("is not fooled by an open string or ten million brackets", () => {
    expect(deeperThan('["[[[[', 1)).toBe(false);
    expect(deeperThan("[".repeat(10_000_000), 64)).toBe(true);
  });
});
