import { expect, it } from "vitest";
import { DEMO_LAYOUT } from "../../src/virtual/snifferState.js";
import { readTimesMs } from "../../src/virtual/sweepTiming.js";

const layoutOf = (sweepPeriodMs: number, ...steps: readonly (readonly [number, number | null])[]) => ({
  ...DEMO_LAYOUT,
  sweepPeriodMs,
  channels: steps.map(([sensor, dwellMs]) => ({ sensor, heaterC: 300, dwellMs })),
});

it("reads two sensors side by side, each step at its end", () => {
  expect(readTimesMs(DEMO_LAYOUT)).toEqual([500, 1000, 1500, 2000, 500, 1000, 1500, 2000]);
});

it("keeps sensors apart whatever their order in the layout", () => {
  expect(readTimesMs(layoutOf(1000, [0, 300], [1, 200], [0, 500], [1, 700]))).toEqual([300, 200, 800, 900]);
});

it("shares the period where no dwell is stated", () => {
  expect(readTimesMs(layoutOf(900, [0, null], [0, null], [0, null], [1, null]))).toEqual([
    300, 600, 900, 900,
  ]);
});

it("reads nothing after the sweep's end, even where the dwells add up to more", () => {
  expect(readTimesMs(layoutOf(2000, [0, 1500], [0, 1500]))).toEqual([1500, 2000]);
});
