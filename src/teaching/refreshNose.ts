import type { Result } from "../kernel/result.js";
import type { Nose } from "../nose/nose.js";
import type { Sniff } from "../sniff/sniff.js";
import { teachNose, type Taught, type TeachError, type TeachOptions } from "./teachNose.js";

/** A fresh plate counts as much as this many old ones at most: more would make a few plates the whole truth. */
const LARGEST_RECENCY = 20;

/**
 * Brings an old nose up to date: warm start from its nets, its recipe, old samples moved by the drift that the fresh
 * ones show, fresh samples that together count as much as the old ones, and recalibration on all held-out plates.
 *
 * The drift is estimated on all fresh samples before folds are made; its few numbers know no single plate well.
 *
 * @param fresh - samples taken since the nose was taught
 * @see Vergara and others, Sensors and Actuators B 166-167 (2012), 320-329 (drift over 36 months)
 */
export function refreshNose(
  old: Nose,
  oldSamples: readonly Sniff[],
  fresh: readonly Sniff[],
  options: TeachOptions,
): Promise<Result<Taught, TeachError>> {
  const recency = Math.min(LARGEST_RECENCY, Math.max(1, oldSamples.length / Math.max(1, fresh.length)));
  return teachNose([...oldSamples, ...fresh], {
    ...options,
    start: old,
    recency: Object.fromEntries(fresh.map(({ id }) => [id, recency])),
  });
}
