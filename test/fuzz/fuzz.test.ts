// A short slice of the long fuzzing, always from the same seeds, so that a failure repeats.
import { describe, expect, it } from "vitest";
import { runTarget } from "./runTarget.js";
import { targets } from "./targets.js";

const CASES = 200;

describe.each(targets.map((target) => [target.name, target] as const))("%s", (_name, target) => {
  it("neither crashes nor hangs nor loses a thing without a word", async () => {
    const outcome = await runTarget(target, CASES, 1);
    expect(outcome.faults).toEqual([]);
    // Both ways were tried: something was taken, and something refused.
    expect(outcome.accepted).toBeGreaterThan(0);
    expect(outcome.accepted).toBeLessThan(CASES);
  });
});

it("names the seed of a case that breaks a promise", async () => {
  const outcome = await runTarget(
    {
      name: "planted",
      run: (random) => {
        if (random() < 0.5) throw new Error("planted");
        return true;
      },
    },
    20,
    1,
  );
  expect(outcome.faults.length).toBeGreaterThan(0);
  expect(outcome.faults[0]?.cause).toContain("planted");
});
