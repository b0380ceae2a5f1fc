import fc from "fast-check";
import { expect, it } from "vitest";
import { likelihoodRatioOf, likelihoodRatios, posterior, youdenIndex } from "../../src/stats/diagnosis.js";

it.each([
  // Source of the first: Caraguel and Vanderstichel, Evid. Based Med. 18 (2013), 125-128 (about 19, 28 %, 0.6 %).
  // The others computed in plain Python.
  [0.02, 0.75, 0.96, 0.2768, 0.0053],
  [0.1, 0.9, 0.9, 0.5, 0.0122],
  [0.01, 0.99, 0.99, 0.5, 0.0001],
  [0.3, 0.8, 0.95, 0.8727, 0.0828],
])("moves a belief of %s by a test of %s and %s", (prior, sensitivity, specificity, afterYes, afterNo) => {
  const ratios = likelihoodRatios(sensitivity, specificity);
  expect(posterior(prior, ratios.positive)).toBeCloseTo(afterYes, 4);
  expect(posterior(prior, ratios.negative)).toBeCloseTo(afterNo, 4);
});

it("knows the ratios and Youden's index", () => {
  // By hand: 0.75 / 0.04 and 0.25 / 0.96.
  expect(likelihoodRatios(0.75, 0.96).positive).toBeCloseTo(18.75, 10);
  expect(likelihoodRatios(0.75, 0.96).negative).toBeCloseTo(0.2604, 4);
  expect(youdenIndex(0.9, 0.9)).toBeCloseTo(0.8, 14);
});

const fraction = fc.double({ min: 0.001, max: 0.999, noNaN: true });

it("is Bayes' rule counted out", () => {
  fc.assert(
    fc.property(fraction, fraction, fraction, (prior, sensitivity, specificity) => {
      const { positive, negative } = likelihoodRatios(sensitivity, specificity);
      const yes = prior * sensitivity + (1 - prior) * (1 - specificity);
      const afterYes = posterior(prior, positive);
      const afterNo = posterior(prior, negative);
      expect(afterYes).toBeCloseTo((prior * sensitivity) / yes, 12);
      // The two outcomes, weighed by how often they come, give back the belief from before.
      expect(yes * afterYes + (1 - yes) * afterNo).toBeCloseTo(prior, 12);
    }),
  );
});

it("combines independent evidence in any order", () => {
  fc.assert(
    fc.property(fraction, fraction, fraction, (prior, p, q) => {
      const [first, second] = [likelihoodRatioOf(p, 0.5), likelihoodRatioOf(q, 0.3)];
      const together = posterior(prior, first * second);
      expect(posterior(posterior(prior, first), second)).toBeCloseTo(together, 10);
      expect(posterior(posterior(prior, second), first)).toBeCloseTo(together, 10);
    }),
  );
});

it("gives back the probability under the share it was taught with", () => {
  fc.assert(
    fc.property(fraction, fraction, (probability, share) => {
      expect(posterior(share, likelihoodRatioOf(probability, share))).toBeCloseTo(probability, 10);
    }),
  );
});

it("leaves a belief alone where the evidence says nothing", () => {
  expect(posterior(0.37, 1)).toBeCloseTo(0.37, 14);
  expect(likelihoodRatios(1, 0)).toEqual({ positive: 1, negative: 1 });
});

it("meets certainty", () => {
  expect(posterior(0.2, Infinity)).toBe(1);
  expect(posterior(0.2, 0)).toBe(0);
  expect(posterior(0, 50)).toBe(0);
  expect(posterior(1, 0.01)).toBe(1);
  expect(likelihoodRatios(0.9, 1)).toEqual({
    positive: Infinity,
    negative: expect.closeTo(0.1, 12) as number,
  });
  expect(() => posterior(0, Infinity)).toThrow(RangeError);
  expect(() => posterior(1, 0)).toThrow(RangeError);
});

it.each([-0.1, 1.5, 90, NaN])("refuses a fraction of %s", (bad) => {
  expect(() => likelihoodRatios(bad, 0.5)).toThrow(RangeError);
  expect(() => likelihoodRatios(0.5, bad)).toThrow(RangeError);
  expect(() => youdenIndex(bad, 0.5)).toThrow(RangeError);
  expect(() => posterior(bad, 1)).toThrow(RangeError);
  expect(() => likelihoodRatioOf(bad, 0.5)).toThrow(RangeError);
  expect(() => likelihoodRatioOf(0.5, bad)).toThrow(RangeError);
});

it.each([0, 1])("refuses a nose taught with a share of %s", (share) => {
  expect(() => likelihoodRatioOf(0.5, share)).toThrow(RangeError);
});

it("refuses a negative ratio", () => expect(() => posterior(0.5, -1)).toThrow(RangeError));
