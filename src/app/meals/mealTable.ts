/** The meals as a table for a spreadsheet, in the person's words. */
import type { Meal } from "../../meals/meal.js";
import { writeMealCsv, type MealCsvWord } from "../../meals/mealCsv.js";
import type { Words } from "../../text/catalogue.js";
import { groupName } from "../../views/groupName.js";
import { severityLabel, symptomLabel } from "../../views/reactionFormView.js";
import { toneOf } from "../../views/tone.js";
import { truthOptions } from "../../views/truthFormView.js";

/** By this sign spreadsheets know that the text is UTF-8. */
const BYTE_ORDER_MARK = "\uFEFF";

type TableWords = Words<"common" | "finding" | "meals">;

/** Newest first, as in the list. */
export function mealTable(meals: readonly Meal[], words: TableWords): string {
  const named = meals.map((meal) => withSymptomNames(meal, words));
  return BYTE_ORDER_MARK + writeMealCsv(named, (word) => sayIn(words, word));
}

function withSymptomNames(meal: Meal, words: TableWords): Meal {
  const { reaction } = meal;
  if (reaction === null) return meal;
  const symptoms = reaction.symptoms.map((symptom) => symptomLabel(symptom, words));
  return { ...meal, reaction: { ...reaction, symptoms } };
}

/** The catalogue's word for each name that the table uses. */
function sayIn(words: TableWords, word: MealCsvWord): string {
  const { finding, meals } = words.text;
  const { detail, form, truth, reaction } = meals;
  const columns: Readonly<Record<string, string>> = {
    at: form.when,
    dish: form.dish,
    place: form.place,
    claims: form.claims,
    cautions: detail.cautionsTitle,
    outcome: form.outcome,
    finding: meals.filterVerdict,
    probability: meals.probability,
    truth: meals.filterTruth,
    truthSource: truth.source,
    truthNote: truth.note,
    onsetMinutes: `${reaction.onset} (min)`,
    symptoms: reaction.symptoms,
    severity: reaction.severity,
    howIFelt: detail.reactionTitle,
    note: form.note,
  };
  const [kind = "", ...rest] = word.split(".");
  const name = rest.join(".");
  switch (kind) {
    case "column":
      return columns[name] ?? name;
    case "group":
      return groupName(name, words);
    case "verdict":
      return name === "smelled" || name === "not smelled" || name === "uncertain"
        ? finding.verdicts[toneOf(name)]
        : name;
    case "outcome":
      return (detail.outcomes as Readonly<Record<string, string>>)[name] ?? name;
    case "truth":
      return truthOptions("unknown", words).find(({ id }) => id === name)?.label ?? name;
    case "source":
      return (truth.sources as Readonly<Record<string, string>>)[name] ?? name;
    case "severity":
      return severityName(name, words);
    default:
      return name;
  }
}

function severityName(name: string, words: TableWords): string {
  const severity = ([0, 1, 2, 3] as const).find((known) => String(known) === name);
  return severity === undefined ? name : severityLabel(severity, words);
}
