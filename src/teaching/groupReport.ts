import type { GroupNose } from "../nose/nose.js";
import type { GroupReport, Rate } from "../nose/report.js";
import { scoreLadder } from "../finding/scoreLadder.js";
import { brierDecomposition, reliabilityCurve, riskCoverage } from "../stats/scores.js";
import { rateOf, scoreGroup } from "./scoreGroup.js";

/** The sets of the report promise to hold the truth for all but this share, in either class. Common practice. */
export const REPORT_ALPHA = 0.1;
const BINS = 10;

/** The report on one group from the nose's own held-out answers at its last horizon. */
export function groupReport(group: GroupNose): GroupReport {
  const own = group.horizons.at(-1);
  const counts = { group: group.name, platesPresent: group.platesPresent, platesAbsent: group.platesAbsent };
  if (own === undefined || own.probabilities.length === 0)
    return {
      ...counts,
      scores: null,
      sensitivity: null,
      specificity: null,
      brierParts: null,
      coverage: null,
      reliability: [],
      riskCoverage: [],
      calibration: "none",
    };
  const p = own.probabilities;
  const { truth } = group;
  const confidence = Float64Array.from(p, (one) => Math.max(one, 1 - one));
  const wrong = Uint8Array.from(p, (one, i) => (one >= 0.5 === (truth[i] === 1) ? 0 : 1));
  // Murphy's parts need few distinct forecasts: tenths, as in the reliability diagram.
  const { reliability, resolution, uncertainty } = brierDecomposition(
    p.map((one) => Math.round(one * BINS) / BINS),
    truth,
  );
  return {
    ...counts,
    scores: scoreGroup(p, truth, sharesOutside(group)),
    sensitivity: hitRate(p, truth, 1),
    specificity: hitRate(p, truth, 0),
    brierParts: { reliability, resolution, uncertainty },
    coverage: { present: coverage(group, 1), absent: coverage(group, 0), target: 1 - REPORT_ALPHA },
    reliability: reliabilityCurve(p, truth, BINS),
    riskCoverage: thinned(riskCoverage(confidence, wrong)),
    calibration: own.calibration.kind,
  };
}

/** For each held-out sniff, the share of present plates among those of the other folds. */
function sharesOutside(group: GroupNose): Float64Array {
  const share = (fold: number) => {
    const truths = new Map<number, number>();
    group.plate.forEach((plate, i) => {
      if (group.fold[i] !== fold) truths.set(plate, group.truth[i]!);
    });
    const present = [...truths.values()].reduce((sum, one) => sum + one, 0);
    return truths.size === 0 ? 0.5 : present / truths.size;
  };
  const shares = new Map([...new Set(group.fold)].map((fold) => [fold, share(fold)]));
  return Float64Array.from(group.fold, (fold) => shares.get(fold)!);
}

function hitRate(p: Float32Array, truth: Int16Array, kind: 0 | 1): Rate {
  let hits = 0;
  let all = 0;
  p.forEach((one, i) => {
    if (truth[i] !== kind) return;
    all += 1;
    if (one >= 0.5 === (kind === 1)) hits += 1;
  });
  return rateOf(hits, all);
}

/** Plates whose true label stays in the set when judged against the plates of the other folds. */
function coverage(group: GroupNose, kind: 0 | 1): Rate {
  const { logits } = group.horizons.at(-1)!;
  const ladder = scoreLadder(
    logits,
    group.plate,
    group.fold,
    Array.from(group.truth, (one) => one === kind),
  );
  const votes = new Map<number, { kept: number; sniffs: number }>();
  group.truth.forEach((truth, i) => {
    if (truth !== kind) return;
    const fold = group.fold[i]!;
    const asStrange = kind === 1 ? ladder.atOrBelow(logits[i]!, fold) : ladder.atOrAbove(logits[i]!, fold);
    const kept = (1 + asStrange) / (ladder.plates(fold) + 1) > REPORT_ALPHA + 1e-6 ? 1 : 0;
    const held = votes.get(group.plate[i]!) ?? { kept: 0, sniffs: 0 };
    votes.set(group.plate[i]!, { kept: held.kept + kept, sniffs: held.sniffs + 1 });
  });
  let events = 0;
  for (const { kept, sniffs } of votes.values()) events += kept / sniffs;
  return rateOf(Math.round(events), votes.size);
}

/** At most 21 points are enough for a chart and keep the nose small. */
function thinned<T>(points: readonly T[]): T[] {
  const most = 21;
  if (points.length <= most) return [...points];
  return Array.from({ length: most }, (_, i) => points[Math.round((i * (points.length - 1)) / (most - 1))]!);
}
