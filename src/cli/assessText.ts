import type { Rate } from "../nose/report.js";
import { RECIPES } from "../features/recipe.js";
import type { Assessment } from "../teaching/assessSamples.js";
import type { AssessedGroupSummary, AssessmentSummary, MeanScores } from "../teaching/summariseAssessment.js";

/** The report of an assessment as plain text. */
export function assessText(
  assessment: Assessment,
  summary: AssessmentSummary,
  options: {
    readonly path: string;
    readonly split: string;
    readonly seed: number;
    readonly rate: number;
    /** File of the folds, if they were given. */
    readonly givenFolds?: string | undefined;
  },
): string {
  const { prepared, folds, choices } = assessment;
  const lines = [
    `${options.path}: ${prepared.sniffs.length} sniffs of ${new Set(prepared.plates).size} plates on ` +
      `${new Set(prepared.occasions).size} occasions`,
    `held out by ${options.split}, ${folds} folds, seed ${options.seed}, accepted miss rate ${options.rate}`,
    ...(options.givenFolds === undefined
      ? []
      : [
          `folds of ${options.givenFolds}, one group after another: each choice below is for one fold of one group`,
        ]),
    ...prepared.leftOut.map(({ why, sniffs }) => `left out: ${sniffs} sniffs (${why})`),
    ...(prepared.hasCleanAir ? [] : ["no clean air in these sniffs: no ratio to it, and no noise floor"]),
    "chosen inside the folds:",
    ...choices.map(
      ({ kinds, recipe, humidityShare }) =>
        `  ${kinds.join(" + ")} on recipe ${recipe}, ${humidityText(humidityShare)}`,
    ),
    ...[...new Set(choices.map(({ recipe }) => recipe))].map(
      (id) => `recipe ${id}: ${RECIPES.find((recipe) => recipe.id === id)?.name ?? "unknown"}`,
    ),
    "",
    "Held-out probabilities, mean over the groups. Balanced accuracy and error are at probability one half; (even) is",
    "balanced accuracy at even evidence: present where the probability is above the share of present plates taught",
    `${pad("model", 14)}${HEAD}`,
    ...(summary.mean === null ? [] : [`${pad("nose", 14)}${scoreRow(summary.mean)}`]),
    ...summary.rivals.map(({ name, mean }) => `${pad(name, 14)}${scoreRow(mean)}`),
    "",
    ...summary.groups.flatMap(groupLines),
    `All groups: ${rateText(summary.said)} of the findings are not uncertain; of those ` +
      `${rateText(summary.wrongWhenSaid)} are wrong`,
    `Reasons for uncertain: ${
      Object.entries(summary.reasons)
        .sort((a, b) => b[1] - a[1])
        .map(([kind, count]) => `${kind} ${count}`)
        .join(", ") || "none"
    }`,
  ];
  return `${lines.join("\n")}\n`;
}

const HEAD = "bal. acc.  (even)    AUC  log loss  Brier    ECE  error  error at 80 %";

function groupLines(one: AssessedGroupSummary): string[] {
  const { findings: f } = one;
  return [
    `${one.group}: ${one.platesPresent} plates with, ${one.platesAbsent} without`,
    ...(one.scores === null ? ["  too few plates to judge"] : [`  ${pad("", 12)}${HEAD}`]),
    ...(one.scores === null ? [] : [`  ${pad("scores", 12)}${scoreRow(one.scores)}`]),
    `  sensitivity ${rateText(one.sensitivity)}, specificity ${rateText(one.specificity)}`,
    `  set holds the truth: present ${rateText(one.coverage.present)}, absent ${rateText(one.coverage.absent)}`,
    `  present: ${f.smelledPresent} smelled, ${f.notSmelledPresent} not smelled, ${f.uncertainPresent} uncertain`,
    `  absent:  ${f.smelledAbsent} smelled, ${f.notSmelledAbsent} not smelled, ${f.uncertainAbsent} uncertain`,
    `  wrong among those said: ${rateText(one.wrongWhenSaid)}`,
    "",
  ];
}

function scoreRow(scores: MeanScores): string {
  const { balancedAccuracy, evenBalancedAccuracy, auc, logLoss, brier, ece, error, errorAt80 } = scores;
  const cell = (value: number | null, width: number) =>
    (value === null ? "-" : value.toFixed(3)).padStart(width);
  return [
    cell(balancedAccuracy, 9),
    cell(evenBalancedAccuracy ?? null, 8),
    cell(auc, 7),
    cell(logLoss, 10),
    cell(brier, 7),
    cell(ece, 7),
    cell(error, 7),
    cell(errorAt80, 15),
  ].join("");
}

/** A counted rate with its exact 95 % interval. */
export function rateText({ events, trials, low, high }: Rate): string {
  if (trials === 0) return "0 of 0";
  return `${(events / trials).toFixed(3)} (${events} of ${trials}, 95 % ${low.toFixed(3)} to ${high.toFixed(3)})`;
}

function pad(text: string, width: number): string {
  return text.padEnd(width);
}

/** How much of the humidity's part a nose takes out of its features. */
export function humidityText(share: number): string {
  return share === 0 ? "humidity left in" : `${(100 * share).toFixed(0)} % of the humidity taken out`;
}
