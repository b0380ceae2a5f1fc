import type { JudgedGroup, JudgedSniff } from "../finding/judgedSniff.js";
import { err, ok, type Result } from "../kernel/result.js";
import { MODEL_KINDS } from "../nose/models.js";
import type { Sniff } from "../sniff/sniff.js";
import { type Assessment, type AssessOptions, assessSamples } from "./assessSamples.js";
import { type Prepared, prepareSamples } from "./prepareSamples.js";
import type { TeachError } from "./teachNose.js";

/** Fold of each sniff, by group and by the sniff's id: every group may have a split of its own. */
export type GivenFolds = ReadonlyMap<string, ReadonlyMap<string, number>>;

const NOT_ASKED: JudgedGroup = {
  truth: "unknown",
  probability: null,
  set: [],
  finding: "uncertain",
  reasons: [],
};

/**
 * Cross-validates on folds that were dealt elsewhere, so that the scores can be set beside those of another tool on the
 * very same splits: for each group with folds, noses of all groups are taught on that group's folds, and answer for it.
 *
 * @returns one assessment over the groups that have folds; a sniff without a fold of a group does not count for it
 */
export async function assessOnGivenFolds(
  samples: readonly Sniff[],
  folds: GivenFolds,
  options: AssessOptions,
): Promise<Result<Assessment, TeachError>> {
  const checked = prepareSamples(samples, [...folds.keys()]);
  if (!checked.ok) return checked;
  const fault = foldsFault(checked.value, folds, options);
  if (fault !== null) return err({ kind: "failed", detail: fault });
  const runs: Run[] = [];
  for (const group of checked.value.groups) {
    const own = folds.get(group);
    if (own === undefined) continue;
    const run = await assessSamples(samples, { ...options, foldOf: own });
    if (!run.ok) return run;
    runs.push(runOf(group, run.value));
  }
  return ok(together(checked.value, runs));
}

/** What is wrong with the folds, in words, or null: a leak between them would flatter every score. */
function foldsFault(prepared: Prepared, folds: GivenFolds, { split, groups }: AssessOptions): string | null {
  const known = new Set(prepared.sniffs.map(({ id }) => id));
  for (const [group, own] of folds) {
    if (!prepared.groups.includes(group)) return `no sniff says whether ${group} was present`;
    if (groups?.includes(group) === false)
      return `there are folds of ${group}, which the groups asked for leave out`;
    const stranger = [...own.keys()].find((id) => !known.has(id));
    if (stranger !== undefined) return `the folds of ${group} name a sniff that is not here: ${stranger}`;
    const foldOfUnit = new Map<string, number>();
    for (const sniff of prepared.sniffs) {
      const fold = own.get(sniff.id);
      if (fold === undefined) continue;
      const unit = sniff[split];
      const before = foldOfUnit.get(unit) ?? fold;
      if (before !== fold) return `${split} ${unit} lies in folds ${before} and ${fold} of ${group}`;
      foldOfUnit.set(unit, fold);
    }
  }
  return null;
}

/** An assessment of which only one group's answers are kept. */
interface Run {
  readonly group: string;
  readonly place: number;
  readonly assessment: Assessment;
  readonly rowOf: ReadonlyMap<string, number>;
}

function runOf(group: string, assessment: Assessment): Run {
  return {
    group,
    place: assessment.prepared.groups.indexOf(group),
    assessment,
    rowOf: new Map(assessment.prepared.sniffs.map(({ id }, row) => [id, row])),
  };
}

function together(prepared: Prepared, runs: readonly Run[]): Assessment {
  /** One value a sniff and group, from the run of that group. */
  const gathered = <T>(value: (run: Run, row: number) => T | undefined, none: T): T[][] =>
    prepared.sniffs.map(({ id }) =>
      runs.map((run) => {
        const row = run.rowOf.get(id);
        return (row === undefined ? undefined : value(run, row)) ?? none;
      }),
    );
  const judged = gathered(
    ({ assessment, group }, row): JudgedGroup | undefined => assessment.sniffs[row]?.groups[group],
    NOT_ASKED,
  );
  const sniffs = prepared.sniffs.map(({ id, plate, occasion }, row): JudgedSniff => ({
    id,
    plate,
    occasion,
    groups: Object.fromEntries(runs.map(({ group }, at) => [group, judged[row]?.[at] ?? NOT_ASKED])),
  }));
  return {
    prepared,
    folds: Math.max(...runs.map(({ assessment }) => assessment.folds)),
    sniffs,
    rivals: Object.fromEntries(
      MODEL_KINDS.map((kind) => [
        kind,
        gathered<number | null>(
          ({ assessment, place }, row) => assessment.rivals[kind]?.[row]?.[place],
          null,
        ),
      ]),
    ),
    taughtShares: gathered(({ assessment, place }, row) => assessment.taughtShares[row]?.[place], NaN),
    choices: runs.flatMap(({ assessment }) => assessment.choices),
  };
}
