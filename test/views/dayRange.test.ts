import fc from "fast-check";
import { expect, it } from "vitest";
import { dayRangeFault } from "../../src/views/dayRangeView.js";

const TODAY = "2026-11-25";
// Counted by hand: which of two days is missing, first, or still to come.
it.each([
  ["2026-11-01", "2026-11-25", "both", null],
  ["2026-11-25", "2026-11-25", "both", null],
  ["2026-11-25", "2026-11-24", "both", "order"],
  ["2026-11-26", "2026-11-30", "both", "future"],
  ["2026-11-01", "2027-01-01", "both", null], // up to a day to come is all there is
  ["", "2026-11-25", "both", "empty"],
  ["2026-11-01", "", "both", "empty"],
  ["", "", "both", "empty"],
  ["", "", "open", null],
  ["2026-11-01", "", "open", null],
  ["", "2020-01-01", "open", null],
  ["2026-11-26", "", "open", "future"],
  ["2026-11-25", "2026-11-24", "open", "order"],
] as const)("from %j up to %j, %s ends: %s", (from, upto, ends, fault) => {
  expect(dayRangeFault({ from, upto }, TODAY, ends)).toBe(fault);
});

it("never takes both orders of two different days", () => {
  const day = fc
    .date({ min: new Date("2000-01-01"), max: new Date("2026-11-25"), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10));
  fc.assert(
    fc.property(day, day, (one, other) => {
      const faults = [
        dayRangeFault({ from: one, upto: other }, TODAY, "both"),
        dayRangeFault({ from: other, upto: one }, TODAY, "both"),
      ];
      expect(faults.filter((fault) => fault === "order")).toHaveLength(one === other ? 0 : 1);
    }),
  );
});
