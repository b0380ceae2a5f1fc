/** Promised rates by simulation with known truth: the rule alone, on exchangeable scores. */
import { describe, expect, it } from "vitest";
import { allowedBelow } from "../../src/finding/bands.js";
import { groupJudge } from "../../src/finding/groupJudge.js";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { clopperPearsonUpper } from "../../src/stats/proportionInterval.js";
import { handMadeGroup } from "../finding/handMadeNose.js";

const NOSES = 400;
const NEW_PLATES = 200;
const RATE = 0.1;

/** Many noses of one strength: held-out scores around +gap with the group and -gap without; then new plates. */
function simulate(gap: number, plates: number, seed: number) {
  const random = seededRandom(seed);
  const draw = (centre: number) => centre + standardNormal(random);
  let shown = 0;
  let shownTooOptimistic = 0;
  let [misses, presentPlates, presentKept, absentKept, absentPlates] = [0, 0, 0, 0, 0];
  for (let nose = 0; nose < NOSES; nose += 1) {
    const group = handMadeGroup({
      present: Array.from({ length: plates }, () => draw(gap)),
      absent: Array.from({ length: plates }, () => draw(-gap)),
    });
    const judge = groupJudge(group, RATE);
    const isShown = clopperPearsonUpper(judge.shownErrors(0).misses, plates) <= RATE;
    let own = 0;
    for (let plate = 0; plate < NEW_PLATES; plate += 1) {
      const score = (logit: number) => ({ logit, probability: 1 / (1 + Math.exp(-logit)) });
      const present = judge.setAt(0, score(draw(gap)));
      const absent = judge.setAt(0, score(draw(-gap)));
      presentPlates += 1;
      absentPlates += 1;
      if (present.includes("present")) presentKept += 1;
      if (absent.includes("absent")) absentKept += 1;
      if (present.length === 1 && present[0] === "absent") own += 1;
    }
    if (!isShown) continue;
    shown += 1;
    misses += own;
    if (own / NEW_PLATES > RATE) shownTooOptimistic += 1;
  }
  return {
    shown,
    missRate: shown === 0 ? 0 : misses / (shown * NEW_PLATES),
    optimistic: shown === 0 ? 0 : shownTooOptimistic / shown,
    presentCoverage: presentKept / presentPlates,
    absentCoverage: absentKept / absentPlates,
  };
}

describe.each([
  ["a nose that smells nothing", 0, 60],
  ["a weak nose", 0.7, 60],
  ["a fair nose", 1.5, 60],
  ["a good nose on many plates", 2, 150],
  ["too few plates to show the rate", 2, 20],
])("%s", (_what, gap, plates) => {
  const got = simulate(gap, plates, 7 + plates);

  it("misses no more present plates than accepted, where it may say not smelled at all", () => {
    expect(got.missRate).toBeLessThanOrEqual(RATE);
    // The bound is one of 95 %: at most 1 nose in 20 may show a rate that it does not keep, plus sampling error.
    expect(got.optimistic).toBeLessThanOrEqual(0.05 + 0.02);
  });

  it("keeps the truth in its sets as often as promised", () => {
    // Present: the level is (m + 1) / (n + 1); absent: 0.1. Two standard errors of 80 000 correlated draws: 0.01.
    const allowed = allowedBelow(plates, RATE);
    const promised = allowed < 0 ? 1 : 1 - (allowed + 1) / (plates + 1);
    expect(got.presentCoverage).toBeGreaterThanOrEqual(promised - 0.01);
    expect(got.absentCoverage).toBeGreaterThanOrEqual(0.9 - 0.01);
  });

  it("says nothing of absence with fewer than 29 plates", () => {
    if (plates < 29) expect(got.shown === 0 && got.presentCoverage === 1).toBe(true);
    else expect(got.shown).toBeGreaterThan(0);
  });
});

it("coverage is not bought by saying nothing: a good nose names one label for most plates", () => {
  const random = seededRandom(3);
  const group = handMadeGroup({
    present: Array.from({ length: 100 }, () => 3 + standardNormal(random)),
    absent: Array.from({ length: 100 }, () => -3 + standardNormal(random)),
  });
  const judge = groupJudge(group, RATE);
  const sets = Array.from({ length: 500 }, () => {
    const logit = 3 + standardNormal(random);
    return judge.setAt(0, { logit, probability: 1 / (1 + Math.exp(-logit)) });
  });
  expect(sets.filter((set) => set.length === 1 && set[0] === "present").length / 500).toBeGreaterThan(0.7);
});
