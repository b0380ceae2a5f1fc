import { RECIPES, recipeOf } from "../features/recipe.js";
import type { Assessment } from "./assessSamples.js";
import type { SampleChecks } from "../nose/report.js";
import { leakChecks } from "./leakChecks.js";
import { learningCurve } from "./learningCurve.js";
import { leaveFoodOut } from "./leaveFoodOut.js";
import type { UnlikeReport } from "./foodDistances.js";

/** What the samples themselves are like, whatever the nose. */
export interface SampleSetReport extends SampleChecks {
  /** Null if no dish came up on more than one plate. */
  readonly unlike: UnlikeReport | null;
}

/** Leak checks, learning curve and the test of "unlike anything taught", on the recipe that most folds chose. */
export function assessSampleSet(assessment: Assessment, seed: number): SampleSetReport {
  const { prepared, choices } = assessment;
  const votes = new Map<number, number>();
  for (const { recipe } of choices) votes.set(recipe, (votes.get(recipe) ?? 0) + 1);
  const [most] = [...votes].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
  const recipe = recipeOf(most?.[0] ?? 1) ?? RECIPES[0]!;
  const shares = choices.map((one) => one.humidityShare).sort((a, b) => a - b);
  const humidityShare = shares[Math.floor(shares.length / 2)] ?? 0;
  return {
    leaks: leakChecks(prepared, seed),
    learningCurve: learningCurve(prepared, recipe, humidityShare, seed),
    unlike: leaveFoodOut(prepared, recipe, humidityShare, seed),
  };
}
