import { expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import { kernelLogits } from "../../src/nose/kernelLogits.js";
import { fitKernel } from "../../src/teaching/fitKernel.js";

/** Ten sniffs so far apart that no bell reaches the next; the first seven hold the group. */
const COUNT = 10;
const lonely = {
  rows: COUNT,
  features: 2,
  groups: 1,
  x: Float64Array.from({ length: 2 * COUNT }, (_, at) =>
    at % 2 === 0 ? 20 * Math.floor(at / 4) : 20 * (Math.floor(at / 2) % 2),
  ),
  truth: Int8Array.from({ length: COUNT }, (_, row) => (row < 7 ? 1 : 0)),
  weight: new Float64Array(COUNT).fill(1),
};

it("far from all sniffs only the intercept speaks: the mean of the truths, hardly pulled", () => {
  // By hand: with q = r (1 + 0.001) / (1 + r (1 + 0.001)) at ridge r = 1, ten rows and truths that sum to 4,
  // the intercept is 9 * 4 q / (9 * 10 q + 1) = 0.3915 of a truth; log-odds are four times that.
  const [logit] = kernelLogits(
    fitKernel(lonely, { widths: [1], ridge: 1, bells: COUNT }, seededRandom(1)),
    Float64Array.of(-60, -60),
  );
  expect(logit! / 4).toBeCloseTo(0.3915, 3);
});

it("at a sniff its own bell speaks too: nearer to its truth, the less pull the nearer", () => {
  const at = (ridge: number) =>
    kernelLogits(
      fitKernel(lonely, { widths: [1], ridge, bells: COUNT }, seededRandom(1)),
      Float64Array.of(lonely.x[18]!, lonely.x[19]!),
    )[0]! / 4;
  expect(at(0.01)).toBeCloseTo(-1, 1);
  expect(at(0.01)).toBeLessThan(at(0.5));
  expect(at(0.5)).toBeLessThan(at(2));
});
