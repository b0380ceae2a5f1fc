/** How the person felt: as the form holds it, and as the meal keeps it. */
import type { Meal, MealReaction, Severity } from "../../meals/meal.js";
import { onsetId, ONSETS, SYMPTOMS, type OnsetId, type ReactionDraft } from "../../views/reactionFormView.js";

const KNOWN: readonly string[] = SYMPTOMS;
const SEVERITIES: readonly Severity[] = [0, 1, 2, 3];

export function reactionDraftOf({ reaction }: Meal): ReactionDraft {
  if (reaction === null) return { severity: 0, onset: "unknown", symptoms: [], own: "", note: "" };
  return {
    severity: reaction.severity,
    onset: onsetId(reaction.onsetMs),
    symptoms: reaction.symptoms.filter((symptom) => KNOWN.includes(symptom)),
    own: reaction.symptoms.filter((symptom) => !KNOWN.includes(symptom)).join(", "),
    note: reaction.note,
  };
}

/** The reaction that a form tells. An onset that was not touched stays as exact as it was. */
export function reactionOf(draft: ReactionDraft, before: MealReaction | null): MealReaction {
  const kept = onsetId(before?.onsetMs) === draft.onset ? before?.onsetMs : ONSETS[draft.onset];
  const own = draft.own.trim();
  return {
    ...(kept === undefined ? {} : { onsetMs: kept }),
    symptoms: [...draft.symptoms, ...(own === "" ? [] : [own])],
    severity: draft.severity,
    note: draft.note.trim(),
  };
}

export function withSeverity(draft: ReactionDraft, id: string): ReactionDraft {
  const severity = SEVERITIES.find((known) => String(known) === id);
  return severity === undefined ? draft : { ...draft, severity };
}

export function withOnset(draft: ReactionDraft, id: string): ReactionDraft {
  return id in ONSETS ? { ...draft, onset: id as OnsetId } : draft;
}

/** In the order of the form, whatever the order of the taps. */
export function withSymptom(draft: ReactionDraft, symptom: string, chosen: boolean): ReactionDraft {
  const others = draft.symptoms.filter((known) => known !== symptom);
  const ticked = chosen ? [...others, symptom] : others;
  return { ...draft, symptoms: KNOWN.filter((known) => ticked.includes(known)) };
}
