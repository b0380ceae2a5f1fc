/** What turned out to be on the plate: as the form holds it, and as the meal keeps it. */
import { FOOD_GROUPS, type GroupTruth, type GroupTruths } from "../../kernel/groups.js";
import type { Meal, MealTruth } from "../../meals/meal.js";
import type { TruthDraft } from "../../views/truthFormView.js";

const TRUTHS: readonly GroupTruth[] = ["present", "absent", "unknown"];

export function truthDraftOf({ truth }: Meal): TruthDraft {
  if (truth === null) return { groups: {}, source: "kitchen", note: "" };
  return { groups: truth.groups, source: truth.source, note: truth.note };
}

/** Groups to ask for: those of the finding, those that are known, those the person avoids; all if that names none. */
export function groupsToAsk(meal: Meal, avoided: readonly string[]): readonly string[] {
  const named = [
    ...(meal.finding?.groups.map(({ group }) => group) ?? []),
    ...Object.keys(meal.truth?.groups ?? {}),
    ...avoided,
  ];
  return named.length === 0 ? FOOD_GROUPS : [...new Set(named)];
}

/** The form with one group answered; what is no answer changes nothing. */
export function withTruth(draft: TruthDraft, group: string, answer: string): TruthDraft {
  const truth = TRUTHS.find((known) => known === answer);
  return truth === undefined ? draft : { ...draft, groups: { ...draft.groups, [group]: truth } };
}

/** The truth that a form tells; null where it tells nothing. Groups left open are not named. */
export function truthOf(draft: TruthDraft, knownAt: string): MealTruth | null {
  const groups: GroupTruths = Object.fromEntries(
    Object.entries(draft.groups).filter(([, truth]) => truth !== "unknown"),
  );
  const note = draft.note.trim();
  if (Object.keys(groups).length === 0 && note === "") return null;
  return { groups, source: draft.source, knownAt, note };
}
