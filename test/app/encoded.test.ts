import fc from "fast-check";
import { expect, it } from "vitest";
import { encoded } from "../../src/app/you/encoded.js";

const SLICE = 65_536;

it("makes the octets of the Encoding Standard, wherever the slices end", async () => {
  // Characters of one to four octets (The Unicode Standard, table 3-6), pushed across the ends of the slices.
  const characters = fc.constantFrom("a", "ß", "麺", "🍜", "\ud83c", "\udf5c");
  const text = fc.tuple(
    fc.integer({ min: SLICE - 4, max: SLICE + 1 }),
    fc.array(characters, { maxLength: 9 }),
  );
  await fc.assert(
    fc.asyncProperty(text, async ([before, ending]) => {
      const whole = "b".repeat(before) + ending.join("");
      const blob = await encoded(whole + whole, () => undefined);
      expect(Buffer.from(await blob.arrayBuffer()).equals(Buffer.from(whole + whole, "utf8"))).toBe(true);
    }),
    { numRuns: 100 },
  );
});

it("lets others have their turn after each slice", async () => {
  let breaths = 0;
  await encoded("x".repeat(3 * SLICE + 1), async () => void (breaths += 1));
  expect(breaths).toBe(4);
});
