import type { Nose } from "../nose/nose.js";
import { groupJudge } from "./groupJudge.js";

/**
 * Headspace time that a finding is likely to take: the first horizon by which at least half of the held-out sniffs
 * would have had a single label that stood, over the groups asked for; the last horizon if none does.
 *
 * @returns milliseconds, or null if the nose knows none of the groups
 */
export function likelyTimeMs(nose: Nose, groups: readonly string[], acceptedMissRate: number): number | null {
  const known = nose.groups.filter(({ name, horizons }) => groups.includes(name) && horizons.length > 0);
  if (known.length === 0) return null;
  for (const [place, { fromMs }] of nose.horizons.entries()) {
    let told = 0;
    let all = 0;
    for (const group of known) {
      const judge = groupJudge(group, acceptedMissRate);
      group.truth.forEach((_, i) => {
        const sets = group.horizons
          .slice(0, place + 1)
          .map((own, at) =>
            judge.setAt(
              at,
              { logit: own.logits[i] ?? 0, probability: own.probabilities[i] ?? 0.5 },
              group.fold[i] ?? 0,
            ),
          );
        all += 1;
        if (judge.settledLabel(sets) !== null) told += 1;
      });
    }
    if (2 * told >= all) return fromMs;
  }
  return nose.horizons.at(-1)?.fromMs ?? null;
}
