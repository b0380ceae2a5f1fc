import type { RandomSource } from "../kernel/random.js";
import { mixedLogits } from "../nose/mixLogits.js";
import { MODEL_KINDS, type ModelChoice, type ModelKind, type NetEnsemble } from "../nose/models.js";
import { type GroupHorizon, type GroupNose, type HorizonNose, type Nose, NOSE_FORMAT } from "../nose/nose.js";
import type { HorizonReport, NoseReport, RivalReport } from "../nose/report.js";
import { chooseCalibrations } from "./chooseCalibration.js";
import { equalMix, groupCases, type JudgedCases, type MixChoice } from "./chooseMix.js";
import type { RecipeChoice } from "./chooseRecipe.js";
import type { FittedHorizon } from "./fitHorizon.js";
import { groupReport } from "./groupReport.js";
import type { HorizonSpan } from "./horizonsOf.js";
import { numbersOf, type Prepared } from "./prepareSamples.js";
import type { HorizonTable } from "./rawTables.js";
import type { ReadyAnswers } from "./readyAnswers.js";
import type { Taught, TeachOptions } from "./teachOptions.js";

/** What the folds share. */
export interface Work {
  readonly prepared: Prepared;
  readonly options: TeachOptions;
  readonly spans: readonly HorizonSpan[];
  readonly tables: readonly HorizonTable[];
  /** The other view of the sniffs, one for each horizon. */
  readonly others: readonly HorizonTable[];
  readonly foldOf: Int32Array;
  readonly folds: number;
  readonly choice: RecipeChoice;
  readonly weight: Float64Array;
  readonly random: RandomSource;
}

/** What was fitted on all samples. */
export interface FittedNose {
  readonly horizons: readonly FittedHorizon[];
  readonly nets: NetEnsemble | null;
  /** What the nets were taught on. */
  readonly backend: string;
}

/** A group is answered for from two plates of either truth; with fewer nothing can be held out and judged. */
const LEAST_PLATES = 2;

/** Mixes, calibrates and packs: the nose, its report and, if asked for, its rivals. */
export function assembleNose(
  work: Work,
  heldOut: readonly ReadyAnswers[],
  fitted: FittedNose,
  choice: MixChoice,
): Taught {
  const { options } = work;
  const cases = judgedCases(work);
  const make = ({ chosen, kinds }: Omit<MixChoice, "rivals">) => {
    const mix = equalMix(kinds);
    const judged = heldOut.map((one) => judgedGroups(mixedLogits(one.models, mix), cases));
    const groups = work.prepared.groups.map((_, group) => groupNose(work, cases, judged, group));
    const report = noseReport(work, groups, choice.rivals, chosen, fitted.backend);
    return packed(work, fitted, mix, groups, heldOut, chosen, report);
  };
  const nose = make(choice);
  const alone = options.withRivals === true && cases.groups.length > 0 ? MODEL_KINDS : [];
  const rivals = Object.fromEntries(
    alone
      .filter((kind) => kind !== "nets" || fitted.nets !== null)
      .map((kind) => [kind, make({ chosen: kind, kinds: [kind] })]),
  );
  options.onProgress?.(1);
  return { nose, report: nose.report, rivals };
}

/** What can be judged: sniffs that reached the last horizon, groups with enough plates of either truth. */
export function judgedCases(work: Work): JudgedCases {
  const { prepared, tables, foldOf, folds } = work;
  const groupCount = prepared.groups.length;
  const platesOf = (group: number, truth: number) => {
    const plates = new Set<number>();
    prepared.plates.forEach((plate, row) => {
      if (prepared.truth[row * groupCount + group] === truth) plates.add(plate);
    });
    return plates.size;
  };
  const groups = prepared.groups
    .map((_, group) => group)
    .filter((group) => Math.min(platesOf(group, 0), platesOf(group, 1)) >= LEAST_PLATES);
  const reached = tables.at(-1)!.reached;
  const rows = folds >= 2 ? [...foldOf.keys()].filter((row) => reached[row] === 1) : [];
  const { truth, weight, plates } = prepared;
  return { rows, groups: rows.length > 0 ? groups : [], groupCount, truth, weight, plates, folds: foldOf };
}

/** Calibration and held-out answers of every judged group at one horizon, by the group's number. */
function judgedGroups(mixed: Float64Array, cases: JudgedCases): ReadonlyMap<number, GroupHorizon> {
  const known = cases.groups.map((group) => groupCases(mixed, cases, group));
  const calibrated = chooseCalibrations(known);
  return new Map(
    known.map(({ logits, margin }, at) => [
      cases.groups[at]!,
      { ...calibrated[at]!, margin, logits: Float32Array.from(logits) },
    ]),
  );
}

function groupNose(
  work: Work,
  cases: JudgedCases,
  judged: readonly ReadonlyMap<number, GroupHorizon>[],
  group: number,
): GroupNose {
  const { prepared, foldOf } = work;
  const truthOf = (row: number) => prepared.truth[row * cases.groupCount + group]!;
  const platesWith = (truth: number) =>
    new Set([...prepared.plates].filter((_, row) => truthOf(row) === truth)).size;
  const horizons = judged.map((groups) => groups.get(group)).filter((one) => one !== undefined);
  const rows = horizons.length === 0 ? [] : cases.rows.filter((row) => truthOf(row) >= 0);
  const units = unitsOf(work);
  return {
    name: prepared.groups[group]!,
    platesPresent: platesWith(1),
    platesAbsent: platesWith(0),
    truth: Int16Array.from(rows, truthOf),
    plate: Int16Array.from(rows, (row) => units.numbers[row]!),
    fold: Int16Array.from(rows, (row) => foldOf[row]!),
    horizons,
  };
}

/** What counts as one piece of evidence: a plate; or, held out by occasion, the servings of one dish on it together. */
function unitsOf({ prepared, options }: Work): { names: string[]; numbers: Int32Array } {
  const names = prepared.sniffs.map(({ plate, occasion, dish }) =>
    options.split === "occasion" ? `${occasion}: ${dish}` : plate,
  );
  return { names: [...new Set(names)], numbers: numbersOf(names) };
}

function noseReport(
  work: Work,
  groups: readonly GroupNose[],
  rivals: readonly RivalReport[],
  chosen: ModelChoice,
  backend: string,
): NoseReport {
  const { prepared, options } = work;
  const notes: NoseReport["notes"][number][] = [];
  if (!prepared.hasCleanAir) notes.push("noCleanAir");
  if (work.tables.at(-1)!.rise.every(Number.isNaN)) notes.push("noHumidityCorrection");
  if (new Set(prepared.occasions).size < 2) notes.push("oneOccasion");
  if (hasConstantChannel(prepared)) notes.push("constantChannels");
  const judged = groups.filter(({ horizons }) => horizons.length > 0);
  const horizons: HorizonReport[] = work.spans.map(({ fromMs }, place) => {
    const scored = judged.map((group) => {
      const report = groupReport({ ...group, horizons: group.horizons.slice(0, place + 1) });
      return report.scores!;
    });
    const mean = (values: number[]) => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
    const aucs = scored.map(({ auc }) => auc).filter((auc) => auc !== null);
    return {
      fromMs: Math.round(fromMs),
      logLoss: mean(scored.map(({ logLoss }) => logLoss)),
      auc: aucs.length === 0 ? null : mean(aucs),
    };
  });
  return {
    groups: groups.map(groupReport),
    rivals,
    horizons: judged.length === 0 ? [] : horizons,
    recipes: work.choice.compared,
    chosen,
    humidityShare: work.choice.humidityShare,
    leftOut: prepared.leftOut,
    notes,
    split: options.split ?? "plate",
    folds: work.folds,
    backend,
  };
}

function hasConstantChannel(prepared: Prepared): boolean {
  return prepared.sniffer.channels.some((_, channel) => {
    const first = prepared.sniffs[0]!.headspace.ohm[0]![channel];
    return prepared.sniffs.every(({ headspace }) => headspace.ohm.every((sweep) => sweep[channel] === first));
  });
}

function packed(
  work: Work,
  fitted: FittedNose,
  mix: Float32Array,
  groups: readonly GroupNose[],
  heldOut: readonly ReadyAnswers[],
  chosen: ModelChoice,
  report: NoseReport,
): Nose {
  const { prepared, options, spans } = work;
  const uses = (kind: ModelKind) => mix[MODEL_KINDS.indexOf(kind)]! > 0;
  const horizons: HorizonNose[] = spans.map(({ fromMs, uptoMs }, place) => {
    const own = fitted.horizons[place]!;
    return {
      fromMs,
      uptoMs,
      input: own.input,
      mix,
      logistic: uses("logistic") ? own.logistic : null,
      discriminant: uses("discriminant") ? own.discriminant : null,
      trees: uses("trees") ? own.trees : null,
      kernel: uses("kernel") ? own.kernel : null,
      secondKernel: uses("secondKernel") ? own.secondKernel : null,
      neighbours: own.neighbours,
      heldOutDistances: heldOut[place]!.distances,
      usualDistance: heldOut[place]!.usualDistance,
    };
  });
  return {
    format: NOSE_FORMAT,
    id: options.id,
    name: options.name,
    taughtAt: options.taughtAt,
    sniffer: prepared.sniffer,
    recipe: work.choice.recipe.id,
    platesTaught: new Set(prepared.plates).size,
    sniffsTaught: prepared.sniffs.length,
    occasionsTaught: new Set(prepared.occasions).size,
    plateNames: unitsOf(work).names,
    groups,
    nets: uses("nets") ? fitted.nets : null,
    horizons,
    unbentTrees: true,
    marginAtEnds: true,
    chosen,
    report,
  };
}
