import { recipeOf } from "../features/recipe.js";
import { kindsInUse } from "../nose/kindsInUse.js";
import type { Nose } from "../nose/nose.js";
import { humidityShareOf } from "../nose/standardised.js";
import type { OccasionReport } from "../nose/report.js";
import { humidityText, rateText } from "./assessText.js";
import { sampleCheckLines } from "./sampleSetText.js";

/** What a nose is worth on its own held-out plates, as plain text. */
export function teachText(nose: Nose): string {
  const { report } = nose;
  const lines = [
    `${nose.name}: ${nose.sniffsTaught} sniffs of ${nose.platesTaught} plates on ${nose.occasionsTaught} occasions`,
    `recipe ${nose.recipe} (${recipeOf(nose.recipe)?.name ?? "unknown"}), ${humidityText(humidityShareOf(nose))}, ` +
      `${kindsInUse(nose).join(" + ")}, ` +
      `${report.folds} folds by ${report.split}`,
    ...report.leftOut.map(({ why, sniffs }) => `left out: ${sniffs} sniffs (${why})`),
    ...report.notes.map((note) => `note: ${note}`),
    "",
    "Held-out log loss and AUC after each stretch of the headspace",
    ...report.horizons.map(
      ({ fromMs, logLoss, auc }) =>
        `  from ${(fromMs / 1000).toFixed(0)} s: ${logLoss.toFixed(3)}, ${auc === null ? "-" : auc.toFixed(3)}`,
    ),
    "Models on the same folds (log loss, AUC)",
    ...report.rivals.map(
      ({ name, logLoss, auc }) => `  ${name}: ${logLoss.toFixed(3)}, ${auc === null ? "-" : auc.toFixed(3)}`,
    ),
    "",
    ...report.groups.flatMap((group) => {
      const head = `${group.group}: ${group.platesPresent} plates with, ${group.platesAbsent} without`;
      if (group.scores === null || group.sensitivity === null || group.specificity === null)
        return [head, "  too few plates: every finding is uncertain"];
      const { auc, logLoss, ece } = group.scores;
      return [
        head,
        `  AUC ${auc === null ? "-" : auc.toFixed(3)}, log loss ${logLoss.toFixed(3)}, ECE ${ece.toFixed(3)}, ` +
          `calibration ${group.calibration}`,
        `  sensitivity ${rateText(group.sensitivity)}`,
        `  specificity ${rateText(group.specificity)}`,
      ];
    }),
    ...(report.sampleChecks === undefined ? [] : ["", ...sampleCheckLines(report.sampleChecks)]),
    ...occasionLines(report.byOccasion),
  ];
  return `${lines.join("\n")}\n`;
}

function occasionLines(byOccasion: OccasionReport | undefined): string[] {
  if (byOccasion === undefined) return [];
  const { occasions, folds, groups } = byOccasion;
  return [
    "",
    `The same, held out by occasion (${folds} folds, ${occasions} occasions)`,
    ...groups.flatMap(({ group, scores, sensitivity, specificity }) =>
      scores === null || sensitivity === null || specificity === null
        ? [`  ${group}: too little to judge`]
        : [
            `  ${group}: AUC ${scores.auc === null ? "-" : scores.auc.toFixed(3)}, log loss ${scores.logLoss.toFixed(3)}`,
            `    sensitivity ${rateText(sensitivity)}, specificity ${rateText(specificity)}`,
          ],
    ),
  ];
}
