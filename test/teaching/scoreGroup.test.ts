import fc from "fast-check";
import { expect, it } from "vitest";
import { scoreGroup } from "../../src/teaching/scoreGroup.js";

it("counted by hand: one plate in five holds it, and a probability of 0.3 speaks for it all the same", () => {
  const scores = scoreGroup([0.3, 0.1, 0.1, 0.15, 0.25], [1, 0, 0, 0, 0], [0.2, 0.2, 0.2, 0.2, 0.2]);
  // At one half nothing is called present: sensitivity 0, specificity 1.
  expect(scores.balancedAccuracy).toBe(0.5);
  // At even evidence, above one in five: sensitivity 1, specificity 3 of 4.
  expect(scores.evenBalancedAccuracy).toBeCloseTo((1 + 0.75) / 2, 12);
});

it("even evidence is a likelihood ratio above 1: moving prior and posterior odds together changes no label", () => {
  const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });
  const cases = fc.array(
    fc.record({ ratio: fc.double({ min: -3, max: 3, noNaN: true }), truth: fc.boolean() }),
    {
      minLength: 4,
    },
  );
  const posterior = (prior: number, ratio: number) => {
    const odds = (prior / (1 - prior)) * Math.exp(ratio);
    return odds / (1 + odds);
  };
  fc.assert(
    fc.property(cases, share, share, (all, one, other) => {
      const clear = all.filter(({ ratio }) => Math.abs(ratio) > 1e-6);
      fc.pre(clear.length > 0);
      const at = (prior: number) =>
        scoreGroup(
          clear.map(({ ratio }) => posterior(prior, ratio)),
          clear.map(({ truth }) => Number(truth)),
          clear.map(() => prior),
        ).evenBalancedAccuracy;
      expect(at(one)).toBe(at(other));
    }),
  );
});
