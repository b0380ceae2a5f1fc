import studentQuantileReference from "@stdlib/stats/base/dists/t/quantile";
import { expect, it } from "vitest";
import { meanInterval, studentQuantile } from "../../src/stats/meanInterval.js";

it.each([1, 2, 4, 9, 29, 200])(
  "Student's quantile agrees with @stdlib/stats at %s degrees of freedom",
  (degrees) => {
    for (const p of [0.001, 0.025, 0.3, 0.5, 0.9, 0.975, 0.9999])
      expect(studentQuantile(p, degrees)).toBeCloseTo(studentQuantileReference(p, degrees), 7);
  },
);

it("gives the interval of Student's own sleep data", () => {
  // Source: R 4.2, t.test(extra[group == 2] - extra[group == 1]) on `sleep` (Student 1908): 0.7001142 to 2.4598858.
  // Value from memory.
  const gains = [1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4];
  const { low, high } = meanInterval(gains);
  expect(low).toBeCloseTo(0.7001142, 6);
  expect(high).toBeCloseTo(2.4598858, 6);
});

it("refuses a single value, and a share outside 0 to 1", () => {
  expect(() => meanInterval([1])).toThrow(RangeError);
  expect(() => studentQuantile(1, 5)).toThrow(RangeError);
  expect(() => studentQuantile(0.5, 0)).toThrow(RangeError);
});
