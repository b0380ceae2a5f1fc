/** Meals for a spreadsheet: one line a meal, with three columns for each food group that any of them names. */
import type { GroupTruth } from "../kernel/groups.js";
import type { SnapshotVerdict } from "./findingSnapshot.js";
import type { Meal, MealOutcome, Severity, TruthSource } from "./meal.js";

/** The columns before those of the groups. */
const FIRST_COLUMNS = ["at", "dish", "place", "claims", "cautions", "outcome"] as const;
/** The columns of each group. */
const GROUP_COLUMNS = ["finding", "probability", "truth"] as const;
/** The columns after them. */
const LAST_COLUMNS = [
  "truthSource",
  "truthNote",
  "onsetMinutes",
  "symptoms",
  "severity",
  "howIFelt",
  "note",
] as const;

/** Names of everything that the file says in words; the text station has them in the user's language. */
export type MealCsvWord =
  | `column.${(typeof FIRST_COLUMNS)[number] | (typeof GROUP_COLUMNS)[number] | (typeof LAST_COLUMNS)[number]}`
  | `group.${string}`
  | `verdict.${SnapshotVerdict}`
  | `outcome.${MealOutcome}`
  | `truth.${GroupTruth}`
  | `source.${TruthSource}`
  | `severity.${Severity}`;

/**
 * Meals as comma-separated values, in the order given. Spreadsheets read it as UTF-8 if U+FEFF is put before it.
 *
 * A cell that a spreadsheet would take for a formula gets an apostrophe before it, so that a dish from a hostile
 * menu stays text; the apostrophe is the price.
 *
 * @param say - the user's word for each name
 * @returns text with CRLF after every line, the last one too
 * @see RFC 4180, section 2; OWASP ASVS 5.0, requirement 1.2.10, and CWE-1236 for formulas
 */
export function writeMealCsv(meals: readonly Meal[], say: (word: MealCsvWord) => string): string {
  const groups = groupsOf(meals);
  const lines = [headerOf(groups, say), ...meals.map((meal) => lineOf(meal, groups, say))];
  return lines.map((cells) => `${cells.map(csvCell).join(",")}\r\n`).join("");
}

/** First signs that make a spreadsheet take a cell for a formula: OWASP ASVS 5.0, 1.2.10, and line breaks. */
const FORMULA_SIGNS = ["=", "+", "-", "@", "\t", "\r", "\n", "\0"];

/** One cell: no formula, and quoted where it holds a comma, a quote or a line break. */
export function csvCell(text: string): string {
  const harmless = FORMULA_SIGNS.includes(text.charAt(0)) ? `'${text}` : text;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

function groupsOf(meals: readonly Meal[]): string[] {
  const names = meals.flatMap((meal) => [
    ...(meal.finding?.groups.map(({ group }) => group) ?? []),
    ...Object.keys(meal.truth?.groups ?? {}),
  ]);
  return [...new Set(names)].sort();
}

function headerOf(groups: readonly string[], say: (word: MealCsvWord) => string): string[] {
  return [
    ...FIRST_COLUMNS.map((column) => say(`column.${column}`)),
    ...groups.flatMap((group) =>
      GROUP_COLUMNS.map((column) => `${say(`group.${group}`)}: ${say(`column.${column}`)}`),
    ),
    ...LAST_COLUMNS.map((column) => say(`column.${column}`)),
  ];
}

function lineOf(meal: Meal, groups: readonly string[], say: (word: MealCsvWord) => string): string[] {
  const { truth, reaction } = meal;
  return [
    meal.at,
    meal.dish,
    meal.place,
    meal.claims.join("; "),
    meal.cautions.map(({ text }) => text).join("; "),
    meal.outcome === null ? "" : say(`outcome.${meal.outcome}`),
    ...groups.flatMap((group) => groupCells(meal, group, say)),
    truth === null ? "" : say(`source.${truth.source}`),
    truth?.note ?? "",
    reaction?.onsetMs === undefined ? "" : String(Math.round(reaction.onsetMs / 60_000)),
    reaction?.symptoms.join("; ") ?? "",
    reaction === null ? "" : say(`severity.${reaction.severity}`),
    reaction?.note ?? "",
    meal.note,
  ];
}

function groupCells(meal: Meal, group: string, say: (word: MealCsvWord) => string): string[] {
  const finding = meal.finding?.groups.find((one) => one.group === group);
  const truth = meal.truth?.groups[group];
  return [
    finding === undefined ? "" : say(`verdict.${finding.verdict}`),
    finding === undefined || finding.probability === null ? "" : String(finding.probability),
    truth === undefined ? "" : say(`truth.${truth}`),
  ];
}
