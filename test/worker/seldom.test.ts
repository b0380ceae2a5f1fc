import fc from "fast-check";
import { expect, it } from "vitest";
import { seldom } from "../../src/worker/seldom.js";

it("passes on the first value, and no two of them closer together than the stretch", () => {
  fc.assert(
    fc.property(fc.array(fc.nat({ max: 400 })), (gaps) => {
      let nowMs = 0;
      const told: number[] = [];
      const tell = seldom(
        (value: number) => told.push(value),
        250,
        () => nowMs,
      );
      const offered = gaps.map((gap) => (nowMs += gap));
      nowMs = 0;
      for (const gap of gaps) tell((nowMs += gap));
      expect(told[0]).toBe(offered[0]);
      const waited = told.slice(1).map((at, i) => at - told[i]!);
      expect(waited.every((ms) => ms >= 250)).toBe(true);
      // Nothing is held back longer than that: each value left out had one told less than a stretch before it.
      expect(offered.every((at) => told.some((one) => one <= at && at - one < 250))).toBe(true);
    }),
  );
});
