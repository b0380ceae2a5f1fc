import type { LeakKind, SampleChecks } from "../nose/report.js";
import type { SampleSetReport } from "../teaching/assessSampleSet.js";

const VIEWS: Record<LeakKind, string> = {
  cleanAir: "clean air alone",
  airReadings: "air readings alone",
  clock: "clock alone",
};

/** Leak checks and learning curve, line by line. */
export function sampleCheckLines({ leaks, learningCurve }: SampleChecks): string[] {
  const kinds = Object.keys(VIEWS) as LeakKind[];
  return [
    "Leak checks: what holds no food must not tell the groups apart (AUC by plate; chance 0.5)",
    ...kinds.map((kind) => {
      const own = leaks.checks.filter((check) => check.kind === kind);
      const told = own
        .filter((check) => check.leaks)
        .map(({ group, auc, limit }) => `${group} ${auc.toFixed(2)} (accident up to ${limit.toFixed(2)})`);
      if (leaks.missing.includes(kind)) return `  ${VIEWS[kind]}: not in these data, or it never changes`;
      if (own.length === 0) return `  ${VIEWS[kind]}: too few plates to tell`;
      const highest = Math.max(...own.map(({ auc }) => auc)).toFixed(2);
      return told.length > 0
        ? `  ${VIEWS[kind]}: LEAKS, tells ${told.join(", ")}`
        : `  ${VIEWS[kind]}: no leak found (highest AUC ${highest})`;
    }),
    ...(leaks.checks.some((check) => check.leaks)
      ? ["  These samples are confounded: findings rest in part on room, day or hour. Occasions to add:"]
      : []),
    ...(leaks.checks.some((check) => check.leaks)
      ? leaks.oneSided
          .filter(({ occasions }) => occasions.length > 0)
          .map(
            ({ group, occasions, of }) =>
              `    ${group}: ${occasions.length} of ${of} occasions had plates of one truth only; mix both on each`,
          )
      : []),
    "Learning curve (quick model; plates taught, log loss, AUC, error)",
    ...learningCurve.map(
      ({ plates, logLoss, auc, error }) =>
        `  ${String(plates).padStart(5)}  ${logLoss.toFixed(3)}  ${auc === null ? "-" : auc.toFixed(3)}  ${error.toFixed(3)}`,
    ),
  ];
}

/** Leak checks, learning curve and unknown foods as plain text. */
export function sampleSetText({ leaks, learningCurve, unlike }: SampleSetReport): string {
  const lines = [
    ...sampleCheckLines({ leaks, learningCurve }),
    unlike === null
      ? "Unlike anything taught: cannot be tried, no dish came up on several plates"
      : `Unlike anything taught, each of ${unlike.foods} dishes left out in turn: AUROC ` +
        `${unlike.auroc === null ? "-" : unlike.auroc.toFixed(3)}, ` +
        `${(100 * unlike.unknownFlagged).toFixed(0)} % of unknown sniffs beyond 95 % of the known ` +
        `(${unlike.knownSniffs} held-out sniffs of taught dishes; ${unlike.scale} distance)`,
  ];
  return `${lines.join("\n")}\n`;
}
