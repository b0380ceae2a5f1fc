import fc from "fast-check";
import { expect, it } from "vitest";
import { fitNeighbours } from "../../src/teaching/fitNeighbours.js";

/** Sniffs of two features on a few plates of a few dishes. */
const sniffs = fc.array(
  fc.record({
    x: fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })),
    plate: fc.nat(7),
  }),
  { minLength: 2, maxLength: 30 },
);

// Breunig, Kriegel, Ng and Sander (2000): what a distance is set against is how far the neighbours lie from their own.
it("sets each taught sniff's own distance from the three nearest other plates, each by its nearest sniff", () => {
  fc.assert(
    fc.property(sniffs, (all) => {
      const plates = Int32Array.from(all, ({ plate }) => plate);
      const table = {
        rows: all.length,
        features: 2,
        groups: 1,
        x: Float64Array.from(all.flatMap(({ x }) => x)),
        truth: Int8Array.from(all, (_, row) => row % 2),
        weight: new Float64Array(all.length).fill(1),
      };
      const { axes, references, localScale } = fitNeighbours(table, plates, plates);
      const distance = (one: number, other: number) =>
        Math.hypot(
          ...Array.from(
            { length: axes },
            (_, i) => references[one * axes + i]! - references[other * axes + i]!,
          ),
        );
      all.forEach((own, row) => {
        const others = [...new Set(plates)].filter((plate) => plate !== own.plate);
        const nearest = others
          .map((plate) =>
            Math.min(
              ...[...plates.keys()].filter((at) => plates[at] === plate).map((at) => distance(row, at)),
            ),
          )
          .sort((a, b) => a - b)
          .slice(0, 3);
        const wanted = nearest.reduce((sum, one) => sum + one, 0) / Math.max(1, nearest.length);
        expect(localScale?.[row]).toBeCloseTo(wanted, 4);
      });
    }),
  );
});
