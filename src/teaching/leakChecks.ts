import { cleanAirReference } from "../features/cleanAirReference.js";
import { type RandomSource, seededRandom } from "../kernel/random.js";
import type { LeakCheck, LeakKind, LeakReport } from "../nose/report.js";
import type { Sniff } from "../sniff/sniff.js";
import { normalQuantile } from "../stats/normal.js";
import { rocAuc } from "../stats/scores.js";
import { dealFolds } from "./dealFolds.js";
import { fitInput } from "./fitInput.js";
import { type Prepared, truthsOfRow } from "./prepareSamples.js";
import { quickScores } from "./quickScores.js";

const FOLDS = 5;
/** Chance of any false alarm over all checks together, shared out evenly among them (Bonferroni). */
const FALSE_ALARM = 0.01;
/** A leak smaller than this is not worth a warning even where it is no accident. Common practice: poor below 0.6. */
const LEAST_LEAK = 0.6;
const LEAST_PLATES = 5;
const DAY_MS = 86_400_000;

/**
 * Tries to tell the groups from what holds no food. A sample set in which that works is confounded.
 *
 * @see Dennler and others, Sensors and Actuators B 361 (2022), 131758: baselines that predict the label
 */
export function leakChecks(prepared: Prepared, seed: number): LeakReport {
  const kinds: LeakKind[] = ["cleanAir", "airReadings", "clock"];
  const views = kinds.map((kind) => ({ kind, table: viewOf(kind, prepared.sniffs) }));
  const usable = views.filter(({ table }) => table !== null);
  const tested = usable.length * prepared.groups.length;
  const z = normalQuantile(1 - FALSE_ALARM / Math.max(1, tested));
  const random = seededRandom(seed);
  return {
    checks: usable.flatMap(({ kind, table }) => checksOf(kind, table!, prepared, z, random)),
    missing: views.filter(({ table }) => table === null).map(({ kind }) => kind),
    oneSided: prepared.groups.map((group) => oneSidedOccasions(prepared.sniffs, group)),
  };
}

/** One row of plain numbers a sniff, or null if the samples do not have them or they never change. */
function viewOf(kind: LeakKind, sniffs: readonly Sniff[]): number[][] | null {
  const rows = sniffs.map((sniff) => {
    if (kind === "cleanAir")
      return sniff.cleanAir === undefined ? null : [...cleanAirReference(sniff.cleanAir).logOhm];
    if (kind === "clock") {
      const at = Date.parse(sniff.takenAt);
      return [at / DAY_MS, (at % DAY_MS) / DAY_MS];
    }
    const read = [sniff.air?.cleanAir, sniff.air?.headspace].flatMap((air) => [
      air?.temperatureC ?? NaN,
      air?.humidityPct ?? NaN,
      air?.pressurePa ?? NaN,
    ]);
    return read.every(Number.isNaN) ? null : read;
  });
  if (rows.some((row) => row === null)) return null;
  const known = rows as number[][];
  const columns = known[0]!
    .map((_, column) => column)
    .filter((column) => {
      const values = known.map((row) => row[column]!);
      return values.every(Number.isFinite) && values.some((value) => value !== values[0]);
    });
  return columns.length === 0 ? null : known.map((row) => columns.map((column) => row[column]!));
}

function checksOf(
  kind: LeakKind,
  view: readonly number[][],
  prepared: Prepared,
  z: number,
  random: RandomSource,
): LeakCheck[] {
  const groups = prepared.groups.length;
  const rows = view.length;
  const features = view[0]!.length;
  const raw = {
    rows,
    features,
    values: Float64Array.from(view.flat()),
    rise: new Float64Array(rows).fill(NaN),
  };
  const foldOf = dealFolds(prepared.plates, (row) => truthsOfRow(prepared, row), FOLDS, random);
  const scores = new Float64Array(rows * groups);
  for (let fold = 0; fold < FOLDS; fold += 1) {
    const weight = prepared.weight.map((one, row) => (foldOf[row] === fold ? 0 : one));
    const { centre, scale } = fitInput(raw, [], weight, 0);
    const x = raw.values.map((value, at) => (value - centre[at % features]!) / scale[at % features]!);
    const table = { rows, features, groups, x, truth: prepared.truth, weight };
    const held = [...foldOf.keys()].filter((row) => foldOf[row] === fold);
    quickScores(table, held, random).forEach((one, i) => scores.set(one, held[i]! * groups));
  }
  return prepared.groups.flatMap((group, place) => {
    const plates = plateScores(prepared, scores, place);
    const present = plates.filter(({ truth }) => truth === 1).length;
    const absent = plates.length - present;
    if (Math.min(present, absent) < LEAST_PLATES) return [];
    const auc = rocAuc(
      plates.map(({ score }) => score),
      plates.map(({ truth }) => truth),
    )!;
    // Mann and Whitney, Ann. Math. Stat. 18 (1947), 50-60: variance of the statistic where nothing is told apart.
    const limit = 0.5 + z * Math.sqrt((present + absent + 1) / (12 * present * absent));
    return [{ kind, group, auc, limit, leaks: auc > limit && auc >= LEAST_LEAK }];
  });
}

function plateScores(prepared: Prepared, scores: Float64Array, place: number) {
  const groups = prepared.groups.length;
  const sums = new Map<string, { truth: number; sum: number; count: number }>();
  prepared.plates.forEach((plate, row) => {
    const truth = prepared.truth[row * groups + place]!;
    if (truth < 0) return;
    const held = sums.get(`${plate} ${truth}`) ?? { truth, sum: 0, count: 0 };
    sums.set(`${plate} ${truth}`, {
      truth,
      sum: held.sum + scores[row * groups + place]!,
      count: held.count + 1,
    });
  });
  return [...sums.values()].map(({ truth, sum, count }) => ({ truth, score: sum / count }));
}

function oneSidedOccasions(sniffs: readonly Sniff[], group: string) {
  const truths = new Map<string, Set<string>>();
  for (const { occasion, groups } of sniffs) {
    const said = groups[group];
    if (said !== "present" && said !== "absent") continue;
    truths.set(occasion, (truths.get(occasion) ?? new Set()).add(said));
  }
  const occasions = [...truths].filter(([, said]) => said.size === 1).map(([occasion]) => occasion);
  return { group, occasions: occasions.sort(), of: truths.size };
}
