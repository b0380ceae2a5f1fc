import type { Meal } from "../meals/meal.js";
import type { Words } from "../text/catalogue.js";
import { timeText } from "../text/formats.js";
import { groupName } from "./groupName.js";
import { inOrderOfWeight, type Tone, toneOf } from "./tone.js";

/** One meal in a list. */
export interface MealRowView {
  readonly id: string;
  readonly dish: string;
  /** Time and place, as one line. */
  readonly line: string;
  readonly findings: readonly { readonly group: string; readonly tone: Tone; readonly text: string }[];
  readonly notSniffed: string | null;
  /** The mark of a practice plate. */
  readonly demo: string | null;
  readonly marks: readonly string[];
  readonly photoId: string | null;
}

type RowWords = Words<"common" | "finding" | "meals">;

const NONE: ReadonlySet<string> = new Set();

/**
 * Words of one meal's row.
 *
 * @param practice - sniffs of the practice kitchen: nobody takes its plates for real ones
 */
export function mealRowView(meal: Meal, words: RowWords, practice: ReadonlySet<string> = NONE): MealRowView {
  const { meals: text } = words.text;
  return {
    id: meal.id,
    dish: meal.dish === "" ? text.noDish : meal.dish,
    line: [timeText(meal.at, words.formats), meal.place].filter((part) => part !== "").join(" · "),
    findings: inOrderOfWeight(meal.finding?.groups ?? []).map(({ group, verdict }) => ({
      group,
      tone: toneOf(verdict),
      text: words.text.finding.spoken(
        groupName(group, words),
        words.text.finding.verdicts[toneOf(verdict)].toLowerCase(),
      ),
    })),
    notSniffed: meal.finding === undefined ? text.noFinding : null,
    demo: meal.sniffId !== undefined && practice.has(meal.sniffId) ? words.text.common.demoMark : null,
    marks: marksOf(meal, words),
    photoId: meal.photoIds[0] ?? null,
  };
}

function marksOf(meal: Meal, { text: { meals } }: RowWords): string[] {
  const known = Object.values(meal.truth?.groups ?? {}).some((truth) => truth !== "unknown");
  return [
    ...(known ? [meals.truthMark] : []),
    ...((meal.reaction?.severity ?? 0) > 0 ? [meals.reactionMark] : []),
    ...(meal.outcome === "sentBack" ? [meals.sentBackMark] : []),
  ];
}
