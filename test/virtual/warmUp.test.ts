import { describe, expect, it } from "vitest";
import { warmUpLeftMs, warmUpOffset } from "../../src/virtual/warmUp.js";

describe("warm-up", () => {
  it("approaches its end exponentially: equal times, equal shares of what is left", () => {
    const at = (ms: number) => warmUpOffset(0, ms, 60_000);
    expect(at(20_000) / at(10_000)).toBeCloseTo(at(30_000) / at(20_000), 12);
    expect(at(10_000) / at(0)).toBeCloseTo(Math.exp(-1), 12); // six time constants in 60 s
  });

  it("moves the two films to their rest from different sides, and leaves less than 0.3 % at the end", () => {
    expect(warmUpOffset(0, 0, 60_000) * warmUpOffset(1, 0, 60_000)).toBeLessThan(0);
    expect(Math.abs(warmUpOffset(0, 60_000, 60_000))).toBeLessThan(0.003);
  });

  it("is none where no warm-up is stated", () => {
    expect(warmUpOffset(0, 0, 0)).toBe(0);
    expect(warmUpLeftMs(0, 0)).toBe(0);
  });

  it.each([
    [0, 60_000],
    [1, 59_999],
    [59_999, 1],
    [60_000, 0],
    [90_000, 0],
  ])("after %s ms has %s ms left", (sinceBootMs, left) => {
    expect(warmUpLeftMs(sinceBootMs, 60_000)).toBe(left);
  });
});
