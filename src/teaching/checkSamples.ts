import { RECIPES, recipeOf } from "../features/recipe.js";
import { ok, type Result } from "../kernel/result.js";
import type { Nose } from "../nose/nose.js";
import { humidityShareOf } from "../nose/standardised.js";
import type { OccasionReport, SampleChecks } from "../nose/report.js";
import type { Sniff } from "../sniff/sniff.js";
import { leakChecks } from "./leakChecks.js";
import { learningCurve } from "./learningCurve.js";
import { prepareSamples, type SampleError } from "./prepareSamples.js";
import { teachNose } from "./teachNose.js";
import type { TeachOptions } from "./teachOptions.js";

/** Checks of the samples behind a nose, on the groups and the recipe of that nose. */
export function checkSamples(
  nose: Nose,
  samples: readonly Sniff[],
  seed: number,
): Result<SampleChecks, SampleError> {
  const prepared = prepareSamples(
    samples,
    nose.groups.map(({ name }) => name),
  );
  if (!prepared.ok) return prepared;
  const recipe = recipeOf(nose.recipe) ?? RECIPES[0]!;
  return ok({
    leaks: leakChecks(prepared.value, seed),
    learningCurve: learningCurve(prepared.value, recipe, humidityShareOf(nose), seed),
  });
}

/** The nose with the checks of its samples in its report; as it was where there is nothing to check. */
export function withSampleChecks(nose: Nose, samples: readonly Sniff[], seed: number): Nose {
  const checks = checkSamples(nose, samples, seed);
  return checks.ok ? { ...nose, report: { ...nose.report, sampleChecks: checks.value } } : nose;
}

/**
 * Teaches the same samples once more with whole occasions held out.
 *
 * @returns null if there is only one occasion, or if it was stopped
 */
export async function judgeByOccasion(
  nose: Nose,
  samples: readonly Sniff[],
  options: TeachOptions,
): Promise<OccasionReport | null> {
  if (nose.occasionsTaught < 2) return null;
  const groups = nose.groups.map(({ name }) => name);
  const taught = await teachNose(samples, { ...options, groups, split: "occasion" });
  if (!taught.ok) return null;
  const { report, occasionsTaught } = taught.value.nose;
  return {
    occasions: occasionsTaught,
    folds: report.folds,
    groups: report.groups.map(({ group, scores, sensitivity, specificity }) => ({
      group,
      scores,
      sensitivity,
      specificity,
    })),
  };
}

/**
 * A nose with the checks in its report.
 *
 * @param options - of the teaching; `isCancelled` stops only the checks, and what was not reached stays out
 */
export async function checkedNose(
  nose: Nose,
  samples: readonly Sniff[],
  options: TeachOptions,
): Promise<Nose> {
  if (options.isCancelled?.() === true) return nose;
  const checked = withSampleChecks(nose, samples, options.seed);
  const byOccasion = options.split === "occasion" ? null : await judgeByOccasion(nose, samples, options);
  return byOccasion === null ? checked : { ...checked, report: { ...checked.report, byOccasion } };
}
