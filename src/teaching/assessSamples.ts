import { findPlate } from "../finding/findPlate.js";
import { type JudgedSniff, judgedSniff } from "../finding/judgedSniff.js";
import { taughtShare } from "../finding/withBelief.js";
import { seededRandom } from "../kernel/random.js";
import { err, ok, type Result } from "../kernel/result.js";
import { kindsInUse } from "../nose/kindsInUse.js";
import { MODEL_KINDS, type ModelKind } from "../nose/models.js";
import type { Nose } from "../nose/nose.js";
import { humidityShareOf } from "../nose/standardised.js";
import type { Sniff } from "../sniff/sniff.js";
import { dealFolds } from "./dealFolds.js";
import { kindOfRow, numbersOf, type Prepared, prepareSamples } from "./prepareSamples.js";
import { teachNose, type TeachError } from "./teachNose.js";

export interface AssessOptions {
  /** What is held out together; by dish every food is judged by a nose that was never taught it. */
  readonly split: "plate" | "occasion" | "dish";
  /** Outer folds, whole, >= 2; fewer if there are fewer plates or occasions. */
  readonly folds: number;
  /** Fold of each sniff by its id, whole, >= 0, instead of folds dealt here; a sniff without one is neither taught nor judged. */
  readonly foldOf?: ReadonlyMap<string, number> | undefined;
  readonly seed: number;
  /** Groups to assess; all that the samples name if left out. */
  readonly groups?: readonly string[] | undefined;
  readonly acceptedMissRate: number;
  readonly backend?: string | undefined;
  /** Leave the nets out, for quick checks. */
  readonly withoutNets?: boolean | undefined;
  readonly onProgress?: ((done: number) => void) | undefined;
  readonly isCancelled?: (() => boolean) | undefined;
}

/** What a nose chose inside its own split. */
export interface NoseChoices {
  readonly kinds: readonly ModelKind[];
  readonly recipe: number;
  readonly humidityShare: number;
}

export interface Assessment {
  readonly prepared: Prepared;
  readonly folds: number;
  readonly sniffs: readonly JudgedSniff[];
  /** Probabilities of each plain model alone, by sniff in the same order and group; null where there is none. */
  readonly rivals: Readonly<Record<string, readonly (readonly (number | null)[])[]>>;
  /** Share of present plates among those that each sniff's nose was taught on, by sniff and group. */
  readonly taughtShares: readonly (readonly number[])[];
  /** The noses of the folds: what each chose. */
  readonly choices: readonly NoseChoices[];
}

/**
 * Cross-validates: every fold is judged by a nose that was taught on the other folds alone, with all its choices,
 * calibration and thresholds made there.
 */
export async function assessSamples(
  samples: readonly Sniff[],
  options: AssessOptions,
): Promise<Result<Assessment, TeachError>> {
  const { foldOf: given } = options;
  const wanted = given === undefined ? samples : samples.filter(({ id }) => given.has(id));
  const checked = prepareSamples(wanted, options.groups);
  if (!checked.ok) return checked;
  const prepared = checked.value;
  const foldOf = given === undefined ? dealtFolds(prepared, options) : givenFolds(prepared, given);
  const folds = new Set(foldOf).size;
  if (folds < 2)
    return err({ kind: "failed", detail: `needs two ${options.split}s or more to hold one out` });
  const sniffs: JudgedSniff[] = new Array<JudgedSniff>(prepared.sniffs.length);
  const rivals: Record<string, (number | null)[][]> = Object.fromEntries(
    MODEL_KINDS.map((kind) => [kind, prepared.sniffs.map(() => noAnswers(prepared))]),
  );
  const taughtShares: number[][] = new Array<number[]>(prepared.sniffs.length);
  const choices: NoseChoices[] = [];
  for (let fold = 0; fold < folds; fold += 1) {
    const taught = await teachNose(
      prepared.sniffs.filter((_, row) => foldOf[row] !== fold),
      {
        seed: options.seed + fold + 1,
        id: `fold-${fold}`,
        name: `fold ${fold}`,
        taughtAt: "1970-01-01T00:00:00Z",
        split: options.split === "occasion" ? "occasion" : "plate",
        groups: prepared.groups,
        withRivals: options.split !== "dish",
        backend: options.backend,
        withoutNets: options.withoutNets,
        isCancelled: options.isCancelled,
        onProgress: (done) => options.onProgress?.((fold + done) / folds),
      },
    );
    if (!taught.ok) return taught;
    const { nose } = taught.value;
    choices.push({ kinds: kindsInUse(nose), recipe: nose.recipe, humidityShare: humidityShareOf(nose) });
    const shares = taught.value.nose.groups.map(taughtShare);
    prepared.sniffs.forEach((sniff, row) => {
      if (foldOf[row] !== fold) return;
      taughtShares[row] = shares;
      sniffs[row] = judgedSniff(taught.value.nose, sniff, prepared.groups, options.acceptedMissRate);
      for (const kind of MODEL_KINDS) {
        const rival = taught.value.rivals[kind];
        if (rival !== undefined)
          rivals[kind]![row] = probabilitiesOf(rival, sniff, prepared.groups, options.acceptedMissRate);
      }
    });
  }
  return ok({ prepared, folds, sniffs, rivals, taughtShares, choices });
}

/** Fold of each row, shape [rows]. */
function dealtFolds(prepared: Prepared, { split, folds, seed }: AssessOptions): Int32Array {
  const units = unitsOf(prepared, split);
  const most = Math.min(folds, new Set(units).size);
  return dealFolds(units, (row) => kindOfRow(prepared, row), most, seededRandom(seed));
}

/** Fold of each row, shape [rows], numbered anew from 0: a fold whose sniffs were all left out must not count. */
function givenFolds({ sniffs }: Prepared, given: ReadonlyMap<string, number>): Int32Array {
  return numbersOf(sniffs.map(({ id }) => String(given.get(id))));
}

function unitsOf(prepared: Prepared, split: AssessOptions["split"]): Int32Array {
  if (split === "dish") return prepared.dishes;
  return split === "occasion" ? prepared.occasions : prepared.plates;
}

function probabilitiesOf(
  nose: Nose,
  sniff: Sniff,
  groups: readonly string[],
  acceptedMissRate: number,
): (number | null)[] {
  const found = findPlate(nose, sniff, { groups, acceptedMissRate, allergyGroups: [] });
  return found.groups.map(({ probability }) => probability);
}

function noAnswers(prepared: Prepared): (number | null)[] {
  return prepared.groups.map(() => null);
}
