import { logLoss } from "../stats/scores.js";
import type { GroupNose, Nose } from "./nose.js";

/** Two noses on the plates that both held out, for one group. */
export interface GroupComparison {
  readonly group: string;
  /** Plates that both noses held out. */
  readonly plates: number;
  readonly older: { readonly logLoss: number; readonly errors: number };
  readonly newer: { readonly logLoss: number; readonly errors: number };
  /** Plates that only one of them got right at probability one half: the pair that McNemar's test looks at. */
  readonly onlyOlderRight: number;
  readonly onlyNewerRight: number;
}

/**
 * Puts two noses side by side on the same held-out plates: each answers by models that never saw the plate.
 *
 * @returns one entry for each group that both know with a common plate; none if a nose does not name its plates
 */
export function compareNoses(older: Nose, newer: Nose): GroupComparison[] {
  return newer.groups.flatMap((group) => {
    const same = older.groups.find(({ name }) => name === group.name);
    if (same === undefined) return [];
    const before = plateAnswers(older, same);
    const after = plateAnswers(newer, group);
    const common = [...after].filter(([name, { truth }]) => before.get(name)?.truth === truth);
    if (common.length === 0) return [];
    const truths = common.map(([, { truth }]) => truth);
    const p = common.map(([name]) => before.get(name)!.probability);
    const q = common.map(([, { probability }]) => probability);
    const right = (probability: number, i: number) => probability >= 0.5 === (truths[i] === 1);
    const errors = (all: readonly number[]) => all.filter((one, i) => !right(one, i)).length;
    return [
      {
        group: group.name,
        plates: common.length,
        older: { logLoss: logLoss(p, truths), errors: errors(p) },
        newer: { logLoss: logLoss(q, truths), errors: errors(q) },
        onlyOlderRight: p.filter((one, i) => right(one, i) && !right(q[i]!, i)).length,
        onlyNewerRight: q.filter((one, i) => right(one, i) && !right(p[i]!, i)).length,
      },
    ];
  });
}

/** Mean held-out probability of each plate at the last horizon. */
function plateAnswers(nose: Nose, group: GroupNose): Map<string, { truth: number; probability: number }> {
  const own = group.horizons.at(-1);
  const sums = new Map<string, { truth: number; sum: number; count: number }>();
  group.truth.forEach((truth, i) => {
    const name = nose.plateNames?.[group.plate[i]!];
    if (own === undefined || name === undefined) return;
    const held = sums.get(name) ?? { truth, sum: 0, count: 0 };
    // A plate with sniffs of either truth belongs to neither side.
    const agreed = held.truth === truth ? truth : -1;
    sums.set(name, { truth: agreed, sum: held.sum + own.probabilities[i]!, count: held.count + 1 });
  });
  return new Map(
    [...sums]
      .filter(([, { truth }]) => truth >= 0)
      .map(([name, { truth, sum, count }]) => [name, { truth, probability: sum / count }]),
  );
}
