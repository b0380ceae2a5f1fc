import fc from "fast-check";
import { expect, it } from "vitest";
import { fromBase64, toBase64, turned } from "../../src/nose/packNumbers.js";

it("writes and reads bytes as RFC 4648 does in its section 10", () => {
  const vectors = { "": "", f: "Zg==", fo: "Zm8=", foo: "Zm9v", foob: "Zm9vYg==", fooba: "Zm9vYmE=" };
  for (const [plain, wanted] of Object.entries(vectors)) {
    const bytes = new TextEncoder().encode(plain);
    expect(toBase64(bytes)).toBe(wanted);
    expect(fromBase64(wanted)).toEqual(bytes);
  }
});

it("agrees with Node's Buffer on any bytes", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 5000 }), (bytes) => {
      const wanted = Buffer.from(bytes).toString("base64");
      expect(toBase64(bytes)).toBe(wanted);
      expect(fromBase64(wanted)).toEqual(Uint8Array.from(bytes));
    }),
  );
});

it("refuses what is no base64", () => {
  for (const text of ["A", "AA", "AAA", "A===", "====", "AA=A", "AAA\u0100", "AA A", "A!AA"])
    expect(fromBase64(text)).toBeNull();
});

it("turns the bytes of each number round, for machines that keep them so", () => {
  // By hand: two numbers of two bytes, then one of four.
  expect([...turned(Uint8Array.of(1, 2, 3, 4), 2)]).toEqual([2, 1, 4, 3]);
  expect([...turned(Uint8Array.of(1, 2, 3, 4), 4)]).toEqual([4, 3, 2, 1]);
});
